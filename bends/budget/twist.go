package budget

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
)

type vec = mgl64.Vec3

const perDegree = math.Pi / 180

// twist is a small screw: what it does to a point of the far stop, and the turn
// in radians.
type twist struct{ shift, turn vec }

// turned is a small turn of 1 radian about a line through a point, seen at another.
func turned(axis, through, at vec) twist { return twist{axis.Cross(at.Sub(through)), axis} }

func shifted(by vec) twist { return twist{shift: by} }

// The components of a miss, in this order: aside in the plane of the bend and
// out of it, askew in it and out of it, and along the tube.
const (
	asideIn = iota
	asideOut
	askewIn
	askewOut
	along
	components
)

// miss is a twist as a socket sees it: mm and radians.
type miss [components]float64

func (m miss) times(s float64) miss {
	for i := range m {
		m[i] *= s
	}
	return m
}

// view is a socket's axes: in the plane of the bend beside it, out of it, and
// the way of the tube.
type view struct{ in, out, way vec }

// sees gives the components of a twist. Askew in the plane is a turn about the
// axis out of it.
func (v view) sees(t twist) miss {
	return miss{
		t.shift.Dot(v.in), t.shift.Dot(v.out),
		t.turn.Dot(v.out), t.turn.Dot(v.in),
		t.shift.Dot(v.way),
	}
}

// viewOf is the view of a socket whose tube goes a way, beside a leg that bends
// from or to another direction. A straight tube has any.
func viewOf(way, other vec) view {
	in := other.Sub(way.Mul(other.Dot(way)))
	if far := in.Len(); far > nearlyStraight {
		in = in.Mul(1 / far)
	} else {
		in = anySquare(way)
	}
	return view{in, way.Cross(in), way}
}

// nearlyStraight is the sine of a turn too small to give a plane.
const nearlyStraight = 1e-6

// anySquare is a unit vector square to another, always the same one.
func anySquare(v vec) vec {
	least := 0
	for i := range v {
		if math.Abs(v[i]) < math.Abs(v[least])-nearlyStraight {
			least = i
		}
	}
	axis := vec{}
	axis[least] = 1
	return v.Cross(axis).Normalize()
}

// leg is the direction of a leg of a formed tube, 0 at the near end.
func leg(f bends.Formed, j int) vec { return f.Corners[j+1].Sub(f.Corners[j]).Normalize() }

// joint is one bend in space.
type joint struct {
	in, out vec // directions before and after
	axis    vec // it turns about this, by the right-hand rule
	inward  vec // from its start to its centre
	centre  vec
	radius  float64
	turn    float64 // radians
}

func jointOf(f bends.Formed, i int) joint {
	in, out := leg(f, i), leg(f, i+1)
	b := f.Bends[i]
	inward := out.Sub(in.Mul(in.Dot(out))).Normalize()
	start := f.Corners[i+1].Sub(in.Mul(b.Setback))
	return joint{in, out, in.Cross(inward), inward, start.Add(inward.Mul(b.Radius)), b.Radius, b.Turn * perDegree}
}

// byTurn is a radian more of turn: a swing about the centre, its tube taken from
// the straight after.
func (j joint) byTurn(at vec) twist {
	t := turned(j.axis, j.centre, at)
	t.shift = t.shift.Sub(j.out.Mul(j.radius))
	return t
}

// byRadius is a millimetre more of radius.
func (j joint) byRadius() twist {
	s, c := math.Sincos(j.turn)
	return shifted(j.in.Mul(s).Add(j.inward.Mul(1 - c)).Sub(j.out.Mul(j.turn)))
}

// byMark is a bend that lies a millimetre farther on.
func (j joint) byMark() twist { return shifted(j.in.Sub(j.out)) }

// byRoll is a radian more of roll.
func (j joint) byRoll(f bends.Formed, i int, at vec) twist {
	return turned(j.in, f.Corners[i+1], at)
}
