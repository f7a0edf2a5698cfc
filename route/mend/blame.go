package mend

import (
	"errors"
	"fmt"

	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
)

// blame finds out what is in the way. Most findings name it; of a run that has
// no way and nothing nearly one, things are left out one by one until it has.
func (h *hunt) blame(remedy) error {
	f := h.finding
	if f.Code != check.NoWay {
		h.obstacle = Obstacle{Runs: f.Runs, Parts: f.Parts}
		return nil
	}
	h.obstacle = Obstacle{Runs: f.Runs[min(1, len(f.Runs)):], Parts: f.Parts}
	if len(f.Runs) != 1 || len(f.Parts) > 0 || !h.dumb() {
		return nil
	}
	return h.leaveOut()
}

// dumb reports whether the search could not say what came nearest.
func (h *hunt) dumb() bool {
	s, _ := h.solvedRun(h.finding.Runs[0])
	var none *find.NoWayError
	return errors.As(s.Problem, &none) && none.Cause == nil && none.Nearest == ""
}

// leaveOut looks for one part, or the case, without which the run has a way.
func (h *hunt) leaveOut() error {
	name := h.finding.Runs[0]
	run, ok := h.plan.FindRun(name)
	if !ok {
		return nil
	}
	bare := h.plan
	bare.Runs = []route.Run{run}
	for i, part := range h.plan.Parts {
		without := bare.Clone()
		without.Parts[i] = ghost(h.plan.Whole(part))
		if free, err := h.frees(without); free || err != nil {
			h.obstacle = Obstacle{Parts: []string{part.Name}, What: fmt.Sprintf("Without part %s, run %s would have a way.", part.Name, name)}
			return err
		}
	}
	bare.Case = route.Plan{}.Case
	free, err := h.frees(bare)
	if free {
		h.obstacle.What = fmt.Sprintf("In a larger case run %s would have a way.", name)
	}
	return err
}

// ghost is a part with its ports and no substance.
func ghost(k route.Part) route.Part {
	k.Kind, k.Solids = "", nil
	return k
}

// frees reports whether all runs of a plan have a way.
func (h *hunt) frees(plan route.Plan) (bool, error) {
	if h.spent() {
		return false, nil
	}
	sol, err := h.solved(plan)
	if err != nil {
		return false, err
	}
	for _, s := range sol.Runs {
		if _, ok := s.Way(); !ok {
			return false, nil
		}
	}
	return true, nil
}
