package find

import (
	"math"

	"tubewright/route"
)

// swing is an offset of a straight: where it stands and, once settled, where it
// points.
type swing struct {
	fit  *route.Fitting
	end  int     // of the run: 0 or 1
	slot int     // stretch of its arm
	side vec     // unit, square to its stretch
	roll float64 // of a fixed one
}

// move is how an offset changes the gap from the first arm's end to the last's.
func (w *swing) move(side vec) vec {
	if w.end == 0 {
		return side.Mul(-w.fit.Sideways)
	}
	return side.Mul(w.fit.Sideways)
}

// settle turns the offsets so that the gap's part square to the tube's way
// closes within the give: the fixed ones through their rolls, then the rotary.
func (s *straightener) settle(i int, gap vec) {
	if i == s.offsets {
		s.swingAll(gap)
		return
	}
	w := &s.swings[i]
	if w.fit.Rotary {
		s.settle(i+1, gap)
		return
	}
	f := &s.arms[w.end].frames[w.slot]
	for _, roll := range fixedRolls(w.fit) {
		w.side, w.roll = f.Side(roll), roll
		s.settle(i+1, gap.Add(w.move(w.side)))
	}
}

// swingAll settles the rotary offsets and takes what closes.
func (s *straightener) swingAll(gap vec) {
	var turning [2]*swing
	n := 0
	for i := range s.swings[:s.offsets] {
		if s.swings[i].fit.Rotary {
			turning[n] = &s.swings[i]
			n++
		}
	}
	switch n {
	case 0:
		s.take(gap)
	case 1:
		s.swingOne(turning[0], gap)
	default:
		s.swingTwo(turning[0], turning[1], gap)
	}
}

// take accepts the straight when what is left square to the tube's way is
// within the give.
func (s *straightener) take(gap vec) {
	if aside(gap, s.u).Len() <= s.slack && gap.Dot(s.u) > 0 && s.mayBeKept(gap.Dot(s.u)) {
		s.accept()
	}
}

// level reports whether an offset's stretch lies along the tube's way, so that
// it swings on a circle; before an elbow it swings on an ellipse as the tube
// sees it.
func (s *straightener) level(w *swing) bool {
	return s.stretch(w).Cross(s.u).Len() <= sameWay
}

func (s *straightener) stretch(w *swing) vec { return s.arms[w.end].frames[w.slot].Dir }

// pointing turns an offset so that it takes as much of a miss as it can.
func (s *straightener) pointing(w *swing, miss vec) {
	toward, ok := unit(miss)
	if !ok {
		toward = s.arms[w.end].frames[w.slot].Ref
	}
	if w.end == 1 {
		toward = toward.Mul(-1)
	}
	w.side = toward
}

// swingOne points one offset.
func (s *straightener) swingOne(w *swing, gap vec) {
	if s.level(w) {
		miss := aside(gap, s.u)
		if math.Abs(miss.Len()-w.fit.Sideways) <= s.slack {
			s.pointing(w, miss)
			s.take(gap.Add(w.move(w.side)))
		}
		return
	}
	e := s.ellipseOf(w)
	turns, n := e.nearest(gap)
	for _, t := range turns[:n] {
		w.side = e.side(t)
		s.take(gap.Add(w.move(w.side)))
	}
}

// swingTwo points two offsets: both level by the triangle of the miss and the
// two; one before an elbow by where its ellipse meets the other's circle.
func (s *straightener) swingTwo(v, w *swing, gap vec) {
	switch {
	case !s.level(v):
		s.ellipseAndCircle(v, w, gap)
	case !s.level(w):
		s.ellipseAndCircle(w, v, gap)
	default:
		s.triangle(v, w, gap)
	}
}

// triangle points two level offsets: d1 and d2 close any miss m between |d1−d2|
// and d1+d2, in two mirrored ways, for two circles meet in two points: the miss
// and the two offsets are the sides of a triangle.
func (s *straightener) triangle(v, w *swing, gap vec) {
	miss := aside(gap, s.u)
	m, d1, d2 := miss.Len(), v.fit.Sideways, w.fit.Sideways
	reach := min(max(m, math.Abs(d1-d2)), d1+d2)
	if math.Abs(reach-m) > s.slack {
		return
	}
	toward, ok := unit(miss)
	if !ok {
		toward = aside(s.arms[0].end().Ref, s.u).Normalize()
	}
	across := s.u.Cross(toward)
	if reach <= sameSpot {
		s.opposed(v, w, gap, toward, across)
		return
	}
	cos := min(max((d1*d1+reach*reach-d2*d2)/(2*d1*reach), -1), 1)
	sin := math.Sqrt(1 - cos*cos)
	for _, sign := range []float64{1, -1} {
		s.pointing(v, toward.Mul(cos).Add(across.Mul(sign*sin)))
		left := gap.Add(v.move(v.side))
		s.pointing(w, aside(left, s.u))
		s.take(left.Add(w.move(w.side)))
		if sin <= sameWay {
			return
		}
	}
}

// opposed points two equal offsets against each other, in any of four ways: a
// tube beside the line of the ports.
func (s *straightener) opposed(v, w *swing, gap, toward, across vec) {
	for _, way := range []vec{toward, across, toward.Mul(-1), across.Mul(-1)} {
		s.pointing(v, way)
		s.pointing(w, way.Mul(-1))
		s.take(gap.Add(v.move(v.side)).Add(w.move(w.side)))
	}
}
