package clear

// segSeg is the distance between the segments ab and cd: Ericson, Real-Time
// Collision Detection (2005), section 5.1.9, with |d1×d2|² for the
// determinant, which keeps its digits for segments all but parallel.
func segSeg(a, b, c, d v3) near {
	d1, d2, r := b.sub(a), d.sub(c), a.sub(c)
	l1, l2, f := d1.dot(d1), d2.dot(d2), d2.dot(r)
	if l1 == 0 || l2 == 0 {
		return pointSeg(a, b, c, d, l1 == 0)
	}
	cross, g, h := d1.cross(d2), d1.dot(d2), d1.dot(r)
	s := 0.0
	if det := cross.dot(cross); det > 0 {
		s = between((g*f-h*l2)/det, 0, 1)
	}
	t := (g*s + f) / l2
	if t < 0 || t > 1 {
		t = between(t, 0, 1)
		s = between((g*t-h)/l1, 0, 1)
	}
	return spanned(a.plus(s, d1), c.plus(t, d2))
}

// pointSeg is segSeg where one of the segments, the first or the second, is a point.
func pointSeg(a, b, c, d v3, first bool) near {
	if first {
		p, _ := onSegment(a, c, d)
		return spanned(a, p)
	}
	p, _ := onSegment(c, a, b)
	return spanned(p, c)
}
