package loop

import "tubewright/route"

// ends lists where the coolant of an open loop stops: a port in use from which
// no passage leads on, or in a part with one port in use the port it would
// leave by.
func (w *web) ends(wet []bool) (ends []route.PortRef) {
	for at, p := range w.ports {
		if !wet[at] || !w.used(at) || w.onRound(at) {
			continue
		}
		if w.degree(at) == 1 {
			ends = append(ends, p.ref)
		} else if !w.sharesPart(at) {
			ends = append(ends, w.ports[w.exit(at, wet)].ref)
		}
	}
	return ends
}

// onRound reports whether a run on the port lies on a way round.
func (w *web) onRound(at int) bool {
	for i, e := range w.edges {
		if e.run != "" && e.other(at) >= 0 && w.round(i) {
			return true
		}
	}
	return false
}

// degree counts the runs and passages at a port.
func (w *web) degree(at int) (n int) {
	for _, e := range w.edges {
		if e.other(at) >= 0 {
			n++
		}
	}
	return n
}

// sharesPart reports whether a run uses another port of the same part.
func (w *web) sharesPart(at int) bool {
	for i, p := range w.ports {
		if i != at && p.ref.Part == w.ports[at].ref.Part && w.used(i) {
			return true
		}
	}
	return false
}

// exit is the port by which coolant that came in at a port would leave its
// part: an inlet or outlet before one that says nothing; the port itself when
// there is no other.
func (w *web) exit(at int, wet []bool) int {
	best := at
	for i, p := range w.ports {
		if i == at || !wet[i] || p.ref.Part != w.ports[at].ref.Part {
			continue
		}
		if best == at || !directed(w.ports[best].flow) && directed(p.flow) {
			best = i
		}
	}
	return best
}

func directed(f route.Flow) bool { return f == route.In || f == route.Out }
