// Package loop follows the coolant through a plan: which runs and parts make a
// loop, in which order, where it is open, which way the pump drives it, how
// much it holds, where it can be drained and filled, and which metals meet in it.
//
// Ports are joined by runs and by the passages inside parts. A loop is all that
// is joined so, directly or not; it is closed when every run of it lies on a way
// round. Lengths are millimetres in the case's frame with y up, volumes litres,
// potentials volts. A plan without runs has no loop.
package loop

import (
	"slices"
	"strings"

	"tubewright/route"
)

// Loop is one body of coolant.
type Loop struct {
	Runs  []string // in the plan's order
	Parts []string // those its runs and passages touch, in the plan's order
	Pump  string   // part that drives it; empty: none is known
	// Order is the way round, starting at the pump, else where the first run
	// starts. Where the coolant splits it takes the branch with the fewest
	// joints; in an open loop it ends where the coolant stops.
	Order  []Stop
	Closed bool
	Loose  []string        // runs that lie on no way round
	Ends   []route.PortRef // where the coolant stops, beyond the loose runs
	// Against lists the runs that join an outlet to an outlet or an inlet to an
	// inlet; Turned the parts that the coolant goes through from their outlet
	// to their inlet, following Order, less those at the ends of Against.
	Against []string
	Turned  []string
	Spare   []route.PortRef // ports that the coolant reaches and no run uses
}

// Stop is a part the coolant goes through.
type Stop struct {
	Part    string
	In, Out string // its ports; empty where an open loop begins or ends
	Run     string // leads on from Out; empty at the end of an open loop
}

// Of lists a plan's loops, in the order of their first runs.
func Of(plan route.Plan) []Loop {
	w := newWeb(plan)
	var loops []Loop
	seen := make([]bool, len(w.ports))
	for _, e := range w.edges {
		if e.run != "" && !seen[e.a] {
			loops = append(loops, w.loop(w.flood(e.a, seen)))
		}
	}
	return loops
}

// loop describes the body of coolant that fills these ports.
func (w *web) loop(wet []bool) Loop {
	var l Loop
	for i, e := range w.edges {
		if e.run == "" || !wet[e.a] {
			continue
		}
		l.Runs = append(l.Runs, e.run)
		if !w.round(i) {
			l.Loose = append(l.Loose, e.run)
		}
		if against(w.ports[e.a].flow, w.ports[e.b].flow) {
			l.Against = append(l.Against, e.run)
		}
	}
	l.Closed = len(l.Loose) == 0
	for i, p := range w.ports {
		if wet[i] && !slices.Contains(l.Parts, p.ref.Part) {
			l.Parts = append(l.Parts, p.ref.Part)
		}
		if wet[i] && !w.used(i) {
			l.Spare = append(l.Spare, p.ref)
		}
	}
	if !l.Closed {
		l.Ends = w.ends(wet)
	}
	w.follow(&l, wet)
	return l
}

// against reports whether two joined ports both push or both draw.
func against(a, b route.Flow) bool {
	return a == b && (a == route.In || a == route.Out)
}

// follow finds the pump and the way round, and the parts it goes through backwards.
func (w *web) follow(l *Loop, wet []bool) {
	start := w.pump(wet)
	if start >= 0 {
		l.Pump = w.ports[w.edges[start].a].ref.Part
	} else {
		start = w.firstRun(wet)
	}
	l.Order = w.order(start)
	for _, s := range l.Order {
		in, out := w.flow(s.Part, s.In), w.flow(s.Part, s.Out)
		if (in == route.Out || out == route.In) && !w.touches(l.Against, s.Part) {
			l.Turned = append(l.Turned, s.Part)
		}
	}
}

// isPump reports whether a part drives the coolant: its kind or its name says
// pump. Nothing else in a plan tells a pump's outlet from a block's.
func isPump(part route.Part) bool {
	return strings.Contains(strings.ToLower(part.Kind), "pump") || strings.Contains(strings.ToLower(part.Name), "pump")
}
