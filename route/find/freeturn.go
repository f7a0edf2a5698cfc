package find

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

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
		s.held[end] = a
		s.arms[end], s.arms[1-end] = &s.held[end], &s.bare[1-end]
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
	t.u = t.arm.end().Dir // of either end's facing: the elbows turn their port's way to it
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

// swungTo turns both elbows about the port from one side to another, and an
// offset between them with them.
func (t *freeTurn) swungTo(from, to vec) {
	f := t.base.frames[0]
	have, ok := rollToward(f, from)
	want, good := rollToward(f, to)
	if !ok || !good {
		return
	}
	if w := &t.swings[0]; t.offsets == 1 && w.end == t.end && w.slot == 1 {
		w.side = mgl64.QuatRotate((want-have)*perDegree, f.Dir).Rotate(w.side)
	}
	leg := t.base.round(t.arm.elbows[0], tidyRoll(want-have))
	leg.toward(t.arm.elbows[1], t.u, func(a arm) {
		t.held[t.end] = a
		t.accept()
		t.held[t.end] = t.arm
	})
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
				t.swungTo(from, t.miss(gap))
			}
		}
	}
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
