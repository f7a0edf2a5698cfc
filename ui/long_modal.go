package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
)

// longModal is a question with so many rows that they may have to scroll, and that
// grows and shrinks with them.
type longModal struct {
	modal *modal
	body  *pane
	place *fyne.Container // of the body
	width float32
}

// longInset keeps the rows clear of the bar that scrolls them.
const longInset float32 = 6

// openLong shows a long question over the window.
func (w *Window) openLong(title string, width float32, rows []fyne.CanvasObject, buttons ...button) *longModal {
	width = w.wide(width)
	f := &longModal{body: newPane(newColumn(longInset, 12, rows...)), width: width - 2*modalInset}
	f.place = container.NewGridWrap(f.size(w), f.body)
	f.modal = w.showModal(title, width, rowsOf(f.place), buttons...)
	return f
}

// size is as high as the rows are, but no higher than the window lets it.
func (f *longModal) size(w *Window) fyne.Size {
	return fyne.NewSize(f.width, min(w.room(), f.body.body.HeightFor(f.width)))
}

// resize follows rows that have become higher or lower.
func (f *longModal) resize() {
	w := f.modal.window
	f.place.Layout = layout.NewGridWrapLayout(f.size(w))
	f.place.Refresh()
	f.modal.place.Layout = layout.NewGridWrapLayout(f.modal.size())
	f.modal.column.Refresh()
	f.modal.place.Refresh()
	f.modal.pop.Refresh()
	f.body.reflow()
	w.writeBoxes()
}

// oneIf is 1 for yes.
func oneIf(yes bool) int {
	if yes {
		return 1
	}
	return 0
}
