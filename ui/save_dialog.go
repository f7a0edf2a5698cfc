package ui

import (
	"os"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"tubewright/cutlist/sheet"
	"tubewright/route/planfile"
)

// field is a named entry in a question.
type field struct {
	widget.Entry
	modal *modal
}

func newField(text string) *field {
	f := &field{}
	f.ExtendBaseWidget(f)
	f.Text = text
	return f
}

// FocusGained marks what stands there, so that what is typed takes its place.
func (f *field) FocusGained() {
	f.Entry.FocusGained()
	selectAll(&f.Entry)
}

// TypedKey gives Enter and Esc to the question.
func (f *field) TypedKey(k *fyne.KeyEvent) {
	if f.modal != nil && f.modal.key(k.Name) {
		return
	}
	f.Entry.TypedKey(k)
}

// labelled puts a name above an entry.
func labelled(name string, o fyne.CanvasObject) fyne.CanvasObject {
	return newColumn(0, 2, newFlow(name, smallSize, soft), o)
}

// folderField is an entry for a folder, with a button to choose one.
func (w *Window) folderField(text string) (*field, fyne.CanvasObject) {
	f := newField(text)
	browse := newButtonRow(button{text: "Choose …", act: func() {
		d := dialog.NewFolderOpen(func(dir fyne.ListableURI, err error) {
			w.dialog = nil
			if err == nil && dir != nil {
				f.SetText(dir.Path())
			}
		}, w.win)
		w.showDialog(d, d.Resize)
	}})
	wide := browse.least()
	place := container.NewCenter(container.NewGridWrap(fyne.NewSize(wide, browse.HeightFor(wide)), browse))
	return f, container.NewBorder(nil, nil, nil, place, f)
}

func (w *Window) askSaveAs() { w.askSaveAsThen(nil) }

// askSaveAsThen asks for folder and name. Fyne's own question would empty the
// file before we could write beside it and rename.
func (w *Window) askSaveAsThen(then func()) {
	w.settle()
	folder, row := w.folderField(w.saveFolder())
	name := newField(w.saveName())
	wrong := newFlow("", smallSize, bad)
	var m *modal
	rows := []fyne.CanvasObject{labelled("Folder", row), labelled("Name", name), wrong}
	m = w.openModal("Save the plan as", modalWidth, rows, button{text: "Cancel", cancel: true},
		button{text: "Save", strong: true, act: func() {
			path, err := savePath(folder.Text, name.Text)
			if err != nil {
				w.askSaveAsThen(then)
				w.say("That is no place for a file", sentence(err.Error()))
				return
			}
			w.saveTo(path, then)
		}})
	folder.modal, name.modal = m, m
	w.win.Canvas().Focus(name)
}

// saveTo writes to a path, asking when something is there already.
func (w *Window) saveTo(path string, then func()) {
	write := func() {
		from := w.snapshot.Path
		told, err := w.session.SaveAs(path)
		if err == nil && from != "" {
			if lost := carryPictures(w.snapshot.Plan, filepath.Dir(from), filepath.Dir(path)); lost != nil {
				told = "The plan is saved, but not every picture could be copied beside it: " + sentence(lost.Error())
			}
			w.forgetPhotos()
		}
		w.saved(told, err, then)
	}
	if _, err := os.Stat(path); err == nil && path != w.snapshot.Path {
		w.ask("Replace the file?", path+" is there already. Replacing it keeps its last version beside it.", "Replace", write)
		return
	}
	write()
}

func (w *Window) saveFolder() string {
	if w.snapshot.Path != "" {
		return filepath.Dir(w.snapshot.Path)
	}
	if len(w.settings.Recent) > 0 {
		return filepath.Dir(w.settings.Recent[0])
	}
	return homeFolder()
}

// homeFolder is the person's own folder, else the current one.
func homeFolder() string {
	if home, err := os.UserHomeDir(); err == nil {
		return home
	}
	return "."
}

func (w *Window) saveName() string {
	if w.snapshot.Path != "" {
		return filepath.Base(w.snapshot.Path)
	}
	return sheet.FileName(w.snapshot.Plan.Name) + planfile.Ending
}

// pathError says what is wrong with a place for a file.
type pathError string

func (e pathError) Error() string { return string(e) }

// savePath joins folder and name and adds the ending when it is missing.
func savePath(folder, name string) (string, error) {
	name = strings.TrimSpace(name)
	switch {
	case name == "":
		return "", pathError("the file needs a name")
	case name != filepath.Base(name):
		return "", pathError("the name must not have a folder in it: type that above")
	}
	if !strings.HasSuffix(name, ".yaml") && !strings.HasSuffix(name, ".yml") {
		name += planfile.Ending
	}
	return filepath.Join(expandHome(strings.TrimSpace(folder)), name), nil
}

// expandHome understands ~ at the start, as shells do.
func expandHome(folder string) string {
	if folder == "" {
		return "."
	}
	if rest, ok := strings.CutPrefix(folder, "~"); ok && (rest == "" || rest[0] == filepath.Separator) {
		return homeFolder() + rest
	}
	return folder
}
