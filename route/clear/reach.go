package clear

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// solid is what every shape of this package can do besides Bounds: say how far
// it reaches in a unit direction (its support function; an arc's is that of
// its hull).
type solid interface{ reach(u mgl64.Vec3) float64 }

// Along is how far the first shape must move in a unit direction until it lies
// wholly past the second; below zero when it does already. The least of this
// over all directions is the depth of two convex shapes that overlap.
func Along(a, b Shape, way mgl64.Vec3) float64 {
	return b.(solid).reach(way) + a.(solid).reach(way.Mul(-1))
}

// Moved is a shape moved by a vector.
func Moved(s Shape, by mgl64.Vec3) Shape {
	switch s := s.(type) {
	case Box:
		s.Centre = s.Centre.Add(by)
		return s
	case Cylinder:
		s.From, s.To = s.From.Add(by), s.To.Add(by)
		return s
	case Rod:
		s.From, s.To = s.From.Add(by), s.To.Add(by)
		return s
	}
	arc := s.(Arc)
	arc.Centre = arc.Centre.Add(by)
	return arc
}

func (b Box) reach(u mgl64.Vec3) float64 {
	return b.Centre.Dot(u) + b.half(u)
}

// half is half the width of the block along a unit direction.
func (b *Box) half(u mgl64.Vec3) float64 {
	return b.Half[0]*math.Abs(b.Axes[0]*u[0]+b.Axes[1]*u[1]+b.Axes[2]*u[2]) +
		b.Half[1]*math.Abs(b.Axes[3]*u[0]+b.Axes[4]*u[1]+b.Axes[5]*u[2]) +
		b.Half[2]*math.Abs(b.Axes[6]*u[0]+b.Axes[7]*u[1]+b.Axes[8]*u[2])
}

func (c Cylinder) reach(u mgl64.Vec3) float64 { return c.drum().reach(u) }

func (d drum) reach(u mgl64.Vec3) float64 {
	return d.c.Dot(u) + d.h*math.Abs(d.z.Dot(u)) + d.r*d.z.Cross(u).Len()
}

func (r Rod) reach(u mgl64.Vec3) float64 {
	return max(r.From.Dot(u), r.To.Dot(u)) + r.Radius
}

func (a Arc) reach(u mgl64.Vec3) float64 {
	x, y := a.U.Dot(u), a.V.Dot(u)
	far := max(x, a.dir(a.Turn).Dot(u))
	if a.covers(x, y) {
		far = math.Hypot(x, y)
	}
	return a.Centre.Dot(u) + a.Bend*far + a.Radius
}

// dir is the unit direction from the centre to the arc's point at an angle in degrees.
func (a Arc) dir(angle float64) mgl64.Vec3 {
	s, c := math.Sincos(mgl64.DegToRad(angle))
	return a.U.Mul(c).Add(a.V.Mul(s))
}

// covers reports whether the arc passes through the direction x·U + y·V.
func (a Arc) covers(x, y float64) bool {
	angle := mgl64.RadToDeg(math.Atan2(y, x))
	if angle < 0 {
		angle += 360
	}
	return angle <= a.Turn
}

// drum is a cylinder as it is measured: centre, unit axis, half length, radius.
// A cylinder of no length has no direction: it is taken as its centre point.
type drum struct {
	c, z mgl64.Vec3
	h, r float64
}

func (c Cylinder) drum() drum {
	axis := c.To.Sub(c.From)
	l := axis.Len()
	centre := c.From.Add(c.To).Mul(0.5)
	if l <= touch {
		return drum{c: centre, z: mgl64.Vec3{0, 0, 1}}
	}
	return drum{centre, axis.Mul(1 / l), l / 2, c.Radius}
}

// ends are the ends of the axis.
func (d drum) ends() (p, q mgl64.Vec3) {
	v := d.z.Mul(d.h)
	return d.c.Sub(v), d.c.Add(v)
}

// far is a point of the drum farthest in a unit direction.
func (d drum) far(u mgl64.Vec3) mgl64.Vec3 {
	along := d.z.Dot(u)
	p := d.c.Add(d.z.Mul(math.Copysign(d.h, along)))
	side := u.Sub(d.z.Mul(along))
	if l := side.Len(); l > touch {
		p = p.Add(side.Mul(d.r / l))
	}
	return p
}
