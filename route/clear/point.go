package clear

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// onSegment is the point of the segment pq nearest to x and how far along it
// lies, 0 to 1.
func onSegment(x, p, q mgl64.Vec3) (mgl64.Vec3, float64) {
	d := q.Sub(p)
	l2 := d.Dot(d)
	if l2 == 0 {
		return p, 0
	}
	t := mgl64.Clamp(x.Sub(p).Dot(d)/l2, 0, 1)
	return p.Add(d.Mul(t)), t
}

// inBox is the point of the block nearest to x.
func inBox(x mgl64.Vec3, b Box) mgl64.Vec3 {
	w := x.Sub(b.Centre)
	p := b.Centre
	for i := range 3 {
		axis := b.Axes.Col(i)
		p = p.Add(axis.Mul(mgl64.Clamp(axis.Dot(w), -b.Half[i], b.Half[i])))
	}
	return p
}

// inDrum is the point of the cylinder nearest to x.
func inDrum(x mgl64.Vec3, d drum) mgl64.Vec3 {
	w := x.Sub(d.c)
	along := d.z.Dot(w)
	side := w.Sub(d.z.Mul(along))
	if l := side.Len(); l > d.r {
		side = side.Mul(d.r / l)
	}
	return d.c.Add(d.z.Mul(mgl64.Clamp(along, -d.h, d.h))).Add(side)
}

// inCore is the point of a convex shape's core nearest to x.
func inCore(x mgl64.Vec3, s Shape) mgl64.Vec3 {
	switch s := s.(type) {
	case Rod:
		p, _ := onSegment(x, s.From, s.To)
		return p
	case Box:
		return inBox(x, s)
	}
	return inDrum(x, s.(Cylinder).drum())
}

// onArc is the point of the arc's centreline nearest to x.
func onArc(x mgl64.Vec3, a Arc) mgl64.Vec3 {
	w := x.Sub(a.Centre)
	u, v := a.U.Dot(w), a.V.Dot(w)
	if l := math.Hypot(u, v); l > touch && a.covers(u, v) {
		return a.Centre.Add(a.U.Mul(a.Bend * u / l)).Add(a.V.Mul(a.Bend * v / l))
	}
	from, to := a.Centre.Add(a.U.Mul(a.Bend)), a.Centre.Add(a.dir(a.Turn).Mul(a.Bend))
	if x.Sub(from).Len() <= x.Sub(to).Len() {
		return from
	}
	return to
}

// spanned is the answer for two points known to be nearest.
func spanned(a, b mgl64.Vec3) near {
	d := b.Sub(a).Len()
	return near{d, a, b, d <= touch}
}

// nearer keeps the nearer of two answers; the first on a tie.
func nearer(a, b near) near {
	if b.d < a.d {
		return b
	}
	return a
}
