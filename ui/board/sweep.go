package board

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
)

// arcStep is the turn in degrees that one short cylinder of a bend stands for:
// on a 32 mm former its chord is within 0.07 mm of the arc.
const arcStep = 7.5

// hose is a tube being swept: where its last ring stands, so that the sides run
// on from piece to piece and the outline closes between them.
type hose struct {
	ref  mgl64.Vec3 // direction the rings start from, square to the way
	last band
}

// sweep adds a stretch of tube along a piece of centreline.
func (m *mesh) sweep(h *hose, p bends.Piece, r float64) {
	steps := 1
	if p.Radius > 0 {
		steps = max(1, int(math.Ceil(p.Turn/arcStep)))
	}
	if h.ref == (mgl64.Vec3{}) {
		_, dir := p.At(p.Start)
		h.ref, _ = squareTo(dir)
	}
	n := sidesFor(r)
	for i := range steps {
		at, dir := p.At(between(p, i, steps))
		to, way := p.At(between(p, i+1, steps))
		next := carried(h.ref, way)
		b := band{n: int32(n), hasA: true, hasUpper: true}
		b.a, b.b = m.ring(at, dir, h.ref, r, n), m.ring(to, way, next, r, n)
		m.sides(&b)
		m.ribs(b)
		if h.last.n > 0 {
			m.joint(h.last, b, false)
		}
		h.last, h.ref = b, next
	}
}

func between(p bends.Piece, i, steps int) float64 {
	return p.Start + (p.End-p.Start)*float64(i)/float64(steps)
}

// carried is a reference direction made square to a new way without needless twist.
func carried(ref, way mgl64.Vec3) mgl64.Vec3 {
	square := ref.Sub(way.Mul(ref.Dot(way)))
	if square.Len() < 1e-6 { // the tube turned a right angle in one step; any reference will do
		u, _ := squareTo(way)
		return u
	}
	return square.Normalize()
}

func (m *mesh) ring(at, dir, ref mgl64.Vec3, r float64, n int) int32 {
	return m.circle(at, dir, ref, dir.Cross(ref), n, station{0, r, 1, 0})
}
