package trial

import (
	"math"

	"tubewright/bends"
)

const perDegree = math.Pi / 180

func hypot(a, b float64) float64 { return math.Hypot(a, b) }

// The readings of a bend that errors sit in, in this order.
const (
	leg1 = iota
	leg2
	length // between the points measured from
	former // degrees
	kept   // degrees
	readings
)

// reading is a vector of a bend's readings, mm and degrees.
type reading [readings]float64

func (b Bend) reading() reading { return reading{b.Legs[0], b.Legs[1], b.length(), b.Former, b.After} }

// variances of a bend's readings.
func (s Sigmas) variances() reading {
	l := s.Length * s.Length
	return reading{l, l, l, s.Turn * s.Turn, s.Angle * s.Angle}
}

// The unknowns, in this order: the radius in mm, the springback at the mean turn
// in degrees, and by how much it grows with each degree of turn.
const (
	radius = iota
	opened
	growth
	unknowns
)

type params [unknowns]float64

// law is how springback goes with the turn.
type law struct {
	middle float64 // mean turn of the bends, degrees
	told   bool    // growth is an unknown of its own
	fixed  float64 // else: the part of the springback at the middle that is fixed
}

// back is how much longer a leg to the back of a bend is, mm.
func back(od, turn float64) float64 { return bends.Setback(od/2, turn) }

// gains is the gain of a bend of radius 1: 2·tan(a/2) − a.
func gains(turn float64) float64 { return bends.Gain(1, turn) }

// springback in degrees of a bend of this turn.
func (l law) springback(p params, turn float64) float64 {
	return p[opened] + p[growth]*(turn-l.middle)
}

// tied gives growth the value that the split asks for where it is no unknown.
func (l law) tied(p params) params {
	if !l.told {
		p[growth] = p[opened] * (1 - l.fixed) / l.middle
	}
	return p
}

// condition is one equation of a bend: its value at some readings, which is 0
// when they agree, and how it goes with readings and unknowns.
type condition struct {
	value float64
	by    reading
	with  params
}

// lengths is the equation of the gain.
func (b Bend) lengths(od float64, x reading, p params) condition {
	a := x[kept]
	half := math.Tan(a / 2 * perDegree)
	c := condition{by: reading{1, 1, -1}}
	c.value = x[leg1] + x[leg2] - x[length] - p[radius]*gains(a)
	c.by[kept] = -p[radius] * half * half * perDegree
	c.with[radius] = -gains(a)
	if b.toBack() {
		c.value -= 2 * back(od, a)
		c.by[kept] -= od / 2 * (1 + half*half) * perDegree
	}
	return c
}

// opening is the equation of the springback.
func (l law) opening(x reading, p params) condition {
	a := x[kept]
	c := condition{value: x[former] - a - l.springback(p, a), with: params{opened: -1, growth: l.middle - a}}
	c.by[former], c.by[kept] = 1, -1-p[growth]
	if !l.told {
		c.with = params{opened: -1 - (1-l.fixed)/l.middle*(a-l.middle)}
	}
	return c
}
