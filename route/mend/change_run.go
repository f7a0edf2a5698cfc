package mend

import (
	"fmt"
	"slices"

	"tubewright/route"
)

// PickWay takes a way of a run by its name; "" takes the best again.
type PickWay struct{ Run, Way string }

// Apply gives the plan with the way picked.
func (p PickWay) Apply(plan route.Plan) (route.Plan, error) {
	return onRun(plan, p.Run, func(r *route.Run) { r.Pick = p.Way })
}

// Words is "Make run feed another way: one bend.".
func (p PickWay) Words(route.Units) string {
	if p.Way == "" {
		return fmt.Sprintf("Let the best way be taken for run %s again.", p.Run)
	}
	return fmt.Sprintf("Make run %s another way: %s.", p.Run, p.Way)
}

// Kind is "pick-way".
func (PickWay) Kind() string { return "pick-way" }

func (PickWay) work() float64 { return pickWork }

// HandBack lets the program find a run's way again, of any kind and with
// fittings of its choice: what was drawn, picked or prescribed is dropped.
type HandBack struct{ Run string }

// Apply gives the plan with nothing asked of the run but its ports and its tube.
func (h HandBack) Apply(plan route.Plan) (route.Plan, error) {
	return onRun(plan, h.Run, func(r *route.Run) {
		r.Via, r.Way, r.Start, r.End, r.Pick = nil, route.Auto, nil, nil, ""
	})
}

// Words is "Hand run feed back: ...".
func (h HandBack) Words(route.Units) string {
	return fmt.Sprintf("Hand run %s back, so that its way is found afresh: what was drawn, picked or prescribed for it is dropped.", h.Run)
}

// Kind is "hand-back".
func (HandBack) Kind() string { return "hand-back" }

func (HandBack) work() float64 { return handBackWork }

// DropVia takes away the corners a run must pass.
type DropVia struct{ Run string }

// Apply gives the plan without the run's via points.
func (d DropVia) Apply(plan route.Plan) (route.Plan, error) {
	return onRun(plan, d.Run, func(r *route.Run) { r.Via = nil })
}

// Words is "Take away the via points of run feed.".
func (d DropVia) Words(route.Units) string {
	return fmt.Sprintf("Take away the via points of run %s.", d.Run)
}

// Kind is "drop-via".
func (DropVia) Kind() string { return "drop-via" }

func (DropVia) work() float64 { return dropWork }

// UseChain prescribes the fittings on a run's port; nil leaves them to be chosen.
type UseChain struct {
	Run   string
	End   int // From or To
	Chain route.Chain
	On    route.PortRef // for the words
}

// Apply gives the plan with the fittings prescribed.
func (u UseChain) Apply(plan route.Plan) (route.Plan, error) {
	for _, step := range u.Chain {
		if _, ok := plan.FindFitting(step.Fitting); !ok {
			return route.Plan{}, &MissingError{"fitting", step.Fitting}
		}
	}
	return onRun(plan, u.Run, func(r *route.Run) { *chainAt(r, u.End) = slices.Clone(u.Chain) })
}

// Words is "Put an extender-15 and a socket-16 on pump.out, for run feed.".
func (u UseChain) Words(route.Units) string {
	if len(u.Chain) == 0 {
		return fmt.Sprintf("Leave the fittings of run %s on %s to be chosen.", u.Run, u.On)
	}
	var names []string
	for _, step := range u.Chain {
		names = append(names, step.Fitting)
	}
	return fmt.Sprintf("Put %s on %s, for run %s.", list(names), u.On, u.Run)
}

// Kind is "use-chain".
func (UseChain) Kind() string { return "use-chain" }

func (u UseChain) work() float64 {
	if len(u.Chain) == 0 {
		return freeWork
	}
	return chainWork
}

// UseTube makes a run of another tube.
type UseTube struct{ Run, Tube string }

// Apply gives the plan with the run made of the tube.
func (u UseTube) Apply(plan route.Plan) (route.Plan, error) {
	if _, ok := plan.FindTube(u.Tube); !ok {
		return route.Plan{}, &MissingError{"tube", u.Tube}
	}
	return onRun(plan, u.Run, func(r *route.Run) { r.Tube = u.Tube })
}

// Words is "Make run feed of petg-12-10.".
func (u UseTube) Words(route.Units) string { return fmt.Sprintf("Make run %s of %s.", u.Run, u.Tube) }

// Kind is "use-tube".
func (UseTube) Kind() string { return "use-tube" }

func (UseTube) work() float64 { return tubeWork }
