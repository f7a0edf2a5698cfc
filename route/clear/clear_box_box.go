package clear

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// boxBox is the distance between two blocks. They are apart exactly when one of
// fifteen directions parts them: the faces' and the edges' crossed (Gottschalk,
// Lin, Manocha, OBBTree, 1996). Apart, the nearest places are an edge's of one
// and any of the other, or the other way about.
func boxBox(a, b Box, enough float64) near {
	sep := parting{w: b.Centre.Sub(a.Centre), gap: math.Inf(-1)}
	sep.tryAll(&a, &b)
	if sep.gap <= 0 {
		return near{meet: true}
	}
	if enough > 0 && sep.gap >= enough {
		return near{d: sep.gap}
	}
	best := near{d: math.Inf(1)}
	best = edgesNear(best, &a, &b, sep.u)
	return edgesNear(best.swapped(), &b, &a, sep.u.Mul(-1)).swapped()
}

// edgesNear keeps the nearest of the edges of a to b, leaving out those that
// are no nearer along the direction u from a to b than what is known.
func edgesNear(best near, a, b *Box, u mgl64.Vec3) near {
	face := -b.reach(u.Mul(-1))
	for _, e := range boxEdges {
		p, q := a.corner(e[0]), a.corner(e[1])
		if face-max(p.Dot(u), q.Dot(u)) < best.d {
			best = nearer(best, segBox(p, q, *b))
		}
	}
	return best
}

// parting is the direction, from the first block to the second, along which
// the gap between two blocks is widest; below 0 when none parts them.
type parting struct {
	w, u mgl64.Vec3 // w from centre to centre
	gap  float64
}

func (s *parting) tryAll(a, b *Box) {
	for i := range 3 {
		s.try(a, b, a.Axes.Col(i))
		s.try(a, b, b.Axes.Col(i))
	}
	for i := range 3 {
		for j := range 3 {
			u := a.Axes.Col(i).Cross(b.Axes.Col(j))
			if l := u.Len(); l > parallel {
				s.try(a, b, u.Mul(1/l))
			}
		}
	}
}

// parallel is the sine below which two directions count as one: their cross
// product has lost its digits by then, and others serve as well.
const parallel = 1e-9

func (s *parting) try(a, b *Box, u mgl64.Vec3) {
	d := s.w.Dot(u)
	if d < 0 {
		d, u = -d, u.Mul(-1)
	}
	if gap := d - a.half(u) - b.half(u); gap > s.gap {
		s.gap, s.u = gap, u
	}
}

// boxEdges are the edges of a block by the numbers of their corners; bit i of a
// corner's number is its side along axis i.
var boxEdges = [12][2]int{
	{0, 1},
	{2, 3},
	{4, 5},
	{6, 7},
	{0, 2},
	{1, 3},
	{4, 6},
	{5, 7},
	{0, 4},
	{1, 5},
	{2, 6},
	{3, 7},
}

func (b *Box) corner(n int) mgl64.Vec3 {
	p := b.Centre
	for i := range 3 {
		side := b.Half[i]
		if n>>i&1 == 0 {
			side = -side
		}
		p = p.Add(b.Axes.Col(i).Mul(side))
	}
	return p
}
