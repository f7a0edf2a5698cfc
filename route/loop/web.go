package loop

import (
	"slices"

	"tubewright/route"
)

// web is a plan as the coolant sees it: ports, joined by runs and passages.
type web struct {
	ports []port
	edges []edge // runs first, in the plan's order
}

type port struct {
	ref  route.PortRef
	flow route.Flow
	pump bool // of a pump
}

// edge joins two ports, by their numbers; run is empty for a passage.
type edge struct {
	a, b int
	run  string
}

func newWeb(plan route.Plan) *web {
	w := &web{}
	var passages []edge
	for _, part := range plan.Parts {
		part = plan.Whole(part)
		first := len(w.ports)
		for _, q := range part.Ports {
			w.ports = append(w.ports, port{route.PortRef{Part: part.Name, Port: q.Name}, q.Flow, isPump(part)})
		}
		for _, pass := range part.Passages {
			a, b := portIn(part, pass[0]), portIn(part, pass[1])
			if a >= 0 && b >= 0 {
				passages = append(passages, edge{first + a, first + b, ""})
			}
		}
	}
	for _, run := range plan.Runs {
		if a, b := w.find(run.From), w.find(run.To); a >= 0 && b >= 0 {
			w.edges = append(w.edges, edge{a, b, run.Name})
		}
	}
	w.edges = append(w.edges, passages...)
	return w
}

func portIn(part route.Part, name string) int {
	return slices.IndexFunc(part.Ports, func(q route.Port) bool { return q.Name == name })
}

func (w *web) find(ref route.PortRef) int {
	return slices.IndexFunc(w.ports, func(p port) bool { return p.ref == ref })
}

// flow says which way the coolant is meant to go through a port.
func (w *web) flow(part, name string) route.Flow {
	if i := w.find(route.PortRef{Part: part, Port: name}); i >= 0 {
		return w.ports[i].flow
	}
	return route.Any
}

// used reports whether a run ends on the port.
func (w *web) used(at int) bool {
	return slices.ContainsFunc(w.edges, func(e edge) bool { return e.run != "" && (e.a == at || e.b == at) })
}

// touches reports whether one of the runs ends on the part.
func (w *web) touches(runs []string, part string) bool {
	return slices.ContainsFunc(w.edges, func(e edge) bool {
		return e.run != "" && slices.Contains(runs, e.run) && (w.ports[e.a].ref.Part == part || w.ports[e.b].ref.Part == part)
	})
}

// other is the far end of an edge, −1 when it does not end on at.
func (e edge) other(at int) int {
	switch at {
	case e.a:
		return e.b
	case e.b:
		return e.a
	}
	return -1
}

// flood gives the ports the coolant reaches from one, and marks them as seen.
func (w *web) flood(at int, seen []bool) []bool {
	wet := make([]bool, len(w.ports))
	for _, i := range w.reached(at, -1) {
		wet[i], seen[i] = true, true
	}
	return wet
}

// reached lists the ports joined to one, itself first and then by number,
// leaving out one edge.
func (w *web) reached(at, without int) []int {
	list, from := []int{at}, w.tree(at, without)
	for i := range from {
		if from[i] >= 0 {
			list = append(list, i)
		}
	}
	return list
}

// tree gives for each port the edge over which the coolant first comes to it
// from at, −1 for at itself and for ports it does not reach.
func (w *web) tree(at, without int) []int {
	from := make([]int, len(w.ports))
	for i := range from {
		from[i] = -1
	}
	for queue := []int{at}; len(queue) > 0; queue = queue[1:] {
		for i, e := range w.edges {
			next := e.other(queue[0])
			if i == without || next < 0 || next == at || from[next] >= 0 {
				continue
			}
			from[next] = i
			queue = append(queue, next)
		}
	}
	return from
}

// path lists the edges from one port to another, leaving out one; nil when
// there is no way.
func (w *web) path(a, b, without int) []int {
	from := w.tree(a, without)
	var way []int
	for at := b; at != a; {
		if from[at] < 0 {
			return nil
		}
		way = append(way, from[at])
		at = w.edges[from[at]].other(at)
	}
	slices.Reverse(way)
	return way
}

// round reports whether an edge lies on a way round.
func (w *web) round(i int) bool {
	e := w.edges[i]
	return e.a == e.b || w.path(e.a, e.b, i) != nil
}
