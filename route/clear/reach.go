package clear

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// Along is how far the first shape must move in a unit direction until it lies
// wholly past the second; below zero when it does already. The least of this
// over all directions is the depth of two convex shapes that overlap. An arc
// counts with its hull.
func Along(a, b Shape, way mgl64.Vec3) float64 {
	u := from(way)
	return reach(b, u) + reach(a, u.mul(-1))
}

const (
	// left is how near to clear counts as clear, mm.
	left = 1e-7
	// mostLeaving ends the search of [Leave]; Newton's steps double the digits.
	mostLeaving = 60
)

// Leave is how far the first of two shapes must move in a unit direction until
// it stands clear of the second and stays so, or 0 when it meets nothing on its
// way. Where faces stand aslant that is less than [Along]. For an arc, which
// could leave twice, it is the last time.
func Leave(a, b Shape, way mgl64.Vec3) float64 {
	at := Along(a, b, way)
	for range mostLeaving {
		if at <= 0 {
			return 0
		}
		g := Between(Moved(a, way.Mul(at)), b)
		if g.Distance <= left {
			return at
		}
		// The distance of convex shapes is a convex function of the way gone, so
		// its tangent never leads too far back; an arc's never grows faster than 1.
		slope := g.Out().Dot(way)
		if _, arc := b.(Arc); arc || rank(a) == isArc {
			slope = 1
		}
		if slope <= parallel {
			return 0
		}
		at -= g.Distance / slope
	}
	return at
}

// reach is how far a shape reaches in a unit direction from the origin: its
// support function; an arc's is that of its hull.
func reach(s Shape, u v3) float64 {
	switch s := s.(type) {
	case Rod:
		return max(from(s.From).dot(u), from(s.To).dot(u)) + s.Radius
	case Box:
		b := s.block()
		return b.reach(u)
	case Cylinder:
		d := s.drum()
		return d.reach(u)
	case Arc:
		r := s.ring()
		return r.reach(u) + s.Radius
	}
	panic(foreign(s))
}

func (b *block) reach(u v3) float64 { return b.c.dot(u) + b.halfAlong(u) }

// halfAlong is half the width of the block along a unit direction.
func (b *block) halfAlong(u v3) float64 {
	return b.half[0]*math.Abs(b.axis[0].dot(u)) + b.half[1]*math.Abs(b.axis[1].dot(u)) + b.half[2]*math.Abs(b.axis[2].dot(u))
}

func (d *drum) reach(u v3) float64 {
	return d.c.dot(u) + d.h*math.Abs(d.z.dot(u)) + d.r*d.z.cross(u).len()
}

// far is a point of the drum farthest in a unit direction.
func (d *drum) far(u v3) v3 {
	along := d.z.dot(u)
	p := d.c.plus(math.Copysign(d.h, along), d.z)
	side := u.plus(-along, d.z)
	if l := side.len(); l > touch {
		p = p.plus(d.r/l, side)
	}
	return p
}

func (r *ring) reach(u v3) float64 {
	x, y := r.u.dot(u), r.v.dot(u)
	far := max(x, r.last.dot(u))
	if r.covers(x, y) {
		far = math.Hypot(x, y)
	}
	return r.c.dot(u) + r.bend*far
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
	case Arc:
		s.Centre = s.Centre.Add(by)
		return s
	}
	panic(foreign(s))
}
