package ui

import (
	"reflect"

	"fyne.io/fyne/v2"
)

// findings is the list of what is wrong or wants a look.
type findings struct {
	*pane
	groups   []findingGroup
	presses  map[int]*press
	rows     []*press // the same, from the top
	said     string   // instead of findings
	dark     bool
	onSelect func(index int)
}

func newFindings(onSelect func(int)) *findings {
	return &findings{pane: newPane(newColumn(4, 2)), onSelect: onSelect, presses: map[int]*press{}}
}

// show changes the list; empty is what to say when there is none.
func (f *findings) show(groups []findingGroup, empty string, selected int) {
	if !reflect.DeepEqual(groups, f.groups) || empty != f.said || f.dark != isDark() {
		f.groups, f.said, f.dark = groups, empty, isDark()
		f.fill()
	}
	for i, p := range f.presses {
		if i == selected && !p.chosen {
			p.choose(true)
			f.reveal(p)
		}
		p.choose(i == selected)
	}
}

func (f *findings) fill() {
	clear(f.presses)
	f.rows = nil
	var objects []fyne.CanvasObject
	for _, g := range f.groups {
		title := newFlow(g.title, smallSize, inkOf(g.severity))
		title.bold = true
		objects = append(objects, newInset(title))
		for _, m := range g.findings {
			objects = append(objects, f.row(m))
		}
	}
	if len(objects) == 0 {
		objects = append(objects, newInset(newFlow(f.said, smallSize, soft)))
	}
	f.body.set(objects...)
	f.rove(f.rows)
	f.reflow()
}

func (f *findings) row(m findingModel) fyne.CanvasObject {
	what := newFlow(m.what, textSize, ink)
	p := newPress(newColumn(0, 1, what, newFlow(dotted(m.measure, m.fix), smallSize, soft)), func() { f.onSelect(m.index) })
	p.inset = fyne.NewSize(10, 4)
	f.presses[m.index], f.rows = p, append(f.rows, p)
	return p
}
