package draw_test

import (
	"image"
	"math"
	"testing"

	"tubewright/cutlist/draw"
)

// inked paints a drawing of black on nothing and gives the covered area in mm².
func inked(t *testing.T, scale float64, items ...draw.Item) float64 {
	t.Helper()
	img := painted(scale, items...)
	sum := 0.0
	for i := 3; i < len(img.Pix); i += 4 {
		sum += float64(img.Pix[i]) / 255
	}
	return sum / scale / scale
}

func painted(scale float64, items ...draw.Item) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, int(60*scale), int(60*scale)))
	d := draw.Drawing{W: 60, H: 60}
	d.Add(items...)
	draw.Raster(img, d, scale)
	return img
}

func TestRasterCoversTheRightArea(t *testing.T) {
	pen := draw.Stroke{Width: 1.5}
	p := func(x, y float64) draw.Point { return draw.Point{X: x, Y: y} }
	var ring draw.Line
	ring.Stroke = pen
	for i := range 721 {
		s, c := math.Sincos(float64(i) * math.Pi / 360)
		ring.Points = append(ring.Points, p(30+20*c, 30+20*s))
	}
	tests := []struct {
		name string
		item draw.Item
		want float64
		how  string
	}{
		{"line", draw.Line{Points: []draw.Point{p(5, 5), p(45, 35)}, Stroke: pen}, 75, "50 mm (3-4-5) times 1.5"},
		{"line with a repeated point", draw.Line{Points: []draw.Point{p(5, 5), p(5, 5), p(45, 35)}, Stroke: pen}, 75, "the same"},
		{"ring of chords", ring, 2 * math.Pi * 20 * 1.5, "2πr times the width: corners are painted once"},
		{"circle", draw.Arc{Centre: p(30, 30), Radius: 20, Sweep: 360, Stroke: pen}, 2 * math.Pi * 20 * 1.5, "2πr times the width"},
		{"quarter, backward", draw.Arc{Centre: p(30, 30), Radius: 20, From: 90, Sweep: -90, Stroke: pen}, math.Pi / 2 * 20 * 1.5, "πr/2 times the width"},
		{"disc", draw.Disc(p(30, 30), 20, ink, draw.Stroke{}), 0.9984 * math.Pi * 400, "a 64-gon: n/2·sin(2π/n)·r²"},
		{"box", draw.Box(10, 10, 30, 20, ink, draw.Stroke{}), 600, "30 by 20"},
		{"box with an edge", draw.Box(10, 10, 30, 20, ink, draw.Stroke{Width: 2}), 32*22 - (4 - math.Pi), "32 by 22 with round corners of radius 1"},
		{"right angle", draw.Line{Points: []draw.Point{p(10, 10), p(40, 10), p(40, 40)}, Stroke: draw.Stroke{Width: 4}}, 240 - 4 + math.Pi, "two legs of 120, the overlap once, a quarter disc of radius 2"},
		{"frame", draw.Frame(10, 10, 30, 20, draw.Stroke{Width: 2}), 32*22 - 28*18 - (4 - math.Pi), "outer less inner, round outer corners"},
		{"dashes", draw.Line{Points: []draw.Point{p(10, 10), p(50, 10)}, Stroke: draw.Stroke{Width: 2, Dash: []float64{3, 2}}}, 48, "24 of 40 mm"},
		{"dashes round a corner", draw.Line{Points: []draw.Point{p(10, 10), p(14, 10), p(14, 16)}, Stroke: draw.Stroke{Width: 1, Dash: []float64{5, 5}}}, 5 - 0.25 + math.Pi/16, "the first 5 mm, a rounded corner"},
		{"dashes without length", draw.Line{Points: []draw.Point{p(10, 10), p(50, 10)}, Stroke: draw.Stroke{Width: 2, Dash: []float64{0, 0}}}, 80, "solid"},
		{"no width", draw.Line{Points: []draw.Point{p(10, 10), p(50, 10)}}, 0, "nothing to see"},
		{"not a number", draw.Line{Points: []draw.Point{p(math.NaN(), 10), p(50, math.Inf(1))}, Stroke: pen}, 0, "left out"},
		{"two points are no area", draw.Fill{Points: []draw.Point{p(1, 1), p(9, 9)}}, 0, "left out"},
	}
	for _, tt := range tests {
		if got := inked(t, 12, tt.item); math.Abs(got-tt.want) > 0.004*tt.want+0.02 {
			t.Errorf("%s: %.3f mm², want %.3f (%s)", tt.name, got, tt.want, tt.how)
		}
	}
}

func TestRasterKeepsHairlinesVisible(t *testing.T) {
	got := inked(t, 2, draw.Segment(5, 5.25, 55, 5.25, draw.Stroke{Width: 0.01}))
	if want := 50 * 0.6 / 2; math.Abs(got-want) > 0.3 {
		t.Errorf("a hairline covers %.2f mm², want %.2f: 0.6 pixels wide", got, want)
	}
}

func TestRasterTextStaysInItsBounds(t *testing.T) {
	for _, turn := range []float64{0, 90, 180, 270, 33} {
		for _, align := range []draw.Align{draw.Left, draw.Centre, draw.Right} {
			text := draw.Text{At: draw.Point{X: 30, Y: 30}, Text: "ÅgЖq 12", Size: 5, Turn: turn, Align: align, Bold: true}
			lo, hi := text.Bounds()
			img := painted(8, text)
			seen := 0
			for y := range img.Rect.Dy() {
				for x := range img.Rect.Dx() {
					if img.RGBAAt(x, y).A == 0 {
						continue
					}
					seen++
					px, py := (float64(x)+0.5)/8, (float64(y)+0.5)/8
					if px < lo.X-0.4 || px > hi.X+0.4 || py < lo.Y-0.4 || py > hi.Y+0.4 {
						t.Fatalf("turn %v, align %v: ink at %.2f, %.2f outside %v to %v", turn, align, px, py, lo, hi)
					}
				}
			}
			if seen < 500 {
				t.Errorf("turn %v, align %v: only %d pixels of ink", turn, align, seen)
			}
		}
	}
}

func TestTextBounds(t *testing.T) {
	lo, hi := draw.Text{At: draw.Point{X: 10, Y: 20}, Text: "bend", Size: 4, Turn: 90}.Bounds()
	w := draw.TextWidth("bend", 4, false)
	want := [4]float64{10 - 0.211*4, 20, 10 + 0.945*4, 20 + w}
	for i, got := range []float64{lo.X, lo.Y, hi.X, hi.Y} {
		if math.Abs(got-want[i]) > 1e-9 {
			t.Errorf("bounds %v %v, want %v: turned clockwise the text runs down from its point, tails to the left", lo, hi, want)
		}
	}
}

func TestRasterCutsWhatReachesPast(t *testing.T) {
	img := image.NewRGBA(image.Rect(100, 200, 120, 220))
	d := draw.Drawing{}
	d.Add(draw.Box(-50, -50, 60, 60, ink, draw.Stroke{Width: 3}), draw.Text{At: draw.Point{X: 18, Y: 18}, Text: "wide text", Size: 30},
		draw.Text{At: draw.Point{X: 500, Y: 500}, Text: "far", Size: 3})
	draw.Raster(img, d, 1)
	if img.RGBAAt(100, 200).A != 255 {
		t.Error("the drawing's corner does not fall on the picture's")
	}
	draw.Raster(image.NewRGBA(image.Rectangle{}), d, 1)
}

func TestPlaceShiftsEverything(t *testing.T) {
	var inner, outer draw.Drawing
	inner.Add(draw.Segment(0, 0, 1, 0, draw.Stroke{Width: 1}), draw.Arc{Radius: 1}, draw.Box(0, 0, 1, 1, ink, draw.Stroke{}),
		draw.Text{Text: "x"})
	outer.Place(inner, draw.Point{X: 5, Y: 7})
	if got := outer.Items[0].(draw.Line).Points[1]; got != (draw.Point{X: 6, Y: 7}) {
		t.Errorf("line moved to %v", got)
	}
	if got := outer.Items[1].(draw.Arc).Centre; got != (draw.Point{X: 5, Y: 7}) {
		t.Errorf("arc moved to %v", got)
	}
	if got := outer.Items[2].(draw.Fill).Points[2]; got != (draw.Point{X: 6, Y: 8}) {
		t.Errorf("fill moved to %v", got)
	}
	if got := outer.Items[3].(draw.Text).At; got != (draw.Point{X: 5, Y: 7}) {
		t.Errorf("text moved to %v", got)
	}
	if inner.Items[0].(draw.Line).Points[1] != (draw.Point{X: 1}) {
		t.Error("the inner drawing was written to")
	}
}

func BenchmarkRaster(b *testing.B) {
	img := image.NewRGBA(image.Rect(0, 0, 800, 600))
	d := draw.Drawing{W: 200, H: 150}
	for i := range 200 {
		y := float64(i) * 0.7
		d.Add(draw.Segment(5, y, 190, 140-y, draw.Stroke{Width: 0.5}), draw.Text{At: draw.Point{X: 10, Y: y}, Text: "pump to plate 273.3", Size: 2.5})
	}
	for b.Loop() {
		draw.Raster(img, d, 4)
	}
}
