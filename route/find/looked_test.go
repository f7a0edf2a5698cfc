package find

import "testing"

// TestLookedIsTouched: what stands within the gap of a look touches it, on every
// side, and what stands farther off does not.
func TestLookedIsTouched(t *testing.T) {
	l := &looked{}
	l.at(vec{0, 0, 0}, vec{10, 10, 10}, 2)
	for axis := range 3 {
		for _, side := range []float64{-1, 1} {
			for _, c := range []struct {
				gap  float64
				want bool
			}{{1.9, true}, {2 + 2*lookSpare, false}} {
				at := vec{5, 5, 5}
				at[axis] += side * (5 + c.gap + 1)
				b := bounds{at.Sub(vec{1, 1, 1}), at.Add(vec{1, 1, 1})}
				if l.touched([]bounds{b}) != c.want {
					t.Errorf("axis %d, side %g, %g mm off: touched is not %v", axis, side, c.gap, c.want)
				}
			}
		}
	}
	for range mostBoxes {
		l.at(vec{}, vec{}, 0)
	}
	if !l.touched(nil) {
		t.Error("looks beyond the most do not count as everywhere")
	}
}
