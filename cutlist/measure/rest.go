package measure

import (
	"slices"

	"tubewright/route"
)

// Rest lists what no tube rests on now but a plan may use: fittings that fit its
// tubes, ports without a run, its own tubes, in the order of [Things]. things is
// what the tubes do rest on.
func Rest(plan route.Plan, things []Thing) (rest []Thing) {
	add := func(t Thing) {
		if !slices.ContainsFunc(things, func(have Thing) bool { return have.Of == t.Of && have.Name == t.Name }) {
			rest = append(rest, t)
		}
	}
	tubes := tubesOf(plan)
	for _, kind := range order {
		for _, f := range plan.AllFittings() {
			if f.Kind == kind && fitsOne(f, tubes) {
				add(fitting(f))
			}
		}
	}
	for _, part := range plan.PlaceAll() {
		for _, port := range part.Ports {
			add(portThing(plan, port))
		}
	}
	for _, t := range tubes {
		add(tube(t))
	}
	return rest
}

// tubesOf is the tubes a plan names: its own kind, those of its runs, and the ones
// it has changed.
func tubesOf(plan route.Plan) (tubes []route.Tube) {
	add := func(t route.Tube, ok bool) {
		if ok && !slices.ContainsFunc(tubes, func(have route.Tube) bool { return have.Name == t.Name }) {
			tubes = append(tubes, t)
		}
	}
	add(plan.FindTube(plan.Tube))
	for _, r := range plan.Runs {
		add(plan.TubeOf(r))
	}
	for _, t := range plan.Tubes {
		add(t, true)
	}
	return tubes
}

// fitsOne reports whether a fitting holds one of the tubes, or holds none at all.
func fitsOne(f route.Fitting, tubes []route.Tube) bool {
	return f.OD == 0 || slices.ContainsFunc(tubes, func(t route.Tube) bool { return route.SameSize(t.OD, f.OD) })
}
