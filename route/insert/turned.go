package insert

import (
	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route/clear"
)

// turns are the angles by which a caged piece is turned on trial, degrees.
var turns = [...]float64{2, -2, 5, -5, 10, -10}

// shifts are where a turned piece is tried, mm beside its finished place.
var shifts = [...]vec{{}, {1, 0, 0}, {-1, 0, 0}, {0, 1, 0}, {0, -1, 0}, {0, 0, 1}, {0, 0, -1}}

// freeTurned reports whether a piece that no slide frees has room somewhere when
// it is turned a little: then a cage against slides says too little. An end that
// a joint holds can turn only about its own way; two held ends not at all, beyond
// what the cage allows for.
// Where nobody waits for it any more it says so too, which proves nothing.
func (t *task) freeTurned() bool {
	for _, axis := range t.axes() {
		if t.spin && aside(axis.way, t.ways[0]) < 1e-6 {
			continue // a straight piece turned about itself stays where it is
		}
		for _, angle := range turns {
			turn := mgl64.QuatRotate(angle*perDegree, axis.way)
			for _, by := range shifts {
				if t.ended() || t.roomTurned(turn, axis.at, by) {
					return true
				}
			}
		}
	}
	return false
}

type axis struct{ at, way vec }

// axes are what the piece can be turned about.
func (t *task) axes() (list []axis) {
	held := 0
	for e := range t.joints {
		if t.joints[e].held {
			held++
			list = append(list, axis{t.at[e], t.ways[e]})
		}
	}
	switch held {
	case 2:
		return nil
	case 1:
		return list
	}
	for e := range t.ways {
		list = append(list, axis{t.at[e], t.ways[e]})
	}
	middle := t.lo.Add(t.hi).Mul(0.5)
	for _, at := range []vec{middle, t.at[0], t.at[1]} {
		for _, way := range []vec{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}} {
			list = append(list, axis{at, way})
		}
	}
	return list
}

// roomTurned reports whether the piece, turned about a point and shifted, meets
// nothing.
func (t *task) roomTurned(q mgl64.Quat, about, by vec) bool {
	for e := range t.joints {
		if t.joints[e].held && by != (vec{}) {
			return false
		}
	}
	for i := range t.limbs {
		s := solidOf(turnedAbout(t.limbs[i].shape, q, about, by))
		for k := range t.things {
			o := &t.things[k]
			own := o.end >= 0 && o.end == t.limbs[i].end
			if (own && o.body) || !o.near(&s.lo, &s.hi) {
				continue
			}
			if clear.Between(s.shape, o.shape).Distance < -passing {
				return false
			}
		}
	}
	return true
}

func turnedAbout(s clear.Shape, q mgl64.Quat, about, by vec) clear.Shape {
	move := func(p vec) vec { return q.Rotate(p.Sub(about)).Add(about).Add(by) }
	switch s := s.(type) {
	case clear.Cylinder:
		return clear.Cylinder{From: move(s.From), To: move(s.To), Radius: s.Radius}
	case clear.Rod:
		return clear.Rod{From: move(s.From), To: move(s.To), Radius: s.Radius}
	case clear.Arc:
		s.Centre, s.U, s.V = move(s.Centre), q.Rotate(s.U), q.Rotate(s.V)
		return s
	}
	panic("insert: a piece is made of cylinders, rods and arcs")
}
