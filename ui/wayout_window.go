package ui

// findWayOut looks for ways out of a finding.
func (w *Window) findWayOut(i int) {
	w.settle()
	if i < 0 || i >= len(w.snapshot.List.Findings) {
		return
	}
	if !w.snapshot.Current() {
		w.tell("Wait until the plan is worked out, then look for ways out.")
		return
	}
	w.pickFinding(i)
	w.session.LookForWayOut(w.snapshot.List.Findings[i])
}

// findSelectedWayOut looks for ways out of the selected finding, else of the gravest.
func (w *Window) findSelectedWayOut() {
	i := w.selectedFinding()
	if i < 0 {
		i = 0
	}
	if i >= len(w.snapshot.List.Findings) {
		w.tell("There is nothing to settle.")
		return
	}
	if f := w.findings.ways[i]; f == nil {
		w.tell("Nothing can be tried against this one: " + w.snapshot.List.Findings[i].Fix)
		return
	}
	w.findWayOut(i)
}

// takeWayOut makes the change of an offer.
func (w *Window) takeWayOut(i int) {
	w.settle()
	offers := w.snapshot.WayOut.Advice.Offers
	if i < 0 || i >= len(offers) {
		return
	}
	o := offers[i]
	w.previewed, w.hover = preview{}, ""
	if err := w.session.TakeWayOut(o); err != nil {
		w.did(err)
		return
	}
	w.tell("Done: " + o.Words + " Undo takes it back.")
}
