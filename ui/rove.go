package ui

import "fyne.io/fyne/v2"

// rove lets the Up and Down keys walk through rows of a list, and brings the
// one with the focus into view.
func (p *pane) rove(rows []*press) {
	for i, row := range rows {
		row.onFocus = func() { p.reveal(row) }
		row.onKey = func(name fyne.KeyName) bool {
			to := i + keyStep(name)
			if to == i {
				return false
			}
			if c := canvasOf(row); c != nil && to >= 0 && to < len(rows) {
				c.Focus(rows[to])
			}
			return true
		}
	}
}

// keyStep is how many rows a key goes down a list.
func keyStep(name fyne.KeyName) int {
	switch name {
	case fyne.KeyUp:
		return -1
	case fyne.KeyDown:
		return 1
	}
	return 0
}
