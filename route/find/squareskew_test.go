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

// TestBendsKeepAwayFromConvexWalls: whether a bend keeps away from a box or a bar
// that stands askew is what looking at every hundredth of a millimetre says, but
// for gaps that differ from enough by less than that.
func TestBendsKeepAwayFromConvexWalls(t *testing.T) {
	const seed = 44
	r := rand.New(rand.NewPCG(seed, 1))
	clearOf, near := 0, 0
	for n := range 600 {
		w := askewWall(r, n)
		radius := 10 + 20*r.Float64()
		centre := v(100*r.Float64(), 100*r.Float64(), 100*r.Float64())
		turn := mgl64.Rotate3DZ(r.Float64() * 6).Mul3(mgl64.Rotate3DX(r.Float64() * 6))
		first, last := turn.Col(0), turn.Col(1)
		least := math.Inf(1)
		for x := 0.0; x < math.Pi/2; x += 0.01 / radius {
			least = min(least, w.body.away(centre.Add(first.Mul(radius*math.Cos(x))).Add(last.Mul(radius*math.Sin(x)))))
		}
		if math.Abs(least-w.keep) < 0.01 || least > w.keep+20 {
			continue
		}
		got := w.bendAway(centre, first, last, radius, 0, math.Pi/2)
		if want := least > w.keep; got != want {
			t.Fatalf("seed %d, %d: the bend comes as near as %v where %v is asked: clear is %v", seed, n, least, w.keep, got)
		} else if want {
			clearOf++
		} else {
			near++
		}
	}
	if clearOf < 50 || near < 50 {
		t.Errorf("seed %d: %d bends clear, %d too near: the test says little", seed, clearOf, near)
	}
}

// askewWall is a box, a rod or a cylinder that lies along no axis.
func askewWall(r *rand.Rand, n int) wall {
	at := v(40+20*r.Float64(), 40+20*r.Float64(), 40+20*r.Float64())
	to := at.Add(v(5+20*r.Float64(), 5+20*r.Float64(), 5+20*r.Float64()))
	var s clear.Shape
	switch n % 3 {
	case 0:
		turn := mgl64.Rotate3DZ(r.Float64() * 6).Mul3(mgl64.Rotate3DX(r.Float64() * 6))
		s = clear.Box{Centre: at, Axes: turn, Half: v(1+20*r.Float64(), 1+20*r.Float64(), 1+20*r.Float64())}
	case 1:
		s = clear.Rod{From: at, To: to, Radius: 1 + 8*r.Float64()}
	default:
		s = clear.Cylinder{From: at, To: to, Radius: 1 + 8*r.Float64()}
	}
	return newWall(worldAxes(), s, 4+8*r.Float64())
}
