package clear

// segBox is the distance between the segment pq and a block.
//
// In the block's frame the squared distance of the point at t is the sum over
// the axes of (|x|−half)² where that is outside: convex, and a parabola between
// the at most six t where the segment crosses a plane of a face. So the slope
// grows with t, and its zero is found by narrowing to one parabola.
func segBox(p, q v3, b *block) near {
	s := segmentIn(p, q, b)
	d := q.sub(p)
	if t, meet := s.enters(); meet {
		x := p.plus(t, d)
		return near{0, x, x, true}
	}
	x := p.plus(s.nearest(), d)
	return spanned(x, b.nearest(x))
}

// inFrame is a segment x + t·d, 0 ≤ t ≤ 1, in the frame of a block of a half size.
type inFrame struct{ x, d, half [3]float64 }

func segmentIn(p, q v3, b *block) inFrame {
	w, d := p.sub(b.c), q.sub(p)
	return inFrame{
		[3]float64{b.axis[0].dot(w), b.axis[1].dot(w), b.axis[2].dot(w)},
		[3]float64{b.axis[0].dot(d), b.axis[1].dot(d), b.axis[2].dot(d)},
		b.half,
	}
}

// enters gives the middle of the stretch inside the block, if there is one.
func (s *inFrame) enters() (t float64, meet bool) {
	lo, hi := 0.0, 1.0
	for i := range 3 {
		if s.d[i] == 0 {
			if s.x[i] > s.half[i] || s.x[i] < -s.half[i] {
				return 0, false
			}
			continue
		}
		k := 1 / s.d[i]
		a, b := (-s.half[i]-s.x[i])*k, (s.half[i]-s.x[i])*k
		lo, hi = max(lo, min(a, b)), min(hi, max(a, b))
		if lo > hi {
			return 0, false
		}
	}
	return (lo + hi) / 2, true
}

// slope is half the growth of the squared distance at t.
func (s *inFrame) slope(t float64) float64 {
	sum := 0.0
	for i := range 3 {
		x := s.x[i] + t*s.d[i]
		sum += s.d[i] * (x - between(x, -s.half[i], s.half[i]))
	}
	return sum
}

// nearest gives the t of the point nearest to the block.
func (s *inFrame) nearest() float64 {
	lo, hi := 0.0, 1.0
	atLo, atHi := s.slope(lo), s.slope(hi)
	if atLo >= 0 {
		return 0
	}
	if atHi <= 0 {
		return 1
	}
	for i := range 3 {
		if s.d[i] == 0 {
			continue
		}
		for _, face := range [2]float64{-s.half[i], s.half[i]} {
			t := (face - s.x[i]) / s.d[i]
			if t <= lo || t >= hi {
				continue
			}
			if g := s.slope(t); g < 0 {
				lo, atLo = t, g
			} else {
				hi, atHi = t, g
			}
		}
	}
	return lo - atLo*(hi-lo)/(atHi-atLo)
}
