package loop

import "tubewright/route"

// pump gives the passage that drives the coolant: of a pump, from an inlet to
// an outlet; −1 when there is none.
func (w *web) pump(wet []bool) int {
	for i, e := range w.edges {
		if e.run == "" && wet[e.a] && w.ports[e.a].pump && w.drives(e) {
			return i
		}
	}
	return -1
}

// drives reports whether a passage leads from an inlet to an outlet, either way
// it is written.
func (w *web) drives(e edge) bool {
	a, b := w.ports[e.a].flow, w.ports[e.b].flow
	return a == route.In && b == route.Out || a == route.Out && b == route.In
}

func (w *web) firstRun(wet []bool) int {
	for i, e := range w.edges {
		if e.run != "" && wet[e.a] {
			return i
		}
	}
	return -1
}

// order is the way round over an edge: the pump's passage, or a run.
func (w *web) order(start int) []Stop {
	e := w.edges[start]
	from, to := e.a, e.b
	if e.run == "" && w.ports[to].flow == route.In {
		from, to = to, from
	}
	way := w.path(to, from, start)
	if way == nil && from != to {
		return w.stops(from, append([]int{start}, w.longest(to, start)...), false)
	}
	return w.stops(from, append([]int{start}, way...), true)
}

// longest is the way on to the farthest place, for an open loop.
func (w *web) longest(at, without int) (best []int) {
	for _, i := range w.reached(at, without) {
		if way := w.path(at, i, without); len(way) > len(best) {
			best = way
		}
	}
	return best
}

// stops turns a way of edges from a port into the parts gone through. Passages
// in a row within a part are one stop.
func (w *web) stops(at int, way []int, closed bool) []Stop {
	list := []Stop{{Part: w.ports[at].ref.Part, In: w.ports[at].ref.Port}}
	if w.edges[way[0]].run != "" {
		list[0].In = ""
	}
	for _, i := range way {
		last := &list[len(list)-1]
		next := w.edges[i].other(at)
		to := w.ports[next].ref
		if run := w.edges[i].run; run != "" {
			last.Out, last.Run = w.ports[at].ref.Port, run
			list = append(list, Stop{Part: to.Part, In: to.Port})
		}
		at = next
	}
	if closed {
		return joinEnds(list)
	}
	return list
}

// joinEnds closes a way round: its last stop is its first.
func joinEnds(list []Stop) []Stop {
	last := list[len(list)-1]
	if len(list) > 1 && last.Run == "" {
		list = list[:len(list)-1]
		list[0].In = last.In
	}
	return list
}
