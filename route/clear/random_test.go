package clear_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route/clear"
)

type vec = mgl64.Vec3

// pairsPerKind is how many random pairs each pair of kinds is tried with.
const pairsPerKind = 300

var kinds = []string{"rod", "box", "cylinder", "arc"}

func randomVec(r *rand.Rand, size float64) vec {
	return vec{(r.Float64()*2 - 1) * size, (r.Float64()*2 - 1) * size, (r.Float64()*2 - 1) * size}
}

// randomTurn is a rotation; every fourth is by right angles, as in most plans.
func randomTurn(r *rand.Rand) mgl64.Mat3 {
	if r.IntN(4) == 0 {
		turn := mgl64.Ident3()
		for range r.IntN(4) {
			turn = mgl64.Mat3{0, 1, 0, 0, 0, 1, 1, 0, 0}.Mul3(turn)
		}
		return turn
	}
	axis := randomVec(r, 1).Normalize()
	return mgl64.HomogRotate3D(r.Float64()*2*math.Pi, axis).Mat3()
}

// randomShape is a few millimetres large, so that it can be sampled densely.
func randomShape(r *rand.Rand, kind string) clear.Shape {
	turn, at := randomTurn(r), randomVec(r, 5)
	length := 1 + 4*r.Float64()
	radius := 0.5 + 2*r.Float64()
	switch kind {
	case "rod":
		if r.IntN(8) == 0 {
			length = 0
		}
		return clear.Rod{From: at, To: at.Add(turn.Col(0).Mul(length)), Radius: radius / 2}
	case "box":
		return clear.Box{Centre: at, Axes: turn, Half: vec{length / 2, radius, 0.2 + r.Float64()}}
	case "cylinder":
		return clear.Cylinder{From: at, To: at.Add(turn.Col(2).Mul(length)), Radius: radius}
	}
	return clear.Arc{Centre: at, U: turn.Col(0), V: turn.Col(1), Bend: 2 + length/2, Turn: 5 + 170*r.Float64(), Radius: radius / 2}
}

func randomPair(seed uint64, first, second string) (a, b clear.Shape) {
	r := rand.New(rand.NewPCG(seed, 7))
	return randomShape(r, first), randomShape(r, second)
}

// eachPair runs a law over random pairs of every two kinds.
func eachPair(t *testing.T, law func(t *testing.T, a, b clear.Shape)) {
	for i, first := range kinds {
		for _, second := range kinds[i:] {
			t.Run(first+"-"+second, func(t *testing.T) {
				for seed := range uint64(pairsPerKind) {
					a, b := randomPair(seed, first, second)
					law(t, a, b)
					if t.Failed() {
						t.Fatalf("seed %d: %#v and %#v", seed, a, b)
					}
				}
			})
		}
	}
}

func curved(shapes ...clear.Shape) bool {
	for _, s := range shapes {
		if _, arc := s.(clear.Arc); arc {
			return true
		}
	}
	return false
}

// slack is how exact a distance is promised to be.
func slack(shapes ...clear.Shape) float64 {
	if curved(shapes...) {
		return 1.01 * clear.ChordError
	}
	return 1e-6
}

// slackAt is how exact a signed distance is promised to be.
func slackAt(d float64, shapes ...clear.Shape) float64 {
	if d < 0 && curved(shapes...) {
		return 1.01 * clear.ArcDepthError
	}
	return slack(shapes...)
}

func TestBetweenIsSymmetric(t *testing.T) {
	eachPair(t, func(t *testing.T, a, b clear.Shape) {
		g, h := clear.Between(a, b), clear.Between(b, a)
		if math.Abs(g.Distance-h.Distance) > slackAt(g.Distance, a, b) {
			t.Errorf("Between(a, b) = %v, Between(b, a) = %v", g.Distance, h.Distance)
		}
	})
}

func moved(s clear.Shape, turn mgl64.Mat3, by vec) clear.Shape {
	to := func(p vec) vec { return turn.Mul3x1(p).Add(by) }
	switch s := s.(type) {
	case clear.Rod:
		return clear.Rod{From: to(s.From), To: to(s.To), Radius: s.Radius}
	case clear.Box:
		return clear.Box{Centre: to(s.Centre), Axes: turn.Mul3(s.Axes), Half: s.Half}
	case clear.Cylinder:
		return clear.Cylinder{From: to(s.From), To: to(s.To), Radius: s.Radius}
	}
	arc := s.(clear.Arc)
	arc.Centre, arc.U, arc.V = to(arc.Centre), turn.Mul3x1(arc.U), turn.Mul3x1(arc.V)
	return arc
}

func TestBetweenIsTheSameWhereverItStands(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 3))
	eachPair(t, func(t *testing.T, a, b clear.Shape) {
		turn, by := mgl64.HomogRotate3D(r.Float64()*6, randomVec(r, 1).Normalize()).Mat3(), randomVec(r, 400)
		g, h := clear.Between(a, b), clear.Between(moved(a, turn, by), moved(b, turn, by))
		if math.Abs(g.Distance-h.Distance) > 2*slackAt(g.Distance, a, b) {
			t.Errorf("Between = %v, moved by %v it is %v", g.Distance, by, h.Distance)
		}
	})
}

// planeSlack is what the planes may give less than the points: a place on a rim
// is found to about 1e-8 of a turn, which tells on the plane's tilt at once but
// on the distance only squared.
const planeSlack = 1e-7

// A distance between convex shapes is proven by two points that far apart, one
// of each shape, and a plane square to the line between them that parts the two
// by as much: no pair can be nearer than the planes.
func TestDistanceIsProvenByPointsAndPlanes(t *testing.T) {
	apart := 0
	eachPair(t, func(t *testing.T, a, b clear.Shape) {
		g := clear.Between(a, b)
		if g.Distance <= 0 {
			return
		}
		apart++
		if off := max(away(g.A, a), away(g.B, b)); off > slack(a, b) {
			t.Errorf("a nearest point is %g mm off its shape", off)
		}
		if l := g.B.Sub(g.A).Len(); math.Abs(l-g.Distance) > slack(a, b) {
			t.Errorf("points %v apart, distance %v", l, g.Distance)
		}
		if between := -clear.Along(a, b, g.Out()); !curved(a, b) && math.Abs(between-g.Distance) > planeSlack {
			t.Errorf("distance %v, but the planes part by %v", g.Distance, between)
		}
	})
	if apart < 500 {
		t.Errorf("only %d pairs stood apart", apart)
	}
}

// Moving out by the depth parts the two; by 98 % of it, that way or any of ten
// others, does not; and no direction of many hundred takes them past each other
// with less. An arc is not convex: its depth is for brute
// force to judge.
func TestDepthIsTheLeastShiftThatParts(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	met := 0
	eachPair(t, func(t *testing.T, a, b clear.Shape) {
		b = clear.Moved(b, middle(a).Sub(middle(b)).Mul(0.7))
		g := clear.Between(a, b)
		if g.Distance >= -0.01 {
			return
		}
		met++
		out := clear.Between(clear.Moved(a, g.B.Sub(g.A)), b).Distance
		if out < -2*slack(a, b) {
			t.Errorf("depth %v: after moving out by it they still overlap by %v", -g.Distance, -out)
		}
		if curved(a, b) {
			return
		}
		if out > 1e-6 {
			t.Errorf("depth %v: after moving out by it they stand %v apart", -g.Distance, out)
		}
		for range 700 {
			if u := randomVec(r, 1).Normalize(); clear.Along(a, b, u) < -g.Distance-1e-6 {
				t.Errorf("depth %v, but along %v it takes %v", -g.Distance, u, clear.Along(a, b, u))
			}
		}
		u := g.B.Sub(g.A).Mul(0.98)
		for range 11 {
			if clear.Farther(clear.Moved(a, u), b, 0) {
				t.Errorf("depth %v, but a shift by %v parts them", -g.Distance, u)
			}
			u = randomVec(r, 1).Normalize().Mul(-0.98 * g.Distance)
		}
	})
	if met < 1500 {
		t.Errorf("only %d pairs overlapped", met)
	}
}

func TestFartherAgreesWithBetween(t *testing.T) {
	eachPair(t, func(t *testing.T, a, b clear.Shape) {
		d := clear.Between(a, b).Distance
		for _, than := range []float64{-1, 0, 0.5, 2, 4, 8} {
			if math.Abs(d-than) > slack(a, b) && clear.Farther(a, b, than) != (d >= than) {
				t.Errorf("Farther(a, b, %v) = %v, distance %v", than, !(d >= than), d)
			}
			if clear.Farther(a, b, than) != clear.Farther(b, a, than) {
				t.Errorf("Farther(a, b, %v) is not the same both ways round, distance %v", than, d)
			}
		}
	})
}

func middle(s clear.Shape) vec {
	lo, hi := s.Bounds()
	return lo.Add(hi).Mul(0.5)
}

func ExampleBetween() {
	tube := clear.Rod{From: vec{0, 0, 0}, To: vec{100, 0, 0}, Radius: 8}
	block := clear.Box{Centre: vec{50, 30, 0}, Axes: mgl64.Ident3(), Half: vec{10, 10, 10}}
	gap := clear.Between(tube, block)
	fmt.Printf("%.1f mm apart\n", gap.Distance)
	deep := clear.Between(clear.Moved(tube, vec{0, 15, 0}), block)
	fmt.Printf("%.1f mm deep, way out %.0f\n", -deep.Distance, deep.Out())
	// Output:
	// 12.0 mm apart
	// 3.0 mm deep, way out [0 -1 0]
}
