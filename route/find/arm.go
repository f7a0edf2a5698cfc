package find

import (
	"math"

	"tubewright/route"
)

// arm is one end of a straight while it is put together: its elbows, and the
// frame at the start of each of its stretches as if nothing else stood there.
// Extenders and offsets move what comes after them, but turn nothing, so the
// directions and references stand whatever else is put in.
type arm struct {
	elbows [2]*route.Fitting
	rolls  [2]float64
	n      int            // elbows
	frames [3]route.Frame // before the first elbow, after it, after the second
}

// end is where the arm lets go.
func (a *arm) end() *route.Frame { return &a.frames[a.n] }

// round is the arm with one more elbow.
func (a arm) round(fit *route.Fitting, roll float64) arm {
	a.elbows[a.n], a.rolls[a.n] = fit, roll
	a.frames[a.n+1] = a.end().Past(fit, roll)
	a.n++
	return a
}

// facingEach reports whether two arms let go toward each other within what the
// sockets give.
func (s *straightener) facingEach(a, b *arm) bool {
	return degreesBetween(a.end().Dir, b.end().Dir.Mul(-1)) <= s.degrees+sameWay
}

// toward calls then with the arm and one more elbow, at each roll that may
// bring its way out to u.
func (a *arm) toward(fit *route.Fitting, u vec, then func(arm)) {
	if !fit.Rotary {
		for _, roll := range fixedRolls(fit) {
			then(a.round(fit, roll))
		}
		return
	}
	if roll, ok := rollToward(*a.end(), u); ok {
		then(a.round(fit, roll))
	}
}

// facing is toward for an elbow that ends the turning: it leaves out rolls at
// which the way out misses u by more than the give.
func (s *straightener) facing(a *arm, fit *route.Fitting, u vec, then func(arm)) {
	if fit.Rotary {
		a.toward(fit, u, then)
		return
	}
	sin, cos := route.SinCos(fit.Turn)
	f := a.end()
	for _, roll := range fixedRolls(fit) {
		if out := f.Dir.Mul(cos).Add(f.Side(roll).Mul(sin)); out.Dot(u) >= s.nearU {
			then(a.round(fit, roll))
		}
	}
}

// fixedArms are the arms of one fixed elbow on a port, at each of its rolls.
type fixedArms struct {
	fit  *route.Fitting
	arms []arm
}

// bareWith gives the arms of one fixed elbow on an end. Every class asks for them.
func (s *straightener) bareWith(end int, fit *route.Fitting) []arm {
	for _, have := range s.fixed[end] {
		if have.fit == fit {
			return have.arms
		}
	}
	list := fixedArms{fit: fit}
	s.bare[end].toward(fit, vec{}, func(a arm) { list.arms = append(list.arms, a) })
	s.fixed[end] = append(s.fixed[end], list)
	return list.arms
}

// third gives the directions at one angle from x and at another from y, degrees:
// the third corner of a spherical triangle whose sides are known, on either
// side of the first; by the cosine rule
//
//	cos α = (cos second − cos first·cos γ) / (sin first·sin γ)
//
// with γ from x to y. Where the sides do not quite reach each other the triangle
// is taken as flat. None when x and y lie along one line.
func third(x, y vec, first, second float64) (dirs [2]vec, n int) {
	t, ok := unit(aside(y, x))
	if !ok {
		return dirs, 0
	}
	s1, c1 := route.SinCos(first)
	_, c2 := route.SinCos(second)
	cos, sin := x.Dot(y), aside(y, x).Len()
	if s1*sin <= sameWay {
		return dirs, 0
	}
	ca := min(max((c2-c1*cos)/(s1*sin), -1), 1)
	sa := math.Sqrt(1 - ca*ca)
	up := x.Cross(t)
	dirs[0] = x.Mul(c1).Add(t.Mul(s1 * ca)).Add(up.Mul(s1 * sa))
	dirs[1] = x.Mul(c1).Add(t.Mul(s1 * ca)).Sub(up.Mul(s1 * sa))
	if sa <= sameWay {
		return dirs, 1
	}
	return dirs, 2
}

// aim hands on each pair of arms with this many elbows that let go toward each
// other within the give.
func (s *straightener) aim(first, last int) {
	switch {
	case first+last == 0:
		s.aimed(&s.bare[0], &s.bare[1])
	case first == 1 && last == 1:
		s.aimBoth()
	case first == 1:
		s.aimOne(0)
	case last == 1:
		s.aimOne(1)
	case first == 2:
		s.aimTwo(0)
	default:
		s.aimTwo(1)
	}
}

// aimed hands on a pair of arms.
func (s *straightener) aimed(a, b *arm) {
	if s.facingEach(a, b) {
		s.hold(a, b)
		s.shutAll(s.arms[0], s.arms[1])
	}
}

// hold makes copies of two arms the pair in hand, so that those who made them
// need not keep them.
func (s *straightener) hold(a, b *arm) {
	s.held = [2]arm{*a, *b}
	s.arms = [2]*arm{&s.held[0], &s.held[1]}
}

// aimEnds is aimed for an arm at one end against the bare port of the other.
func (s *straightener) aimEnds(end int, a *arm) {
	if end == 0 {
		s.aimed(a, &s.bare[1])
	} else {
		s.aimed(&s.bare[0], a)
	}
}

// aimOne puts one elbow on one end: it must turn the way straight against the
// other port.
func (s *straightener) aimOne(end int) {
	base := &s.bare[end]
	u := s.bare[1-end].end().Dir.Mul(-1)
	apart := degreesBetween(base.end().Dir, u)
	for _, fit := range s.sides[end].kit[route.Elbow] {
		if math.Abs(apart-fit.Turn) > s.degrees+sameWay || s.tooFar(u, fit) {
			continue
		}
		s.facing(base, fit, u, func(a arm) { s.aimEnds(end, &a) })
	}
}

// aimBoth puts one elbow on each end. The tube makes the first's turn with one
// port's way and the second's with the other's: two cones that meet in two
// lines. Where the ports stand along one line the cones are one, and where the
// tube lies is settled by what it must meet (see free).
func (s *straightener) aimBoth() {
	p, q := s.bare[0].end().Dir, s.bare[1].end().Dir
	apart := degreesBetween(p, q.Mul(-1))
	for _, first := range s.sides[0].kit[route.Elbow] {
		for _, last := range s.sides[1].kit[route.Elbow] {
			switch {
			case s.dear(2+s.offsets, first.Price+last.Price) || !s.meet(first.Turn, last.Turn, apart):
			case !first.Rotary:
				for _, a := range s.bareWith(0, first) {
					s.facing(&s.bare[1], last, a.end().Dir.Mul(-1), func(b arm) { s.aimed(&a, &b) })
				}
			case !last.Rotary:
				for _, b := range s.bareWith(1, last) {
					s.facing(&s.bare[0], first, b.end().Dir.Mul(-1), func(a arm) { s.aimed(&a, &b) })
				}
			case s.along(apart):
				s.freeBoth(first, last)
			default:
				dirs, n := third(p, q.Mul(-1), first.Turn, last.Turn)
				for _, u := range dirs[:n] {
					if s.tooFar(u, first, last) {
						continue
					}
					s.bare[0].toward(first, u, func(a arm) {
						s.facing(&s.bare[1], last, u.Mul(-1), func(b arm) { s.aimed(&a, &b) })
					})
				}
			}
		}
	}
}

// along reports whether two ports this many degrees from facing each other
// stand along one line, so far as the sockets can tell.
func (s *straightener) along(apart float64) bool {
	return apart <= s.degrees+sameWay || apart >= 180-s.degrees-sameWay
}

// meet reports whether some direction makes the first turn with one direction
// and the second with another this many degrees apart: the three are the sides
// of a triangle on the sphere.
func (s *straightener) meet(first, second, apart float64) bool {
	least, most := math.Abs(first-second), min(first+second, 360-first-second)
	return apart >= least-s.degrees-sameWay && apart <= most+s.degrees+sameWay
}

// aimTwo puts two elbows on one end.
func (s *straightener) aimTwo(end int) {
	base := &s.bare[end]
	p, u := base.end().Dir, s.bare[1-end].end().Dir.Mul(-1)
	apart := degreesBetween(p, u)
	for _, first := range s.sides[end].kit[route.Elbow] {
		for _, second := range s.sides[end].kit[route.Elbow] {
			switch {
			case s.dear(2+s.offsets, first.Price+second.Price) || !s.meet(first.Turn, second.Turn, apart) || s.tooFar(u, first, second):
			case !first.Rotary:
				for _, a := range s.bareWith(end, first) {
					s.facing(&a, second, u, func(b arm) { s.aimEnds(end, &b) })
				}
			case !second.Rotary:
				s.stiff(end, first, second, u)
			case s.along(apart):
				s.freeTwo(end, first, second)
			default:
				dirs, n := third(p, u, first.Turn, second.Turn)
				for _, v := range dirs[:n] {
					base.toward(first, v, func(a arm) {
						s.facing(&a, second, u, func(b arm) { s.aimEnds(end, &b) })
					})
				}
			}
		}
	}
}

// stiff puts a fixed elbow behind a rotary one, which is turned so that the
// fixed one's way out comes as near to u as it can: the reference that the fixed
// one's roll counts from does not go round with the rotary one.
func (s *straightener) stiff(end int, first, second *route.Fitting, u vec) {
	base := &s.bare[end]
	for _, roll := range fixedRolls(second) {
		for _, near := range s.stiffRolls(base, first, second, roll, u) {
			off := func(x float64) float64 {
				a := base.round(first, near+x)
				return degreesBetween(a.end().Past(second, roll).Dir, u)
			}
			by, start := 0.0, off(0)
			switch {
			case start > s.degrees+stiffWithin:
				continue
			case start > trueWay:
				by = least(off, -s.degrees-1, s.degrees+1)
			}
			a := base.round(first, tidyRoll(near+by)).round(second, roll)
			s.aimEnds(end, &a)
		}
	}
}

const (
	// stiffWithin is how far off a fixed elbow may come out beside one whose turns
	// alone fit, and still be turned into line, degrees.
	stiffWithin = 4
	// trueWay is how near to true a way out need not be bettered, degrees.
	trueWay = 1e-6
)

// stiffRolls are the rolls of the first elbow near which the second, fixed at a
// roll, may come out along u: those that bring its leg to where the turns alone
// would have it, or, of ports along one line, in the plane of the second's turn.
func (s *straightener) stiffRolls(base *arm, first, second *route.Fitting, roll float64, u vec) (rolls []float64) {
	p := base.end().Dir
	if s.along(degreesBetween(p, u)) {
		return []float64{roll, roll + 180}
	}
	dirs, n := third(p, u, first.Turn, second.Turn)
	for _, v := range dirs[:n] {
		if r, ok := rollToward(*base.end(), v); ok {
			rolls = append(rolls, r)
		}
	}
	return rolls
}
