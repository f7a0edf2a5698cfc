package mend

import (
	"fmt"
	"slices"

	"tubewright/route"
	"tubewright/route/loop"
)

// ports lets the runs end on other ports of the same parts: on free ones, or in
// exchange with the runs that are there.
func ports(h *hunt) (ladders [][]Change) {
	for _, r := range h.runs() {
		for end := range 2 {
			here := *portAt(&r, end)
			for _, other := range h.portsOf(here.Part) {
				switch {
				case other == here:
				case h.free(other):
					ladders = append(ladders, each(UsePort{r.Name, end, other})...)
				case other.Port < here.Port:
					ladders = append(ladders, each(SwapPorts{other, here})...)
				default:
					ladders = append(ladders, each(SwapPorts{here, other})...)
				}
			}
		}
	}
	return ladders
}

// portsOf lists the ports of a part.
func (h *hunt) portsOf(part string) (refs []route.PortRef) {
	k, ok := h.plan.FindPart(part)
	if !ok {
		return nil
	}
	for _, p := range h.plan.Whole(k).Ports {
		refs = append(refs, route.PortRef{Part: part, Port: p.Name})
	}
	return refs
}

// on counts the runs that end on a port.
func (h *hunt) on(ref route.PortRef) (n int) {
	for _, r := range h.plan.Runs {
		for end := range 2 {
			if *portAt(&r, end) == ref {
				n++
			}
		}
	}
	return n
}

func (h *hunt) free(ref route.PortRef) bool { return h.on(ref) == 0 }

// freed leads one of two runs on a port to a free port of the part.
func freed(h *hunt) (ladders [][]Change) {
	for _, r := range h.runs() {
		for end := range 2 {
			here := *portAt(&r, end)
			if h.on(here) < 2 {
				continue
			}
			for _, other := range h.portsOf(here.Part) {
				if h.free(other) {
					ladders = append(ladders, each(UsePort{r.Name, end, other})...)
				}
			}
		}
	}
	return ladders
}

// joined leads the coolant on by a run between two ports where it stops.
func joined(h *hunt) (ladders [][]Change) {
	for _, l := range loop.Of(h.plan) {
		if !slices.Equal(l.Loose, h.finding.Runs) {
			continue
		}
		for i, a := range l.Ends {
			for _, b := range l.Ends[i+1:] {
				if a.Part != b.Part && h.free(a) && h.free(b) {
					ladders = append(ladders, each(AddRun{h.newName(a.Part + "-to-" + b.Part), a, b})...)
				}
			}
		}
	}
	return ladders
}

// newName gives a name that no run has yet.
func (h *hunt) newName(base string) string {
	name := base
	for n := 2; ; n++ {
		if _, taken := h.plan.FindRun(name); !taken {
			return name
		}
		name = fmt.Sprintf("%s-%d", base, n)
	}
}
