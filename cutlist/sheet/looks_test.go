package sheet_test

import (
	"image"
	"math"
	"testing"

	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/cutlist/sheet"
	"tubewright/route"
)

// crossing is a plan with a straight tube along x at height y = 100 and depth z,
// and a block from z = 90 to 110 across its middle.
func crossing(t *testing.T, z float64) cutlist.List {
	t.Helper()
	p := route.Defaults()
	p.Spares = route.Spares{}
	p.Name, p.Case, p.Tube = "crossing", vec{400, 200, 200}, "petg-16-12"
	p.Tubes, p.Fittings = []route.Tube{petg()}, kit()
	p.Parts = []route.Part{
		block("left", vec{0, 80, z - 20}, vec{40, 120, z + 20}, port("p", vec{40, 100, z}, vec{1, 0, 0})),
		block("right", vec{360, 80, z - 20}, vec{400, 120, z + 20}, port("p", vec{360, 100, z}, vec{-1, 0, 0})),
		block("block", vec{180, 20, 90}, vec{220, 180, 110}),
	}
	p.Runs = []route.Run{{Name: "r", From: route.PortRef{Part: "left", Port: "p"}, To: route.PortRef{Part: "right", Port: "p"}}}
	return list(t, p)
}

// pixel paints a look at 2 pixels per mm and gives the colour at a point of the case.
func pixel(l cutlist.List, k sheet.Look, right, up float64) draw.Colour {
	d := sheet.Looks(l, k, sheet.PaperTheme(), 205, 205)
	img := image.NewRGBA(image.Rect(0, 0, 410, 410))
	draw.Raster(img, d, 2)
	// The case is centred and 400 mm wide in 200 mm of paper.
	h := 200.0
	x := 102.5 + (right-200)/2
	y := 102.5 - (up-h/2)/2
	c := img.RGBAAt(int(x*2), int(y*2))
	return draw.Colour{R: c.R, G: c.G, B: c.B}
}

func blue(c draw.Colour) bool { return int(c.B) > int(c.R)+60 }

// Of a tube and a block the nearer covers the farther. Beside the middle the
// dashes of a hidden centreline may be, so look off the centreline.
func TestTheNearerCoversTheFarther(t *testing.T) {
	tests := []struct {
		name string
		z    float64
		look sheet.Look
		seen bool
	}{
		{"tube in front, side", 150, sheet.Side, true},
		{"tube behind, side", 40, sheet.Side, false},
	}
	for _, tt := range tests {
		l := crossing(t, tt.z)
		if got := blue(pixel(l, tt.look, 212, 105)); got != tt.seen {
			t.Errorf("%s: tube seen %v, want %v", tt.name, got, tt.seen)
		}
		if !blue(pixel(l, tt.look, 120, 105)) {
			t.Errorf("%s: the tube is not seen beside the block", tt.name)
		}
	}
}

// dashes counts the dashed lines of a drawing.
func dashes(d draw.Drawing) (n int) {
	for _, it := range d.Items {
		if l, ok := it.(draw.Line); ok && len(l.Stroke.Dash) > 0 {
			n++
		}
	}
	return n
}

func TestHiddenTubesAreDashed(t *testing.T) {
	for z, want := range map[float64]int{150: 0, 40: 1} {
		if got := dashes(sheet.Looks(crossing(t, z), sheet.Side, sheet.PaperTheme(), 205, 205)); got != want {
			t.Errorf("tube at z = %v: %d dashed stretches, want %d", z, got, want)
		}
	}
}

// The frame rules of the three looks, by hand: from the side a tube at y = 100
// runs level; from above it stands z down the page; from the front the reader
// looks along −x and sees the tube's end only.
func TestLooksTurnTheMachineTheRightWay(t *testing.T) {
	l := crossing(t, 150)
	if !blue(pixel(l, sheet.Side, 120, 106)) || blue(pixel(l, sheet.Side, 120, 112)) {
		t.Error("side: the tube is not 16 mm high about y = 100")
	}
	// From above the case is 400 × 200 and z = 150 stands 50 below its middle.
	if !blue(pixel(l, sheet.Above, 120, 100-50)) || blue(pixel(l, sheet.Above, 120, 100+50)) {
		t.Error("above: z does not run down the page")
	}
	// From the front z runs left: the right-hand part at z = 130 to 170 hides the
	// tube, and covers what lies left of the middle of the 200 mm wide case.
	part := sheet.PaperTheme().Part
	d := sheet.Looks(l, sheet.Front, sheet.PaperTheme(), 205, 205)
	found := false
	for _, it := range d.Items {
		f, ok := it.(draw.Fill)
		if !ok || f.Colour != part || len(f.Points) != 4 {
			continue
		}
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, p := range f.Points {
			lo, hi = math.Min(lo, p.X), math.Max(hi, p.X)
		}
		// 200 mm fill the paper at 1 : 1; z = 170 to 130 is 70 to 30 left of the middle.
		if near(lo, 102.5-70) && near(hi, 102.5-30) {
			found = true
		}
	}
	if !found {
		t.Error("front: z does not run to the left")
	}
}

func TestLooksKeepTheirTextsApart(t *testing.T) {
	for _, l := range []cutlist.List{list(t, smallPlan()), stressList(t)} {
		for _, k := range []sheet.Look{sheet.Side, sheet.Above, sheet.Front} {
			for _, size := range [][2]float64{{180, 120}, {60, 60}, {8, 8}} {
				for _, fault := range cluttered(sheet.Looks(l, k, sheet.DarkTheme(), size[0], size[1]), 0) {
					t.Errorf("%s at %v: %s", k, size, fault)
				}
			}
		}
	}
}

// A turned block, a cylinder toward the reader, one without length, and a part
// without solids must all be drawn.
func TestLooksTakeEveryShape(t *testing.T) {
	p := smallPlan()
	p.Parts[0].Turn = vec{0, 30, 0}
	p.Runs = nil
	p.Parts = append(p.Parts,
		route.Part{Name: "disc", At: vec{50, 50, 350}, Solids: []route.Solid{{From: vec{0, 0, 0}, To: vec{0, 0, 40}, Radius: 20}}},
		route.Part{Name: "ball", At: vec{350, 150, 300}, Solids: []route.Solid{{Radius: 10}}},
		route.Part{Name: "nothing", At: vec{100, 100, 300}})
	l := cutlist.List{Plan: p}
	for _, k := range []sheet.Look{sheet.Side, sheet.Above, sheet.Front} {
		d := sheet.Looks(l, k, sheet.PaperTheme(), 190, 190)
		all := run([]draw.Drawing{d})
		for _, name := range []string{"pump", "disc"} {
			if !contains(all, name) {
				t.Errorf("%s: no %q in %q", k, name, all)
			}
		}
		for _, it := range d.Items {
			if f, ok := it.(draw.Fill); ok {
				for _, q := range f.Points {
					if math.IsNaN(q.X) || math.IsNaN(q.Y) {
						t.Fatalf("%s: a point is not a number", k)
					}
				}
			}
		}
	}
}
