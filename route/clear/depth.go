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
// smooth, so its normal belongs to a flat side (a face of either shape, or two
// straight edges crossed), to a side swept by a straight edge along a rim (the
// normal is square to the edge) or to two rims rolling on each other. Each of
// these families is searched; [Along] says how far each direction takes.
func wayOut(a, b Shape) Gap {
	f, g := featuresOf(a), featuresOf(b)
	best := leastWay{a: a, b: b, depth: math.Inf(1)}
	best.flats(f, g)
	if f.rim || g.rim {
		best.swept(f)
		best.swept(g)
	}
	if f.rim && g.rim {
		best.rolling()
	}
	return best.gap()
}

// features are the directions that shape the boundary of a core: normals of
// its faces, its straight edges, and whether it has a round rim.
type features struct {
	faces, edges [3]v3
	nf, ne       int
	rim          bool
}

func featuresOf(s Shape) features {
	switch s := s.(type) {
	case Box:
		b := s.block()
		return features{faces: b.axis, edges: b.axis, nf: 3, ne: 3}
	case Cylinder:
		z := s.drum().z
		return features{faces: [3]v3{z}, edges: [3]v3{z}, nf: 1, ne: 1, rim: true}
	case Arc:
		r := s.ring()
		f := features{faces: [3]v3{r.u.cross(r.v)}, nf: 1, rim: true}
		return f.edge(r.dir(r.angle).sub(r.u).mul(r.bend))
	case Rod:
		return features{}.edge(from(s.To).sub(from(s.From)))
	}
	panic(foreign(s))
}

// edge adds a straight edge that is not too short to have a direction.
func (f features) edge(d v3) features {
	if l := d.len(); l > touch {
		f.edges[f.ne] = d.mul(1 / l)
		f.ne++
	}
	return f
}

// leastWay keeps the direction that parts a from b by the least shift.
type leastWay struct {
	a, b  Shape
	way   v3
	depth float64
}

// better is by how much a direction must win: ties go to the one tried first.
const better = 1e-9

func (l *leastWay) try(u v3) {
	for _, way := range [2]v3{u, u.mul(-1)} {
		if d := along(l.a, l.b, way); d < l.depth-better {
			l.way, l.depth = way, d
		}
	}
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

// swept tries the directions square to each edge.
func (l *leastWay) swept(f features) {
	for _, e := range f.edges[:f.ne] {
		x := e.square()
		y := e.cross(x)
		at := func(angle float64) v3 {
			s, c := math.Sincos(angle)
			return x.mul(c).plus(s, y)
		}
		l.try(at(roundMin(func(angle float64) float64 { return along(l.a, l.b, at(angle)) })))
	}
}

const (
	// sphereSamples are directions spread evenly, about 9° apart.
	sphereSamples = 500
	// followed is how many of the lowest samples are walked down.
	followed = 6
	// firstStep is the walk's first step, about the samples' distance; lastStep
	// ends it: the depth is then good to size·lastStep².
	firstStep, lastStep = 0.16, 1e-7
	// worth is the least gain of a step, mm for a step of one radian: the square
	// of smaller steps is all a smooth dip has to give, and in a sharp valley,
	// which the other families search, the walk must not creep.
	worth = 0.02
)

// rolling searches all directions: samples on a Fibonacci spiral (Gonzalez,
// Mathematical Geosciences 42, 2010), the lowest walked down.
func (l *leastWay) rolling() {
	var lowest [followed]leastWay
	for i := range lowest {
		lowest[i].depth = math.Inf(1)
	}
	for i := range sphereSamples {
		u := spiral(i)
		keep(lowest[:], leastWay{l.a, l.b, u, along(l.a, l.b, u)})
	}
	for _, start := range lowest {
		l.try(start.walk())
	}
}

// spiral is direction i of sphereSamples.
func spiral(i int) v3 {
	y := 1 - (2*float64(i)+1)/sphereSamples
	s, c := math.Sincos(2 * math.Pi * golden * float64(i))
	r := math.Sqrt(1 - y*y)
	return v3{r * c, y, r * s}
}

// keep puts w in its place in a list sorted by depth, the last falling out.
func keep(list []leastWay, w leastWay) {
	for i := range list {
		if w.depth < list[i].depth {
			list[i], w = w, list[i]
		}
	}
}

// walk goes down from a direction by steps in eight ways, halved when none leads down.
func (l leastWay) walk() v3 {
	for step := firstStep; step > lastStep; {
		if !l.step(step) {
			step /= 2
		}
	}
	return l.way
}

func (l *leastWay) step(size float64) bool {
	x := l.way.square()
	y := l.way.cross(x)
	start := l.way
	for i := range 8 {
		s, c := math.Sincos(float64(i) * math.Pi / 4)
		u := start.plus(c*size, x).plus(s*size, y).unit()
		if d := along(l.a, l.b, u); d < l.depth-worth*size*size {
			l.way, l.depth = u, d
		}
	}
	return l.way != start
}

// gap puts the way out where the two overlap.
func (l *leastWay) gap() Gap {
	alo, ahi := l.a.Bounds()
	blo, bhi := l.b.Bounds()
	var mid mgl64.Vec3
	for i := range mid {
		mid[i] = (max(alo[i], blo[i]) + min(ahi[i], bhi[i])) / 2
	}
	low := -reach(l.a, l.way.mul(-1))
	at := from(mid)
	at = at.plus(low-at.dot(l.way), l.way)
	return Gap{-l.depth, at.vec(), at.plus(l.depth, l.way).vec()}
}

// along is [Along] for a direction from inside.
func along(a, b Shape, way v3) float64 { return reach(b, way) + reach(a, way.mul(-1)) }
