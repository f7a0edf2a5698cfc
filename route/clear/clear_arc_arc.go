package clear

import "math"

// arcArc is the distance between two arcs' centrelines.
//
// Where it is reached inside both, the place on the first is a dip of its
// distance to the whole circle of the second; else an end is one of the two
// places. The ends are measured outright. Of the dips, which have no closed
// form (their places are the roots of an equation of the eighth degree: Eberly,
// Distance to Circles in 3D, 2015), the least is found by branch and bound over
// stretches of the first arc. Like [arcCore] it is never too large and less than
// ChordError too small.
func arcArc(a, b *ring, enough float64) near {
	best := nearer(nearer(endTo(a, b, 0), endTo(a, b, 1)), nearer(endTo(b, a, 0), endTo(b, a, 1)).swapped())
	if best.d <= touch || best.d < enough {
		return best.met()
	}
	s := bowOf(a, b)
	low := s.search(&best, enough)
	best = best.met()
	best.d = min(best.d, low)
	return best
}

// met says that cores this near meet.
func (n near) met() near {
	if n.d <= touch {
		return near{meet: true}
	}
	return n
}

// endTo is the distance of an arc's first or last point to another arc.
func endTo(a, b *ring, end int) near {
	p := a.c.plus(a.bend, [2]v3{a.u, a.last}[end])
	return spanned(p, b.nearest(p))
}

// bowOf is an arc in the frame of another's circle.
func bowOf(a, b *ring) bow {
	w := a.c.sub(b.c)
	s := bow{arc: a, round: b, c: b.see(w), u: b.see(a.u.mul(a.bend)), v: b.see(a.v.mul(a.bend))}
	s.swayY = math.Hypot(s.u.y, s.v.y)
	s.swayE = math.Hypot(b.past(s.u.x, s.u.y), b.past(s.v.x, s.v.y))
	s.steep = 2*a.bend*math.Hypot(w.dot(a.u), w.dot(a.v)) + 2*b.bend*s.bulge()
	return s
}

// bulge bounds how fast the growth of the arc's distance r from the circle's
// axis falls with the angle. Seen along the axis the arc is part of an ellipse
// about a point at off from the axis: p = off + e, e″ = −e. So r″ is
// (p·p″)/r + (p×p′)²/r³, of which the second is not negative and the first not
// below −wide, the longer half axis. About the axis itself, where r hardly
// changes, the second takes the first away.
func (s *bow) bulge() float64 {
	off := math.Hypot(s.c.x, s.c.y)
	uu, vv, uv := s.u.x*s.u.x+s.u.y*s.u.y, s.v.x*s.v.x+s.v.y*s.v.y, s.u.x*s.v.x+s.u.y*s.v.y
	half := math.Hypot((uu-vv)/2, uv)
	wide, narrow := math.Sqrt((uu+vv)/2+half), math.Sqrt(max(0, (uu+vv)/2-half))
	far, swept := wide+off, wide*max(0, narrow-off)
	if far <= 0 {
		return 0
	}
	return max(0, min(wide, far+off-swept*swept/(far*far*far)))
}
