package board

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// Numbers of flat sides that stand for a round one. At 24 the outline of a
// 16 mm tube is within 0.07 mm of true; at 48 that of a pump 60 mm wide is too.
const (
	slimSides, wideSides = 24, 48
	// slim is the largest radius in mm that slimSides are enough for.
	slim = 10.0
)

func sidesFor(radius float64) int {
	if radius > slim {
		return wideSides
	}
	return slimSides
}

// station is a circle of a turned body: at s along the axis, its radius, and
// how far its normal points outward and along.
type station struct{ s, r, out, along float64 }

// lathe adds a body turned about an axis. Stations go in pairs, each pair one
// band; where a band begins at the circle where the last one ended, a crease
// is drawn when their normals differ.
func (m *mesh) lathe(from, dir mgl64.Vec3, stations []station) {
	u, v := squareTo(dir)
	n := sidesFor(widest(stations))
	var last band
	for i := 0; i+1 < len(stations); i += 2 {
		b := m.band(from, dir, u, v, n, stations[i], stations[i+1])
		if i > 0 && joined(stations[i-1], stations[i]) {
			m.joint(last, b, stations[i-1] != stations[i])
		}
		last = b
	}
}

func widest(stations []station) float64 {
	r := 0.0
	for _, s := range stations {
		r = max(r, s.r)
	}
	return r
}

func joined(a, b station) bool { return a.s == b.s && a.r == b.r && a.r > 0 }

// squareTo gives two unit directions that make a right-handed frame u, v, dir.
func squareTo(dir mgl64.Vec3) (u, v mgl64.Vec3) {
	ref := mgl64.Vec3{0, 1, 0}
	if math.Abs(dir[1]) > 0.9 {
		ref = mgl64.Vec3{1, 0, 0}
	}
	u = ref.Sub(dir.Mul(ref.Dot(dir))).Normalize()
	return u, dir.Cross(u)
}

// band is a ring of quads between two circles: the first vertices of both, and
// a triangle at the start and at the end of each of its n sides.
type band struct {
	n        int32
	a, b     int32
	lower    []int32 // triangle of side i that touches circle a
	upper    []int32 // the one that touches circle b
	flat     bool
	hasA     bool // circle a has a radius
	hasUpper bool
}

func (m *mesh) band(from, dir, u, v mgl64.Vec3, n int, p, q station) band {
	b := band{n: int32(n), flat: p.out == 0 && q.out == 0, hasA: p.r > 0, hasUpper: q.r > 0}
	b.a = m.circle(from, dir, u, v, n, p)
	b.b = m.circle(from, dir, u, v, n, q)
	m.sides(&b)
	if !b.flat {
		m.ribs(b)
	}
	return b
}

// circle adds the n vertices of a station and gives the number of the first.
func (m *mesh) circle(from, dir, u, v mgl64.Vec3, n int, s station) int32 {
	first := int32(len(m.at))
	centre := from.Add(dir.Mul(s.s))
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		out := u.Mul(cos).Add(v.Mul(sin))
		m.vertex(centre.Add(out.Mul(s.r)), out.Mul(s.out).Add(dir.Mul(s.along)))
	}
	return first
}

// sides adds the triangles between the circles of a band; a circle without a
// radius is a point and leaves one triangle a side.
func (m *mesh) sides(b *band) {
	b.lower, b.upper = make([]int32, b.n), make([]int32, b.n)
	for i := range b.n {
		j := (i + 1) % b.n
		var t [2]int32
		switch {
		case !b.hasA:
			t[0] = m.tri(b.a+i, b.b+j, b.b+i)
			t[1] = t[0]
		case !b.hasUpper:
			t[0] = m.tri(b.a+i, b.a+j, b.b+i)
			t[1] = t[0]
		default:
			t[0] = m.tri(b.a+i, b.a+j, b.b+j)
			t[1] = m.tri(b.a+i, b.b+j, b.b+i)
		}
		b.lower[i], b.upper[i] = t[0], t[1]
	}
}

// ribs adds the edges along a round band and across its quads, which are bent a
// little themselves; they show where they are an outline.
func (m *mesh) ribs(b band) {
	for i := range b.n {
		if b.hasA && b.hasUpper {
			m.edges = append(m.edges, edge{b.a + i, b.b + (i+1)%b.n, b.lower[i], b.upper[i], false})
		}
		m.edges = append(m.edges, edge{b.a + i, b.b + i, b.upper[i], b.lower[(i+b.n-1)%b.n], false})
	}
}

// joint adds the edges round the circle where two bands meet.
func (m *mesh) joint(p, q band, crease bool) {
	for i := range p.n {
		m.edges = append(m.edges, edge{p.b + i, p.b + (i+1)%p.n, p.upper[i], q.lower[i], crease})
	}
}

// cylinder adds a solid cylinder with flat ends.
func (m *mesh) cylinder(from, to mgl64.Vec3, r float64) {
	l := to.Sub(from).Len()
	if l == 0 || r <= 0 {
		return
	}
	m.lathe(from, to.Sub(from).Mul(1/l), []station{
		{0, 0, 0, -1},
		{0, r, 0, -1},
		{0, r, 1, 0},
		{l, r, 1, 0},
		{l, r, 0, 1},
		{l, 0, 0, 1},
	})
}

// domeSteps is how many bands make half a ball.
const domeSteps = 6

// rod adds a cylinder with round ends; a ball when both ends are one point.
func (m *mesh) rod(from, to mgl64.Vec3, r float64) {
	dir, l := mgl64.Vec3{0, 1, 0}, to.Sub(from).Len()
	if r <= 0 {
		return
	}
	if l > 0 {
		dir = to.Sub(from).Mul(1 / l)
	}
	var list []station
	for i := -domeSteps; i < domeSteps; i++ {
		p, q := domeAt(i, r, l), domeAt(i+1, r, l)
		if i == 0 && l > 0 {
			list = append(list, station{0, r, 1, 0}, station{l, r, 1, 0})
		}
		if i < 0 {
			p.s, q.s = p.s-l, q.s-l
		}
		list = append(list, p, q)
	}
	m.lathe(from, dir, list)
}

// domeAt is station i of a ball at the far end of a rod, counted from its equator.
func domeAt(i int, r, l float64) station {
	if i == domeSteps || i == -domeSteps {
		sign := math.Copysign(1, float64(i))
		return station{l + sign*r, 0, 0, sign}
	}
	sin, cos := math.Sincos(math.Pi / 2 * float64(i) / domeSteps)
	return station{l + r*sin, r * cos, cos, sin}
}
