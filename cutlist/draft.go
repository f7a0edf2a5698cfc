package cutlist

import (
	"tubewright/cutlist/measure"
	"tubewright/route"
	"tubewright/route/find"
)

// measures lists what of the numbers the tubes rest on is only typical, in the
// order in which one measures it.
func measures(plan route.Plan, tubes []Tube) []measure.Thing {
	ways := make([]find.Way, len(tubes))
	for i, t := range tubes {
		ways[i] = t.Way
	}
	return measure.ToMeasure(measure.Things(plan, ways))
}

// reasons tells each thing to measure in a line.
func reasons(things []measure.Thing, tubes []Tube) (list []Reason) {
	for _, t := range things {
		r := Reason{Runs: t.Runs}
		switch t.Of {
		case measure.Fitting:
			r.What, r.How = toMeasure(t.Kind)
		case measure.Tube:
			r.What, r.How = toMeasureTube(kindOf(tubes, t.Name))
		case measure.Port, measure.Place:
			r.What, r.How = "place and facing", "With the part fitted, measure the centre of the port's face from the case's lower left far inner corner "+
				"along x, y and z, and see with a square which way it faces."
		}
		r.What = t.Name + ": " + r.What
		list = append(list, r)
	}
	return list
}

func kindOf(tubes []Tube, name string) route.Tube {
	for _, t := range tubes {
		if t.Way.Tube.Name == name {
			return t.Way.Tube
		}
	}
	return route.Tube{}
}

func toMeasureTube(t route.Tube) (what, how string) {
	if t.Radius == 0 {
		return "outside and inside diameter",
			"Measure both diameters with a caliper at a freshly cut end, twice at right angles."
	}
	if len(t.TestBends) > 0 {
		return "diameters and least straights",
			"Measure both diameters with a caliper, and see on a scrap the shortest straight the former and your grip allow."
	}
	return "diameters, radius, springback and least straights",
		"Bend a test piece through 90° on the former in use: measure its diameters, the radius to the centreline, " +
			"how far it opens when cold, and the shortest straight the former and your grip allow."
}

// toMeasure says of each kind of fitting what its numbers are and how to get them.
func toMeasure(kind route.FittingKind) (what, how string) {
	switch kind {
	case route.Socket:
		return "stop, insertion and collar",
			"Push a squared scrap of tube fully home, mark it at the collar, pull it out and measure the depth; " +
				"with a caliper measure the collar, and from the port's face to where the tube's end rests."
	case route.Offset:
		return "length and sideways",
			"Screw it in until its seal seats; measure from the port's face to its outer face, " +
				"and how far the outlet's centre stands aside from the inlet's."
	case route.Elbow:
		return "legs and turn",
			"Screw it in until its seal seats; measure from the port's face to the line through the outlet's centre, " +
				"from the inlet's line to the outlet's face, and the turn with a protractor."
	case route.Extender, route.Tee, route.Valve, route.Coupler, route.Plug:
	}
	return "length",
		"Screw it in until its seal seats and measure with a caliper from the port's face to its outer face."
}
