package mend

import (
	"errors"

	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
)

// Steps of work: they stand for time without being one, about a tenth of a
// millisecond each on the machine this was written on.
const (
	lookSteps  = 1   // the parts alone, looked over
	plainSteps = 2   // a run solved
	bendSteps  = 10  // more, for one that may bend
	pairs      = 5   // pairs of fittings that may go before its sockets, to the step
	clashSteps = 300 // a run in a conflict: it was torn up and searched again
	looks      = 45  // states of a search in vain, to the step
)

// try changes, solves and checks a plan. It gives nil when the finding stays, an
// error comes or becomes worse, or a loop comes open.
func (h *hunt) try(c Change) (*Offer, error) {
	plan, err := c.Apply(h.plan)
	if err != nil {
		return nil, nil // not for this plan
	}
	if movesParts(c) && !h.partsStand(plan) {
		return nil, nil
	}
	if ok, err := h.alone(plan); !ok || err != nil {
		return nil, err
	}
	sol, err := h.solved(plan)
	if err != nil {
		return nil, err
	}
	after, err := h.Judge(h.ctx, plan, sol)
	if err != nil {
		return nil, err
	}
	if !settled(h.finding, after) || worse(h.before, after) {
		return nil, nil
	}
	o := &Offer{Change: c, Words: c.Words(h.plan.Units), Plan: plan, Solution: sol}
	o.Settles, o.Brings = gone(h.finding, h.before, after), came(h.before, after)
	o.Cost = (c.work() + dearer(h.sol, sol) + toWarn*float64(len(o.Brings))) / float64(1+len(o.Settles))
	return o, nil
}

// solved solves a plan and counts the work.
func (h *hunt) solved(plan route.Plan) (find.Solution, error) {
	sol, err := h.Solve(h.ctx, plan)
	if err != nil {
		return sol, err
	}
	steps := 0
	for _, s := range sol.Runs {
		steps += h.stepsOf(s.Run) + inVain(s.Problem)
	}
	h.spend(steps)
	return sol, nil
}

// stepsOf is what solving a run costs: chains of fittings are tried in pairs, and
// a run that may bend is searched on a grid too.
func (h *hunt) stepsOf(r route.Run) int {
	if h.kit == 0 {
		for _, f := range h.plan.AllFittings() {
			if f.Kind == route.Extender || f.Kind == route.Offset || f.Kind == route.Elbow {
				h.kit++
			}
		}
	}
	steps := plainSteps + h.kit*h.kit/pairs
	tube, _ := h.plan.TubeOf(r)
	if r.Way != route.Straight && r.Way != route.Drawn && tube.Radius > 0 {
		steps += bendSteps
	}
	return steps
}

// inVain is the work that went into a run without success.
func inVain(problem error) int {
	var none *find.NoWayError
	var clash *find.ConflictError
	switch {
	case errors.As(problem, &none):
		return none.Looked / looks
	case errors.As(problem, &clash):
		return clashSteps
	}
	return 0
}

func movesParts(c Change) bool {
	switch c.(type) {
	case Move, Turn:
		return true
	}
	return false
}

// partsStand looks over the parts alone, which needs no solving: whatever is
// wrong between them stays so whichever way the runs go.
func (h *hunt) partsStand(plan route.Plan) bool {
	h.spend(lookSteps)
	after := partFindings(plan)
	return !worse(h.parts, after) && (!ofParts(h.finding.Code) || settled(h.finding, after))
}

func ofParts(code check.Code) bool {
	return code == check.PartHitsPart || code == check.PartOutsideCase
}

// partFindings are the findings that hang on the parts alone.
func partFindings(plan route.Plan) (list []check.Finding) {
	plan.Runs = nil
	for _, f := range check.Findings(plan, find.Solution{}) {
		if ofParts(f.Code) {
			list = append(list, f)
		}
	}
	return list
}

// alone solves only the runs that the finding is about, where the plan has more:
// what does not help them when the rest is away will not with it.
func (h *hunt) alone(plan route.Plan) (bool, error) {
	few, ok := only(plan, h.concerned())
	if !ok {
		return true, nil
	}
	sol, err := h.solved(few)
	if err != nil {
		return false, err
	}
	return settled(h.finding, check.Findings(few, sol)), nil
}

// concerned names the runs to solve by themselves: of a run without a way that
// run, of a clash the two. Nil where the finding is of another nature.
func (h *hunt) concerned() []string {
	switch h.finding.Code {
	case check.NoWay:
		return h.finding.Runs[:1]
	case check.TubeHitsTube, check.CollarHits, check.TubeHitsPart, check.TubeOutsideCase, check.CannotForm:
		return h.finding.Runs
	}
	return nil
}

// only gives the plan with no other runs than those named; false where that
// would leave out none or all.
func only(plan route.Plan, names []string) (route.Plan, bool) {
	var runs []route.Run
	for _, r := range plan.Runs {
		for _, name := range names {
			if r.Name == name {
				runs = append(runs, r)
			}
		}
	}
	ok := len(runs) > 0 && len(runs) < len(plan.Runs)
	plan.Runs = runs
	return plan, ok
}

// dearer is how much more the runs' ways cost that had one before and have one
// after. What became cheaper is not set against the work.
func dearer(before, after find.Solution) float64 {
	was := map[string]float64{}
	for _, s := range before.Runs {
		if w, ok := s.Way(); ok {
			was[s.Run.Name] = w.Cost
		}
	}
	sum := 0.0
	for _, s := range after.Runs {
		w, ok := s.Way()
		if old, had := was[s.Run.Name]; ok && had {
			sum += w.Cost - old
		}
	}
	return max(0, sum)
}
