package clear

import "github.com/go-gl/mathgl/mgl64"

// segBox is the distance between the segment pq and a block.
//
// In the block's frame the squared distance of the point at t is the sum over
// the axes of (|x|−half)² where that is outside: convex, and a parabola between
// the at most six t where the segment crosses a plane of a face. So the slope
// grows with t, and its zero is found by narrowing to one parabola.
func segBox(p, q mgl64.Vec3, b Box) near {
	s := segmentIn(p, q, b)
	if t, meet := s.enters(); meet {
		x := p.Add(q.Sub(p).Mul(t))
		return near{0, x, x, true}
	}
	x := p.Add(q.Sub(p).Mul(s.nearest()))
	return spanned(x, inBox(x, b))
}

// inFrame is a segment x + t·d, 0 ≤ t ≤ 1, in the frame of a block of a half size.
type inFrame struct{ x, d, half mgl64.Vec3 }

func segmentIn(p, q mgl64.Vec3, b Box) inFrame {
	s := inFrame{half: b.Half}
	w, d := p.Sub(b.Centre), q.Sub(p)
	for i := range 3 {
		s.x[i] = b.Axes[3*i]*w[0] + b.Axes[3*i+1]*w[1] + b.Axes[3*i+2]*w[2]
		s.d[i] = b.Axes[3*i]*d[0] + b.Axes[3*i+1]*d[1] + b.Axes[3*i+2]*d[2]
	}
	return s
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
		a, b := (-s.half[i]-s.x[i])/s.d[i], (s.half[i]-s.x[i])/s.d[i]
		lo, hi = max(lo, min(a, b)), min(hi, max(a, b))
	}
	return (lo + hi) / 2, lo <= hi
}

// slope is half the growth of the squared distance at t.
func (s *inFrame) slope(t float64) float64 {
	sum := 0.0
	for i := range 3 {
		x := s.x[i] + t*s.d[i]
		if x > s.half[i] {
			sum += s.d[i] * (x - s.half[i])
		} else if x < -s.half[i] {
			sum += s.d[i] * (x + s.half[i])
		}
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
