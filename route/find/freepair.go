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
	s.legs = f.outLegs()
	defer func() { s.legs = 0 }()
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
				if f.legs = f.outLegs(); slot == 1 {
					f.legs += fit.Length
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
			w := at.Add(q.Mul(near[j].total))
			if !f.costly() && f.mayBeKept(w.Len()-f.widest()-f.slack) {
				then(w)
			}
		}
	}
}

// outLegs is what both elbows take up of the line from corner to corner.
func (f *freePair) outLegs() float64 { return f.first.Legs[1] + f.last.Legs[1] }

// widest is how far aside the offset in hand brings the way.
func (f *freePair) widest() float64 {
	if f.offsets == 0 {
		return 0
	}
	return f.swings[0].fit.Sideways
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
				f.hold(&a, &b)
				f.u = u
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
