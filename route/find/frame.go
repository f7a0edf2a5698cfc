package find

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/route/clear"
)

// axes is a right-angled frame to search square routes in: its rows are the
// frame's unit axes in the case's frame. The origin is shared.
type axes mgl64.Mat3

// worldAxes is the case's own frame.
func worldAxes() axes { return axes(mgl64.Ident3()) }

func (m axes) in(v vec) vec  { return mgl64.Mat3(m).Mul3x1(v) }
func (m axes) out(v vec) vec { return mgl64.Mat3(m).Transpose().Mul3x1(v) }

// portAxes is the frame of a port: it turns with its part, so that a plan
// turned as a whole is searched in the same frame.
func portAxes(f route.Frame) axes {
	return axes(mgl64.Mat3FromRows(f.Dir, f.Ref, f.Dir.Cross(f.Ref)))
}

// sameAxes reports whether two frames have the same axes but for order and sign.
func (m axes) same(n axes) bool {
	for r := range 3 {
		if axisOf(n.in(mgl64.Mat3(m).Row(r))) < 0 {
			return false
		}
	}
	return true
}

// square is how far a direction may turn off an axis and still count as along
// it: bends.Form sees the corner, whose turn is then wrong by less than 1e-4°.
const square = 1e-7

// axisOf gives the axis and sense a unit direction goes along: 2·axis, plus one
// when against it; −1 when along none.
func axisOf(d vec) int {
	for i := range 3 {
		if math.Abs(d[i]) >= 1-square*square && math.Abs(d[(i+1)%3]) <= square && math.Abs(d[(i+2)%3]) <= square {
			if d[i] < 0 {
				return 2*i + 1
			}
			return 2 * i
		}
	}
	return -1
}

// heading is the unit direction of a number given by axisOf.
func heading(d int) vec {
	var v vec
	v[d/2] = 1
	if d%2 == 1 {
		v[d/2] = -1
	}
	return v
}

// turned is a shape as the frame sees it.
func (m axes) turned(s clear.Shape) clear.Shape {
	switch s := s.(type) {
	case clear.Box:
		return clear.Box{Centre: m.in(s.Centre), Axes: mgl64.Mat3(m).Mul3(s.Axes), Half: s.Half}
	case clear.Cylinder:
		return clear.Cylinder{From: m.in(s.From), To: m.in(s.To), Radius: s.Radius}
	case clear.Rod:
		return clear.Rod{From: m.in(s.From), To: m.in(s.To), Radius: s.Radius}
	case clear.Arc:
		s.Centre, s.U, s.V = m.in(s.Centre), m.in(s.U), m.in(s.V)
		return s
	}
	panic("find: a shape of no known kind")
}

// upright reports whether a shape is a box along the frame's axes.
func upright(s clear.Shape) bool {
	b, ok := s.(clear.Box)
	return ok && axisOf(b.Axes.Col(0)) >= 0 && axisOf(b.Axes.Col(1)) >= 0 && axisOf(b.Axes.Col(2)) >= 0
}
