package mend

import (
	"fmt"
	"slices"

	"tubewright/route"
)

// Change is one edit to a plan, as a value. Applying it gives a new plan; the
// old one is never written to. The kinds are [Move], [Turn], [Former],
// [SwapPorts], [UsePort], [PickWay], [HandBack], [DropVia], [UseChain],
// [UseTube], [AddRun], [AddStock], [LiftLimit] and [Clearance].
type Change interface {
	// Apply gives the plan with the change made. The error is a *[MissingError]
	// when the plan lacks what the change is about.
	Apply(plan route.Plan) (route.Plan, error)
	// Words is the change as an order to the person, with its full stop.
	Words(units route.Units) string
	// Kind names the kind of change, the same for ever: "move".
	Kind() string
	// work is what making it costs the person, in mm of tube; see cost.go.
	work() float64
}

// MissingError says that a plan lacks what a change is about.
type MissingError struct{ What, Name string } // "part", "run", "port", "fitting", "tube", "stock"

func (e *MissingError) Error() string {
	return fmt.Sprintf("the plan has no %s %q; the change was worked out for another plan: look for ways out again", e.What, e.Name)
}

// The two ends of a run.
const (
	From = 0
	To   = 1
)

// onRun gives the plan with one run changed.
func onRun(plan route.Plan, name string, change func(*route.Run)) (route.Plan, error) {
	i := slices.IndexFunc(plan.Runs, func(r route.Run) bool { return r.Name == name })
	if i < 0 {
		return route.Plan{}, &MissingError{"run", name}
	}
	plan = plan.Clone()
	change(&plan.Runs[i])
	return plan, nil
}

// onPart gives the plan with one part changed.
func onPart(plan route.Plan, name string, change func(*route.Part)) (route.Plan, error) {
	i := slices.IndexFunc(plan.Parts, func(k route.Part) bool { return k.Name == name })
	if i < 0 {
		return route.Plan{}, &MissingError{"part", name}
	}
	plan = plan.Clone()
	change(&plan.Parts[i])
	return plan, nil
}

// portAt is the port at an end of a run.
func portAt(r *route.Run, end int) *route.PortRef {
	if end == From {
		return &r.From
	}
	return &r.To
}

// chainAt is what a run prescribes at an end.
func chainAt(r *route.Run, end int) *route.Chain {
	if end == From {
		return &r.Start
	}
	return &r.End
}
