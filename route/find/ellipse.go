package find

import "math"

// ellipse is the curve on which an offset before an elbow swings as the tube
// sees it along its way u. Square to u it reaches d·cos θ along n and
// d·flat·sin θ along w.
type ellipse struct {
	n, k vec     // unit, square to the offset's stretch: side(θ) = cos θ·n + sin θ·k
	w    vec     // unit, square to n and u
	flat float64 // cosine between the stretch and u
	d    float64 // mm; below 0 at the run's last end, whose moves count the other way
}

// ellipseOf is the curve of an offset whose stretch does not lie along the
// tube's way.
func (s *straightener) ellipseOf(w *swing) ellipse {
	axis := s.stretch(w)
	n := axis.Cross(s.u).Normalize()
	e := ellipse{n: n, k: axis.Cross(n), w: s.u.Cross(n), flat: axis.Dot(s.u), d: w.fit.Sideways}
	if w.end == 1 {
		e.d = -e.d
	}
	return e
}

func (e *ellipse) side(t float64) vec {
	sin, cos := math.Sincos(t)
	return e.n.Mul(cos).Add(e.k.Mul(sin))
}

// sameTurn is how close two angles in radians may be and still be one solution.
const sameTurn = 1e-7

// newtonRounds is how often an angle is polished: each round about doubles its
// digits.
const newtonRounds = 12

// nearest gives the angles at which the ellipse comes nearest to a gap, seen
// along the tube: one from within, two where it is all but flat.
func (e *ellipse) nearest(gap vec) (turns [3]float64, n int) {
	x, y := gap.Dot(e.n)/e.d, gap.Dot(e.w)/e.d
	if math.Abs(x) > 1+10/math.Abs(e.d) || math.Abs(y) > 1+10/math.Abs(e.d) {
		return turns, 0
	}
	side := math.Acos(min(max(x, -1), 1))
	for _, t := range []float64{math.Atan2(y*e.flat, x*e.flat*e.flat), side, -side} {
		if t = e.polished(t, x, y); !e.known(turns[:n], t) {
			turns[n] = t
			n++
		}
	}
	return turns, n
}

// known reports whether an angle is among those found.
func (e *ellipse) known(turns []float64, t float64) bool {
	for _, have := range turns {
		if math.Abs(math.Remainder(have-t, 2*math.Pi)) <= sameTurn {
			return true
		}
	}
	return false
}

// polished follows the distance from (x, y) downhill: half its square is
// ((cos t − x)² + (f·sin t − y)²)/2. Newton's step where the curve is hollow
// there, a short step down where not.
func (e *ellipse) polished(t, x, y float64) float64 {
	f := e.flat
	for range newtonRounds {
		sin, cos := math.Sincos(t)
		p, q := cos-x, f*sin-y
		slope := -sin*p + f*cos*q
		bend := -cos*p + sin*sin + f*f*cos*cos - f*sin*q
		step := -slope
		if bend > 1e-3 {
			step = -slope / bend
		}
		t += min(max(step, -0.5), 0.5)
	}
	return t
}

// looks is in how many places an ellipse is looked at for where it meets a
// circle. They meet in four points at most, and come nearest in as many.
const looks = 32

// ellipseAndCircle points an offset before an elbow and a level one: the first
// so that what it leaves is just what the second moves.
func (s *straightener) ellipseAndCircle(v, w *swing, gap vec) {
	e := s.ellipseOf(v)
	x, y := gap.Dot(e.n), gap.Dot(e.w)
	at := func(sin, cos float64) float64 {
		return math.Hypot(x-e.d*cos, y-e.d*e.flat*sin) - w.fit.Sideways
	}
	left := func(t float64) float64 { return at(math.Sincos(t)) }
	const step = 2 * math.Pi / looks
	before, now := left(-step), at(0, 1)
	for i := range looks {
		t := float64(i) * step
		after := at(lookedAt[i][0], lookedAt[i][1])
		crosses := (now < 0) != (after < 0)
		touches := math.Abs(now) <= math.Abs(before) && math.Abs(now) < math.Abs(after) && (before < 0) == (now < 0) &&
			e.mayTouch(math.Abs(before)+math.Abs(now), math.Abs(now)+math.Abs(after), step, s.slack)
		switch {
		case !crosses && !touches || !s.mayBeKept(e.leastGap(gap.Dot(s.u), s.u, t, step)):
		case crosses:
			s.swingRest(&e, v, w, gap, root(left, t, t+step))
		default:
			s.touching(&e, v, w, gap, left, t, step)
		}
		before, now = now, after
	}
}

// mayTouch reports whether what is left may come within the give between three
// places, where its size adds up to so much at the first two and the last two: it
// changes no faster than the ellipse goes on, which is d for each radian.
func (e *ellipse) mayTouch(first, last, step, give float64) bool {
	return min(first, last)-math.Abs(e.d)*step <= 2*(give+sameSpot)
}

// lookedAt is the sine and cosine of the end of each look.
var lookedAt = looksAround()

func looksAround() (list [looks][2]float64) {
	const step = 2 * math.Pi / looks
	for i := range list {
		list[i][0], list[i][1] = math.Sincos(float64(i)*step + step)
	}
	return list
}

// leastGap is the least that a gap along u comes to while the offset swings within
// a step of an angle: it brings the arms together by d·(k·u)·sin t, which between
// two such places bends away from their chord by d·step²/8 at most.
func (e *ellipse) leastGap(gap float64, u vec, t, step float64) float64 {
	by := e.d * e.k.Dot(u)
	return gap - max(by*math.Sin(t-step), by*math.Sin(t), by*math.Sin(t+step)) - math.Abs(by)*step*step/8
}

// touching looks between two places where an ellipse and a circle come near
// without passing through each other: they may touch, miss each other by less
// than the give, or meet twice.
func (s *straightener) touching(e *ellipse, v, w *swing, gap vec, left func(float64) float64, t, step float64) {
	sign := 1.0
	if left(t) < 0 {
		sign = -1
	}
	best := least(func(t float64) float64 { return sign * left(t) }, t-step, t+step)
	if sign*left(best) >= 0 {
		if math.Abs(left(best)) <= s.slack {
			s.swingRest(e, v, w, gap, best)
		}
		return
	}
	s.swingRest(e, v, w, gap, root(left, t-step, best))
	s.swingRest(e, v, w, gap, root(left, best, t+step))
}

// swingRest sets the first offset at an angle of its ellipse and points the second.
func (s *straightener) swingRest(e *ellipse, v, w *swing, gap vec, t float64) {
	v.side = e.side(t)
	left := gap.Add(v.move(v.side))
	s.pointing(w, aside(left, s.u))
	s.take(left.Add(w.move(w.side)))
}

// halvings bring an angle's bracket of a fifth to below 1e-15.
const halvings = 50

// root finds where f changes its sign between lo and hi.
func root(f func(float64) float64, lo, hi float64) float64 {
	low := f(lo) < 0
	for range halvings {
		if mid := (lo + hi) / 2; (f(mid) < 0) == low {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}

// least finds the lowest place of f between lo and hi by thirds.
func least(f func(float64) float64, lo, hi float64) float64 {
	for range halvings {
		a, b := lo+(hi-lo)/3, hi-(hi-lo)/3
		if f(a) <= f(b) {
			hi = b
		} else {
			lo = a
		}
	}
	return (lo + hi) / 2
}
