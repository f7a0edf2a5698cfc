package find_test

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// stick is everything about a segment: with flat ends or round ones.
type stick struct {
	from, to mgl64.Vec3
	radius   float64
	round    bool
}

// distance is from a point to the stick, below zero inside.
func (s stick) distance(p mgl64.Vec3) float64 {
	axis := s.to.Sub(s.from)
	length := axis.Len()
	if length == 0 {
		return p.Sub(s.from).Len() - s.radius
	}
	along := p.Sub(s.from).Dot(axis) / length
	off := p.Sub(s.from).Sub(axis.Mul(along / length)).Len()
	beyond := max(-along, along-length)
	if s.round {
		return math.Hypot(off, max(beyond, 0)) - s.radius
	}
	return corner(off-s.radius, beyond)
}

// corner joins two signed distances to faces that stand square to each other.
func corner(a, b float64) float64 {
	if a > 0 && b > 0 {
		return math.Hypot(a, b)
	}
	return max(a, b)
}

const (
	// bodyStep is the spacing of rings on a fitting's body, mm. A finer net would
	// find the same faults later: every point is on the body, so none is false.
	bodyStep = 2.0
	// around is how many points a ring has.
	around = 16
)

// points is a net over the stick's surface.
func (s stick) points() []mgl64.Vec3 {
	axis := s.to.Sub(s.from)
	length := axis.Len()
	if length == 0 {
		return s.dome(s.from, mgl64.Vec3{1, 0, 0})
	}
	way := axis.Mul(1 / length)
	var net []mgl64.Vec3
	rings := int(math.Ceil(length / bodyStep))
	for i := range rings + 1 {
		at := s.from.Add(axis.Mul(float64(i) / float64(rings)))
		net = append(net, ring(at, way, s.radius)...)
		if !s.round && (i == 0 || i == rings) {
			net = append(append(net, at), ring(at, way, s.radius/2)...)
		}
	}
	if s.round {
		net = append(append(net, s.dome(s.from, way)...), s.dome(s.to, way)...)
	}
	return net
}

// dome is a net over a ball.
func (s stick) dome(at, way mgl64.Vec3) []mgl64.Vec3 {
	var net []mgl64.Vec3
	for i := -3; i <= 3; i++ {
		sin, cos := math.Sincos(float64(i) * math.Pi / 8)
		net = append(net, ring(at.Add(way.Mul(s.radius*sin)), way, s.radius*cos)...)
	}
	return net
}

// circle is a ring of radius 1.
var circle = func() (c [around][2]float64) {
	for i := range c {
		c[i][1], c[i][0] = math.Sincos(2 * math.Pi * float64(i) / around)
	}
	return c
}()

func ring(at, way mgl64.Vec3, radius float64) []mgl64.Vec3 {
	u := way.Cross(mgl64.Vec3{1, 0, 0})
	if math.Abs(way[0]) > 0.7 {
		u = way.Cross(mgl64.Vec3{0, 0, 1})
	}
	u = u.Normalize()
	v := way.Cross(u)
	points := make([]mgl64.Vec3, around)
	for i := range points {
		points[i] = at.Add(u.Mul(radius * circle[i][0])).Add(v.Mul(radius * circle[i][1]))
	}
	return points
}

// obstacle is a solid of a part, measured in the part's own frame.
type obstacle struct {
	part   string
	solid  route.Solid
	home   mgl64.Mat3 // from the case's directions to the part's
	at     mgl64.Vec3
	centre mgl64.Vec3 // of a ball around it, in the case
	reach  float64    // radius of that ball, mm
}

// farther reports whether all of the ball around the solid is this far from a
// point: a short answer for most of them.
func (o obstacle) farther(p mgl64.Vec3, than float64) bool {
	d, r := p.Sub(o.centre), o.reach+than
	return d.Dot(d) > r*r
}

func obstacles(plan route.Plan) (list []obstacle) {
	for _, p := range plan.Parts {
		home := partMatrix(p).Mat3().Transpose()
		for _, s := range p.Solids {
			centre := home.Transpose().Mul3x1(s.From.Add(s.To).Mul(0.5)).Add(p.At)
			list = append(list, obstacle{p.Name, s, home, p.At, centre, s.To.Sub(s.From).Len()/2 + s.Radius})
		}
	}
	return list
}

// distance is from a point in the case to the solid, below zero inside.
func (o obstacle) distance(p mgl64.Vec3) float64 {
	q := o.home.Mul3x1(p.Sub(o.at))
	if !o.solid.Box {
		return stick{o.solid.From, o.solid.To, o.solid.Radius, false}.distance(q)
	}
	out := mgl64.Vec3{}
	inside := math.Inf(-1)
	for i := range q {
		d := max(o.solid.From[i]-q[i], q[i]-o.solid.To[i])
		inside = max(inside, d)
		out[i] = max(d, 0)
	}
	if inside > 0 {
		return out.Len()
	}
	return inside
}

// inCase is how far a point is from the nearest wall, below zero outside.
func inCase(plan route.Plan, p mgl64.Vec3) float64 {
	least := math.Inf(1)
	for i := range p {
		least = min(least, p[i], plan.Case[i]-p[i])
	}
	return least
}
