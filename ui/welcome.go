package ui

import (
	"path/filepath"

	"fyne.io/fyne/v2"
)

// newWelcome is what stands in the board's place while no plan is open: the
// ways to begin.
func (w *Window) newWelcome() *panel {
	w.begins = nil
	add := func(name string, p *press) fyne.CanvasObject {
		w.begins = append(w.begins, beginning{name, p})
		return p
	}
	row := func(text, about string, act func()) fyne.CanvasObject {
		name := newFlow(text, textSize, accent)
		name.bold = true
		return add(text, newPress(newColumn(0, 1, name, newFlow(about, smallSize, soft)), w.acting(act)))
	}
	rows := []fyne.CanvasObject{
		newHeading("Begin with your own"),
		row("Open a plan file", "A text file that ends in .plan.yaml. You can also drop it on the window.", w.askOpen),
		row("New plan", "An empty case, to put parts of the catalogue into.", w.emptyPlan),
	}
	for i, s := range w.starts() {
		if i == 0 {
			rows = append(rows, newHeading("Or begin with a case that has its parts"))
		}
		rows = append(rows, add(s.name, w.startRow(s, thumbSmall, func() { w.begin(s) })))
	}
	for i, path := range w.settings.Recent {
		if i == 0 {
			rows = append(rows, newHeading("Or go on with"))
		}
		rows = append(rows, row(filepath.Base(path), filepath.Dir(path), func() { w.openPath(path) }))
	}
	for i, name := range w.options.Demos {
		if i == 0 {
			rows = append(rows, newHeading("Or look at a demo"))
		}
		rows = append(rows, row(demoTitle(name), "Invented from end to end, and ready to be changed.", func() { w.askDemo(name) }))
	}
	body := newPane(newColumn(16, 6, rows...))
	body.rove(w.beginRows())
	return newPanel("Welcome to Tubewright", nil, body)
}

// beginning is one of the ways to begin.
type beginning struct {
	name string
	row  *press
}

func (w *Window) beginRows() []*press {
	rows := make([]*press, len(w.begins))
	for i, b := range w.begins {
		rows[i] = b.row
	}
	return rows
}
