package find

import (
	"math"

	"tubewright/route/clear"
)

// wall is a solid as a quest sees it.
type wall struct {
	shape     clear.Shape
	lo, hi    vec     // its bounds
	upright   bool    // a box along the axes: lo and hi are all there is
	body      *body   // of what is not upright
	keep      float64 // least distance of the centreline from it
	fromStart float64 // along the first straight from the start it does not count, mm
	fromEnd   float64 // the same from the end
	blocked   int     // how often it stopped the search
	lined     bool    // its coordinates are in the lattice
}

// room is the space corners may stand in: the case less half a tube.
type room struct {
	boxed  bool
	lo, hi vec  // in the frame, when the case lies along it
	axes   axes // else the case is asked through the frame
	skew   bool
}

// holds reports whether a corner is inside. Straights and bends lie in the hull
// of their corners, so corners are all that need be asked.
func (r *room) holds(p vec) bool {
	if !r.boxed && !r.skew {
		return true
	}
	if r.skew {
		p = r.axes.out(p)
	}
	for i := range 3 {
		if p[i] < r.lo[i]-sameLine || p[i] > r.hi[i]+sameLine {
			return false
		}
	}
	return true
}

// clearRun is how far the centreline may run from p in heading d before it
// comes too near to a wall, and which wall stops it; at most far. Negative when
// it is too near at once.
func (q *quest) clearRun(p vec, d int, far float64, exempt func(*wall) float64) (float64, *wall) {
	var by *wall
	q.halt.did(len(q.walls) / 32)
	for i := range q.walls {
		w := &q.walls[i]
		from := p
		skip := 0.0
		if exempt != nil {
			if skip = exempt(w); skip >= far {
				continue
			}
			from[d/2] += skip * sign(d)
		}
		if run := w.stops(from, d, far-skip) + skip; run < far {
			far, by = run, w
		}
	}
	q.look(p, p.Add(heading(d).Mul(max(0, far))), 0)
	return far, by
}

func sign(d int) float64 { return float64(1 - 2*(d%2)) }

// stops is how far the centreline may run from p before this wall; far when it
// does not stop it.
func (w *wall) stops(p vec, d int, far float64) float64 {
	axis := d / 2
	side := 0.0
	for i := range 3 {
		if i != axis {
			if g := max(w.lo[i]-p[i], p[i]-w.hi[i]); g > 0 {
				side += g * g
			}
		}
	}
	if math.Sqrt(side) >= w.keep-sameSpot {
		return far
	}
	reach := math.Sqrt(w.keep*w.keep - side)
	near, past := w.lo[axis]-p[axis], w.hi[axis]-p[axis]
	if d%2 == 1 {
		near, past = -past, -near
	}
	if past+reach <= sameSpot || near-reach >= far {
		return far
	}
	if w.upright {
		return near - reach
	}
	return w.bisect(p, d, near-reach, far)
}

// bisect finds how far the centreline may run before a wall that is not an
// upright box: the longest run that is clear, to a hundredth of a millimetre.
func (w *wall) bisect(p vec, d int, lo, far float64) float64 {
	ahead := heading(d)
	ok := func(run float64) bool {
		return clear.Farther(clear.Rod{From: p, To: p.Add(ahead.Mul(run))}, w.shape, w.keep)
	}
	if ok(far) {
		return far
	}
	if lo <= 0 && !ok(0) {
		return -1
	}
	lo = max(lo, 0) // the bounds alone show that it is clear so far
	hi := far
	for hi-lo > margin {
		if mid := (lo + hi) / 2; ok(mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// bendClear reports whether the arc of a bend at a crossing is clear; the tube
// comes in heading in and leaves heading out.
func (q *quest) bendClear(n node, in, out int) bool {
	corner, u, v := q.grid.at(n), heading(out).Mul(-1), heading(in)
	from, to := corner.Sub(v.Mul(q.radius)), corner.Sub(u.Mul(q.radius))
	centre := from.Sub(u.Mul(q.radius))
	for i, word := range q.search.near.around(n) {
		for word != 0 {
			w := &q.walls[64*i+nextBit(&word)]
			q.halt.did(w.work())
			if w.beyond(from, to, corner) {
				continue
			}
			if w.bendKeeps(centre, from, to, in/2, out/2, q.radius) {
				continue
			}
			w.blocked++
			return false
		}
	}
	return true
}

// work is what one question about a wall counts.
func (w *wall) work() int {
	if w.upright || w.body.along >= 0 {
		return 1
	}
	return roundWork
}

// roundWork is what it counts where there is no closed form.
const roundWork = 16

// bendKeeps reports whether a quarter circle about a centre keeps its distance
// from the wall; it begins and ends at two points, in the plane of two axes.
func (w *wall) bendKeeps(centre, from, to vec, u, v int, radius float64) bool {
	if w.upright {
		return w.cornerGap(centre, from, to, u, v, radius) >= w.keep-sameSpot
	}
	if w.body.along >= 0 {
		if clear, sure := w.barClear(centre, from, to, u, v, radius); sure {
			return clear
		}
	}
	return w.bendAway(centre, from.Sub(centre).Mul(1/radius), to.Sub(centre).Mul(1/radius), radius, 0, math.Pi/2)
}

// beyond reports whether a wall is out of reach of all that lies between three points.
func (w *wall) beyond(a, b, c vec) bool {
	for i := range 3 {
		lo, hi := min(a[i], b[i], c[i]), max(a[i], b[i], c[i])
		if w.lo[i]-hi >= w.keep || lo-w.hi[i] >= w.keep {
			return true
		}
	}
	return false
}

// cornerGap is the distance from an upright box to a quarter circle about a
// centre, from one tangent point to the other. In the circle's plane the box is
// a rectangle; the part of it in the quarter's quadrant is as far away as its
// nearest and farthest points are from the circle, the rest as far as the
// tangent points are. Across the plane the gap adds squarely.
func (w *wall) cornerGap(centre, from, to vec, u, v int, radius float64) float64 {
	third := 3 - u - v
	across := max(w.lo[third]-centre[third], centre[third]-w.hi[third], 0)
	flat := min(w.flatGap(from, u, v), w.flatGap(to, u, v))
	// the quadrant: from the centre toward each tangent point
	nearest, farthest, inside := 0.0, 0.0, true
	for _, axis := range []int{u, v} {
		side := from[axis] - centre[axis] + to[axis] - centre[axis]
		lo, hi := w.lo[axis]-centre[axis], w.hi[axis]-centre[axis]
		if side < 0 {
			lo, hi = -hi, -lo
		}
		lo = max(lo, 0)
		inside = inside && hi >= lo
		nearest, farthest = nearest+lo*lo, farthest+hi*hi
	}
	if inside {
		flat = min(flat, max(math.Sqrt(nearest)-radius, radius-math.Sqrt(farthest), 0))
	}
	return math.Hypot(flat, across)
}

// flatGap is the distance from a point to the box in the plane of two axes.
func (w *wall) flatGap(p vec, u, v int) float64 {
	return math.Hypot(max(w.lo[u]-p[u], p[u]-w.hi[u], 0), max(w.lo[v]-p[v], p[v]-w.hi[v], 0))
}

// newWall is a shape as a frame sees it.
func newWall(m axes, s clear.Shape, keep float64) wall {
	if m != worldAxes() {
		s = m.turned(s)
	}
	lo, hi := s.Bounds()
	w := wall{shape: s, lo: lo, hi: hi, upright: upright(s), keep: keep}
	if !w.upright {
		w.body = bodyOf(s)
	}
	return w
}
