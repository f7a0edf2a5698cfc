package find

import (
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route/clear"
)

// block is a cube about a point, as a solid.
func block(at vec, half float64) solid {
	return newSolid(clear.Box{Centre: at, Axes: mgl64.Ident3(), Half: vec{half, half, half}}, 0, "block")
}

// TestLookedIsTouched: what stands within the gap of a look touches it, on every
// side, gone or new, and what stands farther off does not.
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
				gone, fresh := noSwap(), noSwap()
				gone.add([]solid{block(at, 1)}, nil)
				fresh.add(nil, []solid{block(at, 1)})
				if gone.touches(&l.boxes[0]) != c.want || fresh.touches(&l.boxes[0]) != c.want {
					t.Errorf("axis %d, side %g, %g mm off: touched is not %v", axis, side, c.gap, c.want)
				}
			}
		}
	}
	if none := noSwap(); none.touches(&l.boxes[0]) {
		t.Error("nothing touches a look")
	}
}

// TestLookedIsBounded: looks beyond the most are not kept, and the search is not
// taken to be known.
func TestLookedIsBounded(t *testing.T) {
	l := &looked{}
	for range mostLookedAt {
		l.at(vec{}, vec{}, 0)
	}
	if l.full || len(l.boxes) != mostLookedAt {
		t.Fatalf("%d looks, full: %v", len(l.boxes), l.full)
	}
	if l.at(vec{}, vec{}, 0); !l.full || l.boxes != nil {
		t.Error("looks beyond the most are kept")
	}
}

// TestGuardsAnswers: a question is answered as before unless something new is too
// near where nothing was, or what was too near is gone and nothing new is.
func TestGuardsAnswers(t *testing.T) {
	l := newLimb(clear.Rod{From: vec{0, 0, 0}, To: vec{100, 0, 0}, Radius: 5})
	near, far := block(vec{50, 8, 0}, 2), block(vec{50, 40, 0}, 2)
	sc := &scene{}
	sc.plan.Clear = 3
	for _, c := range []struct {
		name     string
		hit      bool
		old, now solid
		want     bool
	}{
		{"nothing near, before or after", false, far, far, true},
		{"something comes near", false, far, near, false},
		{"what was near is gone", true, near, far, false},
		{"what was near still is", true, near, near, true},
		{"another thing was near", true, far, far, true},
	} {
		change := change{scene: sc, runs: noSwap()}
		parts := noSwap()
		parts.add([]solid{c.old}, []solid{c.now})
		change.parts = &parts
		if change.sameAnswer(&ask{limb: l, hit: c.hit}) != c.want {
			t.Errorf("%s: the answer stands: not %v", c.name, c.want)
		}
		if !change.sameAnswer(&ask{limb: l, hit: c.hit, runs: true}) {
			t.Errorf("%s: what is asked of other runs hangs on parts", c.name)
		}
	}
}
