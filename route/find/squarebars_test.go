package find

import (
	"math"
	"math/rand/v2"
	"testing"

	"tubewright/route/clear"
)

// anyBar is a rod or a cylinder along an axis, near the middle of a hand's breadth.
func anyBar(r *rand.Rand) (*wall, int) {
	from, axis := v(40+20*r.Float64(), 40+20*r.Float64(), 40+20*r.Float64()), r.IntN(3)
	to := from
	to[axis] += 40 * r.Float64()
	var s clear.Shape = clear.Cylinder{From: from, To: to, Radius: 3 + 12*r.Float64()}
	if r.IntN(2) == 0 {
		s = clear.Rod{From: to, To: from, Radius: 3 + 12*r.Float64()}
	}
	w := newWall(worldAxes(), s, 4+8*r.Float64())
	return &w, axis
}

// TestBarsInClosedForm: where a line, or a bend, comes too near to a bar is what
// looking over it piece by piece says.
func TestBarsInClosedForm(t *testing.T) {
	const seed = 41
	r := rand.New(rand.NewPCG(seed, 1))
	near, sure := 0, 0
	for range 4000 {
		w, along := anyBar(r)
		if w.body.along != along {
			t.Fatalf("seed %d: a bar along axis %d is taken to lie along %d", seed, along, w.body.along)
		}
		at, axis := v(100*r.Float64(), 100*r.Float64(), 100*r.Float64()), r.IntN(3)
		p := probe{w, at, axis}
		want := p.search(nil, -50, 150, 0)
		got := w.roundSpans(nil, at, axis, -50, 150, 0)
		if len(want) > 0 {
			near++
		}
		if len(got) != len(want) || len(got) > 0 && (math.Abs(got[0].lo-want[0].lo) > 2*finePiece || math.Abs(got[0].hi-want[0].hi) > 2*finePiece) {
			if len(got) == 1 && got[0].hi-got[0].lo < finePiece { // so short a touch falls between two pieces
				continue
			}
			t.Fatalf("seed %d: %+v along %d at %v: spans %v, want %v", seed, w.body, axis, at, got, want)
		}
		if w.bendAsSlow(t, r, at) {
			sure++
		}
	}
	t.Logf("seed %d: %d lines too near, %d bends told in closed form", seed, near, sure)
	if near < 400 || sure < 1000 {
		t.Errorf("seed %d: only %d lines too near, %d bends told: the test says little", seed, near, sure)
	}
}

// bendAsSlow compares the closed form of a bend with the slow one where it has an
// answer.
func (w *wall) bendAsSlow(t *testing.T, r *rand.Rand, centre vec) bool {
	t.Helper()
	u := r.IntN(3)
	third := (u + 1 + r.IntN(2)) % 3
	second := 3 - u - third
	radius := 10 + 20*r.Float64()
	first, last := heading(2*u+r.IntN(2)), heading(2*second+r.IntN(2))
	from, to := centre.Add(first.Mul(radius)), centre.Add(last.Mul(radius))
	clear, sure := w.barClear(centre, from, to, u, second, radius)
	if slow := w.bendAway(centre, first, last, radius, 0, math.Pi/2); sure && slow != clear {
		// a gap within the slow one's own step of enough may go either way
		was := w.keep
		w.keep = was + finePiece
		wide := w.bendAway(centre, first, last, radius, 0, math.Pi/2)
		w.keep = was - finePiece
		tight := w.bendAway(centre, first, last, radius, 0, math.Pi/2)
		if w.keep = was; wide == tight {
			t.Fatalf("%+v, bend about %v from %v to %v: clear %v, want %v", w.body, centre, from, to, clear, slow)
		}
	}
	return sure
}
