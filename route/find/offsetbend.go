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
	along := w.Dot(a.dir)
	turns := append([]float64{tightestTurn(h.tube.Tube, over), gentlestTurn(h.tube.Tube, along, over)}, offsetTurns...)
	for _, turn := range turns {
		if turn > 0 {
			h.placed(start, end, along, over, turn)
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

// gentlestTurn is the least turn, up to a right angle, whose offset bend fits
// between the ends' least straights: the shortest tube of all offset bends that
// are not bent tighter than sin²(a/2) = over/4r. 0 when there is none. With
// x = tan(a/2) the ends meet at (4r − over)·x² − 2w·x + over = 0.
func gentlestTurn(t bends.Tube, along, over float64) float64 {
	w, lead := along-2*t.StraightEnd-settledSlack, 4*t.Radius-over
	root := w*w - lead*over
	if w <= 0 || root < 0 {
		return 0
	}
	x := over / (w + math.Sqrt(root))
	if x > 1 {
		return 0
	}
	return 2 * math.Atan(x) / perDegree
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
	for _, turn := range append([]float64{bestBack(h.tube.Tube, w.Dot(a.dir), over)}, 90, 60, 120, 45, 135) {
		if turn == 0 {
			continue
		}
		sin, cos := route.SinCos(turn)
		first := h.tube.StraightEnd + bends.Setback(h.tube.Radius, turn)
		last := h.tube.StraightEnd + bends.Setback(h.tube.Radius, 180-turn)
		// along the common way the corners stand over/tan(turn) apart
		ahead := w.Dot(a.dir) - over*cos/sin
		for _, more := range []float64{0, 10, 20, 40} {
			s := max(first, last+ahead) + more
			h.offer(start, end, Miss{}, []vec{a.ahead(s), b.ahead(s - ahead)})
		}
	}
}

// bestBack is the first turn of the shortest two bends that make up a half turn;
// 0 when none fits. The tube's length has one least place on either side of a
// right angle at most, which looking every two degrees does not miss; the best
// is then looked at more closely.
func bestBack(t bends.Tube, along, over float64) float64 {
	best, least := 0.0, math.Inf(1)
	look := func(turn float64) {
		if d := backLength(t, along, over, turn); d < least-sameSpot {
			best, least = turn, d
		}
	}
	for turn := 32.0; turn <= 148; turn += 2 {
		look(turn)
	}
	for step := 1.0; best > 0 && step > 0.01; step /= 2 {
		at := best
		look(at - step)
		look(at + step)
	}
	return best
}

// backLength is the developed length of two bends that make up a half turn, as
// near to the ends as may be; infinite when they cannot be formed.
func backLength(t bends.Tube, along, over, turn float64) float64 {
	sin, cos := route.SinCos(turn)
	first, last := bends.Setback(t.Radius, turn), bends.Setback(t.Radius, 180-turn)
	ahead := along - over*cos/sin
	s := max(t.StraightEnd+first, t.StraightEnd+last+ahead)
	leg := over / sin
	if leg-first-last < t.StraightBetween {
		return math.Inf(1)
	}
	return s + (s - ahead) + leg - 2*(first+last) + bends.ArcLength(t.Radius, 180)
}
