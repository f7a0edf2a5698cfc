package clear

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// wayOut is the gap of two shapes whose cores meet: the least shift that parts
// them.
//
// The shifts that leave two convex shapes overlapping fill a convex body, and
// the least that does not is its nearest boundary point. There the boundary is
// smooth. Where it is flat its normal is that of a face of either shape or
// square to two straight edges: all these are tried, and for boxes and rods there
// is nothing else. Where a cylinder's rim is in play, also what an edge sweeps
// along it, and then all directions.
func wayOut(a, b Shape) Gap {
	best := leastWay{a: coreOf(a), b: coreOf(b), dress: round(a) + round(b), depth: math.Inf(1)}
	f, g := best.a.features(), best.b.features()
	best.flats(f, g)
	if f.rim || g.rim {
		best.swept(f)
		best.swept(g)
		best.everyWay()
	}
	return best.gap(a, b)
}

// features are the directions that shape the boundary of a core: normals of
// its faces, its straight edges, and whether it has a round rim.
type features struct {
	faces, edges [3]v3
	nf, ne       int
	rim          bool
}

func (c *core) features() features {
	switch c.kind {
	case isBox:
		return features{faces: c.block.axis, edges: c.block.axis, nf: 3, ne: 3}
	case isCylinder:
		z := c.drum.z
		return features{faces: [3]v3{z}, edges: [3]v3{z}, nf: 1, ne: 1, rim: true}
	}
	return features{}.edge(c.q.sub(c.p))
}

// edge adds a straight edge that is not too short to have a direction.
func (f features) edge(d v3) features {
	if l := d.len(); l > touch {
		f.edges[f.ne] = d.mul(1 / l)
		f.ne++
	}
	return f
}

// leastWay keeps the direction that parts a from b by the least shift. Dress is
// by how much both together are rounded.
type leastWay struct {
	a, b  core
	dress float64
	way   v3
	depth float64
}

// better is by how much a direction must win: ties go to the one tried first.
const better = 1e-9

func (l *leastWay) try(u v3) {
	for _, way := range [2]v3{u, u.mul(-1)} {
		l.tryOne(way)
	}
}

// tryOne gives the shift farthest along a direction that leaves a and b
// touching: how far it takes along the direction is what it takes to part them.
func (l *leastWay) tryOne(way v3) v3 {
	far := l.b.far(way).sub(l.a.far(way.mul(-1))).plus(l.dress, way)
	if d := far.dot(way); d < l.depth-better {
		l.way, l.depth = way, d
	}
	return far
}

// flats tries faces, crossed edges and, for rods in line or balls, whose every
// direction square to the line serves, some square to each edge and the axes.
func (l *leastWay) flats(f, g features) {
	for _, u := range f.faces[:f.nf] {
		l.try(u)
	}
	for _, u := range g.faces[:g.nf] {
		l.try(u)
	}
	for _, e := range f.edges[:f.ne] {
		l.try(e.square())
		for _, h := range g.edges[:g.ne] {
			if u := e.cross(h); u.len() > parallel {
				l.try(u.unit())
			}
		}
	}
	for _, h := range g.edges[:g.ne] {
		l.try(h.square())
	}
	l.try(v3{1, 0, 0})
	l.try(v3{0, 1, 0})
	l.try(v3{0, 0, 1})
}

// swept tries the directions square to each edge: along a rim an edge sweeps a
// side whose normals are such, a valley too sharp for steps on the ball to follow.
func (l *leastWay) swept(f features) {
	for _, e := range f.edges[:f.ne] {
		x := e.square()
		y := e.cross(x)
		at := func(angle float64) v3 {
			s, c := math.Sincos(angle)
			return x.mul(c).plus(s, y)
		}
		l.try(at(roundMin(func(angle float64) float64 { return l.along(at(angle)) })))
	}
}

// along is how far a direction takes.
func (l *leastWay) along(u v3) float64 { return l.b.reach(u) + l.a.reach(u.mul(-1)) + l.dress }

// gap puts the way out where the two overlap.
func (l *leastWay) gap(a, b Shape) Gap {
	alo, ahi := a.Bounds()
	blo, bhi := b.Bounds()
	var mid mgl64.Vec3
	for i := range mid {
		mid[i] = (max(alo[i], blo[i]) + min(ahi[i], bhi[i])) / 2
	}
	low := -reach(a, l.way.mul(-1))
	at := from(mid)
	at = at.plus(low-at.dot(l.way), l.way)
	return Gap{-l.depth, at.vec(), at.plus(l.depth, l.way).vec()}
}
