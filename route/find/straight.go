package find

import (
	"math"

	"tubewright/route"
)

// straightener looks for chains of fittings that bring two rays into line.
//
// It looks at pairs of chains of up to three fittings before each socket, of
// which together at most two are elbows and at most two are offsets, not more
// than one of these before an elbow. First the elbows bring the ways out to
// face each other, as truly as their turns allow: that settles their rolls.
// What is then left square to the tube's way is closed by extenders before the
// elbows, whose lengths add up to what can be bought, and by offsets, whose
// rolls follow in closed form. A tube is never let lie askew to close a
// sideways miss. What the sockets must still give is told with the way.
type straightener struct {
	*hunt
	sides             [2]*side
	bare              [2]arm
	fixed             [2][]fixedArms
	arms              [2]*arm // the pair in hand
	held              [2]arm
	grasp             float64 // how far aside the class in hand may bring a way without the legs of its elbows, mm
	u                 vec     // the tube's way between them
	swings            [2]swing
	offsets           int      // how many of swings count
	picks             [2]stack // extenders in hand
	sideways, degrees float64  // what two sockets give together at most, mm and degrees
	nearU             float64  // cosine of an angle a little above degrees
	legs              float64  // how much of the gap in hand legs of elbows take up, mm
	slack             float64  // what may be left square to u while a pair is put together, mm
	bound             float64  // a pair that costs as much is not worth having
	sockets           float64  // what the cheapest pair of sockets costs
	stops             float64  // how much shorter than the gap the tube is at most: the deepest sockets, mm
	found             bool     // a clear straight
	trailing          bool     // extenders may stand where they close nothing
	tried             int      // handfuls of fittings looked at
}

// stack is the extenders of one end and the stretch they stand in.
type stack struct {
	slot int
	lift *lift
}

// class is how many fittings that turn something a straight has.
type class struct{ first, last, offsets int }

// classes in order of what they cost: the search ends once a class cannot beat
// what is found.
var classes = []class{
	{0, 0, 0},
	{0, 0, 1},
	{1, 0, 0},
	{0, 1, 0},
	{0, 0, 2},
	{1, 0, 1},
	{0, 1, 1},
	{1, 1, 0},
	{2, 0, 0},
	{0, 2, 0},
	{1, 0, 2},
	{0, 1, 2},
	{1, 1, 1},
	{2, 0, 1},
	{0, 2, 1},
	{1, 1, 2},
	{2, 0, 2},
	{0, 2, 2},
}

const (
	// mostTurning is how many elbows and offsets a tube that can be bent is spared
	// its bends for, when bends are to be had.
	mostTurning = 2
	// mostTurningHard is the same where nothing else goes: four are for tubes that
	// cannot be bent.
	mostTurningHard = 3
	// mostTried bounds the handfuls of fittings that one run's straights look at: a
	// tenth of a second on a machine of 2026. With every chain of the catalogue
	// and two ports a hand apart a few thousand are looked at; more are only there
	// where nothing closes.
	mostTried = 20000
	// anyTurning is no bound.
	anyTurning = 2 * mostFittings
)

// straights offers every straight tube that a chain at each end can bring
// about: the stops in line within what the sockets give.
func (h *hunt) straights() {
	if h.a.given != nil || h.b.given != nil {
		h.givenLine()
		return
	}
	s := h.newStraightener()
	if !s.unbent() {
		s.search(0, mostTurning-1)
		return
	}
	s.search(0, anyTurning)
	if !s.found {
		s.trailing = true
		s.search(0, anyTurning)
	}
}

// moreStraights offers, once bends are known, the straights with more fittings
// that are worth listing beside them.
func (h *hunt) moreStraights() {
	if h.unbent() || h.a.given != nil || h.b.given != nil || len(h.run.Via) > 0 || h.run.Way == route.Bent {
		return
	}
	s := h.newStraightener()
	if best := h.bestClear(); best < anyCost {
		s.bound = min(s.bound, farDearer*float64(best)*sameCost)
	}
	s.search(mostTurning, mostTurning)
}

// harderStraights offers straights with more fittings, for a run that has no way
// otherwise.
func (h *hunt) harderStraights() {
	if h.a.given != nil || h.b.given != nil || len(h.run.Via) > 0 || h.run.Way == route.Bent {
		return
	}
	s := h.newStraightener()
	s.search(mostTurning+1, mostTurningHard)
	if !s.found {
		s.trailing = true
		s.search(0, mostTurning)
	}
}

func (h *hunt) newStraightener() *straightener {
	s := &straightener{hunt: h, sides: [2]*side{h.a, h.b}, bound: math.MaxFloat64}
	if h.below < anyCost {
		s.bound = float64(h.below) * sameCost
	}
	for i, e := range s.sides {
		s.bare[i].frames[0] = e.port.Frame
		sideways, degrees, price, stop := 0.0, 0.0, math.Inf(1), 0.0
		for _, f := range e.sockets {
			sideways, degrees, price = max(sideways, f.Give.Sideways), max(degrees, f.Give.Degrees), min(price, f.Price)
			stop = max(stop, f.Stop)
		}
		s.stops += stop
		s.sideways, s.degrees = s.sideways+sideways, s.degrees+degrees
		s.sockets += h.plan.Weigh.Price * price
	}
	s.nearU = math.Cos((s.degrees + standardWithin) * perDegree)
	return s
}

// unbent reports whether the run must be straight.
func (h *hunt) unbent() bool { return h.run.Way == route.Straight || h.tube.Radius == 0 }

// search goes through the classes that have so many elbows and offsets.
func (s *straightener) search(from, to int) {
	for _, c := range classes {
		turning := c.first + c.last + c.offsets
		if turning < from || turning > to || s.dear(turning, s.leastPrice(c)) {
			continue
		}
		s.offsets, s.grasp = c.offsets, s.graspOf(c)
		before := s.filed
		s.aim(c.first, c.last)
		if s.filed > before {
			s.lower()
		}
	}
}

// leastPrice is what the fittings of a class cost at least.
func (s *straightener) leastPrice(c class) float64 {
	return float64(c.first)*s.sides[0].least(route.Elbow) + float64(c.last)*s.sides[1].least(route.Elbow) +
		float64(c.offsets)*min(s.sides[0].least(route.Offset), s.sides[1].least(route.Offset))
}

// lower brings the bound down to the cheapest clear straight so far.
func (s *straightener) lower() {
	if best := s.bestClear(); best < math.MaxInt64 {
		s.bound, s.found = min(s.bound, float64(best)*sameCost+sameCost), true
	}
}

// dear reports whether this many fittings of this price cost too much already.
func (s *straightener) dear(count int, price float64) bool {
	s.tried++
	return s.tooDear(count, price)
}

// tooDear is dear without counting it as a handful looked at.
func (s *straightener) tooDear(count int, price float64) bool {
	if s.tried > mostTried {
		return true
	}
	w := &s.plan.Weigh
	return s.halt.halted() || w.Fitting*float64(count)+w.Price*price+s.sockets >= s.bound
}

// shutAll closes what is left between two arms, with offsets in every place.
func (s *straightener) shutAll(a, b *arm) {
	s.arms = [2]*arm{a, b}
	u, ok := unit(a.end().Dir.Sub(b.end().Dir))
	if !ok {
		return
	}
	s.u = u
	s.loosen(a, b)
	if gap := b.end().At.Sub(a.end().At); aside(gap, u).Len() <= s.slack+s.grasp {
		s.place(0, 0, 0)
	}
}

// loosen sets the slack for a pair of arms. Where they let go askew the tube may
// lie along either; which is best hangs on the offsets, and line has the word.
func (s *straightener) loosen(a, b *arm) {
	s.slack = s.sideways + sameSpot
	if askew := a.end().Dir.Add(b.end().Dir).Len(); askew > sameWay {
		s.slack += askew * b.end().At.Sub(a.end().At).Len()
	}
}

// place tries the offsets from one on in every stretch, those of one stretch in
// the order of the kit.
func (s *straightener) place(count, from, kind int) {
	if count == s.offsets {
		s.shut()
		return
	}
	for at := from; at <= s.arms[0].n+s.arms[1].n+1; at++ {
		w := swing{end: 1, slot: at}
		if at > s.arms[1].n {
			w.end, w.slot = 0, at-s.arms[1].n-1
		}
		if s.arms[w.end].n+s.hung(w.end, count) >= mostFittings || s.ahead(&w) && count > 0 && s.ahead(&s.swings[0]) {
			continue
		}
		first := 0
		if at == from {
			first = kind
		}
		kit := s.sides[w.end].kit[route.Offset]
		for k := first; k < len(kit); k++ {
			w.fit = kit[k]
			s.swings[count] = w
			s.place(count+1, at, k)
		}
	}
}

// ahead reports whether an offset stands before an elbow.
func (s *straightener) ahead(w *swing) bool { return w.slot < s.arms[w.end].n }

// hung counts the first offsets that stand on an end.
func (s *straightener) hung(end, count int) int {
	n := 0
	for i := range s.swings[:count] {
		if s.swings[i].end == end {
			n++
		}
	}
	return n
}

// shut tries every handful of extenders that brings the gap near enough for the
// offsets to close.
func (s *straightener) shut() {
	if s.tried > mostTried || s.halt.halted() {
		return
	}
	gap, reach := s.arms[1].end().At.Sub(s.arms[0].end().At), s.slack
	for i := range s.swings[:s.offsets] {
		w := &s.swings[i]
		gap = gap.Add(s.forward(w.end, w.slot, w.fit.Length))
		reach += w.fit.Sideways
	}
	if s.picks = bareStacks; !s.costly() {
		s.lifted(0, gap, reach)
	}
}

// bareStacks is no extender at either end.
var bareStacks = [2]stack{{0, &nothing[0]}, {0, &nothing[0]}}

// forward is how the gap changes when an end grows along one of its stretches.
func (s *straightener) forward(end, slot int, by float64) vec {
	dir := s.arms[end].frames[slot].Dir
	if end == 0 {
		by = -by
	}
	return dir.Mul(by)
}

// lifted puts extenders on an end, then on the next, then settles the offsets.
// Only those are tried that bring the gap within reach of what is left.
func (s *straightener) lifted(end int, gap vec, reach float64) {
	if end == 2 {
		if s.mayBeKept(gap.Dot(s.u) - s.mostSway()) {
			s.settle(0, gap)
		}
		return
	}
	rest, miss := reach, aside(gap, s.u)
	if end == 0 {
		rest += s.mostLift(1)
	}
	s.picks[end] = stack{0, &nothing[0]}
	if miss.Len() > rest+s.mostLift(end) {
		return
	}
	s.lifted(end+1, gap, reach)
	slots := s.arms[end].n
	if s.trailing {
		slots++
	}
	for slot := range slots {
		lifts := s.sides[end].liftsUpTo(s.room(end))[1:]
		if slot < s.arms[end].n {
			lo, hi, ok := reachWithin(miss, aside(s.forward(end, slot, 1), s.u), rest)
			if !ok {
				continue
			}
			lifts = liftsBetween(lifts, lo, hi)
		}
		for i := range lifts {
			s.picks[end] = stack{slot, &lifts[i]}
			if !s.costly() {
				s.lifted(end+1, gap.Add(s.forward(end, slot, lifts[i].total)), reach)
			}
		}
	}
	s.picks[end] = stack{0, &nothing[0]}
}

// room is how many extenders an end may still take.
func (s *straightener) room(end int) int {
	return mostFittings - s.arms[end].n - s.hung(end, s.offsets)
}

// mostLift is how far extenders on an end may move the gap square to the tube's
// way, at most.
func (s *straightener) mostLift(end int) float64 {
	most := 0.0
	for slot := range s.arms[end].n {
		most = max(most, aside(s.arms[end].frames[slot].Dir, s.u).Len())
	}
	lifts := s.sides[end].liftsUpTo(s.room(end))
	return most * lifts[len(lifts)-1].total
}

// costly reports whether what is in hand costs too much already.
func (s *straightener) costly() bool {
	s.tried++
	return s.tooDear(s.inHand())
}

// inHand counts the fittings in hand, and sums up their price.
func (s *straightener) inHand() (count int, price float64) {
	for end, a := range s.arms {
		for _, fit := range a.elbows[:a.n] {
			count, price = count+1, price+fit.Price
		}
		if l := s.picks[end].lift; l != nil {
			count, price = count+len(l.fits), price+l.price
		}
	}
	for i := range s.swings[:s.offsets] {
		count, price = count+1, price+s.swings[i].fit.Price
	}
	return count, price
}
