package insert

import (
	"math"
	"slices"
)

const (
	// mostPlaces is how many places the search looks on from, for one choice of
	// sockets to unscrew: a bound in steps, the same on every machine.
	mostPlaces = 60
	// mostSlides is how many slides in a row a hand is asked to make.
	mostSlides = 4
	// samePlace is the grid on which two places count as one, mm.
	samePlace = 1.0
)

// stops are how far along a free way it is worth stopping, mm.
var stops = [...]float64{12, 25, 50, 100, 200}

// trace is a place with the slides that led there.
type trace struct {
	place
	slides []Slide
}

// search looks for slides that lead out: fewest first, in a fixed order.
func (t *task) search() (slides []Slide, ok bool) {
	ways := t.waysOut()
	seen := map[[5]int]bool{}
	open := []trace{{place: t.next(place{}, vec{}, 0)}}
	for n := 0; n < len(open) && n < mostPlaces; n++ {
		p := open[n]
		for _, way := range ways {
			if t.ended() {
				return nil, false
			}
			out := t.outAt(p.place, way)
			b := t.slide(p.place, way, min(out, t.farthest()))
			if b.free >= out {
				return append(slices.Clone(p.slides), Slide{way.Mul(out), out}), true
			}
			if len(p.slides)+1 < mostSlides {
				open = t.branch(open, seen, p, way, b.free)
			}
		}
	}
	return nil, false
}

// farthest is longer than any slide that is of use.
func (t *task) farthest() float64 {
	far := 0.0
	for k := range t.things {
		far = max(far, t.things[k].hi.Sub(t.lo).Len(), t.hi.Sub(t.things[k].lo).Len())
	}
	return far + t.hi.Sub(t.lo).Len() + 10
}

// branch adds the places worth stopping at along a free way.
func (t *task) branch(open []trace, seen map[[5]int]bool, p trace, way vec, free float64) []trace {
	lengths := []float64{}
	for e := range t.joints {
		if j := &t.joints[e]; j.held && !p.free[e] {
			if along := way.Dot(j.way); along > 0.1 {
				lengths = append(lengths, (j.depth-p.at.Dot(j.way))/along)
			}
		}
	}
	lengths = append(append(lengths, stops[:]...), free)
	for _, long := range lengths {
		if long <= samePlace || long > free {
			continue
		}
		next := t.next(p.place, way, long)
		key := [5]int{}
		for i, x := range next.at {
			key[i] = int(math.Round(x / samePlace))
		}
		for e, free := range next.free {
			if free {
				key[3+e] = 1
			}
		}
		if !seen[key] {
			seen[key] = true
			open = append(open, trace{next, append(slices.Clone(p.slides), Slide{way.Mul(long), long})})
		}
	}
	return open
}

// waysOut are the directions tried: toward the open side first, the ends' ways
// and both together, then along the axes.
func (t *task) waysOut() (list []vec) {
	add := func(v vec) {
		if v.Len() < 0.1 {
			return
		}
		v = v.Normalize()
		for _, w := range list {
			if w.Sub(v).Len() < 1e-6 {
				return
			}
		}
		list = append(list, v)
	}
	add(vec{0, 0, 1})
	add(t.ways[0])
	add(t.ways[1])
	add(t.ways[0].Add(t.ways[1]))
	for _, v := range []vec{{1, 0, 0}, {-1, 0, 0}, {0, 1, 0}, {0, -1, 0}, {0, 0, -1}} {
		add(v)
	}
	add(t.ways[0].Mul(-1))
	add(t.ways[1].Mul(-1))
	return list
}
