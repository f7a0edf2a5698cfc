package find

import (
	"math"

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
const reachOver = 3

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
	p.length = s + t + l - 2*r*(first+second)
	if p.lack == 0 { // only what can be formed is told apart by its length
		p.length += 2 * r * (math.Atan(first) + math.Atan(second))
	}
	return p
}

// mostTan is tanHalf of a little less than the most a bend may turn.
var mostTan = math.Tan((bends.MostTurn - standardWithin) * perDegree / 2)

const (
	// coarse is how many places along each ray are looked at first.
	coarse = 16
	// basins is how many of the places better than all around them are looked at
	// more closely.
	basins = 4
)

// shortest is where the bends of the shortest tube stand. Mostly one of the end
// straights is the least: those places are looked through first. Then places all
// over are looked at, spread thicker toward the stops, and those better than all
// around them are closed in on, unless they are longer by more than closing in
// may gain.
func (f *twoBend) shortest() (s, t float64, ok bool) {
	least, hope := f.shortestFromEnd()
	other, otherHope := f.turned().shortestFromEnd()
	if other = other.turned(); other.before(least) {
		least = other
	}
	cell := f.far / coarse
	for _, p := range [2]place{hope, otherHope.turned()} {
		if p.lack < f.tube.Radius && p.length < least.length {
			least = f.nearer(p, cell, least)
		}
	}
	for _, p := range f.lookOver() {
		if least.lack > 0 || p.lack == 0 && p.length < least.length+cell {
			least = f.nearer(p, cell, least)
		}
	}
	return least.s, least.t, least.lack == 0
}

// nearer closes in on a place and keeps the better of it and the best so far.
func (f *twoBend) nearer(p place, step float64, least place) place {
	if p = f.closeIn(p, step, settledSlack); p.before(least) {
		return p
	}
	return least
}

// turned is a place seen from the other end.
func (p place) turned() place { return place{p.t, p.s, p.length, p.lack} }

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
const mostLooks = 40

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
	best, _ := f.lineSearch(func(t float64) place {
		w := f.w.Add(f.b.dir.Mul(t))
		return f.at(w.Dot(f.a.dir)-aside(w, f.a.dir).Len()*cos/sin, t)
	})
	return best.s, best.t, best.lack == 0
}

// shortestFromEnd is the shortest tube whose first straight is the least, and the
// one that lacks least of those that cannot quite be formed: beside it there may be
// some that can.
func (f *twoBend) shortestFromEnd() (best, hope place) {
	best, hope = nowhere(), nowhere()
	for _, side := range [2]float64{1, -1} {
		p, h := f.lineSearch(func(t float64) place { return f.outward(f.at(f.nearest(t, side), t)) })
		if p.before(best) {
			best = p
		}
		if h.lack < hope.lack {
			hope = h
		}
	}
	return best, hope
}

// nearest is where the first bend stands with the least straight before it when
// the second stands at t. With the second's corner u ahead and h aside, the
// bend x short of it, least straight l and k = r/h,
//
//	u − x − l = k·(√(x² + h²) − x)
//
// which squares to (1 − 2k)·x² + 2(u − l)(k − 1)·x + (u − l)² − r² = 0; side
// chooses the root. What the squaring added fails when it is measured.
func (f *twoBend) nearest(t, side float64) float64 {
	w := f.w.Add(f.b.dir.Mul(t))
	u, h := w.Dot(f.a.dir), aside(w, f.a.dir).Len()
	if h < sameSpot {
		return 0
	}
	k, c := f.tube.Radius/h, u-f.tube.StraightEnd-settledSlack/10
	a, b, d := 1-2*k, c*(k-1), c*c-f.tube.Radius*f.tube.Radius
	root := b*b - a*d
	if root < 0 || math.Abs(a) < sameWay {
		return 0
	}
	return u - (-b+side*math.Sqrt(root))/a
}

// outward moves the first bend of a place that cannot quite be formed, mostly for
// want of straight between the bends, as little away from its stop as makes it so.
func (f *twoBend) outward(p place) place {
	if p.lack == 0 || p.lack > f.tube.Radius {
		return p
	}
	near, far := 0.0, 0.25
	formed := f.at(p.s+far, p.t)
	for formed.lack > 0 {
		if near, far = far, 2*far; far > 4*f.tube.Radius {
			return p
		}
		formed = f.at(p.s+far, p.t)
	}
	for far-near > settledSlack {
		mid := (near + far) / 2
		if q := f.at(p.s+mid, p.t); q.lack == 0 {
			far, formed = mid, q
		} else {
			near = mid
		}
	}
	return formed
}

// lineSearch closes in on the best of the places that hang on the second bend's:
// from each of those looked at first that is better than both beside it.
func (f *twoBend) lineSearch(at func(t float64) place) (best, hope place) {
	var line [3 * coarse]place
	var where [3 * coarse]float64
	for i := range line {
		x := float64(i) / float64(len(line)-1)
		where[i] = f.tube.StraightEnd + f.far*x*x
		line[i] = at(where[i])
	}
	best, hope = nowhere(), nowhere()
	for i, p := range line {
		if i > 0 && line[i-1].before(p) || i+1 < len(line) && line[i+1].before(p) {
			continue
		}
		if p = lineCloser(at, p, where[max(0, i-1)], where[i], where[min(i+1, len(line)-1)]); p.before(best) {
			best = p
		}
		if p.lack > 0 && p.lack < hope.lack {
			hope = p
		}
	}
	return best, hope
}

// lineCloser closes in on the best place between two.
func lineCloser(at func(t float64) place, p place, lo, t, hi float64) place {
	for step := max(t-lo, hi-t) / 2; step > settledSlack/10; step /= 2 {
		for _, next := range [2]float64{t - step, t + step} {
			if q := at(next); q.before(p) {
				p, t = q, next
			}
		}
	}
	return p
}
