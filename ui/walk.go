package ui

import (
	"slices"

	"fyne.io/fyne/v2"
)

// nextPanel gives the focus to the next panel of the window that can take it,
// after the one that has it.
func (w *Window) nextPanel() {
	stops := w.stops()
	focused := w.win.Canvas().Focused()
	at := slices.IndexFunc(stops, func(s []fyne.Focusable) bool { return slices.Contains(s, focused) })
	for i := range stops {
		if stop := stops[(at+1+i)%len(stops)]; len(stop) > 0 {
			w.win.Canvas().Focus(entrance(stop))
			return
		}
	}
}

// stops lists what can have the focus, panel by panel.
func (w *Window) stops() [][]fyne.Focusable {
	if !w.snapshot.Open {
		return [][]fyne.Focusable{focusables(w.beginRows())}
	}
	stops := [][]fyne.Focusable{focusables(w.parts.presses)}
	if w.details.model.part != "" {
		var fields []fyne.Focusable
		for i := range 2 {
			for axis := range 3 {
				fields = append(fields, w.details.numbers.entries[axis][i])
			}
		}
		stops = append(stops, fields)
	}
	stops = append(stops, []fyne.Focusable{w.board}, focusables(w.cards.presses()), focusables(w.findings.rows))
	var counts []fyne.Focusable
	for _, item := range w.buying.items {
		if e := w.buying.lines[item].onHand; e != nil {
			counts = append(counts, e)
		}
	}
	return append(stops, counts)
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
