package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tubewright/ui/session"
)

// page is a question that stays open while its values are changed: it follows
// the plan. Its body scrolls when it is higher than the window lets it.
type page struct {
	window *Window
	modal  *modal
	body   flowing
	forms  [2]*form               // left and right
	follow func(session.Snapshot) // brings the page up to the plan
}

// flowing is what a page shows: rows that scroll, in one column or more.
type flowing interface {
	tall
	reflow() // lays them out again
	reveal(o fyne.CanvasObject)
}

// openPage shows a page of a width around a body. It is closed by its button,
// Enter or Esc; further buttons stand before that one.
func (w *Window) openPage(title string, width float32, body flowing, follow func(session.Snapshot), buttons ...button) *page {
	width = w.wide(width)
	p := &page{window: w, body: body, follow: follow}
	inner := width - 2*modalInset
	body.Resize(fyne.NewSize(inner, 10))
	follow(w.snapshot)
	high := min(w.room(), max(pageLeast, body.HeightFor(inner)+pageFoot))
	buttons = append(buttons, button{text: "Close", strong: true, cancel: true})
	p.modal = w.showModal(title, width, rowsOf(container.NewGridWrap(fyne.NewSize(inner, high), body)), buttons...)
	p.modal.page = p
	return p
}

const (
	pageLeast = 120
	pageFoot  = 8 // under the last row
)

// setTitle gives the page another title; before it is shown there is nothing to do.
func (p *page) setTitle(text string) {
	if p != nil {
		p.modal.head.set(text, ink)
	}
}

// following brings every open page up to the plan.
func (w *Window) following() {
	for _, m := range w.modals {
		if m.page != nil {
			m.page.follow(w.snapshot)
		}
	}
}

// reflow lays the page out again; before it is shown there is nothing to do.
func (p *page) reflow() {
	if p != nil {
		p.body.reflow()
	}
}

// hold makes the page follow the height of its forms.
func (p *page) hold(left, right *form) {
	p.forms = [2]*form{left, right}
	for _, f := range p.forms {
		f.grown, f.reveal = p.reflow, p.body.reveal
	}
}
