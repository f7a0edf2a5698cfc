package clear

import "math"

// boxBox is the distance between two blocks. They are apart exactly when one of
// fifteen directions parts them: the faces' and the edges' crossed (Gottschalk,
// Lin, Manocha, OBBTree, 1996). Apart, the nearest places are an edge's of one
// and any of the other, or the other way about.
func boxBox(a, b *block, enough float64) near {
	sep := parting{w: b.c.sub(a.c), gap: math.Inf(-1)}
	sep.tryAll(a, b)
	if sep.gap <= 0 {
		return near{meet: true}
	}
	if enough > 0 && sep.gap >= enough {
		return near{d: sep.gap}
	}
	best := near{d: math.Inf(1)}
	best = edgesNear(best, a, b, sep.u)
	return edgesNear(best.swapped(), b, a, sep.u.mul(-1)).swapped()
}

// edgesNear keeps the nearest of the edges of a to b, leaving out those that
// are no nearer along the direction u from a to b than what is known.
func edgesNear(best near, a, b *block, u v3) near {
	face := -b.reach(u.mul(-1))
	for _, e := range boxEdges {
		p, q := a.corner(e[0]), a.corner(e[1])
		if face-max(p.dot(u), q.dot(u)) < best.d {
			best = nearer(best, segBox(p, q, b))
		}
	}
	return best
}

// parting is the direction, from the first block to the second, along which
// the gap between two blocks is widest; below 0 when none parts them.
type parting struct {
	w, u v3 // w from centre to centre
	gap  float64
}

func (s *parting) tryAll(a, b *block) {
	for i := range 3 {
		s.try(a, b, a.axis[i])
		s.try(a, b, b.axis[i])
	}
	for i := range 3 {
		for j := range 3 {
			u := a.axis[i].cross(b.axis[j])
			if l := u.len(); l > parallel {
				s.try(a, b, u.mul(1/l))
			}
		}
	}
}

// parallel is the sine below which two directions count as one: their cross
// product has lost its digits by then, and others serve as well.
const parallel = 1e-9

func (s *parting) try(a, b *block, u v3) {
	d := s.w.dot(u)
	if d < 0 {
		d, u = -d, u.mul(-1)
	}
	if gap := d - a.halfAlong(u) - b.halfAlong(u); gap > s.gap {
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

func (b *block) corner(n int) v3 {
	p := b.c
	for i := range 3 {
		side := b.half[i]
		if n>>i&1 == 0 {
			side = -side
		}
		p = p.plus(side, b.axis[i])
	}
	return p
}
