package clear

import "math"

const (
	// roundSamples is how many places round a circle are tried before the dips
	// among them are followed down. Tests prove the answers by parting planes.
	roundSamples = 48
	// golden is the part of an interval that golden section keeps.
	golden = 0.6180339887498949
	// goldenSteps narrows two samples' width, 15°, to 1e-10°.
	goldenSteps = 54
)

// roundMin gives the angle in radians at which f, a function of the angle round
// a circle, is least: each dip among the samples is followed by golden section.
func roundMin(f func(float64) float64) float64 {
	const step = 2 * math.Pi / roundSamples
	var value [roundSamples]float64
	best := 0
	for i := range value {
		value[i] = f(float64(i) * step)
		if value[i] < value[best] {
			best = i
		}
	}
	angle, low := float64(best)*step, value[best]
	for i, v := range value {
		before, after := value[(i+roundSamples-1)%roundSamples], value[(i+1)%roundSamples]
		if v > before || v >= after {
			continue
		}
		x := goldenMin(f, float64(i-1)*step, float64(i+1)*step)
		if y := f(x); y < low {
			angle, low = x, y
		}
	}
	return angle
}

// goldenMin gives the place of the least value of a function with one dip.
func goldenMin(f func(float64) float64, lo, hi float64) float64 {
	a, b := hi-golden*(hi-lo), lo+golden*(hi-lo)
	fa, fb := f(a), f(b)
	for range goldenSteps {
		if fa <= fb {
			hi, b, fb = b, a, fa
			a = hi - golden*(hi-lo)
			fa = f(a)
		} else {
			lo, a, fa = a, b, fb
			b = lo + golden*(hi-lo)
			fb = f(b)
		}
	}
	return (lo + hi) / 2
}
