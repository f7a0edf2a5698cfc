package find

import (
	"math"
	"slices"

	"tubewright/bends"
	"tubewright/route"
)

// twoBend is two bends on two rays, s along the first and t along the second:
// how long the tube is and whether it can be formed.
type twoBend struct {
	tube bends.Tube
	a, b ray
	w    vec     // from the first stop to the second
	far  float64 // how far along either ray is looked
}

// reachOver is how many times the way between the stops, the former and the
// least straights a bend may stand from its stop and still be thought of:
// farther out both legs only grow.
const reachOver = 2

func newTwoBend(tube bends.Tube, a, b ray) *twoBend {
	w := b.at.Sub(a.at)
	return &twoBend{tube, a, b, w, reachOver * (w.Len() + 2*tube.Radius + tube.StraightEnd + tube.StraightBetween)}
}

// turned is the same from the other end.
func (f *twoBend) turned() *twoBend { return &twoBend{f.tube, f.b, f.a, f.w.Mul(-1), f.far} }

// place is a pair of bends, the length of its tube, and by how much it misses
// what can be formed: 0 when it can.
type place struct{ s, t, length, lack float64 }

// nowhere is worse than any place.
func nowhere() place { return place{length: math.Inf(1), lack: math.Inf(1)} }

// before puts what can be formed first, the shortest of it, then what lacks least.
func (p place) before(q place) bool {
	if p.lack > 0 || q.lack > 0 {
		return p.lack < q.lack-sameWay
	}
	return p.length < q.length-sameSpot
}

// at measures the bends at s and t.
func (f *twoBend) at(s, t float64) place {
	leg := f.w.Add(f.b.dir.Mul(t)).Sub(f.a.dir.Mul(s))
	l := leg.Len()
	if l < sameSpot {
		return nowhere()
	}
	first, second := tanHalf(f.a.dir.Dot(leg)/l), tanHalf(-f.b.dir.Dot(leg)/l)
	r, tube := f.tube.Radius, &f.tube
	p := place{s: s, t: t}
	p.lack = max(0, tube.StraightEnd-s+r*first) + max(0, tube.StraightEnd-t+r*second) +
		max(0, tube.StraightBetween-l+r*(first+second)) + r*(max(0, first-mostTan)+max(0, second-mostTan))
	p.length = s + t + l - 2*r*(first+second-math.Atan(first)-math.Atan(second))
	return p
}

// mostTan is tanHalf of a little less than the most a bend may turn.
var mostTan = math.Tan((bends.MostTurn - standardWithin) * perDegree / 2)

const (
	// coarse is how many places along each ray are looked at first.
	coarse = 20
	// basins is how many of the places better than all around them are looked at
	// more closely, and of those the best to the end.
	basins, toTheEnd = 6, 2
	// halfWay is the least step all of them get, mm.
	halfWay = 4.0
)

// shortest is where the bends of the shortest tube stand. The places are spread
// thicker toward the stops, since the shortest tube mostly has its bends there;
// those better than all around them are then closed in on.
func (f *twoBend) shortest() (s, t float64, ok bool) {
	best := f.lookOver()
	for i := range best {
		best[i] = f.closeIn(best[i], f.far/coarse, halfWay)
	}
	slices.SortStableFunc(best[:], func(p, q place) int {
		switch {
		case p.before(q):
			return -1
		case q.before(p):
			return 1
		}
		return 0
	})
	least := nowhere()
	for _, p := range best[:toTheEnd] {
		if p = f.closeIn(p, halfWay, settledSlack); p.before(least) {
			least = p
		}
	}
	return least.s, least.t, least.lack == 0
}

// lookOver gives the best places that are better than all around them.
func (f *twoBend) lookOver() (best [basins]place) {
	var grid [coarse][coarse]place
	for i := range coarse {
		for j := range coarse {
			grid[i][j] = f.at(f.spread(i), f.spread(j))
		}
	}
	for i := range best {
		best[i] = nowhere()
	}
	for i := range coarse {
		for j := range coarse {
			if lowest(&grid, i, j) {
				keepBest(&best, grid[i][j])
			}
		}
	}
	return best
}

// lowest reports whether no place around one is better.
func lowest(grid *[coarse][coarse]place, i, j int) bool {
	for k := max(0, i-1); k <= min(coarse-1, i+1); k++ {
		for l := max(0, j-1); l <= min(coarse-1, j+1); l++ {
			if grid[k][l].before(grid[i][j]) {
				return false
			}
		}
	}
	return true
}

// spread is the i-th place along a ray.
func (f *twoBend) spread(i int) float64 {
	x := float64(i) / (coarse - 1)
	return f.tube.StraightEnd + f.far*x*x
}

// keepBest takes a place among the best ones.
func keepBest(best *[basins]place, p place) {
	for i := range best {
		if p.before(best[i]) {
			copy(best[i+1:], best[i:basins-1])
			best[i] = p
			return
		}
	}
}

// closeIn goes from a place to better ones around it, as far as a step while that
// helps and nearer when it does not, down to the least step. What can be formed
// ends at curved edges, along which few directions lead on: each look takes
// another third of the compass.
func (f *twoBend) closeIn(p place, step, least float64) place {
	missed := 0
	for look := 0; step > least && look < mostLooks; look++ {
		from := p
		for i := look % 3; i < len(compass); i += 3 {
			if next := f.at(from.s+step*compass[i][0], from.t+step*compass[i][1]); next.before(p) {
				p = next
			}
		}
		if p.s != from.s || p.t != from.t {
			missed = 0
		} else if missed++; missed == 3 {
			step, missed = step/2, 0
		}
	}
	return p
}

// mostLooks bounds the looks from one place.
const mostLooks = 200

// compass is 36 directions.
var compass = directions()

func directions() (list [36][2]float64) {
	for i := range list {
		list[i][1], list[i][0] = math.Sincos(float64(i) * 10 * perDegree)
	}
	return list
}

// shortestWith is where the bends of the shortest tube stand of which the first
// makes a turn: its place follows from the second's, and that is looked for.
func (f *twoBend) shortestWith(turn float64) (s, t float64, ok bool) {
	sin, cos := route.SinCos(turn)
	at := func(t float64) place {
		w := f.w.Add(f.b.dir.Mul(t))
		return f.at(w.Dot(f.a.dir)-aside(w, f.a.dir).Len()*cos/sin, t)
	}
	best := nowhere()
	for i := range 3 * coarse {
		x := float64(i) / (3*coarse - 1)
		if p := at(f.tube.StraightEnd + f.far*x*x); p.before(best) {
			best = p
		}
	}
	for step := f.far / coarse; step > settledSlack/10; step /= 2 {
		for _, t := range [4]float64{best.t - step, best.t + step, best.t - step/2, best.t + step/2} {
			if p := at(t); p.before(best) {
				best = p
			}
		}
	}
	return best.s, best.t, best.lack == 0
}
