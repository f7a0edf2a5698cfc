package find

import (
	"math"

	"tubewright/bends"
)

// drawn forms the path a person drew: the via points are all its corners. It
// stands even where it hits something; the checks say so. The error is what the
// bends refuse.
func (h *hunt) drawn() (Way, error) {
	i := h.truest()
	formed, err := bends.Form(h.tube.Tube, bends.Path{Corners: i.path()})
	if err != nil {
		return Way{}, err
	}
	i.name = "drawn"
	i.cost = costOf(h.plan.Weigh, h.shape(&i), i.start, i.end)
	return h.way(i, formed), nil
}

// truest gives the drawn path between those chains that it leaves and enters
// least askew.
func (h *hunt) truest() idea {
	best := idea{}
	least := math.Inf(1)
	for _, start := range h.drawnBuilds(h.a, h.b) {
		for _, end := range h.drawnBuilds(h.b, h.a) {
			i := idea{start: start, end: end, corners: h.run.Via}
			i.miss.Degrees = askew(i)
			if i.miss.Degrees < least-noTurn {
				best, least = i, i.miss.Degrees
			}
		}
	}
	return best
}

func (h *hunt) drawnBuilds(s, other *side) []*build {
	if s.given == nil {
		return []*build{s.plain}
	}
	target := other.plain.ray()
	if n := len(h.run.Via); n > 0 {
		target.at = h.run.Via[0]
		if s == h.b {
			target.at = h.run.Via[n-1]
		}
	}
	return s.givenBuilds(target)
}

// askew is how far a path's first and last legs lie off their chains' ways,
// degrees, the worse of the two.
func askew(i idea) float64 {
	path := i.path()
	last := len(path) - 1
	worst := 0.0
	for _, end := range []struct{ dir, leg vec }{
		{i.start.frame.Dir, path[1].Sub(path[0])}, {i.end.frame.Dir, path[last-1].Sub(path[last])},
	} {
		if leg, ok := unit(end.leg); ok {
			worst = max(worst, degreesBetween(end.dir, leg))
		}
	}
	return worst
}
