package clear

import "math"

// drumDrum is the distance between two solid cylinders.
//
// Apart, the nearest places are both on the round sides (the axes' common
// perpendicular), or one is inside a flat end (then the other's is the one
// farthest against it), or one is on a rim. As with [boxDrum] the least of
// these is proven by the plane between its points.
func drumDrum(a, b *drum, enough float64) near {
	if a.z.cross(b.z).len() <= parallel {
		return drumsInLine(a, b)
	}
	best := sides(a, b)
	if enough > 0 {
		if low := atLeast(a, b); low >= enough {
			return near{d: low}
		}
	}
	for _, sign := range [2]float64{-1, 1} {
		x, y := b.far(a.z.mul(sign)), a.far(b.z.mul(sign))
		best = nearer(best, spanned(a.nearest(x), x))
		best = nearer(best, spanned(y, b.nearest(y)))
	}
	if best.d < enough {
		return best
	}
	best = nearer(best, rims(a, b, best.d))
	best = nearer(best, rims(b, a, best.d).swapped())
	return best.proven(gapBetween(a, b, best.way()))
}

// gapBetween is the gap between two cylinders along a unit direction from the
// first to the second.
func gapBetween(a, b *drum, u v3) float64 { return -b.reach(u.mul(-1)) - a.reach(u) }

// sides is the distance of the round sides along the axes' common perpendicular,
// given by points of the two cylinders, so never too small.
func sides(a, b *drum) near {
	n := axes(a, b)
	if n.d <= a.r+b.r { // axes nearer than the radii: let the other places speak
		return near{d: math.Inf(1)}
	}
	u := n.way()
	return spanned(a.nearest(n.a.plus(a.r, u)), b.nearest(n.b.plus(-b.r, u)))
}

// atLeast is a distance two cylinders surely have: along either axis, and
// between rods about the axes.
func atLeast(a, b *drum) float64 {
	low := axes(a, b).d - a.r - b.r
	for _, z := range [2]v3{a.z, b.z} {
		low = max(low, gapBetween(a, b, z), gapBetween(a, b, z.mul(-1)))
	}
	return low
}

// axes is the distance of the axes.
func axes(a, b *drum) near {
	p, q := a.ends()
	r, s := b.ends()
	return segSeg(p, q, r, s)
}

// rims is the least distance from the rims of a to b, where it is below most.
func rims(a, b *drum, most float64) near {
	best := near{d: most}
	p, q := a.ends()
	for _, centre := range [2]v3{p, q} {
		if centre.sub(b.nearest(centre)).len()-a.r < best.d {
			best = nearer(best, rimDrum(centre, a.z, a.r, b))
		}
	}
	return best
}

// drumsInLine is the distance between cylinders whose axes are parallel.
func drumsInLine(a, b *drum) near {
	w := b.c.sub(a.c)
	along := a.z.dot(w)
	side := w.plus(-along, a.z)
	off := side.len()
	up, out := math.Abs(along)-a.h-b.h, off-a.r-b.r
	if up <= 0 && out <= 0 {
		return near{meet: true}
	}
	// The points: in line with the middle of what both cover, along and aside.
	x := a.c.plus(shared(-a.h, a.h, along-b.h, along+b.h), a.z)
	if off > touch {
		x = x.plus(shared(-a.r, a.r, off-b.r, off+b.r)/off, side)
	}
	return spanned(x, b.nearest(x))
}

// shared is the middle of what two intervals share, or the place of the first
// nearest to the second.
func shared(alo, ahi, blo, bhi float64) float64 {
	if blo > ahi {
		return ahi
	}
	if bhi < alo {
		return alo
	}
	return (max(alo, blo) + min(ahi, bhi)) / 2
}
