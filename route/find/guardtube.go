package find

import (
	"tubewright/bends"
	"tubewright/route/clear"
)

// formedTube is a formed tube between two chains, piece by piece.
type formedTube struct {
	start, end *build
	pieces     []bends.Piece
	limbs      []limb
}

func newFormedTube(i *idea, f bends.Formed) *formedTube {
	t := &formedTube{start: i.start, end: i.end, pieces: f.Pieces()}
	t.limbs = make([]limb, len(t.pieces))
	for n, p := range t.pieces {
		t.limbs[n] = newLimb(Swept(p, f.Tube.OD))
	}
	return t
}

// stands reports whether a piece has any length.
func (t *formedTube) stands(n int) bool { return t.pieces[n].End-t.pieces[n].Start > sameSpot }

// room is what the tube takes.
func (t *formedTube) room() []limb {
	list := t.limbs[:0]
	for n := range t.limbs {
		if t.stands(n) {
			list = append(list, t.limbs[n])
		}
	}
	return list
}

// tubeHits is the worst a formed tube runs into, its own chains included.
func (h *hunt) tubeHits(t *formedTube) *hit {
	var worst *hit
	for n := range t.pieces {
		if worst = worse(worst, h.pieceHits(t, n)); h.enough(worst) {
			return worst
		}
	}
	return worse(worst, h.selfHits(t))
}

// pieceHits checks one piece.
func (h *hunt) pieceHits(t *formedTube, n int) *hit {
	if !t.stands(n) {
		return nil
	}
	worst := h.against(&t.limbs[n], keeping{[2]int{h.a.part, h.b.part}, -1})
	worst = worse(worst, h.ownHits(t, n, h.a.part))
	if h.b.part != h.a.part {
		worst = worse(worst, h.ownHits(t, n, h.b.part))
	}
	return worst
}

// trimmed cuts a straight piece short at both ends.
func trimmed(p bends.Piece, from, to float64) bends.Piece {
	length := p.End - p.Start
	from, to = min(from, length), min(to, max(0, length-from))
	dir := p.To.Sub(p.From).Mul(1 / length)
	p.From, p.To = p.From.Add(dir.Mul(from)), p.To.Sub(dir.Mul(to))
	p.Start, p.End = p.Start+from, p.End-to
	return p
}

// ownHits checks a piece against a part that carries one of the ports: the stretch
// inside a socket on it is exempt.
func (h *hunt) ownHits(t *formedTube, n, part int) *hit {
	from, to := 0.0, 0.0
	if n == 0 && part == h.a.part {
		from = t.start.mouth()
	}
	if n == len(t.pieces)-1 && part == h.b.part {
		to = t.end.mouth()
	}
	l := &t.limbs[n]
	if from > 0 || to > 0 {
		p := trimmed(t.pieces[n], from, to)
		if p.End-p.Start <= sameSpot {
			return nil
		}
		rest := newLimb(Swept(p, h.tube.OD))
		l = &rest
	}
	var worst *hit
	for i := range h.solidsOf(part) {
		if worst = worse(worst, h.hitOn(l, &h.solidsOf(part)[i], 0, false, worst)); h.enough(worst) {
			break
		}
	}
	return worst
}

// Swept is the room a piece of a tube takes.
func Swept(p bends.Piece, od float64) clear.Shape {
	if p.Radius == 0 {
		return clear.Rod{From: p.From, To: p.To, Radius: od / 2}
	}
	return clear.Arc{Centre: p.Centre, U: p.U, V: p.V, Bend: p.Radius, Turn: p.Turn, Radius: od / 2}
}

// selfHits checks a run against itself: the tube beyond its first straight
// against the start chain, before its last against the end chain, one chain
// against the other, and straights that are not neighbours.
func (h *hunt) selfHits(t *formedTube) *hit {
	tube, starts, ends := t.limbs, t.start.room(), t.end.room()
	worst := h.crossHits(starts, ends)
	if len(tube) == 1 {
		return worst
	}
	worst = worse(worst, h.crossHits(tube[1:], starts))
	worst = worse(worst, h.crossHits(tube[:len(tube)-1], ends))
	for n := 0; n+4 < len(tube); n += 2 {
		for m := n + 4; m < len(tube); m += 2 {
			worst = worse(worst, h.crossHits(tube[n:n+1], tube[m:m+1]))
		}
	}
	return worst
}

func (h *hunt) crossHits(a, b []limb) *hit {
	var worst *hit
	for i := range a {
		for j := range b {
			if short := h.lacks(&a[i], b[j].shape, &b[j].lo, &b[j].hi, 0); short > 0 {
				worst = worse(worst, &hit{what: "itself", short: short})
			}
		}
	}
	return worst
}
