package sheet_test

import (
	"math"
	"strings"
	"testing"

	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/cutlist/sheet"
	"tubewright/route"
)

func near(a, b float64) bool { return math.Abs(a-b) < 1e-6 }

// upright gives the x of the upright lines in a drawing.
func upright(d draw.Drawing) (xs []float64) {
	for _, it := range d.Items {
		if l, ok := it.(draw.Line); ok && len(l.Points) == 2 && l.Points[0].X == l.Points[1].X {
			xs = append(xs, l.Points[0].X)
		}
	}
	return xs
}

func has(xs []float64, want float64) bool {
	for _, x := range xs {
		if near(x, want) {
			return true
		}
	}
	return false
}

// The blank fills the picture between the letters A and B: two spans measured
// by hand give the scale, and every mark must stand at trim + mark times it.
func TestStraightenedIsToScale(t *testing.T) {
	for _, h := range []float64{12, 40} {
		tube := list(t, smallPlan()).Tubes[1]
		d := sheet.Straightened(tube, route.Millimetres, sheet.PaperTheme(), 200, h)
		left := 1.9 * math.Min(2.4, h/5)
		scale := (200 - 2*left) / (tube.Cut.Aim + 30)
		xs := upright(d)
		for i, b := range tube.Bench.Bends {
			for _, m := range []float64{b.FromA.Start, b.FromA.Middle, b.FromA.End} {
				if want := left + (15+m)*scale; !has(xs, want) {
					t.Errorf("height %v: bend %d has no mark at %.3f", h, i+1, want)
				}
			}
		}
	}
}

// What is drawn is the blank, so its numbers count from the blank's end: one who
// measures what the picture says must hit the mark.
func TestStraightenedCountsFromTheBlanksEnd(t *testing.T) {
	tube := list(t, smallPlan()).Tubes[1]
	all := run([]draw.Drawing{sheet.Straightened(tube, route.Millimetres, sheet.PaperTheme(), 186, 45)})
	for i, b := range tube.Bench.Bends {
		if want := "start" + route.Millimetres.Text(b.FromA.Start+15); !strings.Contains(all, want) {
			t.Errorf("bend %d: %q does not say %q, the finished mark and 15 mm of trim", i+1, all, want)
		}
	}
}

func TestStraightenedKeepsItsTextsApart(t *testing.T) {
	for _, l := range []cutlist.List{list(t, smallPlan()), stressList(t)} {
		for _, tube := range l.Tubes[:min(13, len(l.Tubes))] {
			for _, size := range [][2]float64{{60, 10}, {80, 16}, {120, 25}, {190, 50}, {20, 5}} {
				d := sheet.Straightened(tube, l.Plan.Units, sheet.DarkTheme(), size[0], size[1])
				if size[1] < 26 || size[0] > 180 {
					for _, fault := range cluttered(d, 0) {
						t.Errorf("tube %s in %v: %s", tube.Letter, size, fault)
					}
				}
				if d.W != size[0] || d.H != size[1] {
					t.Errorf("asked for %v, got %v × %v", size, d.W, d.H)
				}
			}
		}
	}
}

func TestStraightTubeHasNeitherMarksNorTrims(t *testing.T) {
	tube := stressList(t).Tubes[0]
	d := sheet.Straightened(tube, route.Millimetres, sheet.PaperTheme(), 150, 30)
	all := run([]draw.Drawing{d})
	if strings.Contains(all, "bend") || strings.Contains(all, "trim") || !strings.Contains(all, "finished"+route.Millimetres.Text(tube.Cut.Aim)) {
		t.Errorf("a straight tube's picture says %q", all)
	}
}

// fills gives the boxes of a drawing that are as high as it is.
func fills(d draw.Drawing) (spans [][2]float64) {
	for _, it := range d.Items {
		if f, ok := it.(draw.Fill); ok && len(f.Points) == 4 && f.Points[0].Y == 0 && f.Points[2].Y == d.H {
			spans = append(spans, [2]float64{f.Points[0].X, f.Points[1].X})
		}
	}
	return spans
}

// A 500 mm bar drawn 200 mm wide beside a 1000 mm one: 0.2 mm for each mm.
func TestBarIsToScaleWithItsKerfs(t *testing.T) {
	l := list(t, smallPlan())
	long := cutlist.Bar{Tube: "petg-16-12", Length: 1000, From: "stock", Left: 1000}
	bar := cutlist.Bar{Tube: "petg-16-12", Length: 500, From: "stock", Left: 97, Keep: false, Pieces: []cutlist.Piece{
		{Run: "pump-to-plate", Length: 300, Machine: 1}, {Run: "pump-to-radiator", Length: 100, Spare: true}, {Run: "nobody", Length: 1},
	}}
	l.Bars = []cutlist.Bar{bar, long}
	l.Plan.Saw.Kerf = 1
	spans := fills(sheet.Bar(l, bar, sheet.PaperTheme(), 200, 8))
	want := [][2]float64{{0, 100}, {0, 60}, {60.2, 80.2}, {80.4, 80.6}, {80.6, 100}}
	for i, w := range want {
		if i >= len(spans) || !near(spans[i][0], w[0]) || !near(spans[i][1], w[1]) {
			t.Fatalf("boxes %v, want %v: whole bar, pieces with 0.2 mm between, what is left", spans, want)
		}
	}
}

func TestBarWritesOnlyWhatFits(t *testing.T) {
	l := stressList(t)
	for _, bar := range l.Bars {
		for _, w := range []float64{186, 60, 10} {
			d := sheet.Bar(l, bar, sheet.LightTheme(), w, 7)
			for _, fault := range cluttered(d, 0) {
				t.Errorf("%v wide: %s", w, fault)
			}
		}
	}
	if all := run([]draw.Drawing{sheet.Bar(l, l.Bars[0], sheet.PaperTheme(), 186, 7)}); !strings.Contains(all, l.Plan.Units.Text(l.Bars[0].Pieces[5].Length)) {
		t.Errorf("the bar says %q and not the length of its sixth piece", all)
	}
}

// bodies gives the centreline of the tube as drawn and its width on paper.
func bodies(d draw.Drawing) (points []draw.Point, width float64) {
	for _, it := range d.Items {
		if l, ok := it.(draw.Line); ok && l.Stroke.Width > 1 {
			points, width = append(points, l.Points...), math.Max(width, l.Stroke.Width)
		}
	}
	return points, width
}

// Tube A of the small plan is an offset bend in one plane: its drawing at 1 : n
// is as far across as the corners are apart square to the first leg.
func TestFormedViewIsToScale(t *testing.T) {
	tube := list(t, smallPlan()).Tubes[0]
	d, scale := sheet.FormedView(tube, route.Millimetres, sheet.PaperTheme(), false, 186, 70)
	if scale != "scale 1 : 1.25" {
		t.Fatalf("drawn at %q, want scale 1 : 1.25", scale)
	}
	points, width := bodies(d)
	if !near(width, 16/1.25) {
		t.Errorf("the tube is %v wide, want 16/1.25", width)
	}
	c := tube.Way.Formed.Corners
	first, all := c[1].Sub(c[0]).Normalize(), c[len(c)-1].Sub(c[0])
	along := all.Dot(first)
	across := math.Sqrt(all.Dot(all) - along*along)
	lo, hi := points[0], points[0]
	for _, p := range points {
		lo = draw.Point{X: math.Min(lo.X, p.X), Y: math.Min(lo.Y, p.Y)}
		hi = draw.Point{X: math.Max(hi.X, p.X), Y: math.Max(hi.Y, p.Y)}
	}
	// Each stretch of the body runs 0.12 mm past its ends so that no seam shows.
	if math.Abs(hi.Y-lo.Y-across/1.25) > 0.02 || math.Abs(hi.X-lo.X-along/1.25) > 0.25 {
		t.Errorf("the drawing reaches over %.3f × %.3f mm, want %.3f × %.3f", hi.X-lo.X, hi.Y-lo.Y, along/1.25, across/1.25)
	}
}

func TestFormedViewsKeepTheirTextsApart(t *testing.T) {
	for _, l := range []cutlist.List{list(t, smallPlan()), stressList(t)} {
		for _, tube := range l.Tubes {
			if len(tube.Bench.Bends) == 0 {
				continue
			}
			for _, edge := range []bool{false, true} {
				d, _ := sheet.FormedView(tube, l.Plan.Units, sheet.DarkTheme(), edge, 90, 60)
				for _, fault := range cluttered(d, 0) {
					t.Errorf("tube %s: %s", tube.Letter, fault)
				}
			}
		}
	}
}

func TestColoursGoRoundThePalette(t *testing.T) {
	if sheet.ColourOf("A") != sheet.ColourOf("H") || sheet.ColourOf("A") == sheet.ColourOf("B") || sheet.ColourOf("Z") == sheet.ColourOf("AA") {
		t.Error("seven colours go round: A is H, and neighbours differ")
	}
	// Okabe and Ito (2008): blue is #0072B2.
	if got, want := sheet.ColourOf("A"), (draw.Colour{R: 0x00, G: 0x72, B: 0xB2}); got != want {
		t.Errorf("A is %v, want %v", got, want)
	}
	if sheet.ColourOf("") != sheet.ColourOf("A") {
		t.Error("no letter must do no harm")
	}
}
