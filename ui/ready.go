package ui

import "tubewright/route/check"

// tellReady answers a press on the ready line: it goes to the gravest finding,
// or tells what makes the plan a draft.
func (w *Window) tellReady() {
	w.settle()
	s := w.snapshot
	for i, f := range s.List.Findings {
		if f.Severity != check.Note {
			w.pickFinding(i)
			return
		}
	}
	if s.Open && s.List.Draft {
		w.tellDraft()
	}
}
