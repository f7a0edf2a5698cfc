package ui

import (
	"reflect"

	"fyne.io/fyne/v2"

	"tubewright/cutlist"
)

// rack shows the bars to saw from, with their pieces.
type rack struct {
	*pane
	model rackModel
	said  string
	dark  bool
}

func newRack() *rack { return &rack{pane: newPane(newColumn(10, 3))} }

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
		objects = append(objects, newBarRow(l, b, m.names[i], wide))
	}
	if len(objects) == 0 {
		objects = append(objects, newFlow(empty, smallSize, soft))
	}
	r.body.set(objects...)
	r.reflow()
}

// widest is the width of the widest of some small texts.
func widest(texts []string) (wide float32) {
	for _, t := range texts {
		wide = max(wide, widthOf(t, smallSize, false))
	}
	return wide
}
