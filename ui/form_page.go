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
	body   *pane
	forms  [2]*form               // left and right
	follow func(session.Snapshot) // brings the page up to the plan
}

// openPage shows a page of a width around a body. It is closed by its button,
// Enter or Esc; further buttons stand before that one.
func (w *Window) openPage(title string, width float32, body *column, follow func(session.Snapshot), buttons ...button) *page {
	p := &page{window: w, body: newPane(body), follow: follow}
	inner := width - 28
	body.Resize(fyne.NewSize(inner-pageScroll, 10))
	follow(w.snapshot)
	room := w.win.Canvas().Size().Height - 130
	high := min(room, max(pageLeast, body.HeightFor(inner-pageScroll)+8))
	buttons = append(buttons, button{text: "Close", strong: true, cancel: true})
	p.modal = w.openModal(title, width, rowsOf(container.NewGridWrap(fyne.NewSize(inner, high), p.body)), buttons...)
	p.modal.page = p
	return p
}

const (
	pageScroll = 14 // what the bar at the side takes
	pageLeast  = 120
)

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
	left.grown, right.grown = p.reflow, p.reflow
}
