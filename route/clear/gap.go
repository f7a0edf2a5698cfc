package clear

import (
	"fmt"

	"github.com/go-gl/mathgl/mgl64"
)

// Gap is how two shapes stand to each other, first to second.
//
// Apart, Distance is the least distance between them, A is the point of the
// first nearest to the second and B the point of the second nearest to the
// first. Overlapping, Distance is below zero and its size is the depth, the
// least shift that parts the two. Either way moving the first shape by B−A
// makes the two just touch: across the gap, or by the shortest way out.
//
// In an overlap A lies in the plane that the first shape rests on when moved
// out, level with the middle of the room both shapes take: a place to look.
type Gap struct {
	Distance float64
	A, B     mgl64.Vec3
}

// Out is the direction in which the first shape moves out of an overlap, or
// away from the second across a gap; zero when they just touch.
func (g Gap) Out() mgl64.Vec3 {
	d := g.B.Sub(g.A)
	if l := d.Len(); l > touch {
		if g.Distance > 0 {
			l = -l
		}
		return d.Mul(1 / l)
	}
	return mgl64.Vec3{}
}

func (g Gap) swapped() Gap { return Gap{g.Distance, g.B, g.A} }

const (
	// touch is rounding noise: cores this close meet. Near 1 m one float64 step
	// is 1e-13 mm, so ten thousand roundings stay below.
	touch = 1e-9
	// ChordError bounds what an arc's distance may be given too small, and
	// never too large, mm: arcs are measured by chords this close to them. A
	// tenth of what the checks allow for rounding.
	ChordError = 1e-4
)

// Between measures how two shapes stand to each other.
//
// Apart it is exact to rounding (1e-9 mm) for boxes, cylinders and rods, and to
// ChordError on the safe side where an arc is one of the two.
//
// Overlapping, the depth is the length of the least shift, in any direction,
// that parts the two: exact to rounding for boxes and rods; where a cylinder is
// one of the two at most DepthError too large; where an arc is, at most
// ArcDepthError. Moving by it parts them in every case.
//
// It panics on a shape that is not of this package.
func Between(a, b Shape) Gap { return BetweenUntil(a, b, nil) }

// BetweenUntil is [Between] for someone who may not want to wait: a depth in an
// arc can take tens of milliseconds. It asks stop now and then; once that is true
// it soon ends, and what it gives is of no use. A nil stop is never true.
func BetweenUntil(a, b Shape, stop func() bool) Gap {
	if rank(a) > rank(b) {
		return BetweenUntil(b, a, stop).swapped()
	}
	if arc, ok := b.(Arc); ok {
		return toArc(a, &arc, stop)
	}
	n := cores(a, b)
	if n.meet {
		return wayOut(a, b)
	}
	return n.rounded(round(a), round(b))
}

// rounded is the gap between two cores dressed with their radii.
func (n near) rounded(ra, rb float64) Gap {
	way := n.b.sub(n.a).unit()
	d := n.d - ra - rb
	a := n.a.plus(ra, way)
	return Gap{d, a.vec(), a.plus(d, way).vec()}
}

// Farther reports whether two shapes stand at least this far apart. It is the
// quick form of Between(a, b).Distance >= than for the search: bounding boxes
// first, no depth worked out, and no allocation. The referee does not use it, so
// that a fault in one of the two shows in the other.
func Farther(a, b Shape, than float64) bool {
	if than < 0 {
		return Between(a, b).Distance >= than
	}
	if boundsApart(a, b, than) {
		return true
	}
	if rank(a) > rank(b) {
		a, b = b, a
	}
	n := coresWithin(a, b, max(touch, than+round(a)+round(b)))
	return !n.meet && n.d-round(a)-round(b) >= than
}

// The kinds of shape, in the order in which each pair is measured one way round.
const (
	isRod = iota
	isBox
	isCylinder
	isArc
)

func rank(s Shape) int {
	switch s.(type) {
	case Rod:
		return isRod
	case Box:
		return isBox
	case Cylinder:
		return isCylinder
	case Arc:
		return isArc
	}
	panic(foreign(s))
}

func foreign(s Shape) string { return fmt.Sprintf("clear: %T is not a shape of this package", s) }

// round is how much a shape is rounded beyond its core.
func round(s Shape) float64 {
	switch s := s.(type) {
	case Rod:
		return s.Radius
	case Arc:
		return s.Radius
	}
	return 0
}

func cores(a, b Shape) near { return coresWithin(a, b, 0) }

// coresWithin measures two cores in order of rank. Nothing but whether d is
// below enough may be taken from its answer when enough is above 0.
func coresWithin(a, b Shape, enough float64) near {
	switch b := b.(type) {
	case Rod:
		rod := a.(Rod)
		return segSeg(from(rod.From), from(rod.To), from(b.From), from(b.To))
	case Box:
		block := b.block()
		return withBlock(a, &block, enough)
	case Cylinder:
		drum := b.drum()
		return withDrum(a, &drum, enough)
	case Arc:
		ring := b.ring()
		return withRing(a, &ring, enough)
	}
	panic(foreign(b))
}

func withBlock(a Shape, b *block, enough float64) near {
	if rod, ok := a.(Rod); ok {
		return segBox(from(rod.From), from(rod.To), b)
	}
	box := a.(Box)
	first := box.block()
	return boxBox(&first, b, enough)
}

func withDrum(a Shape, d *drum, enough float64) near {
	switch a := a.(type) {
	case Rod:
		return segDrum(from(a.From), from(a.To), d)
	case Box:
		b := a.block()
		return boxDrum(&b, d, enough)
	}
	cylinder := a.(Cylinder)
	first := cylinder.drum()
	return drumDrum(&first, d, enough)
}

func withRing(a Shape, r *ring, enough float64) near {
	switch a := a.(type) {
	case Arc:
		first := a.ring()
		return arcArc(&first, r, enough)
	case Rod:
		return segArc(from(a.From), from(a.To), r, enough)
	}
	c := coreOf(a)
	return arcCore(r, &c, enough).swapped()
}
