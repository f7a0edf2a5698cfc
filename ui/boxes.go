package ui

import (
	"encoding/json"
	"os"
	"time"

	"fyne.io/fyne/v2"

	"tubewright/route/check"
	"tubewright/ui/board"
)

// Boxes tells tests of the real window where things stand and what is shown.
// Places are in pixels of the window, from its upper left corner.
type Boxes struct {
	Title string `json:"title"`
	Dirty bool   `json:"dirty"`
	Ready string `json:"ready"`
	News  string `json:"news"` // of the status line, when nothing is under the pointer
	Busy  bool   `json:"busy"`
	// Fitting says that it is being looked how the tubes go in.
	Fitting  bool         `json:"fitting"`
	Findings []check.Code `json:"findings"`
	// Version of the plan: it grows with every change, undo and redo.
	Version int    `json:"version"`
	Modal   string `json:"modal"`  // title of the question that is open
	Dialog  bool   `json:"dialog"` // one of Fyne's own questions is open
	Focus   string `json:"focus"`  // what has it: its label or first words; empty: nothing
	Chosen  string `json:"chosen"` // the word in the field to choose in that has the focus
	Undo    string `json:"undo"`   // what undo would take back; empty: nothing
	// Selected is the part, the run or the kind of finding; empty: nothing.
	Selected string                `json:"selected"`
	Cuts     map[string]float64    `json:"cuts"`  // run to cut length, mm
	Parts    map[string][3]float64 `json:"parts"` // part to place, mm
	Boxes    map[string][4]float32 `json:"boxes"` // name to x, y, width, height
}

// paintPause is long enough for Fyne to have laid out and painted what is new:
// before that it cannot say where that stands.
const paintPause = 200 * time.Millisecond

// writeBoxes writes them to the file that was asked for, soon.
func (w *Window) writeBoxes() {
	if w.options.Boxes == "" || w.boxesDue {
		return
	}
	w.boxesDue = true
	w.options.After(paintPause, func() {
		w.boxesDue = false
		w.writeBoxesNow()
	})
}

// watchFocus tells the file when the focus goes elsewhere, of which nobody tells us.
func (w *Window) watchFocus(last fyne.Focusable) {
	now := w.win.Canvas().Focused()
	if now != last {
		w.writeBoxesNow()
	}
	w.options.After(focusPause, func() { w.watchFocus(now) })
}

// focusPause is short against a press of a key and its answer in a test.
const focusPause = 20 * time.Millisecond

// chosen is the word in the field to choose in that has the focus.
func (w *Window) chosen() string {
	if c, ok := w.win.Canvas().Focused().(*choice); ok {
		return c.Selected
	}
	return ""
}

// focusName is what has the focus, in a word that a test can look for.
func (w *Window) focusName() (name string) {
	f := w.win.Canvas().Focused()
	switch f {
	case nil:
		return ""
	case w.board:
		return "the board"
	}
	if name = nameOf(f); name != "" {
		return name
	}
	if n := len(w.modals); n > 0 {
		if name = labelAt(w.modals[n-1].column, f); name != "" {
			return name
		}
	}
	w.named(func(called string, o fyne.CanvasObject) {
		if g, ok := o.(fyne.Focusable); ok && g == f {
			name = called
		}
	})
	return name
}

// labelAt is the label of the field of a form that has the focus.
func labelAt(o fyne.CanvasObject, f fyne.Focusable) string {
	if r, ok := o.(*formRow); ok {
		if g, ok := r.field().(fyne.Focusable); ok && g == f {
			return r.label.text
		}
	}
	for _, k := range heldBy(o) {
		if label := labelAt(k, f); label != "" {
			return label
		}
	}
	return ""
}

func (w *Window) writeBoxesNow() {
	data, err := json.MarshalIndent(w.boxes(), "", " ")
	if err == nil {
		temp := w.options.Boxes + ".new"
		if err = os.WriteFile(temp, data, 0o600); err == nil {
			err = os.Rename(temp, w.options.Boxes)
		}
	}
	if err != nil {
		w.options.Log(err)
	}
}

func (w *Window) boxes() Boxes {
	s := w.snapshot
	b := Boxes{
		Title: titleOf(s.Plan.Name, s.Dirty), Dirty: s.Dirty, Ready: readyOf(s).text, News: w.news, Busy: s.Solving, Version: s.Version,
		Fitting: s.Fitting, Cuts: map[string]float64{}, Parts: map[string][3]float64{}, Boxes: map[string][4]float32{},
	}
	for _, t := range s.List.Tubes {
		b.Cuts[t.Run] = t.Cut.Aim
	}
	for _, f := range s.List.Findings {
		b.Findings = append(b.Findings, f.Code)
	}
	for _, k := range s.Plan.Parts {
		b.Parts[k.Name] = k.At
	}
	if n := len(w.modals); n > 0 {
		b.Modal = w.modals[n-1].title()
	}
	b.Dialog = w.dialog != nil
	b.Undo = s.Undo
	b.Focus, b.Chosen, b.Selected = w.focusName(), w.chosen(), w.selectedPart()+w.selectedRun()
	if i := w.selectedFinding(); i >= 0 && i < len(s.List.Findings) {
		b.Selected = string(s.List.Findings[i].Code)
	}
	w.pointAtParts(b.Boxes)
	w.named(func(name string, o fyne.CanvasObject) { b.Boxes[name] = w.boxOf(o) })
	return b
}

// pointAtParts adds where the middle of each part and each port are on the
// board, as long as nobody has zoomed or panned since all was fitted.
func (w *Window) pointAtParts(boxes map[string][4]float32) {
	at := w.boxOf(w.board)
	wide, high := int(at[2]), int(at[3])
	camera := board.NewCamera(w.board.Look(), w.snapshot.Plan.Case, wide, high)
	camera.Fit(w.board.Scene(), wide, high)
	for _, part := range w.board.Scene().Parts {
		x, y := camera.Project(part.Lo.Add(part.Hi).Mul(0.5))
		boxes["on board "+part.Name] = [4]float32{at[0] + float32(x), at[1] + float32(y), 0, 0}
	}
	for _, port := range w.board.Scene().Ports {
		x, y := camera.Project(port.Frame.At)
		boxes["port "+port.Ref.String()] = [4]float32{at[0] + float32(x), at[1] + float32(y), 0, 0}
	}
}

// boxOf is where an object stands in the window.
func (w *Window) boxOf(o fyne.CanvasObject) [4]float32 {
	at, size := w.app.Driver().AbsolutePositionForObject(o), o.Size()
	return [4]float32{at.X, at.Y, size.Width, size.Height}
}

// named gives the things a test wants to find, with their names.
func (w *Window) named(each func(string, fyne.CanvasObject)) {
	each("board", w.board)
	for i, name := range [...]string{"undo", "redo", "units", "theme", "stop"} {
		each(name, w.header.buttons[i])
	}
	each("ready", w.header.ready)
	each("fade", w.details.under.fade.slider)
	for name, p := range map[string]*panel{
		"parts": w.panels.parts, "details": w.panels.details, "runs": w.panels.runs,
		"findings": w.panels.findings, "rack": w.panels.rack, "buying": w.panels.buying,
	} {
		each(name, p)
	}
	for i, row := range w.parts.rows {
		each("part "+row.name, w.parts.presses[i])
	}
	for axis, name := range [...]string{"x", "y", "z"} {
		each("place "+name, w.details.numbers.entries[axis][0])
		each("turn "+name, w.details.numbers.entries[axis][1])
	}
	for run, c := range w.cards.byRun {
		each("card "+run, c)
		for i, row := range c.rows[min(1, len(c.rows)):] {
			if i < len(c.model.ways) {
				each("way "+run+": "+c.model.ways[i].name, row)
			}
		}
	}
	for _, b := range w.begins {
		each("begin "+b.name, b.row)
	}
	for item, l := range w.buying.lines {
		if l.onHand != nil {
			each("on hand "+item, l.onHand)
		}
	}
	for _, m := range w.modals {
		for i, p := range m.row.presses {
			each("button "+m.buttons[i].text, p)
		}
		for name, p := range m.within {
			each(name, p)
		}
	}
}
