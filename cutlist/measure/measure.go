// Package measure says on which numbers the tubes of a plan rest, who vouches
// for each, and what to measure so that a draft becomes a plan to cut from: how,
// with what, from where to where. What was measured it takes into the plan.
//
// Lengths are millimetres and angles degrees. Plans are values: nothing here
// writes to the plan it is given.
package measure

import (
	"slices"

	"tubewright/route"
	"tubewright/route/find"
)

// Of is what a number belongs to.
type Of string

// The things that are measured at one sitting.
const (
	Fitting Of = "fitting"
	Port    Of = "port"
	Place   Of = "place" // of a part in the case
	Tube    Of = "tube"
)

// Thing is something measured at one sitting, and its numbers.
type Thing struct {
	Of      Of
	Name    string            // "socket-16", "pump.out", "pump", "petg-16-12"
	Kind    route.FittingKind // of a fitting
	Ref     route.PortRef     // of a port
	Known   route.KnownFrom   // who vouches for all of its numbers
	Runs    []string          // that rest on it, in the plan's order
	Before  string            // what to do first, a sentence; may be empty
	Numbers []Number
}

// Firm reports whether a tube may be cut on its word.
func (t Thing) Firm() bool { return t.Known.Firm() }

// Key names a number of a thing, as the plan's file does: "stop", "insertion.full".
type Key string

// Number is one value, and how to get it.
type Number struct {
	Key    Key
	Name   string   // "stop depth"
	Value  float64  // as the plan has it, mm or degrees
	Unit   string   // "mm", "deg" or "%"
	How    string   // with what, from where to where: a sentence
	Sketch Sketch   // the drawing that goes with it
	Runs   []string // that rest on it, in the plan's order; empty: no tube does now
}

// Things lists everything the tubes of these ways rest on, in the order in
// which one measures: fittings, sockets first, since one sitting with a caliper
// serves every run; then ports and places part by part; then the tubes, whose
// bends take longest. A run that is made rests on nothing any more: it fits.
func Things(plan route.Plan, ways []find.Way) []Thing {
	c := collector{plan: plan}
	for _, w := range ways {
		if run, ok := plan.FindRun(w.Run); ok {
			if _, isMade := run.AsMade(); isMade {
				continue
			}
		}
		c.ways = append(c.ways, w)
	}
	c.fittings()
	for _, part := range plan.PlaceAll() {
		c.part(part)
	}
	c.tubes()
	return c.things
}

// ToMeasure is what of the things lifts the mark of a draft when it is measured:
// those that are only typical, in their order. It is the shortest such list,
// since each is vouched for by itself.
func ToMeasure(things []Thing) []Thing {
	return slices.DeleteFunc(slices.Clone(things), func(t Thing) bool { return t.Of == Place || t.Firm() })
}

// collector gathers things.
type collector struct {
	plan   route.Plan
	ways   []find.Way
	things []Thing
}

// order is the kinds of fitting as one sits down to them.
var order = []route.FittingKind{
	route.Socket, route.Extender, route.Offset, route.Elbow, route.Tee, route.Valve, route.Coupler, route.Plug,
}

func (c *collector) fittings() {
	for _, kind := range order {
		for _, w := range c.ways {
			for _, body := range slices.Concat(w.Start.Bodies, w.End.Bodies) {
				if body.Fitting.Kind == kind {
					c.add(fitting(body.Fitting), w.Run)
				}
			}
		}
	}
}

// add notes that a run rests on a thing, with all of its numbers.
func (c *collector) add(t Thing, run string) *Thing {
	i := slices.IndexFunc(c.things, func(have Thing) bool { return have.Of == t.Of && have.Name == t.Name && have.Known == t.Known })
	if i < 0 {
		i = len(c.things)
		c.things = append(c.things, t)
	}
	have := &c.things[i]
	if run != "" && !slices.Contains(have.Runs, run) {
		have.Runs = append(have.Runs, run)
		for k := range have.Numbers {
			have.Numbers[k].Runs = append(have.Numbers[k].Runs, run)
		}
	}
	return have
}

// part adds the ports of a part that runs use, and its place.
func (c *collector) part(p route.Placed) {
	place, firm := place(p.Part), true
	for _, port := range p.Ports {
		for _, w := range c.ways {
			if w.Start.Port.Ref == port.Ref || w.End.Port.Ref == port.Ref {
				c.add(portThing(c.plan, port), w.Run)
				firm = firm && port.KnownFrom == route.Measured
				if !slices.Contains(place.Runs, w.Run) {
					place.Runs = append(place.Runs, w.Run)
				}
			}
		}
	}
	if len(place.Runs) == 0 {
		return
	}
	if firm { // ports measured in the case vouch for where their part stands
		place.Known = route.Measured
	}
	for k := range place.Numbers {
		place.Numbers[k].Runs = place.Runs
	}
	c.things = append(c.things, place)
}

func (c *collector) tubes() {
	for _, w := range c.ways {
		bent := len(w.Formed.Bends) > 0
		t := c.add(tube(w.Tube), w.Run)
		for k := range t.Numbers {
			if n := &t.Numbers[k]; bendsOnly(n.Key) && !bent {
				n.Runs = slices.DeleteFunc(n.Runs, func(r string) bool { return r == w.Run })
			}
		}
	}
}
