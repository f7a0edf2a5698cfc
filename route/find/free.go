package find

import (
	"math"

	"tubewright/route"
)

// Where two ports stand along one line, facing each other or the same way, two
// elbows that make up for each other may lie any way round it: the tube's way u
// is then not settled by the turns but by what it must meet.

// freeBoth puts an elbow on each end of such a pair, with at most one offset.
// With w from the first corner to the last, h long along the first port's way p
// and aside of it by o, a tube straight from corner to corner makes the first's
// turn t with p when
//
//	h·sin t = o·cos t
//
// and an offset d changes either side by at most d.
func (s *straightener) freeBoth(first, last *route.Fitting) {
	a, b := s.bare[0], s.bare[1]
	a.elbows[0], b.elbows[0], a.n, b.n = first, last, 1, 1
	s.arms, s.slack = [2]*arm{&a, &b}, s.sideways+sameSpot
	f := freePair{
		straightener: s, first: first, last: last, p: a.frames[0].Dir,
		w: b.frames[0].Ahead(last.Legs[0]).Sub(a.frames[0].Ahead(first.Legs[0])),
	}
	f.sin, f.cos = route.SinCos(first.Turn)
	switch s.offsets {
	case 0:
		f.lifts(f.w, s.slack, f.bareLine)
	case 1:
		f.offset()
	}
}

// freePair is an elbow on each of two ports along one line.
type freePair struct {
	*straightener
	first, last *route.Fitting
	p, w        vec
	sin, cos    float64 // of the first's turn
}

// offset tries every offset in every place.
func (f *freePair) offset() {
	for end := range 2 {
		for _, fit := range f.sides[end].kit[route.Offset] {
			for slot := range 2 {
				f.swings[0] = swing{fit: fit, end: end, slot: slot}
				w := f.w
				if slot == 0 {
					w = w.Add(f.forward(end, 0, fit.Length))
				}
				f.lifts(w, fit.Sideways+f.slack, f.swingLine)
			}
		}
	}
}

// lifts hands on the corner to corner line behind every handful of extenders
// with which it may come within reach of the cone of the elbow's turn.
func (f *freePair) lifts(w vec, reach float64, then func(w vec)) {
	q := f.arms[1].frames[0].Dir
	rooms := [2]int{mostFittings - 1 - f.hung(0, f.offsets), mostFittings - 1 - f.hung(1, f.offsets)}
	starts, ends := f.sides[0].liftsUpTo(rooms[0]), f.sides[1].liftsUpTo(rooms[1])
	sense := math.Copysign(1, q.Dot(f.p))
	for i := range starts {
		at := w.Sub(f.p.Mul(starts[i].total))
		mid, h := aside(at, f.p).Len()*f.cos/f.sin, at.Dot(f.p)
		lo, hi := (mid-reach/f.sin-h)*sense, (mid+reach/f.sin-h)*sense
		near := liftsBetween(ends, min(lo, hi)-sameSpot, max(lo, hi)+sameSpot)
		for j := range near {
			f.picks = [2]stack{{0, &starts[i]}, {0, &near[j]}}
			if !f.costly() {
				then(at.Add(q.Mul(near[j].total)))
			}
		}
	}
}

// bareLine turns both elbows along a line from corner to corner.
func (f *freePair) bareLine(w vec) {
	if over, ok := unit(aside(w, f.p)); ok {
		f.lie(f.p.Mul(f.cos).Add(over.Mul(f.sin)), w)
	}
}

// lie turns both elbows along u, and takes what closes the gap w.
func (f *freePair) lie(u, w vec) {
	if w.Dot(u) <= 0 {
		return
	}
	f.bare[0].toward(f.first, u, func(a arm) {
		f.bare[1].toward(f.last, u.Mul(-1), func(b arm) {
			if f.facingEach(&a, &b) {
				f.arms, f.u = [2]*arm{&a, &b}, u
				f.take(w)
			}
		})
	})
}

// swingLine settles the one offset with the line.
func (f *freePair) swingLine(w vec) {
	s := &f.swings[0]
	switch {
	case s.slot == 0 && !s.fit.Rotary:
		frame := &f.arms[s.end].frames[0]
		for _, roll := range fixedRolls(s.fit) {
			s.side, s.roll = frame.Side(roll), roll
			f.bareLine(w.Add(s.move(s.side)))
		}
	case s.slot == 0:
		f.before(s, w)
	case s.fit.Rotary:
		f.after(s, w)
	}
}

// before points an offset that stands before its elbow so that the line comes
// to lie on the cone: aside of p it must leave h·tan t, the third side of a
// triangle.
func (f *freePair) before(s *swing, w vec) {
	over, ok := unit(aside(w, f.p))
	if !ok {
		over = f.arms[s.end].frames[0].Ref
	}
	o, d := aside(w, f.p).Len(), s.fit.Sideways
	if math.Abs(f.cos) <= nearParallel || o <= sameSpot {
		return // a square turn needs no offset, one on the line itself has no side
	}
	want := w.Dot(f.p) * f.sin / f.cos
	cos := (o*o + d*d - want*want) / (2 * o * d)
	if want < 0 || math.Abs(cos) > 1+f.slack/d/math.Abs(f.cos) {
		return
	}
	cos = min(max(cos, -1), 1)
	sin := math.Sqrt(1 - cos*cos)
	for _, sign := range []float64{1, -1} {
		f.pointing(s, over.Mul(cos).Add(f.p.Cross(over).Mul(sign*sin)))
		f.bareLine(w.Add(s.move(s.side)))
		if sin <= sameWay {
			return
		}
	}
}

// after points an offset that stands behind its elbow: the line from corner to
// corner is l along the tube and d aside of it, so the tube lies on a cone about
// it as well as on that about p.
func (f *freePair) after(s *swing, w vec) {
	d := s.fit.Sideways
	l2 := w.Dot(w) - d*d
	dir, ok := unit(w)
	if !ok || l2 <= 0 {
		return
	}
	dirs, n := third(f.p, dir, f.first.Turn, math.Atan2(d, math.Sqrt(l2))/perDegree)
	for _, u := range dirs[:n] {
		f.pointing(s, aside(w, u))
		f.lie(u, w.Add(s.move(s.side)))
	}
}

// freeTwo puts two elbows on one end that undo each other: together they stand
// as an offset that moves the way aside by
//
//	(leg out of the first + leg into the second)·sin turn
//
// and swings about the port. A rotary offset beside them makes a triangle with it.
func (s *straightener) freeTwo(end int, first, second *route.Fitting) {
	base := &s.bare[end]
	u := s.bare[1-end].end().Dir.Mul(-1)
	still := base.round(first, 0)
	still.toward(second, u, func(a arm) {
		s.arms[end], s.arms[1-end] = &a, &s.bare[1-end]
		if s.facingEach(s.arms[0], s.arms[1]) {
			s.loosen(s.arms[0], s.arms[1])
			t := freeTurn{straightener: s, end: end, arm: a, base: base}
			t.search()
		}
	})
}

// freeTurn is two elbows on one end that swing as one about the port.
type freeTurn struct {
	*straightener
	end  int
	arm  arm
	base *arm
}

func (t *freeTurn) search() {
	t.u = t.arms[0].end().Dir
	if t.offsets == 0 {
		t.lifts(t.gap(), t.alone)
		return
	}
	if t.offsets > 1 {
		return // it would have a roll more than there is to close
	}
	for end := range 2 {
		for _, fit := range t.sides[end].kit[route.Offset] {
			for slot := range t.arms[end].n + 1 {
				t.swings[0] = swing{fit: fit, end: end, slot: slot}
				t.lifts(t.gap().Add(t.forward(end, slot, fit.Length)), t.beside)
			}
		}
	}
}

func (t *freeTurn) gap() vec { return t.arms[1].end().At.Sub(t.arms[0].end().At) }

// lifts hands on the gap with no extender, and with one between the elbows: one
// before or behind them closes nothing.
func (t *freeTurn) lifts(gap vec, then func(gap vec)) {
	room := mostFittings - 2 - t.hung(t.end, t.offsets)
	t.picks = [2]stack{{0, &nothing[0]}, {0, &nothing[0]}}
	lifts := t.sides[t.end].liftsUpTo(room)
	for i := range lifts {
		t.picks[t.end] = stack{1, &lifts[i]}
		if !t.costly() {
			then(gap.Add(t.forward(t.end, 1, lifts[i].total)))
		}
	}
}

// reach is how far aside of the port's way the elbows bring it, and where to
// while the first stands at roll 0. The gap counts from there.
func (t *freeTurn) reach() vec {
	f := &t.arm.frames
	between := t.picks[t.end].lift.total
	if w := &t.swings[0]; t.offsets == 1 && w.end == t.end && w.slot == 1 {
		between += w.fit.Length
	}
	out := f[2].At.Sub(f[0].At).Add(f[1].Dir.Mul(between))
	return aside(out, f[0].Dir)
}

// swungTo turns both elbows about the port from one side to another.
func (t *freeTurn) swungTo(from, to vec) {
	have, ok := rollToward(t.base.frames[0], from)
	want, good := rollToward(t.base.frames[0], to)
	if !ok || !good {
		return
	}
	a := t.base.round(t.arm.elbows[0], tidyRoll(want-have)).round(t.arm.elbows[1], t.arm.rolls[1])
	t.arms[t.end] = &a
	t.accept()
	t.arms[t.end] = &t.arm
}

// miss is what the elbows must bring the way aside by, seen from their own port.
func (t *freeTurn) miss(gap vec) vec {
	if t.end == 1 {
		gap = gap.Mul(-1)
	}
	return aside(gap, t.arm.frames[0].Dir).Add(t.reach())
}

func (t *freeTurn) alone(gap vec) {
	reach, miss := t.reach(), t.miss(gap)
	if math.Abs(reach.Len()-miss.Len()) <= t.slack {
		t.swungTo(reach, miss)
	}
}

// beside points the one offset beside the elbows.
func (t *freeTurn) beside(gap vec) {
	w := &t.swings[0]
	switch {
	case !w.fit.Rotary:
	case w.end == t.end && w.slot == 1:
		t.amid(w, gap)
	default:
		t.triangled(w, gap)
	}
}

// triangled closes the miss with the elbows' reach and the offset.
func (t *freeTurn) triangled(w *swing, gap vec) {
	reach, miss := t.reach(), t.miss(gap)
	r, d, m := reach.Len(), w.fit.Sideways, miss.Len()
	toward, ok := unit(miss)
	if !ok || m < math.Abs(r-d)-t.slack || m > r+d+t.slack {
		return
	}
	cos := min(max((d*d+m*m-r*r)/(2*d*m), -1), 1)
	sin := math.Sqrt(1 - cos*cos)
	across := t.arm.frames[0].Dir.Cross(toward)
	for _, sign := range []float64{1, -1} {
		side := toward.Mul(cos).Add(across.Mul(sign * sin))
		w.side = side // seen from the elbows' port, whichever end the offset is on
		if w.end != t.end {
			w.side = side.Mul(-1)
		}
		t.swungTo(reach, miss.Sub(side.Mul(d)))
		if sin <= sameWay {
			return
		}
	}
}

// amid closes the miss with an offset between the elbows. At roll x of it about
// their leg, c the cosine between leg and way, the way goes aside by
//
//	r + c·d·sin x   away from the port's way
//	d·cos x         across
//
// whose length is that of the miss for (c²−1)·d²·z² + 2·c·d·r·z + r² + d² − m² = 0
// with z = sin x.
func (t *freeTurn) amid(w *swing, gap vec) {
	reach, m := t.reach(), t.miss(gap).Len()
	out, ok := unit(reach)
	if !ok {
		return
	}
	leg, way := t.arm.frames[1].Dir, t.arm.frames[0].Dir
	c, r, d := leg.Dot(way), reach.Len(), w.fit.Sideways
	roots, n := quadratic((c*c-1)*d*d, 2*c*d*r, r*r+d*d-m*m)
	across := leg.Cross(way).Normalize()
	up := leg.Cross(across)
	if up.Dot(out)*c < 0 {
		up = up.Mul(-1)
	}
	for _, z := range roots[:n] {
		if math.Abs(z) > 1+t.slack/d {
			continue
		}
		z = min(max(z, -1), 1)
		for _, sign := range []float64{1, -1} {
			w.side = up.Mul(z).Add(across.Mul(sign * math.Sqrt(1-z*z)))
			from := reach.Add(aside(w.side, way).Mul(d))
			if math.Abs(from.Len()-m) <= t.slack {
				t.swungWith(w, from, t.miss(gap))
			}
		}
	}
}

// swungWith is swungTo with an offset between the elbows, which goes round with
// them.
func (t *freeTurn) swungWith(w *swing, from, to vec) {
	roll, ok := rollToward(t.arm.frames[1], w.side)
	if !ok {
		return
	}
	have, ok := rollToward(t.base.frames[0], from)
	want, good := rollToward(t.base.frames[0], to)
	if !ok || !good {
		return
	}
	a := t.base.round(t.arm.elbows[0], tidyRoll(want-have)).round(t.arm.elbows[1], t.arm.rolls[1])
	w.side = a.frames[1].Side(roll)
	t.arms[t.end] = &a
	t.accept()
	t.arms[t.end] = &t.arm
}

// quadratic solves a·z² + b·z + c = 0: none, one or two roots. Roots that just
// fail to be real are given as one.
func quadratic(a, b, c float64) (roots [2]float64, n int) {
	if math.Abs(a) <= sameWay {
		if math.Abs(b) <= sameWay {
			return roots, 0
		}
		return [2]float64{-c / b}, 1
	}
	mid := -b / (2 * a)
	d := mid*mid - c/a
	if d < 0 {
		return [2]float64{mid}, 1
	}
	half := math.Sqrt(d)
	return [2]float64{mid - half, mid + half}, 2
}
