package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// radios is a choice of a few, all of them seen: one is on.
type radios struct {
	*column
	icons  []*widget.Icon
	on     int
	chosen func(int)
}

// newRadios shows names under one another, one of them on.
func newRadios(names []string, on int, chosen func(int)) *radios {
	r := &radios{column: newColumn(0, 0), on: on, chosen: chosen}
	rows := make([]*press, len(names))
	for i, name := range names {
		r.icons = append(r.icons, widget.NewIcon(nil))
		rows[i] = newPress(newIconRow(r.icons[i], newFlow(name, textSize, ink)), func() { r.choose(i) })
		rows[i].inset = fyne.NewSize(4, 4)
		r.items = append(r.items, rows[i])
	}
	walkable(rows, nil)
	r.show()
	return r
}

// choose turns one on.
func (r *radios) choose(i int) {
	if i == r.on {
		return
	}
	r.on = i
	r.show()
	r.chosen(i)
}

func (r *radios) show() {
	for i, icon := range r.icons {
		image := theme.RadioButtonIcon()
		if i == r.on {
			image = theme.RadioButtonCheckedIcon()
		}
		icon.SetResource(image)
	}
}
