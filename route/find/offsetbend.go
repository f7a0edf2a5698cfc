package find

import (
	"math"

	"tubewright/bends"
	"tubewright/route"
)

// offsetTurns are the turns tried for an offset bend, those that formers mark
// first; whatever else fits the room best is worked out.
var offsetTurns = []float64{45, 90, 30, 60, 22.5, 15, 10, 5}

// places are where along the straight an offset bend may stand: the middle
// first, then at either end, then between.
var places = []float64{0.5, 0, 1, 0.25, 0.75}

// offsetBend offers two equal bends, turned against each other, for rays that
// point at each other but stand aside. With h aside and turn a, the leg between
// is h/sin a long and takes h/tan a of the way.
func (h *hunt) offsetBend(start, end *build) {
	a, b := start.ray(), end.ray()
	w := b.at.Sub(a.at)
	over := aside(w, a.dir).Len()
	if over <= noOffset || a.dir.Dot(b.dir) > 0 {
		return
	}
	turns := append([]float64{tightestTurn(h.tube.Tube, over)}, offsetTurns...)
	for _, turn := range turns {
		if turn > 0 {
			h.placed(start, end, w.Dot(a.dir), over, turn)
		}
	}
}

// noOffset is a way aside too small to bend for, mm: less than a former can set.
const noOffset = 0.05

// placed offers an offset bend of one turn at each place along the way.
func (h *hunt) placed(start, end *build, along, over, turn float64) {
	sin, cos := route.SinCos(turn)
	least := h.tube.StraightEnd + bends.Setback(h.tube.Radius, turn)
	room := along - over*cos/sin - 2*least
	for _, part := range places {
		s := least + part*max(room, 0)
		h.pair(start, end, s, along-over*cos/sin-s)
		if room <= sameSpot {
			return
		}
	}
}

// tightestTurn is the largest turn, up to a right angle, whose two bends leave
// the least straight between them when they move the way this far aside; 0 when
// even the smallest do not. The leg's straight over/sin a − 2·r·tan(a/2) shrinks
// as the turn grows, so halving finds it.
func tightestTurn(t bends.Tube, over float64) float64 {
	left := func(turn float64) float64 {
		sin, _ := route.SinCos(turn)
		return over/sin - 2*bends.Setback(t.Radius, turn) - t.StraightBetween
	}
	lo, hi := 0.5, 90.0
	if left(lo) < 0 {
		return 0
	}
	if left(hi) >= 0 {
		return 0 // the right angle is tried anyway
	}
	for range 60 {
		if mid := (lo + hi) / 2; left(mid) >= 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return math.Floor(lo*100) / 100
}

// backBend offers two bends for rays that leave side by side the same way: two
// right angles, or any two turns that make up a half turn.
func (h *hunt) backBend(start, end *build) {
	a, b := start.ray(), end.ray()
	w := b.at.Sub(a.at)
	over := aside(w, a.dir).Len()
	if over <= noOffset || a.dir.Dot(b.dir) < 0 {
		return
	}
	for _, turn := range []float64{90, 60, 120, 45, 135} {
		sin, cos := route.SinCos(turn)
		first := h.tube.StraightEnd + bends.Setback(h.tube.Radius, turn)
		last := h.tube.StraightEnd + bends.Setback(h.tube.Radius, 180-turn)
		// along the common way the corners stand over/tan(turn) apart
		ahead := w.Dot(a.dir) - over*cos/sin
		for _, more := range []float64{0, 10, 20, 40} {
			s := max(first, last+ahead) + more
			h.offer(idea{start: start, end: end, corners: []vec{a.ahead(s), b.ahead(s - ahead)}})
		}
	}
}
