package find

import (
	"math"
	"slices"
)

// skewSpan is the stretch of the line through a point along an axis on which a
// centreline comes too near to a box that stands askew; false when it nowhere
// does. Along the line the box's own coordinates grow evenly, and the square of
// the distance is the sum of the squares by which they lie beyond its faces:
// between the places where they pass a face that is one parabola, and all in all
// it is convex.
func (w *wall) skewSpan(at vec, axis int) (lo, hi float64, ok bool) {
	b := w.body
	d := at.Sub(b.centre)
	d[axis] = -b.centre[axis]
	var from, slope vec
	for j, u := range [3]*vec{&b.u, &b.v, &b.w} {
		from[j], slope[j] = d.Dot(*u), u[axis]
	}
	var cuts [8]float64
	n := 1
	cuts[0] = math.Inf(-1)
	for j := range slope {
		if math.Abs(slope[j]) > sameWay {
			cuts[n], cuts[n+1] = (b.half[j]-from[j])/slope[j], (-b.half[j]-from[j])/slope[j]
			n += 2
		}
	}
	slices.Sort(cuts[1:n])
	cuts[n] = math.Inf(1)
	lo, hi = math.Inf(1), math.Inf(-1)
	for k := range n {
		p := parabolaBetween(&from, &slope, &b.half, cuts[k], cuts[k+1])
		if first, last, deep := p.below(w.keep-sameSpot, w.keep, cuts[k], cuts[k+1]); deep || first < last {
			lo, hi, ok = min(lo, first), max(hi, last), ok || deep
		}
	}
	return lo, hi, ok
}

// parabola is a·x² + 2·b·x + c.
type parabola struct{ a, b, c float64 }

// parabolaBetween is the square of the distance from a box between two places of a
// line between which no coordinate passes a face.
func parabolaBetween(from, slope, half *vec, lo, hi float64) (p parabola) {
	x := amidst(lo, hi)
	for j := range from {
		beyond := from[j] + slope[j]*x
		if math.Abs(beyond) <= half[j] {
			continue
		}
		e := from[j] - math.Copysign(half[j], beyond)
		p.a, p.b, p.c = p.a+slope[j]*slope[j], p.b+slope[j]*e, p.c+e*e
	}
	return p
}

// amidst is a place between two, of which either may be infinitely far.
func amidst(lo, hi float64) float64 {
	switch {
	case math.IsInf(lo, -1) && math.IsInf(hi, 1):
		return 0
	case math.IsInf(lo, -1):
		return hi - 1
	case math.IsInf(hi, 1):
		return lo + 1
	}
	return (lo + hi) / 2
}

// below gives where between two places the parabola is the square of less than a
// distance, and whether it comes down to less than another there.
func (p *parabola) below(deep, keep, lo, hi float64) (first, last float64, isDeep bool) {
	if p.a <= sameWay*sameWay { // all the same
		if p.c >= keep*keep {
			return 0, 0, false
		}
		return lo, hi, p.c < deep*deep
	}
	mid := -p.b / p.a
	root := mid*mid - (p.c-keep*keep)/p.a
	if root <= 0 {
		return 0, 0, false
	}
	half := math.Sqrt(root)
	first, last = max(lo, mid-half), min(hi, mid+half)
	if first >= last {
		return 0, 0, false
	}
	least := min(max(mid, lo), hi)
	return first, last, p.a*least*least+2*p.b*least+p.c < deep*deep
}
