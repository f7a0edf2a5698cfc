package ui

import (
	"reflect"

	"fyne.io/fyne/v2"

	"tubewright/cutlist"
)

// rack shows the bars to saw from, with their pieces.
type rack struct {
	*readPane
	model rackModel
	said  string
	dark  bool
	rows  []*barRow // as many as were ever needed

	onHover func(string)
}

// newRack makes the rack; onHover is told the pieces of the bar under the pointer, whose
// names may not fit.
func newRack(onHover func(string)) *rack {
	return &rack{readPane: newReadPane(newColumn(10, 3)), onHover: onHover}
}

// show changes the bars; empty is what to say when there are none.
func (r *rack) show(l cutlist.List, m rackModel, empty string) {
	if r.dark == isDark() && r.said == empty && reflect.DeepEqual(r.model, m) {
		return
	}
	r.model, r.said, r.dark = m, empty, isDark()
	var objects []fyne.CanvasObject
	for _, line := range m.proof {
		objects = append(objects, newFlow(line, smallSize, soft))
	}
	wide := widest(m.names)
	for i, b := range m.bars {
		objects = append(objects, r.row(i, l, b, m.names[i], wide))
	}
	if len(objects) == 0 {
		objects = append(objects, newFlow(empty, smallSize, soft))
	}
	r.body.set(objects...)
	r.reflow()
}

// row is the row of a bar. Rows are used again: Fyne keeps the picture of one
// that is gone for a minute, and a drag changes the bars nine times a second.
func (r *rack) row(i int, l cutlist.List, b cutlist.Bar, name string, wide float32) *barRow {
	for len(r.rows) <= i {
		r.rows = append(r.rows, newBarRow(r.onHover))
	}
	r.rows[i].show(l, b, name, wide)
	return r.rows[i]
}

// widest is the width of the widest of some small texts.
func widest(texts []string) (wide float32) {
	for _, t := range texts {
		wide = max(wide, widthOf(t, smallSize, false))
	}
	return wide
}
