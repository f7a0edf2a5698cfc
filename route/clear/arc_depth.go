package clear

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

const (
	// ArcDepthError bounds how far the depth of an arc in another shape may be
	// given from the true one, mm.
	ArcDepthError = 1e-3
	// parted is what a shift may leave of an overlap and still count as out, mm:
	// a distance to an arc may be given ChordError too small.
	parted = 2 * ChordError
	// nearEnough is how much too long a way out may be and still be taken, mm: the
	// rest of ArcDepthError.
	nearEnough = ArcDepthError - parted
	// leastStep ends a march that gets no further, mm.
	leastStep = 1e-7
	// mostMarch ends a march outward: each step leaves a fraction of what lacks.
	mostMarch = 60
)

// toArc is [Between] for an arc. The distance of the cores, less the radii, is
// the least a shift must make up; where a shift by it, straight away from the
// nearest place, parts the two, no shorter one can. Where it leads into another
// place of the arc all directions are searched.
func toArc(a Shape, arc *Arc, stop func() bool) Gap {
	s := newSlide(a, arc)
	s.stop = stop
	n := s.near(v3{})
	if !n.meet {
		g := n.rounded(round(a), arc.Radius)
		if g.Distance >= 0 || s.free(from(g.B.Sub(g.A))) {
			return g
		}
	}
	s.everyWay(n)
	return s.gap(a, arc)
}

// slide is a shape that slides past an arc. The shifts at which the cores meet
// are the differences of their points; those at which the two overlap are all
// nearer than dress, both radii together, to one of these.
type slide struct {
	a     core
	ring  ring // what a is, if it is an arc
	bent  bool
	b     ring
	dress float64
	way   v3 // the least shift found that parts them, and its length
	depth float64
	stop  func() bool // whether to give up; nil: never
}

func newSlide(a Shape, arc *Arc) slide {
	s := slide{b: arc.ring(), dress: round(a) + arc.Radius, depth: math.Inf(1)}
	if first, ok := a.(Arc); ok {
		s.ring, s.bent = first.ring(), true
	} else {
		s.a = coreOf(a)
	}
	return s
}

// near is how the cores stand when the first is shifted.
func (s *slide) near(by v3) near {
	b := s.b
	b.c = b.c.sub(by)
	switch {
	case s.bent:
		return arcArc(&s.ring, &b, 0)
	case s.a.kind == isRod:
		return segArc(s.a.p, s.a.q, &b, 0)
	}
	return arcCore(&b, &s.a, 0).swapped()
}

// free reports whether the two are parted by a shift.
func (s *slide) free(by v3) bool {
	n := s.near(by)
	return !n.meet && n.d >= s.dress-parted
}

// block is a shift at which the cores meet, near to one given: no shift nearer
// to it than dress parts the two.
func (s *slide) block(by v3) (middle v3, free bool) {
	n := s.near(by)
	if n.meet {
		return by, false
	}
	return by.add(n.b).sub(n.a), n.d >= s.dress-parted
}

// fan is the directions within an angle of one.
type fan struct {
	u        v3
	sin, cos float64
}

// least is the least of p·u over the fan.
func (f fan) least(p v3) float64 {
	dot, off := p.dot(f.u), p.cross(f.u).len()
	if size := p.len(); dot < 0 && off <= size*f.sin {
		return -size
	}
	return dot*f.cos - off*f.sin
}

// out is how far every direction of the fan surely stays within dress of a
// place, from a distance where it does; that distance itself where not all do.
func (s *slide) out(f fan, middle v3, at float64) float64 {
	d, m2 := f.least(middle), middle.dot(middle)
	if at*at-2*at*d+m2 >= s.dress*s.dress {
		return at
	}
	return max(at, d+math.Sqrt(max(0, s.dress*s.dress-m2+d*d)))
}

// march goes out along the fan from a distance with every direction of it
// blocked, as far as that is sure or up to enough.
func (s *slide) march(f fan, at, enough float64, middle v3) (far float64, free bool) {
	for range mostMarch {
		next := s.out(f, middle, at)
		if next >= enough || next-at <= leastStep {
			return next, false
		}
		at = next
		if middle, free = s.block(f.u.mul(at)); free {
			return at, true
		}
	}
	return at, false
}

// everyWay searches all directions by branch and bound over tiles of them, the
// one with the least bound first. How far a whole tile is surely blocked bounds
// what its directions have to give; its middle direction is followed until it is
// free.
func (s *slide) everyWay(first near) {
	origin := v3{}
	if !first.meet {
		origin = first.b.sub(first.a) // longer than touch, though first.d may be 0
		s.follow(origin.unit().mul(-1), 0, origin)
	}
	var open queue
	for _, t := range allTiles(nil) {
		open.push(t, s.bound(t, origin))
	}
	for range mostTiles {
		t, low := open.pop()
		if low >= s.depth-nearEnough || t.h <= leastTile || s.stop != nil && s.stop() {
			return
		}
		var room [4]tile
		for _, q := range t.quarters(room[:0]) {
			if sure := max(low, s.bound(q, origin)); sure < s.depth-nearEnough {
				open.push(q, sure)
			}
		}
	}
}

// mostTiles ends a search that finds no end: the way out is then the best of
// those seen. The worst pair of the tests needs a quarter as many.
const mostTiles = 4000

// bound is how far all directions of a tile are surely blocked. Its middle one
// is followed on from there.
func (s *slide) bound(t tile, origin v3) float64 {
	u, sin := t.middle()
	low, free := s.march(fan{u, sin, math.Sqrt(1 - sin*sin)}, 0, s.depth-nearEnough, origin)
	switch {
	case free && low < s.depth:
		s.way, s.depth = u.mul(low), low
	case !free && low < s.depth-nearEnough:
		s.follow(u, low, origin)
	}
	return low
}

// follow goes out along one direction, blocked up to a distance, until it is
// free, and keeps the shift if it is the least.
func (s *slide) follow(u v3, at float64, middle v3) {
	if at > 0 {
		var free bool
		if middle, free = s.block(u.mul(at)); free {
			s.way, s.depth = u.mul(at), at
			return
		}
	}
	if far, free := s.march(fan{u, 0, 1}, at, s.depth, middle); free && far < s.depth {
		s.way, s.depth = u.mul(far), far
	}
}

// gap puts the way out in the middle of the room both take.
func (s *slide) gap(a Shape, b *Arc) Gap {
	alo, ahi := a.Bounds()
	blo, bhi := b.Bounds()
	var mid mgl64.Vec3
	for i := range mid {
		mid[i] = (max(alo[i], blo[i]) + min(ahi[i], bhi[i])) / 2
	}
	half := s.way.mul(0.5).vec()
	return Gap{-s.depth, mid.Sub(half), mid.Add(half)}
}
