package find

import "tubewright/route"

// keptSpare is far more than what is in hand may come out shorter by than its gap
// says, mm: rolls are rounded to what reads well (wholeRoll).
const keptSpare = 0.01

// mayBeKept reports whether what is in hand may be among the cheapest of its name,
// when from arm to arm the gap is at least this long. Mostly it is not: where
// nothing closes clear of everything, thousands of handfuls close, of which 48 of
// a name are looked at.
func (s *straightener) mayBeKept(gap float64) bool {
	w := &s.plan.Weigh
	if w.Tidy < 0 || w.Millimetre < 0 {
		return true
	}
	f := s.kin(s.namingInHand())
	if len(f.ideas) < mostTries {
		return true
	}
	count, price := s.inHand()
	tube, askew := max(0, gap-s.legs-s.stops-keptSpare), 0.0
	if w.Tidy > 0 {
		askew = slant(s.arms[0].end().Dir, s.bare[0].frames[0].Dir, s.bare[1].frames[0].Dir)
	}
	return f.wants(costKey(w.Fitting*float64(count) + w.Price*price + s.sockets + w.Millimetre*tube + w.Tidy*askew - sameCost))
}

// namingInHand is what a straight of what is in hand is named after.
func (s *straightener) namingInHand() (n naming) {
	for end, a := range s.arms {
		for range a.n {
			n.kit = n.kit.and(route.Elbow)
		}
		for range s.picks[end].lift.fits {
			n.kit = n.kit.and(route.Extender)
		}
	}
	for range s.offsets {
		n.kit = n.kit.and(route.Offset)
	}
	return n
}

// mostSway is how far the offsets in hand may at most bring the arms together
// along the tube.
func (s *straightener) mostSway() float64 {
	sum := 0.0
	for i := range s.swings[:s.offsets] {
		w := &s.swings[i]
		sum += w.fit.Sideways * s.stretch(w).Cross(s.u).Len()
	}
	return sum
}
