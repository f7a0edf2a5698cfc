package find

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/route"
)

// twoBends offers two bends between any two rays: one on each, with a straight
// between them. Where the bends stand, s along the first ray and t along the
// second, is free: the best places are worked out for each count of standard
// turns, and some others for where those are not clear. Chains with fittings
// besides sockets get only the places that are quick to find.
func (h *hunt) twoBends(start, end *build, plain bool) {
	a, b := start.ray(), end.ray()
	if a.dir.Cross(b.dir).Len() < nearParallel {
		h.offsetBend(start, end)
		h.backBend(start, end)
		return
	}
	h.standardPair(start, end)
	h.shortPair(start, end, 0)
	if !plain {
		return
	}
	h.shortPair(start, end, 15)
	h.shortPair(start, end, 40)
	h.halfStandard(start, end)
	h.bestPair(start, end)
}

// bestPair offers the shortest pair with one standard turn and the shortest of
// all. A tube is no shorter than the way between its stops: what cannot cost less
// than a pair already offered is not worked out.
func (h *hunt) bestPair(start, end *build) {
	f := newTwoBend(h.tube.Tube, start.ray(), end.ray())
	bare := chainCost(h.plan.Weigh, start) + chainCost(h.plan.Weigh, end) + 2*h.plan.Weigh.Bend + h.plan.Weigh.Millimetre*f.w.Len()
	if h.leastPair(start, end) <= bare+h.plan.Weigh.OddBend {
		return
	}
	for _, turn := range []float64{90, 45} {
		if h.halt.did(closeInWork); h.halt.halted() {
			return
		}
		if s, t, ok := f.shortestWith(turn); ok {
			h.pair(start, end, s, t)
		}
		if t, s, ok := f.turned().shortestWith(turn); ok {
			h.pair(start, end, s, t)
		}
	}
	if h.leastPair(start, end) <= bare+2*h.plan.Weigh.OddBend || h.halt.halted() {
		return
	}
	h.halt.did(2 * closeInWork)
	if s, t, ok := f.shortest(); ok {
		h.pair(start, end, s, t)
	}
}

// closeInWork is what closing in on the shortest of two bends counts.
const closeInWork = 500

// leastPair is the least cost of two bends offered between two chains so far.
func (h *hunt) leastPair(start, end *build) float64 {
	least := math.Inf(1)
	for _, f := range h.families {
		for i := range f.ideas {
			if d := &f.ideas[i]; len(d.corners) == 2 && d.start == start && d.end == end {
				least = min(least, d.cost)
			}
		}
	}
	return least
}

func (h *hunt) pair(start, end *build, s, t float64) {
	if s > 0 && t > 0 {
		h.offer(start, end, Miss{}, []vec{start.ray().ahead(s), end.ray().ahead(t)})
	}
}

// standardPair solves for legs between the rays that make standard turns with
// both. The leg's direction m is settled by m·d1 = cos a1 and m·d2 = −cos a2 (two
// cones about the rays meet in two lines, or none); then s·d1 + l·m − t·d2 = w are
// three equations for s, t and the leg's length l.
func (h *hunt) standardPair(start, end *build) {
	a, b := start.ray(), end.ray()
	for _, first := range []float64{90, 45} {
		for _, second := range []float64{90, 45} {
			for _, m := range onCones(a.dir, b.dir, first, second) {
				h.along(start, end, m)
			}
		}
	}
}

// onCones gives the unit directions that make one angle with d1 and another
// with −d2.
func onCones(d1, d2 vec, first, second float64) []vec {
	_, c1 := route.SinCos(first)
	_, c2 := route.SinCos(second)
	c := d1.Dot(d2)
	n2 := 1 - c*c
	x, y := (c1+c*c2)/n2, (-c2-c*c1)/n2
	flat := d1.Mul(x).Add(d2.Mul(y))
	rest := 1 - flat.Dot(flat)
	switch {
	case rest < -sameWay:
		return nil
	case rest < sameWay:
		return []vec{flat}
	}
	up := d1.Cross(d2).Mul(math.Sqrt(rest / n2))
	return []vec{flat.Add(up), flat.Sub(up)}
}

// along offers the pair whose leg runs in direction m. Where all three
// directions lie in one plane the leg may stand anywhere; shortPair covers that.
func (h *hunt) along(start, end *build, m vec) {
	a, b := start.ray(), end.ray()
	mat := mgl64.Mat3FromCols(a.dir, m, b.dir.Mul(-1))
	if math.Abs(mat.Det()) < nearParallel {
		h.inPlane(start, end, m)
		return
	}
	x := mat.Inv().Mul3x1(b.at.Sub(a.at))
	if x[1] > 0 {
		h.pair(start, end, x[0], x[2])
	}
}

// inPlane offers legs in direction m between two rays of one plane: as near to
// the first end as can be, and to the last.
func (h *hunt) inPlane(start, end *build, m vec) {
	a, b := start.ray(), end.ray()
	n := a.dir.Cross(b.dir)
	if gap := math.Abs(b.at.Sub(a.at).Dot(n)) / n.Len(); gap > sameSpot {
		return
	}
	s := h.tube.StraightEnd + bends.Setback(h.tube.Radius, degreesBetween(a.dir, m))
	if _, t, _, ok := closest(ray{a.ahead(s), m}, b); ok {
		h.pair(start, end, s, t)
	}
	t := h.tube.StraightEnd + bends.Setback(h.tube.Radius, degreesBetween(m, b.dir.Mul(-1)))
	if _, s, _, ok := closest(ray{b.ahead(t), m}, a); ok {
		h.pair(start, end, s, t)
	}
	h.leastLeg(start, end, m)
}

// leastLeg offers the leg in direction m that is as short as may be: its length
// changes evenly along the rays, from nothing where they meet.
func (h *hunt) leastLeg(start, end *build, m vec) {
	a, b := start.ray(), end.ray()
	s0, t0, _, ok := closest(a, b)
	first, second := degreesBetween(a.dir, m), degreesBetween(m, b.dir.Mul(-1))
	// the triangle of the rays' meeting and the two corners
	apex, _ := route.SinCos(degreesBetween(a.dir, b.dir))
	if !ok || apex < nearParallel {
		return
	}
	leg := h.tube.StraightBetween + bends.Setback(h.tube.Radius, first) + bends.Setback(h.tube.Radius, second) + settledSlack/10
	sin1, _ := route.SinCos(first)
	sin2, _ := route.SinCos(second)
	h.pair(start, end, s0-leg*sin2/apex, t0-leg*sin1/apex)
	h.pair(start, end, s0+leg*sin2/apex, t0+leg*sin1/apex)
}

// settleRounds is how often shortPair brings the bends to the ends again: where
// the bends can be formed at all each round shrinks the error about by half.
const settleRounds = 24

// innerRounds is the same for the bend that follows another.
const innerRounds = 16

// shortPair puts both bends as near to the ends as the tube allows, with this
// much straight to spare: the nearer they are, the shorter the tube. The
// setbacks hang on the turns and the turns on where the bends stand, so it goes
// round until they agree.
func (h *hunt) shortPair(start, end *build, more float64) {
	s, t := h.settle(start.ray(), end.ray(), more)
	h.pair(start, end, s, t)
}

// settle gives where the bends come to stand with this much straight to spare.
func (h *hunt) settle(a, b ray, more float64) (s, t float64) {
	least := h.tube.StraightEnd + more + settledSlack
	s, t = least+h.tube.Radius, least+h.tube.Radius
	for range settleRounds {
		m, ok := unit(b.ahead(t).Sub(a.ahead(s)))
		if !ok {
			return 0, 0
		}
		wasS, wasT := s, t
		s = least + h.tube.Radius*min(tanHalf(a.dir.Dot(m)), foldedTan)
		t = least + h.tube.Radius*min(tanHalf(-b.dir.Dot(m)), foldedTan)
		if math.Abs(s-wasS)+math.Abs(t-wasT) < sameSpot {
			break
		}
	}
	return s, t
}

// tanHalf is the tangent of half the angle with this cosine.
func tanHalf(cos float64) float64 {
	if cos <= -1 {
		return math.Inf(1)
	}
	return math.Sqrt(max(0, 1-cos) / (1 + cos))
}

// foldedTan is tanHalf of foldedTurn.
var foldedTan = math.Tan(foldedTurn * perDegree / 2)

const (
	// settledSlack is kept over the least straight where a bend's place is found
	// by going round, mm: more than the last round still moves it.
	settledSlack = 1e-2
	// foldedTurn bounds the turns while settle goes round, degrees: a nearly
	// closed corner would throw the next round far out.
	foldedTurn = 150
)

// halfStandard offers pairs of which one bend is a standard one: the other end's
// bend stands as near as it can.
func (h *hunt) halfStandard(start, end *build) {
	for _, turn := range []float64{45, 90} {
		if s, t, ok := h.standardFirst(start.ray(), end.ray(), turn); ok {
			h.pair(start, end, s, t)
		}
		if t, s, ok := h.standardFirst(end.ray(), start.ray(), turn); ok {
			h.pair(start, end, s, t)
		}
	}
}

// standardFirst gives where the bends stand when the one on the first ray makes
// this turn. Each place hangs on the other, so it goes round.
func (h *hunt) standardFirst(a, b ray, turn float64) (s, t float64, ok bool) {
	_, t = h.settle(a, b, 0)
	for range settleRounds {
		if s, ok = cornerFor(a, b.ahead(t), turn); !ok {
			return 0, 0, false
		}
		t = h.again(b, a.ahead(s))
	}
	s, ok = cornerFor(a, b.ahead(t), turn)
	return s, t, ok
}

// again is how near to its end a ray's bend can stand when it comes from a point.
func (h *hunt) again(r ray, from vec) float64 {
	least := h.tube.StraightEnd + settledSlack
	t := least + h.tube.Radius
	for range innerRounds {
		m, ok := unit(from.Sub(r.ahead(t)))
		if !ok {
			return 0
		}
		was := t
		t = least + h.tube.Radius*min(tanHalf(r.dir.Dot(m)), foldedTan)
		if math.Abs(t-was) < sameSpot {
			break
		}
	}
	return t
}

// cornerFor is how far along a ray a corner of this turn stands that leads to a point.
func cornerFor(r ray, to vec, turn float64) (float64, bool) {
	w := to.Sub(r.at)
	sin, cos := route.SinCos(turn)
	s := w.Dot(r.dir) - aside(w, r.dir).Len()*cos/sin
	return s, s > 0
}
