package clear

// segArc is the distance between a segment and an arc's centreline, by the
// method of [arcArc].
func segArc(p, q v3, r *ring, enough float64) near {
	best := nearer(spanned(p, r.nearest(p)), spanned(q, r.nearest(q)))
	for _, end := range [2]v3{r.u, r.last} {
		x := r.c.plus(r.bend, end)
		y, _ := onSegment(x, p, q)
		best = nearer(best, spanned(y, x))
	}
	if best.d <= touch || best.d < enough {
		return best.met()
	}
	s := segmentBow(p, q, r)
	low := s.search(&best, enough)
	best = best.met()
	best.d = min(best.d, low)
	return best
}

// segmentBow is a segment in the frame of a circle. Its distance from the
// circle's axis is convex, so the squared distance to the circle grows no
// faster than that to a point.
func segmentBow(p, q v3, r *ring) bow {
	s := bow{round: r, c: r.see(p.sub(r.c)), v: r.see(q.sub(p))}
	s.steep = 2 * s.v.dot(s.v)
	return s
}
