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
	arms              [2]*arm // the pair in hand
	u                 vec     // the tube's way between them
	swings            [2]swing
	offsets           int      // how many of swings count
	picks             [2]stack // extenders in hand
	sideways, degrees float64  // what two sockets give together at most, mm and degrees
	slack             float64  // what may be left square to u while a pair is put together, mm
	bound             float64  // a pair that costs as much is not worth having
	sockets           float64  // what the cheapest pair of sockets costs
	trailing          bool     // extenders may stand where they close nothing
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

// mostTurning is how many elbows and offsets a tube that can be bent is spared
// a bend for: four and more are for tubes that cannot be bent.
const mostTurning = 3

// straights offers every straight tube that a chain at each end can bring
// about: the stops in line within what the sockets give.
func (h *hunt) straights() {
	if h.a.given != nil || h.b.given != nil {
		h.givenLine()
		return
	}
	s := h.newStraightener()
	s.search()
	if s.bound == math.MaxFloat64 && s.unbent() {
		s.trailing = true
		s.search()
	}
}

func (h *hunt) newStraightener() *straightener {
	s := &straightener{hunt: h, sides: [2]*side{h.a, h.b}, bound: math.MaxFloat64}
	for i, e := range s.sides {
		s.bare[i].frames[0] = e.port.Frame
		sideways, degrees, price := 0.0, 0.0, math.Inf(1)
		for _, f := range e.sockets {
			sideways, degrees, price = max(sideways, f.Give.Sideways), max(degrees, f.Give.Degrees), min(price, f.Price)
		}
		s.sideways, s.degrees = s.sideways+sideways, s.degrees+degrees
		s.sockets += h.plan.Weigh.Price * price
	}
	return s
}

// unbent reports whether the run must be straight.
func (h *hunt) unbent() bool { return h.run.Way == route.Straight || h.tube.Radius == 0 }

func (s *straightener) search() {
	for _, c := range classes {
		turning := c.first + c.last + c.offsets
		if turning > mostTurning && !s.unbent() || s.dear(turning, s.leastPrice(c)) {
			continue
		}
		s.offsets = c.offsets
		before := len(s.families)
		s.aim(c.first, c.last)
		if len(s.families) > before {
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
		s.bound = min(s.bound, float64(best)*sameCost+sameCost)
	}
}

// dear reports whether this many fittings of this price cost too much already.
func (s *straightener) dear(count int, price float64) bool {
	w := &s.plan.Weigh
	return w.Fitting*float64(count)+w.Price*price+s.sockets >= s.bound
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
	s.place(0, 0, 0)
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
	gap, reach := s.arms[1].end().At.Sub(s.arms[0].end().At), s.slack
	for i := range s.swings[:s.offsets] {
		w := &s.swings[i]
		gap = gap.Add(s.forward(w.end, w.slot, w.fit.Length))
		reach += w.fit.Sideways
	}
	s.lifted(0, gap, reach)
}

// forward is how the gap changes when an end grows along one of its stretches.
func (s *straightener) forward(end, slot int, by float64) vec {
	dir := s.arms[end].frames[slot].Dir
	if end == 0 {
		by = -by
	}
	return dir.Mul(by)
}

// lifted puts extenders on an end, then on the next, then settles the offsets.
func (s *straightener) lifted(end int, gap vec, reach float64) {
	if end == 2 {
		s.settle(0, gap)
		return
	}
	a := s.arms[end]
	room := mostFittings - a.n - s.hung(end, s.offsets)
	slots := a.n
	if s.trailing {
		slots++
	}
	s.picks[end] = stack{0, &nothing[0]}
	s.lifted(end+1, gap, reach)
	for slot := range slots {
		lifts := s.sides[end].liftsUpTo(room)[1:]
		if end == 1 && slot < a.n {
			lo, hi, ok := reachWithin(aside(gap, s.u), aside(a.frames[slot].Dir, s.u), reach)
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

// costly reports whether what is in hand costs too much already.
func (s *straightener) costly() bool {
	count, price := 0, 0.0
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
	return s.dear(count, price)
}

// accept lays what is in hand and offers it with every pair of sockets: where
// an offset and extenders stand in one stretch, in either order.
func (s *straightener) accept() {
	if s.costly() {
		return
	}
	for _, orders := range [][2]bool{{false, false}, {true, false}, {false, true}, {true, true}} {
		if orders[0] && !s.mixed(0) || orders[1] && !s.mixed(1) {
			continue
		}
		a, b := s.laidOut(0, orders[0]), s.laidOut(1, orders[1])
		for _, first := range s.a.sockets {
			for _, last := range s.b.sockets {
				s.line(a.with(first, 0), b.with(last, 0))
			}
		}
	}
}

// mixed reports whether extenders and an offset stand in one stretch of an end.
func (s *straightener) mixed(end int) bool {
	for i := range s.swings[:s.offsets] {
		if w := &s.swings[i]; w.end == end && w.slot == s.picks[end].slot && len(s.picks[end].lift.fits) > 0 {
			return true
		}
	}
	return false
}

// laidOut is the chain of one end without its socket; offsets stand before or
// behind the extenders of their stretch.
func (s *straightener) laidOut(end int, offsetsFirst bool) *build {
	a, b := s.arms[end], s.sides[end].bare()
	for slot := range a.n + 1 {
		if offsetsFirst {
			b = s.offsetOn(b, end, slot)
		}
		if p := s.picks[end]; p.slot == slot {
			for _, f := range p.lift.fits {
				b = b.with(f, 0)
			}
		}
		if !offsetsFirst {
			b = s.offsetOn(b, end, slot)
		}
		if slot < a.n {
			b = b.with(a.elbows[slot], a.rolls[slot])
		}
	}
	return b
}

func (s *straightener) offsetOn(b *build, end, slot int) *build {
	for i := range s.swings[:s.offsets] {
		w := &s.swings[i]
		if w.end != end || w.slot != slot {
			continue
		}
		roll := w.roll
		if w.fit.Rotary {
			roll, _ = rollToward(b.frame, w.side)
		}
		b = b.with(w.fit, roll)
	}
	return b
}
