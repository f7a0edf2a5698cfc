package find

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route/clear"
)

// TestSkewBoxesInClosedForm: where a line comes too near to a box that stands
// askew is what closing in on it step by step says. Some boxes stand askew about
// one axis only, so that a coordinate does not change along the line.
func TestSkewBoxesInClosedForm(t *testing.T) {
	const seed = 43
	r := rand.New(rand.NewPCG(seed, 1))
	near := 0
	for n := range 8000 {
		turn := mgl64.Rotate3DZ(r.Float64() * 6)
		if n%2 == 0 {
			turn = turn.Mul3(mgl64.Rotate3DX(r.Float64() * 6)).Mul3(mgl64.Rotate3DY(r.Float64() * 6))
		}
		box := clear.Box{
			Centre: v(40+20*r.Float64(), 40+20*r.Float64(), 40+20*r.Float64()), Axes: turn,
			Half: v(1+20*r.Float64(), 1+20*r.Float64(), 1+20*r.Float64()),
		}
		w := newWall(worldAxes(), box, 4+8*r.Float64())
		at, axis := v(100*r.Float64(), 100*r.Float64(), 100*r.Float64()), r.IntN(3)
		p := probe{&w, at, axis}
		deep, want := p.deepest(-100, 200)
		lo, hi, got := w.skewSpan(at, axis)
		if got != want && !(got && hi-lo < 0.1) { // so short a touch the golden section may miss
			t.Fatalf("seed %d, %d: too near: %v, want %v", seed, n, got, want)
		}
		if !want {
			continue
		}
		near++
		if a, b := p.edge(-100, deep), p.edge(200, deep); math.Abs(a-lo) > 1e-5 || math.Abs(b-hi) > 1e-5 {
			t.Fatalf("seed %d, %d: too near from %v to %v, want %v to %v", seed, n, lo, hi, a, b)
		}
	}
	if near < 1000 {
		t.Errorf("seed %d: only %d lines too near: the test says little", seed, near)
	}
}
