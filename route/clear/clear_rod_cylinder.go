package clear

import "math"

// segDrum is the distance between the segment pq and a solid cylinder.
//
// The squared distance of the point at t is (|along|−h)² + (side−r)², each
// where it is outside: convex in t, since the cylinder is convex. So its slope
// grows with t and Newton's steps kept in a bracket find its zero.
func segDrum(p, q v3, c *drum) near {
	s := segmentBy(p, q, c)
	d := q.sub(p)
	if t, meet := s.enters(); meet {
		x := p.plus(t, d)
		return near{0, x, x, true}
	}
	x := p.plus(s.nearest(), d)
	return spanned(x, c.nearest(x))
}

// byAxis is a segment seen from a cylinder: along its axis and square to it.
type byAxis struct {
	along, rise  float64 // along the axis: along + t·rise
	side, spread v3
	h, r         float64
}

func segmentBy(p, q v3, c *drum) byAxis {
	w, d := p.sub(c.c), q.sub(p)
	along, rise := c.z.dot(w), c.z.dot(d)
	return byAxis{along, rise, w.plus(-along, c.z), d.plus(-rise, c.z), c.h, c.r}
}

// enters gives a t inside the cylinder, if there is one: of the stretch
// between the planes of the flat ends the place nearest to the axis.
func (s *byAxis) enters() (t float64, meet bool) {
	lo, hi := 0.0, 1.0
	if s.rise != 0 {
		a, b := (-s.h-s.along)/s.rise, (s.h-s.along)/s.rise
		lo, hi = max(lo, min(a, b)), min(hi, max(a, b))
	} else if s.along > s.h || s.along < -s.h {
		return 0, false
	}
	if lo > hi {
		return 0, false
	}
	t = lo
	if l2 := s.spread.dot(s.spread); l2 > 0 {
		t = between(-s.side.dot(s.spread)/l2, lo, hi)
	}
	side := s.side.plus(t, s.spread)
	return t, side.dot(side) <= s.r*s.r
}

// slope is half the growth of the squared distance at t, and its own growth.
func (s *byAxis) slope(t float64) (g, growth float64) {
	x := s.along + t*s.rise
	if x > s.h {
		g, growth = s.rise*(x-s.h), s.rise*s.rise
	} else if x < -s.h {
		g, growth = s.rise*(x+s.h), s.rise*s.rise
	}
	side := s.side.plus(t, s.spread)
	if l := side.len(); l > s.r {
		out, k := side.dot(s.spread), s.r/l
		g += (1 - k) * out
		growth += (1-k)*s.spread.dot(s.spread) + k*(out/l)*(out/l)
	}
	return g, growth
}

const (
	// settled is when a place on a segment counts as found, as a part of its
	// length: the distance there is then good to the square of it.
	settled = 1e-13
	// mostSteps ends the search for a place; bisecting alone would need 44.
	mostSteps = 100
)

// nearest gives the t of the point nearest to the cylinder.
func (s *byAxis) nearest() float64 {
	lo, hi := 0.0, 1.0
	if g, _ := s.slope(lo); g >= 0 {
		return 0
	}
	if g, _ := s.slope(hi); g <= 0 {
		return 1
	}
	t := 0.5
	for range mostSteps {
		g, growth := s.slope(t)
		if g < 0 {
			lo = t
		} else {
			hi = t
		}
		next := t - g/growth
		if !(next > lo && next < hi) { // growth may be 0
			next = (lo + hi) / 2
		}
		if math.Abs(next-t) <= settled {
			return next
		}
		t = next
	}
	return t
}
