package ui

import (
	"slices"

	"fyne.io/fyne/v2"
)

// parts is the list of the plan's parts.
type parts struct {
	*pane
	rows     []partRow
	presses  []*press
	selected string
	dark     bool
	filled   bool
	onSelect func(part string)
	onRemove func() // of the selected part; nil: Delete does nothing
}

func newParts(onSelect func(string)) *parts {
	return &parts{pane: newPane(newColumn(4, 1)), onSelect: onSelect}
}

// show changes the list and what is selected in it.
func (p *parts) show(rows []partRow, selected string) {
	if !slices.Equal(rows, p.rows) || p.dark != isDark() || !p.filled {
		p.rows, p.dark, p.filled = rows, isDark(), true
		p.fill()
	}
	moved := p.selected != selected
	p.selected = selected
	for i, row := range p.rows {
		p.presses[i].choose(row.name == selected)
		if moved && row.name == selected {
			p.reveal(p.presses[i])
		}
	}
}

func (p *parts) fill() {
	p.presses = nil
	var objects []fyne.CanvasObject
	for _, row := range p.rows {
		name := newFlow(row.name, textSize, ink)
		press := newPress(newColumn(0, 0, name, newFlow(row.facts, smallSize, soft)), func() { p.onSelect(row.name) })
		press.inset = fyne.NewSize(8, 3)
		p.presses = append(p.presses, press)
		objects = append(objects, press)
	}
	if len(objects) == 0 {
		objects = append(objects, newInset(newFlow("No parts yet.", smallSize, soft)))
	}
	p.body.set(objects...)
	p.rove(p.presses)
	removable(p.presses, p.onRemove)
	p.reflow()
}

// newInset keeps a text off the sides of a list, in line with its rows.
func newInset(o fyne.CanvasObject) *column { return newColumn(6, 0, o) }
