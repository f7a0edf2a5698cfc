package find

import "math"

// Bars that lie along an axis of the frame are measured in closed form: fittings
// and straights mostly do.

// barAxis is the axis a bar lies along; −1 of what is no bar, or lies aslant.
func (b *body) barAxis() int {
	if b.kind != roundBar && b.kind != flatBar {
		return -1
	}
	if d := axisOf(b.w); d >= 0 {
		return d / 2
	}
	return -1
}

// barSpan is how far to either side of the middle of a bar, which lies along one
// axis, a centreline along another or the same comes too near to it; false when
// it nowhere does.
func (w *wall) barSpan(at vec, axis int) (half float64, ok bool) {
	b := w.body
	if axis == b.along {
		u, v := (axis+1)%3, (axis+2)%3
		past, ok := b.tooNear(math.Hypot(at[u]-b.centre[u], at[v]-b.centre[v]), w.keep)
		return b.half[2] + past, ok
	}
	third := 3 - axis - b.along
	past := over(at[b.along]-b.centre[b.along], b.half[2])
	reach := b.reach(past, w.keep)
	beside := math.Abs(at[third] - b.centre[third])
	if reach-beside <= sameSpot {
		return 0, false
	}
	return math.Sqrt(reach*reach - beside*beside), true
}

// tooNear is how far past a bar's end a point so far from its axis comes too near;
// false when it is far enough even beside the bar.
func (b *body) tooNear(out, keep float64) (past float64, ok bool) {
	if b.kind == flatBar {
		out = max(0, out-b.radius)
	} else {
		keep += b.radius
	}
	if keep-out <= sameSpot {
		return 0, false
	}
	return math.Sqrt(keep*keep - out*out), true
}

// reach is how far from a bar's axis a point so far past its end must keep; 0 when
// it may be anywhere.
func (b *body) reach(past, keep float64) float64 {
	whole := keep
	if b.kind == roundBar {
		whole += b.radius
	}
	if past >= whole-sameSpot {
		return 0
	}
	reach := math.Sqrt(whole*whole - past*past)
	if b.kind == flatBar {
		reach += b.radius
	}
	return reach
}

// barClear reports whether a quarter circle, in the plane of two axes and about a
// centre, keeps its distance from a bar; sure is false where that does not follow
// in closed form.
func (w *wall) barClear(centre, from, to vec, u, v int, radius float64) (clear, sure bool) {
	b := w.body
	third := 3 - u - v
	if b.along == third {
		past := over(centre[third]-b.centre[third], b.half[2])
		gap := w.pointGap(centre, from, to, u, v, radius)
		return gap >= b.reach(past, w.keep)-sameSpot, true
	}
	// seen along the third axis the bar is a stretch of a line
	var lo, hi vec
	lo, hi = b.centre, b.centre
	lo[b.along], hi[b.along] = lo[b.along]-b.half[2], hi[b.along]+b.half[2]
	axle := wall{lo: lo, hi: hi}
	gap := axle.cornerGap(centre, from, to, u, v, radius)
	clear = gap >= w.keep+b.radius-sameSpot
	return clear, clear || b.kind == roundBar
}

// pointGap is the distance, in the plane of two axes, from a bar's middle to a
// quarter circle.
func (w *wall) pointGap(centre, from, to vec, u, v int, radius float64) float64 {
	p := &w.body.centre
	axle := wall{lo: *p, hi: *p}
	flat := centre
	flat[3-u-v] = p[3-u-v]
	return axle.cornerGap(flat, from, to, u, v, radius)
}
