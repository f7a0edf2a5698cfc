package clear

import "math"

// bow is an arc or a segment in the frame of a circle that carries another arc;
// z is off the circle's plane. An arc's point in the direction d from its
// centre is c + d.x·u + d.y·v, a segment's point at d.y, 0 to 1, is c + d.y·v.
type bow struct {
	arc     *ring // nil: a segment
	round   *ring
	c, u, v v3
	// steep bounds how fast the growth of the squared distance to the circle
	// changes with the angle; swayY and swayE that of the two tests of the sector.
	steep, swayY, swayE float64
}

// dir2 is a place on a bow: a unit direction, or of a segment y alone.
type dir2 struct{ x, y float64 }

// see is a vector in the frame of a circle.
func (r *ring) see(p v3) v3 { return v3{p.dot(r.u), p.dot(r.v), p.dot(r.u.cross(r.v))} }

// middle is the place midway between two.
func (s *bow) middle(d, e dir2) dir2 {
	x, y := d.x+e.x, d.y+e.y
	if s.arc == nil {
		return dir2{0, y / 2}
	}
	k := 1 / math.Sqrt(x*x+y*y)
	return dir2{x * k, y * k}
}

// on is a place moved on by an angle, or a part of the segment, and whether the
// bow reaches there.
func (s *bow) on(d dir2, by float64) (dir2, bool) {
	if s.arc == nil {
		y := d.y + by
		return dir2{0, y}, y >= 0 && y <= 1
	}
	sin, cos := math.Sincos(by)
	next := dir2{d.x*cos - d.y*sin, d.y*cos + d.x*sin}
	return next, s.arc.covers(next.x, next.y)
}

// grow is how a place moves with the angle and how that changes.
func (s *bow) grow(d dir2) (t, q v3) {
	if s.arc == nil {
		return s.v, v3{}
	}
	return s.v.mul(d.x).plus(-d.y, s.u), s.u.mul(-d.x).plus(-d.y, s.v)
}

// post is a place on the bow, the squared distance to the circle there, and the
// two tests of its arc's sector.
type post struct {
	d       dir2
	h, y, e float64
}

func (s *bow) post(d dir2) post {
	p := s.at(d)
	z, out := p.z, math.Sqrt(p.x*p.x+p.y*p.y)-s.round.bend
	return post{d, out*out + z*z, p.y, s.round.past(p.x, p.y)}
}

func (s *bow) at(d dir2) v3 {
	return v3{s.c.x + d.x*s.u.x + d.y*s.v.x, s.c.y + d.x*s.u.y + d.y*s.v.y, s.c.z + d.x*s.u.z + d.y*s.v.z}
}

// stretch lies between two places of the bow; its angle is 1 for a whole segment.
type stretch struct {
	a, b  post
	angle float64
}

// low is what the squared distance to the circle has at least on a stretch: a
// function whose growth changes no faster than steep lies above the parabola
// through its ends.
func (s *bow) low(t *stretch) float64 {
	sag := s.steep * t.angle * t.angle / 8
	d := math.Abs(t.b.h - t.a.h)
	if d >= 4*sag {
		return min(t.a.h, t.b.h)
	}
	return (t.a.h+t.b.h)/2 - sag - d*d/(16*sag)
}

// aside reports whether the circle's places nearest to a stretch are surely
// none of its arc's.
func (s *bow) aside(t *stretch) bool {
	k := t.angle * t.angle / 8
	y := max(t.a.y, t.b.y)+s.swayY*k < 0
	e := max(t.a.e, t.b.e)+s.swayE*k < 0
	return s.round.outside(y, e)
}

const (
	// widestStretch is what the search starts from, radians.
	widestStretch = math.Pi / 2
	// stretchesOpen is room for the four stretches of a full circle and one for
	// each halving of them; no stretch is worth halving forty times.
	stretchesOpen = 48
	// finest is the angle below which a stretch is not halved, radians: half a
	// nanometre on a bend of a metre.
	finest = 1e-9
)

// search finds the least dip, if below the best, and gives a distance that no
// place of the bow goes below: 0 where the best is as good as that.
func (s *bow) search(best *near, enough float64) float64 {
	var room [stretchesOpen]stretch
	open := s.stretches(room[:0])
	least, sure := best.d*best.d, math.Inf(1)
	for len(open) > 0 {
		if best.d <= leastSag {
			return 0
		}
		top := open[len(open)-1]
		open = open[:len(open)-1]
		low := s.low(&top)
		if low >= square(best.d-leastSag) || enough > 0 && low >= enough*enough || top.angle <= finest {
			sure = min(sure, low)
			continue
		}
		if s.aside(&top) {
			continue
		}
		m := s.post(s.middle(top.a.d, top.b.d))
		if m.h < least && !s.round.outside(m.y < 0, m.e < 0) {
			least = s.settle(m.d, best)
			if best.d < enough {
				return best.d
			}
		}
		left, right := stretch{top.a, m, top.angle / 2}, stretch{m, top.b, top.angle / 2}
		if top.a.h < top.b.h {
			left, right = right, left
		}
		open = append(open, left, right)
	}
	return math.Sqrt(max(0, sure))
}

// square is x² with the sign of x.
func square(x float64) float64 { return x * math.Abs(x) }

// stretches cuts an arc into stretches of at most widestStretch.
func (s *bow) stretches(list []stretch) []stretch {
	if s.arc == nil {
		return append(list, stretch{s.post(dir2{}), s.post(dir2{0, 1}), 1})
	}
	n := max(1, int(math.Ceil(s.arc.angle/widestStretch)))
	a, step := s.post(dir2{1, 0}), s.arc.angle/float64(n)
	for i := range n {
		y, x := math.Sincos(step * float64(i+1))
		b := s.post(dir2{x, y})
		list = append(list, stretch{a, b, step})
		a = b
	}
	return list
}

// dipSteps is how often a place is improved: Newton's steps double the digits.
const dipSteps = 4

// settle follows a place down into its dip, keeps it if it is the best so far,
// and gives the square of the best distance.
func (s *bow) settle(d dir2, best *near) float64 {
	for range dipSteps {
		next, ok := s.newton(d)
		if !ok {
			break
		}
		d = next
	}
	r, p := s.round, s.at(d)
	x := r.c.plus(p.x, r.u).plus(p.y, r.v).plus(p.z, r.u.cross(r.v))
	*best = nearer(*best, spanned(x, r.nearest(x)))
	return best.d * best.d
}

// newton is one step towards the dip of the squared distance to the circle; no
// step where there is none below, or it leads off the arc.
func (s *bow) newton(d dir2) (dir2, bool) {
	p := s.at(d)
	t, q := s.grow(d)
	r := math.Sqrt(p.x*p.x + p.y*p.y)
	if r <= touch {
		return d, false
	}
	rise, twist := (p.x*t.x+p.y*t.y)/r, p.x*t.y-p.y*t.x
	bend := (p.x*q.x+p.y*q.y)/r + twist*twist/(r*r*r)
	slope := (r-s.round.bend)*rise + p.z*t.z
	growth := rise*rise + (r-s.round.bend)*bend + t.z*t.z + p.z*q.z
	if growth <= 0 || math.Abs(slope) > growth*widestStretch/4 {
		return d, false
	}
	next, ok := s.on(d, -slope/growth)
	return next, ok && s.post(next).h < s.post(d).h
}
