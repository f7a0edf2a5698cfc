package clear

import "github.com/go-gl/mathgl/mgl64"

// segSeg is the distance between the segments ab and cd: Ericson, Real-Time
// Collision Detection (2005), section 5.1.9, with |d1×d2|² for the
// determinant, which keeps its digits for segments all but parallel.
func segSeg(a, b, c, d mgl64.Vec3) near {
	d1, d2, r := b.Sub(a), d.Sub(c), a.Sub(c)
	l1, l2, f := d1.Dot(d1), d2.Dot(d2), d2.Dot(r)
	if l1 == 0 || l2 == 0 {
		return pointSeg(a, b, c, d, l1 == 0)
	}
	cross, g, h := d1.Cross(d2), d1.Dot(d2), d1.Dot(r)
	s := 0.0
	if det := cross.Dot(cross); det > 0 {
		s = mgl64.Clamp((g*f-h*l2)/det, 0, 1)
	}
	t := (g*s + f) / l2
	if t < 0 || t > 1 {
		t = mgl64.Clamp(t, 0, 1)
		s = mgl64.Clamp((g*t-h)/l1, 0, 1)
	}
	return spanned(a.Add(d1.Mul(s)), c.Add(d2.Mul(t)))
}

// pointSeg is segSeg where one of the segments, the first or the second, is a point.
func pointSeg(a, b, c, d mgl64.Vec3, first bool) near {
	if first {
		p, _ := onSegment(a, c, d)
		return spanned(a, p)
	}
	p, _ := onSegment(c, a, b)
	return spanned(p, c)
}
