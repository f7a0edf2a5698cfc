package bends_test

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
)

func TestForm(t *testing.T) {
	bare := bends.Tube{Radius: 20}
	tests := []struct {
		name      string
		tube      bends.Tube
		corners   []mgl64.Vec3
		straights []float64
		turns     []float64
		developed float64
		source    string
	}{
		{"one leg", bare, []mgl64.Vec3{{}, {0, 0, 7}}, []float64{7}, nil, 7, "no bend: the leg itself"},
		{
			"one leg of a tube that cannot be bent",
			bends.Tube{StraightEnd: 7},
			[]mgl64.Vec3{{}, {0, 0, 7}},
			[]float64{7},
			nil, 7, "StraightEnd counts once: one straight holds both ends",
		},
		{
			"bends that just touch",
			bare,
			[]mgl64.Vec3{{-20, 0, 0}, {}, {0, 40, 0}, {20, 40, 0}},
			[]float64{0, 0, 0},
			[]float64{90, 90},
			20 * math.Pi, "two setbacks of 20 fill the middle leg; two quarters of 2π·20",
		},
		{
			"bends that just touch, a rounding short", bare,
			[]mgl64.Vec3{{-20, 0, 0}, {}, {0, 40 - 1e-9, 0}, {20, 40 - 1e-9, 0}},
			[]float64{0, 0, 0},
			[]float64{90, 90},
			20 * math.Pi, "less than a millionth of a mm is noise",
		},
		{
			"right angle", bare,
			[]mgl64.Vec3{{-100, 0, 0}, {}, {0, 0, 60}},
			[]float64{80, 40},
			[]float64{90},
			120 + 10*math.Pi, "80 + 40 left after two 20 mm setbacks, a quarter of 2π·20",
		},
		{
			"half a right angle", bare,
			[]mgl64.Vec3{{-100, 0, 0}, {}, {60 * math.Sqrt2 / 2, 60 * math.Sqrt2 / 2, 0}},
			[]float64{120 - 20*math.Sqrt2, 80 - 20*math.Sqrt2},
			[]float64{45},
			200 - 40*math.Sqrt2 + 5*math.Pi,
			"setback 20·tan 22.5°, and tan 22.5° = √2−1",
		},
		{
			"the plan format's worked example", plastic,
			[]mgl64.Vec3{{106, 100, 50}, {250, 100, 50}, {250, 244, 50}},
			[]float64{112, 112},
			[]float64{90},
			224 + 16*math.Pi, "worked by hand: 144 − 32 twice and 32·π/2",
		},
	}
	for _, c := range tests {
		t.Run(c.name, func(t *testing.T) {
			f := formedOf(t, c.tube, c.corners...)
			same(t, "developed length", c.source, f.Developed, c.developed)
			sameList(t, "straights", c.source, f.Straights, c.straights)
			turns := make([]float64, len(f.Bends))
			for i, b := range f.Bends {
				turns[i] = b.Turn
			}
			sameList(t, "turns", c.source, turns, c.turns)
		})
	}
}

// near is how close a hand-worked length in mm must come: far under the 0.01 mm
// that is promised, far over float64's noise.
const near = 1e-6

func same(t *testing.T, what, source string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= near) {
		t.Errorf("%s = %.9f, want %.9f (%s)", what, got, want, source)
	}
}

func sameList(t *testing.T, what, source string, got, want []float64) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("%s = %v, want %v (%s)", what, got, want, source)
	}
	for i := range got {
		same(t, what, source, got[i], want[i])
	}
}

func samePoint(t *testing.T, what string, got, want mgl64.Vec3) {
	t.Helper()
	if !(got.Sub(want).Len() <= near) {
		t.Errorf("%s = %v, want %v", what, got, want)
	}
}

func TestMarksAlongTheTube(t *testing.T) {
	f := formedOf(t, bends.Tube{Radius: 20}, mgl64.Vec3{-100, 0, 0}, mgl64.Vec3{}, mgl64.Vec3{0, 90, 0}, mgl64.Vec3{0, 90, 70})
	quarter := 10 * math.Pi
	sameList(t, "first bend", "80 ahead, a quarter of 2π·20",
		[]float64{f.Bends[0].Start, f.Bends[0].Middle, f.Bends[0].End, f.Bends[0].Setback, f.Bends[0].Arc},
		[]float64{80, 80 + quarter/2, 80 + quarter, 20, quarter})
	sameList(t, "second bend", "50 between the two",
		[]float64{f.Bends[1].Start, f.Bends[1].Middle, f.Bends[1].End},
		[]float64{130 + quarter, 130 + quarter*3/2, 130 + quarter*2})
}

func TestRadiusPerCorner(t *testing.T) {
	corners := []mgl64.Vec3{{-100, 0, 0}, {-50, 0, 0}, {}, {0, 100, 0}, {100, 100, 0}}
	f, err := bends.Form(bends.Tube{Radius: 20}, bends.Path{Corners: corners, Radii: []float64{5, 30, 40}})
	if err != nil {
		t.Fatal(err)
	}
	sameList(t, "straights", "the corner without a turn goes with its radius 5", f.Straights, []float64{70, 30, 60})
	sameList(t, "radii", "as asked for", []float64{f.Bends[0].Radius, f.Bends[1].Radius}, []float64{30, 40})
}

func TestCornersWithoutATurnAreMerged(t *testing.T) {
	tests := []struct {
		name    string
		corners []mgl64.Vec3
		left    int
	}{
		{"on the line", []mgl64.Vec3{{}, {40, 0, 0}, {90, 0, 0}, {100, 0, 0}}, 2},
		{"a noise beside it", []mgl64.Vec3{{}, {50, 0.0009, 0}, {100, 0, 0}}, 2},
		{"a turn one can measure", []mgl64.Vec3{{}, {50, 0.0011, 0}, {100, 0, 0}}, 3},
		{"small steps that add up to a bow", bow(40), 3},
		{"there and back again is a turn", []mgl64.Vec3{{}, {50, 0, 0}, {50, 80, 0}, {50, 100, 0}, {0, 100, 0}}, 4},
	}
	for _, c := range tests {
		t.Run(c.name, func(t *testing.T) {
			f := formed(t, 1, c.corners...)
			if len(f.Corners) != c.left {
				t.Errorf("Form(%v) keeps %d corners %v, want %d", c.corners, len(f.Corners), f.Corners, c.left)
			}
		})
	}
}

// bow is a line of n steps of 5 mm, each a hundredth of a millimetre steeper
// than the one before: a corner of it stands 5 nm beside its neighbours' line, but
// the middle of k steps k²·1.25 nm beside theirs: a turn of 28 steps is none, of
// 29 it is one.
func bow(n int) []mgl64.Vec3 {
	points := []mgl64.Vec3{{}}
	for i := range n {
		points = append(points, points[i].Add(mgl64.Vec3{5, 1e-5 * float64(i), 0}))
	}
	return points
}

func TestZeroValuesAreHarmless(t *testing.T) {
	var f bends.Formed
	if p := f.Pieces(); len(p) != 0 {
		t.Errorf("no tube has pieces %v", p)
	}
	if p, d := f.At(3); p != (mgl64.Vec3{}) || d != (mgl64.Vec3{}) {
		t.Errorf("no tube is at %v, %v", p, d)
	}
	if b := f.Bench(bends.Ends{}); len(b.Bends)+len(b.Straights) != 0 {
		t.Errorf("no tube has a bench table %v", b)
	}
	if c := f.Cut(bends.Ends{}, 0); c != (bends.Cut{}) {
		t.Errorf("no tube is cut to %v", c)
	}
	if table := f.Table(); len(table.Rows) != 0 || table.Last != 0 {
		t.Errorf("no tube has a table %v", table)
	}
	if r := f.Reversed(); r.Developed != 0 || len(r.Bends) != 0 {
		t.Errorf("no tube reversed is %v", r)
	}
	if p, d := (bends.Piece{}).At(1); p != (mgl64.Vec3{}) || d != (mgl64.Vec3{}) {
		t.Errorf("no piece is at %v, %v", p, d)
	}
	if c := bends.Corners(bends.Table{}); len(c) != 2 || c[0] != c[1] {
		t.Errorf("no table has corners %v, want the origin twice", c)
	}
	if s := (bends.Springback{}).FormTo(30); s != 30 {
		t.Errorf("without springback a turn of 30 is formed to %v", s)
	}
}

func TestFormLeavesItsInputAlone(t *testing.T) {
	corners := []mgl64.Vec3{{-100, 0, 0}, {}, {0, 90, 0}}
	f := formed(t, 20, corners...)
	f.Corners[0] = mgl64.Vec3{9, 9, 9}
	r := f.Reversed()
	r.Straights[0] = -1
	if corners[0] != (mgl64.Vec3{-100, 0, 0}) || f.Straights[1] != 70 {
		t.Errorf("the path became %v and the tube %v", corners, f.Straights)
	}
}

func BenchmarkForm(b *testing.B) {
	path := bends.Path{Corners: []mgl64.Vec3{
		{0, 0, 0}, {120, 0, 0}, {120, 90, 0}, {120, 90, 95}, {220, 90, 95}, {220, 180, 95}, {300, 180, 95},
	}}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := bends.Form(plastic, path); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPieces(b *testing.B) {
	f, err := bends.Form(plastic, bends.Path{Corners: []mgl64.Vec3{
		{0, 0, 0}, {120, 0, 0}, {120, 90, 0}, {120, 90, 95}, {220, 90, 95}, {220, 180, 95}, {300, 180, 95},
	}})
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if len(f.Pieces()) != 11 {
			b.Fatal("five bends make eleven pieces")
		}
	}
}
