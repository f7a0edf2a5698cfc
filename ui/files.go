package ui

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"

	"tubewright/route/planfile"
	"tubewright/ui/session"
)

// noDemoError says that there is no demo of that name.
type noDemoError struct{ name string }

func (e *noDemoError) Error() string { return fmt.Sprintf("there is no demo %q", e.name) }

// unlessUnsaved does something that gives the open plan up, after asking when
// it has edits that no file has.
func (w *Window) unlessUnsaved(act func()) {
	w.settle()
	if !w.snapshot.Dirty {
		act()
		return
	}
	w.openModal("Save the changes first?", modalWidth,
		paragraphs(fmt.Sprintf("%s has changes that are not saved. Without saving they are lost.", w.snapshot.Plan.Name)),
		button{text: "Cancel", cancel: true},
		button{text: "Do not save", act: act},
		button{text: "Save", strong: true, act: func() { w.saveThen(act) }})
}

// askOpen lets the person choose a plan file.
func (w *Window) askOpen() {
	w.unlessUnsaved(func() { w.chooseFile([]string{".yaml", ".yml"}, w.open) })
}

// chooseFile lets the person choose a file of one of some endings.
func (w *Window) chooseFile(endings []string, then func(path string)) {
	d := dialog.NewFileOpen(func(r fyne.URIReadCloser, err error) {
		w.dialog = nil
		if err != nil {
			w.say("That file cannot be opened", sentence(err.Error()))
		}
		if r == nil {
			return
		}
		path := r.URI().Path()
		w.did(r.Close()) // it is read again, with our limits
		then(path)
	}, w.win)
	d.SetFilter(storage.NewExtensionFileFilter(endings))
	if dir := w.folder(); dir != nil {
		d.SetLocation(dir)
	}
	w.showDialog(d, d.Resize)
}

// showDialog shows one of Fyne's own questions large enough to be read.
func (w *Window) showDialog(d interface {
	Show()
	closer
}, resize func(fyne.Size),
) {
	size := w.win.Canvas().Size()
	resize(fyne.NewSize(min(820, size.Width-80), min(560, size.Height-80)))
	w.dialog = d
	d.Show()
	w.writeBoxes()
}

// folder is where to begin looking: beside the open plan, or the newest of the
// recent ones.
func (w *Window) folder() fyne.ListableURI {
	path := w.snapshot.Path
	if path == "" && len(w.settings.Recent) > 0 {
		path = w.settings.Recent[0]
	}
	if path == "" {
		return nil
	}
	dir, err := storage.ListerForURI(storage.NewFileURI(filepath.Dir(path)))
	if err != nil {
		return nil // the folder is gone: begin where the system begins
	}
	return dir
}

// openPath opens a plan file, asking about unsaved changes.
func (w *Window) openPath(path string) { w.unlessUnsaved(func() { w.open(path) }) }

// open opens a plan file and tells what is wrong with it, if anything.
func (w *Window) open(path string) {
	if err := w.Open(path); err != nil {
		w.tellProblems(path, err)
	}
}

// Open shows the plan in a file.
func (w *Window) Open(path string) error {
	err := w.session.Open(path)
	if errors.Is(err, fs.ErrNotExist) {
		w.settings = w.settings.Forget(path)
		w.keepSettings()
	}
	if err != nil {
		return err
	}
	w.settings = w.settings.Remember(path)
	w.keepSettings()
	w.begun("")
	return nil
}

// begun starts afresh with the plan that has just been opened.
func (w *Window) begun(news string) {
	w.forgetPhotos()
	w.news = news
	w.board.FitAll()
	w.setMenu()
	w.showPanels()
}

// tellProblems shows why a file could not be opened, each problem with its
// line and its way out.
func (w *Window) tellProblems(path string, err error) {
	var problems planfile.Problems
	if !errors.As(err, &problems) {
		w.say("That file cannot be opened", sentence(err.Error()))
		return
	}
	rows := []fyne.CanvasObject{newFlow(path, smallSize, soft)}
	for _, p := range problems {
		head := newFlow(fmt.Sprintf("Line %d, column %d: %s.", p.Line, p.Col, strings.TrimSuffix(p.What, ".")), textSize, ink)
		rows = append(rows, newColumn(0, 1, head, newFlow(p.Fix, smallSize, soft)))
	}
	w.read("The plan file needs "+count(len(problems), "correction"), rows...)
}

// emptyPlan begins with an empty case, asking about unsaved changes.
func (w *Window) emptyPlan() {
	w.unlessUnsaved(func() {
		w.session.Empty()
		w.begun("A new plan: add parts from the Edit menu, then drag from port to port.")
	})
}

// askDemo opens a demo, asking about unsaved changes.
func (w *Window) askDemo(name string) {
	w.unlessUnsaved(func() {
		if err := w.OpenDemo(name); err != nil {
			w.tellProblems(name, err)
		}
	})
}

// OpenDemo shows a demo plan. Saving it asks for a name first.
func (w *Window) OpenDemo(name string) error {
	text, ok := w.options.Demo(name)
	if !ok {
		return &noDemoError{name}
	}
	if err := w.session.OpenBytes(name+planfile.Ending, text); err != nil {
		return err
	}
	w.begun("A demo: everything in it is invented. Saving asks for a name.")
	return nil
}

// dropped opens a plan file that was dropped on the window, and lays a picture
// under the look.
func (w *Window) dropped(_ fyne.Position, uris []fyne.URI) {
	if len(uris) == 0 || len(w.modals) > 0 {
		return
	}
	path := uris[0].Path()
	if isPhoto(path) && w.snapshot.Open {
		w.withFile(func() { w.layPicture(path) })
		return
	}
	w.openPath(path)
}

func (w *Window) save() { w.saveThen(nil) }

// saveThen saves and then does what waits for it; nothing, when it could not
// be saved.
func (w *Window) saveThen(then func()) {
	w.settle()
	told, err := w.session.Save()
	var changed *session.ChangedError
	switch {
	case errors.Is(err, session.ErrNoPath):
		w.askSaveAsThen(then)
	case errors.As(err, &changed):
		w.ask("Write over it?", sentence(err.Error())+" Saving now puts your plan in its place. "+
			"To keep both, cancel and choose Save as.", "Write over it", func() {
			told, err := w.session.SaveOver()
			w.saved(told, err, then)
		})
	default:
		w.saved(told, err, then)
	}
}

// saved tells how the saving went and goes on.
func (w *Window) saved(told string, err error, then func()) {
	if err != nil {
		w.say("The plan could not be saved", sentence(err.Error())+" Your plan is still open, and unchanged.")
		return
	}
	w.settings = w.settings.Remember(w.snapshot.Path)
	w.keepSettings()
	w.tell("Saved " + w.snapshot.Path)
	w.setMenu()
	if told != "" {
		w.say("Saved", sentence(told))
	}
	if then != nil {
		then()
	}
}

// tryClose closes the window after asking about unsaved changes.
func (w *Window) tryClose() {
	if w.closing {
		return
	}
	for _, m := range append([]*modal(nil), w.modals...) {
		m.close()
	}
	w.unlessUnsaved(w.close)
}

func (w *Window) close() {
	w.closing = true
	size := w.win.Canvas().Size()
	w.settings.Width, w.settings.Height = size.Width, size.Height
	w.keepSettings()
	if err := w.session.Close(); err != nil {
		w.options.Log(err)
	}
	w.win.Close()
}

// Begin shows the plan in a file as soon as the window is there; what is wrong
// with it is told in the window.
func (w *Window) Begin(path string) { w.open(path) }
