package clear

import "math"

// onSegment is the point of the segment pq nearest to x and how far along it
// lies, 0 to 1.
func onSegment(x, p, q v3) (v3, float64) {
	d := q.sub(p)
	l2 := d.dot(d)
	if l2 == 0 {
		return p, 0
	}
	t := between(x.sub(p).dot(d)/l2, 0, 1)
	return p.plus(t, d), t
}

func between(x, lo, hi float64) float64 { return max(lo, min(hi, x)) }

// nearest is the point of the block nearest to x.
func (b *block) nearest(x v3) v3 {
	w := x.sub(b.c)
	p := b.c
	for i := range 3 {
		p = p.plus(between(b.axis[i].dot(w), -b.half[i], b.half[i]), b.axis[i])
	}
	return p
}

// nearest is the point of the cylinder nearest to x.
func (d *drum) nearest(x v3) v3 {
	w := x.sub(d.c)
	along := d.z.dot(w)
	side := w.plus(-along, d.z)
	k := 1.0
	if l := side.len(); l > d.r {
		k = d.r / l
	}
	return d.c.plus(between(along, -d.h, d.h), d.z).plus(k, side)
}

// nearest is the point of the arc's centreline nearest to x.
func (r *ring) nearest(x v3) v3 {
	w := x.sub(r.c)
	u, v := r.u.dot(w), r.v.dot(w)
	if l := math.Sqrt(u*u + v*v); l > touch && r.covers(u, v) {
		return r.c.plus(r.bend*u/l, r.u).plus(r.bend*v/l, r.v)
	}
	first, last := r.c.plus(r.bend, r.u), r.c.plus(r.bend, r.last)
	if x.sub(first).len() <= x.sub(last).len() {
		return first
	}
	return last
}
