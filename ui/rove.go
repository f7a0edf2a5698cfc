package ui

import "fyne.io/fyne/v2"

// rove lets the Up and Down keys walk through rows of a list, Page Up and Page Down
// scroll it, and brings the one with the focus into view.
func (p *pane) rove(rows []*press) {
	for i, row := range rows {
		row.onFocus = func() { p.reveal(row) }
		row.onKey = func(name fyne.KeyName) bool {
			if p.pageBy(name) {
				return true
			}
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

// removable lets Delete on the row of what is selected remove it.
func removable(rows []*press, remove func()) {
	for _, row := range rows {
		other := row.onKey
		row.onKey = func(name fyne.KeyName) bool {
			if remove != nil && row.chosen && (name == fyne.KeyDelete || name == fyne.KeyBackspace) {
				remove()
				return true
			}
			return other != nil && other(name)
		}
	}
}

// pageBy scrolls by a page, if that is what a key asks.
func (p *pane) pageBy(name fyne.KeyName) bool {
	return (name == fyne.KeyPageUp || name == fyne.KeyPageDown) && p.scrollBy(name)
}

// shows brings what has the focus into view, and lets Page Up and Page Down scroll.
func (p *pane) shows(presses []*press, entries ...*numberEntry) {
	for _, one := range presses {
		one.onFocus = func() { p.reveal(one) }
		one.onKey = p.pageBy
	}
	for _, one := range entries {
		one.onFocus = func() { p.reveal(one) }
		one.onPage = func(name fyne.KeyName) { p.pageBy(name) }
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
