package ui

import "tubewright/ui/session"

// Widths of pages with forms, in Fyne's pixels.
const (
	twoForms float32 = 860
	formGap  float32 = 28
)

// askSettings shows the plan's own values to be changed.
func (w *Window) askSettings() {
	w.settle()
	left, right := newForm(), newForm()
	body := newPane(newColumn(8, 0, newBeside(formGap, left.column, right.column)))
	var p *page
	p = w.openPage("Plan and workshop", twoForms, body, func(s session.Snapshot) {
		e := newEditor(s, w.session.Put, w.did)
		l, r := e.planForms()
		changed := left.show(l)
		if right.show(r) || changed {
			p.reflow()
		}
	})
	p.hold(left, right)
}
