package ui

import (
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/route/check"
	"tubewright/ui/board"
)

// pick selects a thing everywhere: on the board, in the lists, on the cards.
func (w *Window) pick(t board.Target) {
	w.settle()
	w.selected = t
	if t.Kind == board.OnFinding && t.Finding < len(w.snapshot.List.Findings) {
		w.finding = w.snapshot.List.Findings[t.Finding]
	}
	w.board.SetSelection(t)
	w.showPanels()
}

// shownAround is how much of the case is shown around a finding, mm: enough to
// see what it is about.
const shownAround = 70

// pickFinding selects a finding and shows its place.
func (w *Window) pickFinding(i int) {
	w.pick(board.FindingTarget(i))
	if w.finding.Placed {
		at, around := mgl64.Vec3(w.finding.At), mgl64.Vec3{shownAround, shownAround, shownAround}
		w.board.ShowBox(at.Sub(around), at.Add(around))
	}
}

func (w *Window) selectedPart() string {
	if w.selected.Kind == board.OnPart {
		return w.selected.Part
	}
	return ""
}

func (w *Window) selectedRun() string {
	if w.selected.Kind == board.OnRun {
		return w.selected.Run
	}
	return ""
}

func (w *Window) selectedFinding() int {
	if w.selected.Kind == board.OnFinding {
		return w.selected.Finding
	}
	return -1
}

// keepSelected finds the selected finding again in a new answer and a part by its
// new name, and lets go of what is not in the plan any more; before is the plan
// shown until now.
func (w *Window) keepSelected(before route.Plan) {
	s := w.snapshot
	switch w.selected.Kind {
	case board.OnFinding:
		w.selected = findAgain(w.finding, s.List.Findings)
	case board.OnPart:
		if _, ok := s.Plan.FindPart(w.selected.Part); !ok {
			w.selected = renamed(before, s.Plan, w.selected.Part)
		}
	case board.OnRun:
		if _, ok := s.Plan.FindRun(w.selected.Run); !ok {
			w.selected = board.Target{}
		}
	case board.OnPort:
		if _, ok := s.Plan.FindPort(w.selected.Port); !ok {
			w.selected = board.Target{}
		}
	case board.Nothing:
	}
}

// renamed is the part that has taken the place of one in the list of parts under
// a name that nothing had before; nothing where there is none.
func renamed(before, now route.Plan, name string) board.Target {
	i := slices.IndexFunc(before.Parts, func(k route.Part) bool { return k.Name == name })
	if i < 0 || len(before.Parts) != len(now.Parts) {
		return board.Target{}
	}
	if _, old := before.FindPart(now.Parts[i].Name); old {
		return board.Target{}
	}
	return board.PartTarget(now.Parts[i].Name)
}

// findAgain looks for the finding of the same kind about the same things.
func findAgain(old check.Finding, all []check.Finding) board.Target {
	i := slices.IndexFunc(all, func(f check.Finding) bool {
		return f.Code == old.Code && slices.Equal(f.Runs, old.Runs) && slices.Equal(f.Parts, old.Parts)
	})
	if i < 0 {
		return board.Target{}
	}
	return board.FindingTarget(i)
}
