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
	foot     *flow    // under them: what is still being looked at
	dark     bool
	onSelect func(index int)
	ways     map[int]*wayOut // under each finding that there are changes to try against
	do       wayOutActions
}

func newFindings(onSelect func(int), do wayOutActions) *findings {
	return &findings{
		pane: newPane(newColumn(4, 2)), foot: newFlow("", smallSize, soft),
		onSelect: onSelect, presses: map[int]*press{}, ways: map[int]*wayOut{}, do: do,
	}
}

// show changes the list; empty is what to say when there is none, foot what is
// still being looked at.
func (f *findings) show(groups []findingGroup, empty, foot string, selected int, way wayOutModel) {
	if f.foot.set(foot, soft) {
		f.reflow()
	}
	if !reflect.DeepEqual(groups, f.groups) || empty != f.said || f.dark != isDark() {
		f.groups, f.said, f.dark = groups, empty, isDark()
		f.fill()
	}
	f.showWays(way)
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
	clear(f.ways)
	var objects []fyne.CanvasObject
	for _, g := range f.groups {
		title := newFlow(g.title, smallSize, inkOf(g.severity))
		title.bold = true
		objects = append(objects, newInset(title))
		for _, m := range g.findings {
			objects = append(objects, f.row(m))
			if m.mends {
				f.ways[m.index] = newWayOut(f.do)
				objects = append(objects, f.ways[m.index])
			}
		}
	}
	if len(objects) == 0 {
		objects = append(objects, newInset(newFlow(f.said, smallSize, soft)))
	}
	objects = append(objects, newIndent(6, 3, f.foot))
	f.body.set(objects...)
	f.reflow()
}

// showWays brings what stands under the findings up to the search for ways out.
func (f *findings) showWays(way wayOutModel) {
	changed := len(f.ways) == 0
	for i, w := range f.ways {
		changed = w.show(i, way) || changed
	}
	if !changed {
		return
	}
	f.collect()
	f.rove(f.rows)
	f.reflow()
	if w := f.ways[way.index]; w != nil {
		f.reveal(w)
	}
}

// collect lists what can be pressed, from the top.
func (f *findings) collect() {
	f.rows = nil
	for _, g := range f.groups {
		for _, m := range g.findings {
			f.rows = append(f.rows, f.presses[m.index])
			if w := f.ways[m.index]; w != nil {
				f.rows = append(f.rows, w.rows...)
			}
		}
	}
}

func (f *findings) row(m findingModel) fyne.CanvasObject {
	what := newFlow(m.what, textSize, ink)
	p := newPress(newColumn(0, 1, what, newFlow(dotted(againWords(m.again), m.measure, m.fix), smallSize, soft)), func() { f.onSelect(m.index) })
	p.inset = fyne.NewSize(10, 4)
	f.presses[m.index] = p
	return p
}

// againWords marks a finding of the plan before.
func againWords(yes bool) string {
	if yes {
		return "being looked at again"
	}
	return ""
}
