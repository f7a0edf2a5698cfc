package ui

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// nextPanel gives the focus to the next panel of the window that can take it,
// after the one that has it; with Shift held to the one before.
func (w *Window) nextPanel() {
	by := 1
	if w.shiftHeld() {
		by = -1
	}
	stops := w.stops()
	focused := w.win.Canvas().Focused()
	at := slices.IndexFunc(stops, func(s []fyne.Focusable) bool { return slices.Contains(s, focused) })
	if at < 0 && by < 0 {
		at = 0
	}
	for i := range stops {
		n := len(stops)
		if stop := stops[(at+by*(1+i)+2*n)%n]; len(stop) > 0 {
			w.win.Canvas().Focus(entrance(stop))
			return
		}
	}
}

// shiftHeld reports whether a Shift key is held now.
func (w *Window) shiftHeld() bool {
	d, ok := w.app.Driver().(desktop.Driver)
	return ok && d.CurrentKeyModifiers()&fyne.KeyModifierShift != 0
}

// stops lists what can have the focus, panel by panel.
func (w *Window) stops() [][]fyne.Focusable {
	if !w.snapshot.Open {
		return [][]fyne.Focusable{focusables(w.beginRows())}
	}
	return [][]fyne.Focusable{
		focusablesIn(w.parts.pane), focusablesIn(w.details.pane),
		{w.board},
		focusablesIn(w.cards.pane), focusablesIn(w.findings.pane),
		{w.rack.readPane},
		focusablesIn(w.buying.pane),
	}
}

func focusables(rows []*press) []fyne.Focusable {
	all := make([]fyne.Focusable, len(rows))
	for i, p := range rows {
		all[i] = p
	}
	return all
}

// entrance is where the focus enters a panel: at the chosen row, else the first.
func entrance(stop []fyne.Focusable) fyne.Focusable {
	for _, f := range stop {
		if p, ok := f.(*press); ok && p.chosen {
			return p
		}
	}
	return stop[0]
}

// keeping makes a change of a panel without losing the focus: where nothing in the
// panel can have it any more, the board gets it.
func (w *Window) keeping(panel fyne.CanvasObject, change func()) {
	keepFocus(w.win.Canvas(), panel, change, w.focusBoard)
}

// focusBoard gives the focus to the board, where it can be seen.
func (w *Window) focusBoard() {
	if w.snapshot.Open && len(w.modals) == 0 {
		w.win.Canvas().Focus(w.board)
		return
	}
	w.win.Canvas().Unfocus()
}

// focusSoon gives the focus to a field of a question that a click on the board has
// opened: Fyne takes it away again when it has dealt with the click.
func (w *Window) focusSoon(m *modal, f fyne.Focusable) {
	w.win.Canvas().Focus(f)
	if w.options.After == nil {
		return
	}
	w.options.After(0, func() {
		if n := len(w.modals); n > 0 && w.modals[n-1] == m {
			w.win.Canvas().Focus(f)
		}
	})
}

// focusAgain gives the focus back to what had it before a question was asked, if
// it can still be seen.
func (w *Window) focusAgain(f fyne.Focusable) {
	if f == nil {
		return
	}
	for _, place := range w.places() {
		if slices.Contains(focusablesIn(place), f) {
			w.win.Canvas().Focus(f)
			return
		}
	}
	if len(w.modals) == 0 {
		w.focusBoard()
	}
}

// places are what the things that can have the focus now stand in.
func (w *Window) places() []fyne.CanvasObject {
	if n := len(w.modals); n > 0 {
		return []fyne.CanvasObject{w.modals[n-1].column}
	}
	places := []fyne.CanvasObject{w.board, w.rack.readPane, w.parts.pane, w.details.pane, w.cards.pane, w.findings.pane, w.buying.pane, w.welcome, w.header.ready}
	for _, b := range w.header.buttons {
		places = append(places, b)
	}
	for _, p := range append(w.steps.presses, w.steps.shut) {
		places = append(places, p)
	}
	return places
}

// toNumbers gives the focus to the numbers of the selected part.
func (w *Window) toNumbers() {
	if w.selectedPart() == "" {
		w.tell("Select a part first: its numbers are typed at the left.")
		return
	}
	w.win.Canvas().Focus(w.details.numbers.entries[0][0])
}

// stepFinding selects the next finding, or the one before, and shows its place.
func (w *Window) stepFinding(by int) {
	n := len(w.snapshot.List.Findings)
	if n == 0 {
		w.tell("There is nothing to settle.")
		return
	}
	at := w.selectedFinding()
	if at < 0 && by < 0 {
		at = n
	}
	w.pickFinding((at + by + n) % n)
}
