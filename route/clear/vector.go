package clear

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// v3 is a vector for the sums inside. mgl64.Vec3 is an array, which the
// compiler keeps in memory; a struct it keeps in registers, several times as fast.
type v3 struct{ x, y, z float64 }

func from(v mgl64.Vec3) v3 { return v3{v[0], v[1], v[2]} }

func (v v3) vec() mgl64.Vec3 { return mgl64.Vec3{v.x, v.y, v.z} }

func (v v3) add(w v3) v3 { return v3{v.x + w.x, v.y + w.y, v.z + w.z} }

func (v v3) sub(w v3) v3 { return v3{v.x - w.x, v.y - w.y, v.z - w.z} }

func (v v3) mul(k float64) v3 { return v3{v.x * k, v.y * k, v.z * k} }

// plus is v + k·w.
func (v v3) plus(k float64, w v3) v3 { return v3{v.x + k*w.x, v.y + k*w.y, v.z + k*w.z} }

func (v v3) dot(w v3) float64 { return v.x*w.x + v.y*w.y + v.z*w.z }

func (v v3) cross(w v3) v3 {
	return v3{v.y*w.z - v.z*w.y, v.z*w.x - v.x*w.z, v.x*w.y - v.y*w.x}
}

func (v v3) len() float64 { return math.Sqrt(v.dot(v)) }

// unit is v made one long; it must not be zero.
func (v v3) unit() v3 { return v.mul(1 / v.len()) }

// square is a unit direction square to a unit direction.
func (v v3) square() v3 {
	e := v3{1, 0, 0}
	if math.Abs(v.x) > 0.6 { // the least part of a unit vector is at most 1/√3 = 0.577
		e = v3{0, 1, 0}
	}
	return v.cross(e).unit()
}

// block is a Box as it is measured.
type block struct {
	c    v3
	axis [3]v3
	half [3]float64
}

func (b *Box) block() block {
	return block{
		from(b.Centre),
		[3]v3{{b.Axes[0], b.Axes[1], b.Axes[2]}, {b.Axes[3], b.Axes[4], b.Axes[5]}, {b.Axes[6], b.Axes[7], b.Axes[8]}},
		b.Half,
	}
}

// drum is a Cylinder as it is measured: centre, unit axis, half length, radius.
// A cylinder of no length has no direction: it is taken as its centre point.
type drum struct {
	c, z v3
	h, r float64
}

func (c *Cylinder) drum() drum {
	p, q := from(c.From), from(c.To)
	axis, centre := q.sub(p), p.add(q).mul(0.5)
	l := axis.len()
	if l <= touch {
		return drum{c: centre, z: v3{0, 0, 1}}
	}
	return drum{centre, axis.mul(1 / l), l / 2, c.Radius}
}

// ends are the ends of the axis.
func (d *drum) ends() (p, q v3) { return d.c.plus(-d.h, d.z), d.c.plus(d.h, d.z) }

// ring is an Arc as it is measured.
type ring struct {
	c, u, v     v3
	bend, angle float64 // angle in radians
	last        v3      // unit direction from the centre to the last point
	sin, cos    float64 // of the angle
}

func (a *Arc) ring() ring {
	r := ring{c: from(a.Centre), u: from(a.U), v: from(a.V), bend: a.Bend, angle: mgl64.DegToRad(a.Turn)}
	r.sin, r.cos = math.Sincos(r.angle)
	r.last = r.u.mul(r.cos).plus(r.sin, r.v)
	return r
}

// dir is the unit direction from the centre to the point at an angle in radians.
func (r *ring) dir(angle float64) v3 {
	s, c := math.Sincos(angle)
	return r.u.mul(c).plus(s, r.v)
}

// past says, by its sign, on which side of the line from the centre through the
// last point the direction x·u + y·v lies: not below 0 on the arc's side.
func (r *ring) past(x, y float64) float64 { return r.sin*x - r.cos*y }

// outside reports whether a direction is outside the arc's sector, from whether
// it lies below the first and past the last of the two lines that bound it: for
// an arc of more than half a circle it must do both.
func (r *ring) outside(below, past bool) bool {
	if r.angle <= math.Pi {
		return below || past
	}
	return below && past
}

// covers reports whether the arc passes through the direction x·u + y·v.
func (r *ring) covers(x, y float64) bool { return !r.outside(y < 0, r.past(x, y) < 0) }
