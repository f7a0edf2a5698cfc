package cutlist

import (
	"fmt"
	"slices"

	"tubewright/route"
)

// reasons lists what is only typical of the numbers the tubes rest on, in the
// order in which one measures: tubes, sockets, other fittings, ports by part.
func reasons(plan route.Plan, tubes []Tube) []Reason {
	d := draft{}
	for _, t := range tubes {
		d.tube(t)
	}
	for _, sockets := range []bool{true, false} {
		for _, t := range tubes {
			d.fittings(t, sockets)
		}
	}
	for _, part := range plan.PlaceAll() {
		for _, port := range part.Ports {
			d.port(port, tubes)
		}
	}
	return d.list
}

type draft struct{ list []Reason }

// add tells that a run rests on something; the same thing is told once.
func (d *draft) add(what, how, run string) {
	i := slices.IndexFunc(d.list, func(r Reason) bool { return r.What == what })
	if i < 0 {
		i = len(d.list)
		d.list = append(d.list, Reason{What: what, How: how})
	}
	if !slices.Contains(d.list[i].Runs, run) {
		d.list[i].Runs = append(d.list[i].Runs, run)
	}
}

func (d *draft) tube(t Tube) {
	if kind := t.Way.Tube; !kind.KnownFrom.Firm() {
		what, how := toMeasureTube(kind)
		d.add(kind.Name+": "+what, how, t.Run)
	}
}

func (d *draft) fittings(t Tube, sockets bool) {
	for _, end := range []route.Laid{t.Way.Start, t.Way.End} {
		for _, body := range end.Bodies {
			fit := body.Fitting
			if fit.KnownFrom.Firm() || sockets != (fit.Kind == route.Socket) {
				continue
			}
			what, how := toMeasure(fit.Kind)
			d.add(fit.Name+": "+what, how, t.Run)
		}
	}
}

func (d *draft) port(port route.PlacedPort, tubes []Tube) {
	if port.KnownFrom.Firm() {
		return
	}
	for _, t := range tubes {
		if t.Way.Start.Port.Ref == port.Ref || t.Way.End.Port.Ref == port.Ref {
			d.add(fmt.Sprintf("%s: place and facing", port.Ref),
				"With the part fitted, measure the centre of the port's face from the case's lower left far inner corner "+
					"along x, y and z, and see with a square which way it faces.", t.Run)
		}
	}
}

func toMeasureTube(t route.Tube) (what, how string) {
	if t.Radius == 0 {
		return "outside and inside diameter",
			"Measure both diameters with a caliper at a freshly cut end, twice at right angles."
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
