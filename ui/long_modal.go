package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"
)

// longModal is a question with so many rows that they may have to scroll, and that
// grows and shrinks with them.
type longModal struct {
	modal *modal
	body  *pane
	place *fyne.Container // of the body
	width float32
}

// longChrome is the room a long question leaves above and below its rows, for title,
// buttons and air, in Fyne's pixels.
const longChrome float32 = 130

// longInset keeps the rows clear of the bar that scrolls them.
const longInset float32 = 6

// openLong shows a long question over the window.
func (w *Window) openLong(title string, width float32, rows []fyne.CanvasObject, buttons ...button) *longModal {
	width = min(width, w.win.Canvas().Size().Width-30)
	f := &longModal{body: newPane(newColumn(longInset, 12, rows...)), width: width - 28}
	f.place = container.NewGridWrap(f.size(w), f.body)
	f.modal = w.openModal(title, width, rowsOf(f.place), buttons...)
	return f
}

// size is as high as the rows are, but no higher than the window lets it.
func (f *longModal) size(w *Window) fyne.Size {
	most := max(160, w.win.Canvas().Size().Height-longChrome)
	return fyne.NewSize(f.width, min(most, f.body.body.HeightFor(f.width)))
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

// radios is a choice of two.
func radios(names []string, second bool, chosen func(second bool)) *widget.RadioGroup {
	g := widget.NewRadioGroup(names, nil)
	g.Required, g.Selected = true, names[0]
	if second {
		g.Selected = names[1]
	}
	g.OnChanged = func(name string) { chosen(name == names[1]) }
	return g
}
