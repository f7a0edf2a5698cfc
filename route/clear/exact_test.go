package clear_test

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route/clear"
)

func block(from, to vec) clear.Box {
	return clear.Box{Centre: from.Add(to).Mul(0.5), Axes: mgl64.Ident3(), Half: to.Sub(from).Mul(0.5)}
}

// turned is a block turned by degrees about an axis through its centre.
func turned(b clear.Box, degrees float64, axis vec) clear.Box {
	b.Axes = mgl64.HomogRotate3D(mgl64.DegToRad(degrees), axis).Mat3()
	return b
}

func rod(from, to vec, radius float64) clear.Rod {
	return clear.Rod{From: from, To: to, Radius: radius}
}

func can(from, to vec, radius float64) clear.Cylinder {
	return clear.Cylinder{From: from, To: to, Radius: radius}
}

// quarter is a quarter of a ring about the origin from +x to +y.
func quarter(bend, radius float64) clear.Arc {
	return clear.Arc{U: vec{1, 0, 0}, V: vec{0, 1, 0}, Bend: bend, Turn: 90, Radius: radius}
}

var unit = block(vec{0, 0, 0}, vec{10, 10, 10})

var exactTests = []struct {
	name   string
	a, b   clear.Shape
	want   float64
	source string
}{
	{"balls", rod(vec{}, vec{}, 1), rod(vec{3, 4, 0}, vec{3, 4, 0}, 1), 3, "3-4-5, less two radii"},
	{"balls of one centre", rod(vec{}, vec{}, 1), rod(vec{}, vec{}, 2), -3, "out by both radii"},
	{"rods crossing at a distance", rod(vec{-50, 0, 0}, vec{50, 0, 0}, 8), rod(vec{0, -50, 20}, vec{0, 50, 20}, 8), 4, "20 − 16"},
	{"rods side by side", rod(vec{0, 0, 0}, vec{100, 0, 0}, 8), rod(vec{50, 20, 0}, vec{150, 20, 0}, 8), 4, "20 − 16"},
	{"rods in line", rod(vec{0, 0, 0}, vec{100, 0, 0}, 8), rod(vec{120, 0, 0}, vec{150, 0, 0}, 8), 4, "20 − 16, round ends"},
	{"rods on one line, overlapping", rod(vec{0, 0, 0}, vec{100, 0, 0}, 8), rod(vec{50, 0, 0}, vec{150, 0, 0}, 8), -16, "sideways by both radii"},
	{"rods on one line, just overlapping", rod(vec{0, 0, 0}, vec{100, 0, 0}, 8), rod(vec{110, 0, 0}, vec{150, 0, 0}, 8), -6, "10 − 16"},
	{"rods whose axes meet", rod(vec{-50, 0, 0}, vec{50, 0, 0}, 8), rod(vec{0, -50, 0}, vec{0, 50, 0}, 4), -12, "square to both"},
	{"rods skew, ends nearest", rod(vec{0, 0, 0}, vec{10, 0, 0}, 1), rod(vec{13, 4, 0}, vec{13, 40, 9}, 1), 3, "3-4-5 from end to end"},
	{"ball over a face", rod(vec{5, 15, 5}, vec{5, 15, 5}, 2), unit, 3, "5 − 2"},
	{"ball off an edge", rod(vec{13, 14, 5}, vec{13, 14, 5}, 2), unit, 3, "3-4-5"},
	{"ball off a corner", rod(vec{12, 13, 16}, vec{12, 13, 16}, 2), unit, 5, "2-3-6-7"},
	{"ball in the middle", rod(vec{5, 5, 5}, vec{5, 5, 5}, 2), unit, -7, "5 to a face and its radius"},
	{"ball near a face from inside", rod(vec{5, 9, 5}, vec{5, 9, 5}, 2), unit, -3, "1 + 2"},
	{"rod along a face", rod(vec{-50, 14, 5}, vec{50, 14, 5}, 3), unit, 1, "4 − 3"},
	{"rod across a corner", rod(vec{20, 0, 5}, vec{0, 20, 5}, 0), unit, 0, "the line x + y = 20 meets the edge at (10, 10)"},
	{"rod past an edge", rod(vec{24, 0, 5}, vec{0, 24, 5}, 1), unit, 2*math.Sqrt2 - 1, "from (10, 10) to x + y = 24: 4/√2"},
	{"rod through a block", rod(vec{5, -50, 5}, vec{5, 50, 5}, 3), unit, -8, "sideways: 5 + 3"},
	{"rod grazing inside", rod(vec{-50, 9, 5}, vec{50, 9, 5}, 3), unit, -4, "1 + 3"},
	{"rod touching a face", rod(vec{-50, 13, 5}, vec{50, 13, 5}, 3), unit, 0, "13 − 10 − 3"},
	{"rod over a flat end", rod(vec{-50, 0, 34}, vec{50, 0, 34}, 8), can(vec{}, vec{0, 0, 20}, 12), 6, "34 − 20 − 8"},
	{"rod beside a cylinder", rod(vec{-50, 24, 10}, vec{50, 24, 10}, 8), can(vec{}, vec{0, 0, 20}, 12), 4, "24 − 12 − 8"},
	{"rod off a rim", rod(vec{-50, 15, 24}, vec{50, 15, 24}, 2), can(vec{}, vec{0, 0, 20}, 12), 3, "3-4-5, less 2"},
	{"rod down the axis", rod(vec{0, 0, -50}, vec{0, 0, 50}, 8), can(vec{}, vec{0, 0, 20}, 12), -20, "sideways: 12 + 8"},
	{"rod into a flat end", rod(vec{0, 0, 17}, vec{0, 0, 50}, 2), can(vec{}, vec{0, 0, 20}, 12), -5, "3 + 2"},
	{"blocks face to face", unit, block(vec{14, 2, 2}, vec{20, 8, 8}), 4, "14 − 10"},
	{"blocks corner to corner", unit, block(vec{12, 13, 16}, vec{20, 20, 20}), 7, "2-3-6-7"},
	{"blocks sharing a face", unit, block(vec{10, 0, 0}, vec{20, 10, 10}), 0, "a fan on its radiator"},
	{"one block", unit, unit, -10, "10 along any axis"},
	{"a block inside another", unit, block(vec{7, 4, 4}, vec{8, 6, 6}), -3, "from x 7 to 10"},
	{"blocks overlapping", unit, block(vec{6.8, -5, -5}, vec{20, 20, 20}), -3.2, "10 − 6.8"},
	{"a block on edge above another", unit, turned(block(vec{2, 15, 2}, vec{8, 21, 8}), 45, vec{0, 0, 1}), 8 - 3*math.Sqrt2, "centre 8 above, half a diagonal 3√2"},
	{"edges crossing", turned(block(vec{-5, -5, -5}, vec{5, 5, 5}), 45, vec{1, 0, 0}), clear.Moved(turned(block(vec{-5, -5, -5}, vec{5, 5, 5}), 45, vec{0, 1, 0}), vec{0, 0, 20}), 20 - 10*math.Sqrt2, "two half diagonals 5√2"},
	{"edges crossing, overlapping", turned(block(vec{-5, -5, -5}, vec{5, 5, 5}), 45, vec{1, 0, 0}), clear.Moved(turned(block(vec{-5, -5, -5}, vec{5, 5, 5}), 45, vec{0, 1, 0}), vec{0, 0, 13}), 13 - 10*math.Sqrt2, "the same at 13"},
	{"cylinder over a face", can(vec{5, 13, 5}, vec{5, 20, 5}, 3), unit, 3, "13 − 10"},
	{"cylinder lying over a face", can(vec{-20, 15, 5}, vec{30, 15, 5}, 3), unit, 2, "5 − 3"},
	{"rim over a face", can(vec{5, 20, 5}, vec{15, 30, 5}, 3*math.Sqrt2), unit, 7, "20 − 10 − 3"},
	{"cylinder off an edge", can(vec{13, 14, -20}, vec{13, 14, 30}, 2), unit, 3, "3-4-5, less 2"},
	{"cylinder through a plate", can(vec{5, 5, -20}, vec{5, 5, 30}, 2), block(vec{-50, -50, 0}, vec{50, 50, 2}), -22, "up: its lower end stands 22 below the plate's far face"},
	{"cylinder sunk in a block", can(vec{5, 5, 8}, vec{5, 5, 30}, 2), unit, -2, "10 − 8"},
	{"cylinders side by side", can(vec{}, vec{0, 0, 20}, 12), can(vec{28, 0, 5}, vec{28, 0, 25}, 12), 4, "28 − 24: two collars"},
	{"cylinders end to end", can(vec{}, vec{0, 0, 20}, 12), can(vec{5, 0, 23}, vec{5, 0, 40}, 12), 3, "23 − 20"},
	{"cylinders off rim and rim", can(vec{}, vec{0, 0, 20}, 12), can(vec{27, 0, 24}, vec{27, 0, 40}, 12), 5, "3 aside, 4 up"},
	{"cylinders of one axis, one in the other", can(vec{}, vec{0, 0, 20}, 12), can(vec{0, 0, 15}, vec{0, 0, 40}, 4), -5, "20 − 15"},
	{"cylinders crossing", can(vec{-50, 0, 0}, vec{50, 0, 0}, 8), can(vec{0, -50, 20}, vec{0, 50, 20}, 8), 4, "20 − 16"},
	{"cylinders crossing, overlapping", can(vec{-50, 0, 0}, vec{50, 0, 0}, 8), can(vec{0, -50, 13}, vec{0, 50, 13}, 8), -3, "13 − 16"},
	{"a rim over a flat end", can(vec{}, vec{0, 0, 20}, 12), can(vec{0, 0, 30}, vec{10, 0, 40}, 4*math.Sqrt2), 6, "30 − 20 − 4"},
	{"a flat end into a side", can(vec{}, vec{0, 0, 20}, 12), can(vec{14, 0, 10}, vec{30, 0, 10}, 5), 2, "14 − 12"},
	{"a cylinder without length", can(vec{5, 15, 5}, vec{5, 15, 5}, 3), unit, 5, "taken as its centre point"},
	{"ball in the middle of a ring", quarter(32, 8), rod(vec{}, vec{}, 4), 20, "32 − 8 − 4, all along the arc"},
	{"ball outside a ring", quarter(32, 8), rod(vec{30, 40, 0}, vec{30, 40, 0}, 4), 6, "50 − 32 − 12"},
	{"ball past a ring's end", quarter(32, 8), rod(vec{35, -4, 0}, vec{35, -4, 0}, 2), -5, "3-4-5 to the end, less 10"},
	{"rod through a ring", quarter(32, 8), rod(vec{0, 0, -50}, vec{0, 0, 50}, 8), 16, "32 − 16"},
	{"block beside a ring", quarter(32, 8), block(vec{44, -50, -50}, vec{60, 50, 50}), 4, "44 − 32 − 8"},
	{"block in the bow of a ring", quarter(32, 8), block(vec{-9, -9, -1}, vec{9, 12, 1}), 32 - 15 - 8, "corner (9, 12) is 15 out"},
	{"cylinder about a ring's axis", quarter(32, 8), can(vec{0, 0, -5}, vec{0, 0, 5}, 12), 12, "32 − 12 − 8"},
	{"rings one over the other", quarter(32, 8), clear.Moved(quarter(32, 8), vec{0, 0, 20}), 4, "20 − 16"},
	{"rings one in the other", quarter(60, 8), quarter(32, 8), 12, "60 − 32 − 16"},
	{"rings linked", quarter(32, 8), clear.Arc{Centre: vec{22.627416997969522, 22.627416997969522, 32}, U: vec{0, 0, -1}, V: vec{1, 0, 0}, Bend: 12, Turn: 90, Radius: 4}, 8, "20 − 12: the point at 45° and the ring's lowest, 20 above it"},
	{"a block pressed on a ring", quarter(32, 8), block(vec{37, -50, -50}, vec{60, 50, 50}), -3, "37 − 32 − 8"},
}

func TestBetweenByHand(t *testing.T) {
	for _, tt := range exactTests {
		t.Run(tt.name, func(t *testing.T) {
			tolerance := 1e-9
			if curved(tt.a, tt.b) {
				tolerance = clear.ChordError
			}
			for _, g := range []clear.Gap{clear.Between(tt.a, tt.b), clear.Between(tt.b, tt.a)} {
				if math.Abs(g.Distance-tt.want) > tolerance {
					t.Errorf("Between = %.10f, want %.10f: %s", g.Distance, tt.want, tt.source)
				}
				if l := g.B.Sub(g.A).Len(); math.Abs(l-math.Abs(g.Distance)) > 2*tolerance {
					t.Errorf("the points are %v apart, distance %v", l, g.Distance)
				}
			}
		})
	}
}

// Two tubes all but parallel, 500 long and 16.5 apart at one end, tilted by a
// billionth to a thousandth of a radian: the ends are nearest.
func TestNearlyParallelRods(t *testing.T) {
	for _, tilt := range []float64{0, 1e-9, 1e-8, 1e-7, 1e-6, 1e-5, 1e-3} {
		g := clear.Between(rod(vec{}, vec{500, 0, 0}, 8), rod(vec{0, 16.5, 0}, vec{500, 16.5 + 500*tilt, 0}, 8))
		if math.Abs(g.Distance-0.5) > 1e-6 {
			t.Errorf("tilt %g: distance %v, want 0.5", tilt, g.Distance)
		}
	}
}

// A gap grows from overlap to distance without a jump as one shape is drawn out
// of the other.
func TestDistanceIsContinuousThroughTouch(t *testing.T) {
	shapes := []clear.Shape{rod(vec{-20, 0, 0}, vec{20, 3, 1}, 4), turned(unit, 30, vec{1, 2, 3}.Normalize()), can(vec{-5, 0, 0}, vec{5, 2, 3}, 6)}
	way := vec{0.48, 0.64, 0.6}
	for _, a := range shapes {
		for _, b := range shapes {
			last := math.NaN()
			for x := 0.0; x < 40; x += 0.02 {
				d := clear.Between(clear.Moved(a, way.Mul(x)), b).Distance
				if math.Abs(d-last) > 0.0201 {
					t.Fatalf("%T and %T: %v at shift %v, %v just before", a, b, d, x, last)
				}
				last = d
			}
		}
	}
}

// Where an arc closes round a block, the way out is the whole way.
func TestTheWayOutOfARingIsEnough(t *testing.T) {
	arc := clear.Arc{U: vec{1, 0, 0}, V: vec{0, 1, 0}, Bend: 32, Turn: 170, Radius: 8}
	b := block(vec{-24.5, 3, -3}, vec{24.5, 12, 3})
	g := clear.Between(arc, b)
	if g.Distance >= 0 {
		t.Fatalf("distance %v, want an overlap", g.Distance)
	}
	if d := clear.Between(clear.Moved(arc, g.B.Sub(g.A)), b).Distance; d < -2*clear.ChordError {
		t.Errorf("moved out by %v it still overlaps by %v", g.B.Sub(g.A), -d)
	}
}

func TestForeignShapesPanic(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("no panic on a shape of another package")
		}
	}()
	clear.Between(other{}, unit)
}

type other struct{ clear.Rod }

func (other) Bounds() (lo, hi vec) { return lo, hi }

func TestAJustTouchingGapHasNoDirection(t *testing.T) {
	g := clear.Between(unit, block(vec{10, 0, 0}, vec{20, 10, 10}))
	if g.Out() != (vec{}) {
		t.Errorf("Out = %v, want the zero vector", g.Out())
	}
	if got := clear.Between(unit, block(vec{14, 0, 0}, vec{20, 10, 10})).Out(); got.Sub(vec{-1, 0, 0}).Len() > 1e-9 {
		t.Errorf("Out = %v, want away from the second, −x", got)
	}
}

func TestHotPairsDoNotAllocate(t *testing.T) {
	eachPair := func(a, b clear.Shape) {
		if n := testing.AllocsPerRun(20, func() { clear.Farther(a, b, 4) }); n != 0 {
			t.Errorf("Farther(%T, %T) allocates %v times", a, b, n)
		}
		if n := testing.AllocsPerRun(20, func() { clear.Between(a, b) }); n != 0 {
			t.Errorf("Between(%T, %T) allocates %v times", a, b, n)
		}
	}
	for i, first := range kinds {
		for _, second := range kinds[i:] {
			for seed := range uint64(20) {
				if a, b := randomPair(seed, first, second); clear.Between(a, b).Distance > 0 {
					eachPair(a, b)
				}
			}
		}
	}
}

// How far the first must go until it is clear, worked by hand.
func TestLeaveByHand(t *testing.T) {
	tests := []struct {
		name   string
		a, b   clear.Shape
		way    vec
		want   float64
		source string
	}{
		{"a block in a block", unit, block(vec{4, -5, -5}, vec{20, 20, 20}), vec{-1, 0, 0}, 6, "10 − 4"},
		{"a block that meets nothing", unit, block(vec{4, 20, 0}, vec{20, 30, 10}), vec{-1, 0, 0}, 0, "10 above"},
		{"a block clear already", unit, block(vec{14, 0, 0}, vec{20, 10, 10}), vec{-1, 0, 0}, 0, "4 away"},
		{"a ball under a slope", rod(vec{}, vec{}, 1), turned(block(vec{-50, -60, -50}, vec{50, 0, 50}), 45, vec{0, 0, 1}), vec{0, 1, 0}, 30 + 31*math.Sqrt2 - 60, "face 30 past the middle at (0, −30), square to (−1, 1): up by √2·(30 + 1) − 30 of the middle's height"},
		{"a ball through a block", rod(vec{}, vec{}, 2), block(vec{5, -1, -1}, vec{9, 1, 1}), vec{1, 0, 0}, 11, "past it: 9 + 2"},
		{"a ring about a block", quarter(32, 8), block(vec{20, 20, -1}, vec{24, 24, 1}), vec{0, 0, 1}, 9, "8 + 1, since the block is within 8 of its centreline"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := clear.Leave(tt.a, tt.b, tt.way); math.Abs(got-tt.want) > 0.01 {
				t.Errorf("Leave = %v, want %v: %s", got, tt.want, tt.source)
			}
		})
	}
}

// Centrelines that all but meet: the depth does not jump, whatever the rest.
func TestCentrelinesThatAllButMeet(t *testing.T) {
	arc := quarter(32, 8)
	at := vec{32 * math.Sqrt2 / 2, 32 * math.Sqrt2 / 2, 0}
	others := []clear.Shape{
		rod(at.Add(vec{0, 0, -30}), at.Add(vec{0, 0, 30}), 8),                                           // through it
		rod(at.Sub(vec{20, 20, 0}), at.Add(vec{20, 20, 0}), 8),                                          // across it in its plane
		rod(at.Sub(vec{20, -20, 0}), at.Add(vec{20, -20, 0}), 8),                                        // along it
		clear.Moved(block(vec{-3, -3, -40}, vec{3, 3, 0}), at),                                          // a block's face in its plane
		can(at.Sub(vec{0, 0, 30}), at, 5),                                                               // a cylinder's end in its plane
		clear.Arc{Centre: at.Mul(2), U: vec{-1, 0, 0}, V: vec{0, -1, 0}, Bend: 32, Turn: 90, Radius: 8}, // touching from outside
		quarter(32, 6), // on one circle
		clear.Arc{U: vec{1, 0, 0}, V: vec{0, 1, 0}, Bend: 31, Turn: 90, Radius: 8, Centre: vec{math.Sqrt2 / 2, math.Sqrt2 / 2, 0}}, // nestling
	}
	for i, other := range others {
		last := math.NaN()
		for _, off := range []float64{0, 1e-12, 1e-10, 1e-9, 3e-9, 1e-8, 1e-7, 1e-6, 1e-5, 4e-5, 6e-5, 1e-4, 1e-3} {
			d := clear.Between(arc, clear.Moved(other, vec{off, off, off})).Distance
			if math.IsInf(d, 0) || math.Abs(d-last) > 0.01 {
				t.Errorf("shape %d: %v off by %v, just before %v", i, d, off, last)
			}
			if clear.Farther(arc, clear.Moved(other, vec{off, off, off}), 0) {
				t.Errorf("shape %d off by %v: apart", i, off)
			}
			last = d
		}
	}
}
