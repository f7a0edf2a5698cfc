package ui

import (
	"slices"

	"tubewright/cutlist"
	"tubewright/route/check"
	"tubewright/route/find"
	"tubewright/ui/board"
)

// preview is a way of a run, or a way out of a finding, that is shown but not
// taken. The zero value is none.
type preview struct {
	run   string
	way   int // index into the ways found
	offer int // number of the way out, from 1
}

// previewWay shows a way of a run on the board while the pointer or the focus
// is on it; on is false when it leaves.
func (w *Window) previewWay(run string, way int, on bool) {
	w.previewThat(preview{run: run, way: way}, on, "Shown is another way for "+run+". Click it, or press Enter, to take it.")
}

// previewOffer shows a plan with a way out taken, while the pointer or the
// focus is on it.
func (w *Window) previewOffer(offer int, on bool) {
	w.previewThat(preview{offer: offer + 1}, on, "Shown is the plan with this change. Click it, or press Enter, to make it.")
}

func (w *Window) previewThat(want preview, on bool, text string) {
	switch {
	case on:
		w.previewed = want
		w.hovered(text)
	case w.previewed == want:
		w.previewed = preview{}
		w.hovered("")
	default:
		return
	}
	w.showBoard()
}

// scene is what the board shows: the plan and its answer, with the previewed
// way in the place of the one taken.
func (w *Window) scene() board.Scene {
	s := w.snapshot
	plan := s.Plan
	plan.Units = s.Units
	sol, l := s.Solution, s.List
	if i := w.previewed.offer - 1; i >= 0 && i < len(s.WayOut.Advice.Offers) {
		o := s.WayOut.Advice.Offers[i]
		o.Plan.Units = s.Units
		return w.withPictures(board.NewScene(o.Plan, cutlist.List{}, o.Solution))
	}
	if p := w.previewed; p.run != "" {
		sol, l = withWay(sol, p), without(l, p.run)
	}
	return w.withPictures(board.NewScene(plan, l, sol))
}

// withPictures lays the plan's pictures under a scene.
func (w *Window) withPictures(s board.Scene) board.Scene {
	s.Under, _ = w.underlays()
	return s
}

// withWay is an answer in which a run takes another of its ways.
func withWay(sol find.Solution, p preview) find.Solution {
	sol.Runs = slices.Clone(sol.Runs)
	for i, r := range sol.Runs {
		if r.Run.Name == p.run && p.way < len(r.Ways) {
			sol.Runs[i].Chosen = p.way
		}
	}
	return sol
}

// without is a list whose findings about a run have no place: they are about
// the way that is taken.
func without(l cutlist.List, run string) cutlist.List {
	l.Findings = slices.Clone(l.Findings)
	for i, f := range l.Findings {
		l.Findings[i].Placed = f.Placed && !about(f, run)
	}
	return l
}

func about(f check.Finding, run string) bool { return slices.Contains(f.Runs, run) }
