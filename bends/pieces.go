package bends

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// Pieces is the centreline in space: straight, bend, straight and so on, from
// the first stop to the last. There is always one straight more than there are
// bends; where two bends touch, the one between them has no length.
func (f Formed) Pieces() []Piece {
	if len(f.Straights) == 0 {
		return nil
	}
	pieces := make([]Piece, 0, 2*len(f.Bends)+1)
	from, s := f.Corners[0], 0.0
	for j, b := range f.Bends {
		arc := f.arc(j, b)
		pieces = append(pieces, Piece{From: from, To: arc.From, Start: s, End: b.Start}, arc)
		from, s = arc.To, b.End
	}
	return append(pieces, Piece{From: from, To: f.Corners[len(f.Corners)-1], Start: s, End: f.Developed})
}

// arc is bend j in space.
func (f Formed) arc(j int, b Bend) Piece {
	in, out := f.leg(j), f.leg(j+1)
	inward := out.Sub(in.Mul(in.Dot(out))).Normalize()
	from := f.Corners[j+1].Sub(in.Mul(b.Setback))
	return Piece{
		From: from, To: f.Corners[j+1].Add(out.Mul(b.Setback)),
		Centre: from.Add(inward.Mul(b.Radius)), U: inward.Mul(-1), V: in,
		Radius: b.Radius, Turn: b.Turn, Start: b.Start, End: b.End,
	}
}

// At is the point and the direction of travel at s mm along the tube from the
// first stop; s outside the piece counts as its nearer end. The direction of a
// straight without length is the zero vector.
func (p Piece) At(s float64) (point, dir mgl64.Vec3) {
	length := p.End - p.Start
	part := 0.0
	if length > 0 {
		part = min(max((s-p.Start)/length, 0), 1)
	}
	if p.Radius > 0 {
		return p.onArc(part * p.Turn * perDegree)
	}
	way := p.To.Sub(p.From)
	if far := way.Len(); far > sameSpot {
		dir = way.Mul(1 / far)
	}
	return p.From.Add(way.Mul(part)), dir
}

// onArc is At for a bend, at an angle in radians.
func (p Piece) onArc(angle float64) (point, dir mgl64.Vec3) {
	sin, cos := math.Sincos(angle)
	point = p.Centre.Add(p.U.Mul(p.Radius * cos)).Add(p.V.Mul(p.Radius * sin))
	return point, p.V.Mul(cos).Sub(p.U.Mul(sin))
}

// At is the point and the direction of travel at s mm along the centreline from
// the first stop; s outside the tube counts as its nearer end. A tube without
// length gives zero vectors.
func (f Formed) At(s float64) (point, dir mgl64.Vec3) {
	for _, p := range f.Pieces() {
		if p.End-p.Start <= sameSpot {
			continue
		}
		if point, dir = p.At(s); s <= p.End {
			break
		}
	}
	return point, dir
}
