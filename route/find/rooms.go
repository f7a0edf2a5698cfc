package find

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route/clear"
)

// roomSlack is how much farther than it reaches the room of a run may be taken to
// reach where routes may cross it at a price, mm. It only sets where the price is
// asked; what is found is then measured.
const roomSlack = 1.0

// roomsOf is the room of a limb as a frame sees it, made of upright boxes and how
// far about them it reaches, for a line that keeps a distance of at least keep.
// Lines and points are such boxes.
func roomsOf(list []wall, m axes, s clear.Shape, keep float64) []wall {
	switch s := m.turned(s).(type) {
	case clear.Rod:
		return barRooms(list, s.From, s.To, s.Radius, keep)
	case clear.Cylinder:
		in := min(flatEnd, s.To.Sub(s.From).Len()/2)
		way, ok := unit(s.To.Sub(s.From))
		if !ok {
			way, in = vec{}, 0
		}
		return barRooms(list, s.From.Add(way.Mul(in)), s.To.Sub(way.Mul(in)), math.Hypot(s.Radius, in), keep)
	case clear.Arc:
		return arcRooms(list, s, keep)
	default:
		lo, hi := s.Bounds()
		return append(list, boxRoom(lo, hi, keep))
	}
}

// flatEnd is how far from its flat ends the line in a cylinder ends whose
// surroundings take it up, mm: for a collar the end then reaches hardly farther
// than the tube in it does.
const flatEnd = 4.0

// barRooms is the surroundings of a line: one box where it lies along an axis,
// else points so close that what reaches roomSlack farther about them holds it.
func barRooms(list []wall, from, to vec, radius, keep float64) []wall {
	way, ok := unit(to.Sub(from))
	if !ok || axisOf(way) >= 0 {
		var lo, hi vec
		for i := range lo {
			lo[i], hi[i] = min(from[i], to[i]), max(from[i], to[i])
		}
		return append(list, boxRoom(lo, hi, keep+radius))
	}
	n := pointsAlong(to.Sub(from).Len(), keep+radius)
	for i := range n + 1 {
		p := from.Add(to.Sub(from).Mul(float64(i) / float64(n)))
		list = append(list, boxRoom(p, p, keep+radius+roomSlack))
	}
	return list
}

// pointsAlong is in how many pieces a length is cut so that what reaches this far
// and roomSlack about their ends holds what reaches this far about all of it.
func pointsAlong(length, reach float64) int {
	half := math.Sqrt((reach+roomSlack)*(reach+roomSlack) - reach*reach)
	return max(1, int(math.Ceil(length/(2*half))))
}

// arcRooms is the surroundings of points on an arc.
func arcRooms(list []wall, a clear.Arc, keep float64) []wall {
	turn := mgl64.DegToRad(a.Turn)
	n := pointsAlong(a.Bend*turn, keep+a.Radius)
	for i := range n + 1 {
		sin, cos := math.Sincos(turn * float64(i) / float64(n))
		p := a.Centre.Add(a.U.Mul(a.Bend * cos)).Add(a.V.Mul(a.Bend * sin))
		w := boxRoom(p, p, keep+a.Radius+roomSlack)
		w.lined = true // nothing passes a bend along its faces
		list = append(list, w)
	}
	return list
}

func boxRoom(lo, hi vec, keep float64) wall {
	return wall{lo: lo, hi: hi, upright: true, keep: keep}
}

// roomsSeen remembers the rooms of a way as a frame last saw them.
type roomsSeen struct {
	frame axes
	keep  float64
	list  []wall
}

// roomsIn is the room of a way as a frame sees it, for a line that keeps a
// distance. It is not to be written to.
func (o *option) roomsIn(m axes, keep float64) []wall {
	if r := &o.rooms; r.list == nil || r.frame != m || r.keep != keep {
		*r = roomsSeen{frame: m, keep: keep}
		for _, l := range o.limbs {
			r.list = roomsOf(r.list, m, l.shape, keep)
		}
	}
	return o.rooms.list
}
