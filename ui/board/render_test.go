package board

import (
	"bytes"
	"image"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/find"
)

func picture(w, h int) *image.RGBA { return image.NewRGBA(image.Rect(0, 0, w, h)) }

// painted renders a scene and gives the painter to ask.
func painted(s *Scene, c Camera, show Show) (*Painter, *image.RGBA) {
	img := picture(c.W, c.H)
	p, style := &Painter{}, Light()
	p.Render(img, s, c, &style, show)
	return p, img
}

// blocks is a scene of turned boxes at random places.
func blocks(seed uint64, n int) (*Scene, []route.Part) {
	rnd := rand.New(rand.NewPCG(seed, 7))
	plan := route.Defaults()
	plan.Case = v3(400, 400, 400)
	for i := range n {
		size := v3(20+80*rnd.Float64(), 20+80*rnd.Float64(), 20+80*rnd.Float64())
		plan.Parts = append(plan.Parts, route.Part{
			Name: string(rune('a' + i)), At: v3(300*rnd.Float64(), 300*rnd.Float64(), 300*rnd.Float64()),
			Turn:   v3(360*rnd.Float64(), 360*rnd.Float64(), 360*rnd.Float64()),
			Solids: []route.Solid{{Box: true, To: size}},
		})
	}
	s := NewScene(plan, cutlist.List{}, find.Solution{})
	return &s, plan.Parts
}

// struck is the part that a line of sight meets first, worked out from the
// parts themselves: in each part's own frame its box is cut by three slabs.
func struck(parts []route.Part, at, dir mgl64.Vec3) string {
	nearest, name := math.Inf(1), ""
	for _, p := range parts {
		back := route.Turned(p.Turn).Transpose()
		o, d := back.Mul3x1(at.Sub(p.At)), back.Mul3x1(dir)
		in, out := math.Inf(-1), math.Inf(1)
		for k := range 3 {
			a, b := (0-o[k])/d[k], (p.Solids[0].To[k]-o[k])/d[k]
			in, out = max(in, min(a, b)), min(out, max(a, b))
		}
		if in < out && in < nearest {
			nearest, name = in, p.Name
		}
	}
	return name
}

// TestNearerHidesFarther compares the picture with lines of sight cast one by
// one. A pixel may belong to a neighbour where an edge runs through it.
func TestNearerHidesFarther(t *testing.T) {
	for seed := range uint64(3) {
		s, parts := blocks(seed, 12)
		for _, look := range []Camera{
			NewCamera(Side, s.Case, 160, 120), NewCamera(Above, s.Case, 160, 120),
			NewCamera(Front, s.Case, 160, 120), NewCamera(Turntable, s.Case, 160, 120), parallel(s, 160, 120),
		} {
			for _, q := range []Quality{Quick, Fine} {
				p, _ := painted(s, look, Show{Quality: q})
				wrong := 0
				for y := range 120 {
					for x := range 160 {
						fx, fy := float64(x)+0.5, float64(y)+0.5
						if q == Fine {
							fx, fy = float64(x)+0.25, float64(y)+0.25 // the middle of the subpixel that is asked for
						}
						at, dir := look.Ray(fx, fy)
						at = at.Sub(dir.Mul(look.Eye * nearClip)) // begin well before the scene
						if got := p.targetAt(float32(fx), float32(fy)).Part; got != struck(parts, at, dir) {
							wrong++
						}
					}
				}
				if wrong > 12 {
					t.Errorf("seed %d, %v, quality %d: %d pixels of 19200 show another part than the line of sight meets", seed, look.Look, q, wrong)
				}
			}
		}
	}
}

func parallel(s *Scene, w, h int) Camera {
	c := NewCamera(Turntable, s.Case, w, h)
	c.Perspective = false
	c.Fit(s, w, h)
	return c
}

func TestSurfaceIsWhereThePartIs(t *testing.T) {
	s := demoScene(t)
	for _, c := range cameras(900, 650) {
		c.Fit(s, 900, 650)
		p, _ := painted(s, c, Show{})
		part, _ := s.Part("supply")
		found := 0
		for y := 20; y < 600; y += 7 {
			for x := 50; x < 880; x += 7 {
				if p.targetAt(float32(x), float32(y)) != PartTarget("supply") {
					continue
				}
				found++
				at, ok := p.Surface(float64(x)+0.5, float64(y)+0.5)
				if !ok || outside(at, part.Lo, part.Hi) > 0.05 {
					t.Fatalf("%v: the point at %d, %d is %v, outside the part by %.3f mm", c.Look, x, y, at, outside(at, part.Lo, part.Hi))
				}
			}
		}
		if found == 0 {
			t.Errorf("%v: the supply is nowhere to be seen", c.Look)
		}
	}
}

// outside is how far a point is outside a box, mm.
func outside(p, lo, hi mgl64.Vec3) float64 {
	far := 0.0
	for k := range 3 {
		far = max(far, lo[k]-p[k], p[k]-hi[k])
	}
	return far
}

// TestHitGivesWhatIsDrawn asks at the middle of things that face the viewer.
func TestHitGivesWhatIsDrawn(t *testing.T) {
	s := demoScene(t)
	tests := []struct {
		look Look
		at   mgl64.Vec3
		want Target
	}{
		{Above, v3(360, 86, 330), PartTarget("supply")},
		{Side, v3(360, 40, 393), PartTarget("supply")},
		{Above, v3(19, 151.2, 78), PortTarget(route.PortRef{Part: "radiator", Port: "spare"})},
		{Above, v3(290, 160, 90), Target{Kind: OnRun, Run: "sensor to pump", Piece: 0}},
		{Side, v3(245, 194, 230), Target{Kind: OnRun, Run: "pump to card", Piece: 4}},
		{Above, v3(168, 164, 90), RunTarget("radiator to sensor")}, // a collar
		{Above, v3(108, 112, 83), FindingTarget(0)},
		{Side, v3(-60, 150, 0), Target{}},
	}
	for _, tt := range tests {
		c := NewCamera(tt.look, s.Case, 900, 650)
		for _, q := range []Quality{Quick, Fine} {
			p, _ := painted(s, c, Show{Words: true, Quality: q})
			x, y := c.Project(tt.at)
			if got := p.Hit(x, y); got != tt.want {
				t.Errorf("%v, quality %d: at %v is %+v, want %+v", tt.look, q, tt.at, got, tt.want)
			}
		}
	}
}

func TestPortsAndTubesAreCaughtFromBeside(t *testing.T) {
	s := demoScene(t)
	c := NewCamera(Above, s.Case, 900, 650)
	p, _ := painted(s, c, Show{})
	edge := v3(290, 152, 98) // the near side of a 16 mm tube along x
	x, y := c.Project(edge)
	if got := p.Hit(x, y+reachTube-1); got.Run != "sensor to pump" {
		t.Errorf("%d px beside the tube is %+v", reachTube-1, got)
	}
	if got := p.Hit(x, y+reachTube+2); got.Run == "sensor to pump" {
		t.Errorf("the tube is still caught from %d px beside it", reachTube+2)
	}
}

func TestHitBeforeAnyPictureIsNothing(t *testing.T) {
	var p Painter
	if got := p.Hit(10, 10); got != (Target{}) {
		t.Errorf("got %+v", got)
	}
	if _, ok := p.Surface(10, 10); ok {
		t.Error("there is a surface before any picture")
	}
}

func TestHitOutsideThePictureIsNothing(t *testing.T) {
	s := demoScene(t)
	p, _ := painted(s, NewCamera(Above, s.Case, 300, 200), Show{Words: true})
	for _, at := range [][2]float64{{-5, 10}, {10, -5}, {305, 10}, {10, 4000}} {
		if got := p.Hit(at[0], at[1]); got != (Target{}) {
			t.Errorf("at %v: %+v", at, got)
		}
	}
}

func TestSamePictureEveryTime(t *testing.T) {
	s := demoScene(t)
	show := Show{Words: true, Rulers: true, Selection: []Target{PartTarget("pump")}, Caption: "x"}
	for _, c := range cameras(400, 300) {
		for _, q := range []Quality{Quick, Fine} {
			show.Quality = q
			p, first := painted(s, c, show)
			_, other := painted(demoScene(t), c, show)
			again := picture(400, 300)
			style := Dark() // something else in between must leave no trace
			p.Render(picture(500, 200), s, NewCamera(Side, s.Case, 500, 200), &style, Show{Words: true})
			style = Light()
			p.Render(again, s, c, &style, show)
			if !bytes.Equal(first.Pix, other.Pix) || !bytes.Equal(first.Pix, again.Pix) {
				t.Errorf("%v, quality %d: the picture differs from run to run", c.Look, q)
			}
		}
	}
}

func TestPictureIsOpaque(t *testing.T) {
	s := demoScene(t)
	for _, q := range []Quality{Quick, Fine} {
		_, img := painted(s, NewCamera(Turntable, s.Case, 300, 200), Show{Quality: q, Words: true, Rulers: true})
		if !img.Opaque() {
			t.Errorf("quality %d: a pixel lets the ground through", q)
		}
	}
}

func TestShiftDrawsThePartElsewhere(t *testing.T) {
	s := demoScene(t)
	c := NewCamera(Above, s.Case, 900, 650)
	p, _ := painted(s, c, Show{Shift: Shift{"supply", v3(0, 0, -60)}})
	x, y := c.Project(v3(425, 86, 215)) // free before, under the part now
	if got := p.Hit(x, y); got != PartTarget("supply") {
		t.Errorf("where the part is shifted to is %+v", got)
	}
	x, y = c.Project(v3(425, 86, 390))
	if got := p.Hit(x, y); got.Kind != Nothing {
		t.Errorf("where the part was is %+v", got)
	}
}

func TestPartsOutsideTheCaseAreDrawn(t *testing.T) {
	plan := route.Defaults()
	plan.Case = v3(100, 100, 100)
	plan.Parts = []route.Part{{Name: "out", At: v3(20, 20, -80), Solids: []route.Solid{block(0, 0, 0, 50, 50, 50)}}}
	s := NewScene(plan, cutlist.List{}, find.Solution{})
	c := NewCamera(Side, s.Case, 300, 300)
	p, _ := painted(&s, c, Show{})
	x, y := c.Project(v3(40, 40, -40))
	if got := p.Hit(x, y); got != PartTarget("out") {
		t.Errorf("a part behind the far wall is %+v", got)
	}
}

func TestEmptySceneAndTinyViewsAreHarmless(t *testing.T) {
	empty := NewScene(route.Plan{}, cutlist.List{}, find.Solution{})
	for _, size := range [][2]int{{0, 0}, {1, 1}, {3, 200}, {200, 2}, {64, 64}} {
		for _, l := range Looks() {
			c := NewCamera(l, empty.Case, size[0], size[1])
			for _, q := range []Quality{Quick, Fine} {
				painted(&empty, c, Show{Words: true, Rulers: true, Quality: q, Caption: "empty"})
				painted(demoScene(t), c, Show{Words: true, Rulers: true, Quality: q})
			}
		}
	}
}

func TestCloseUpsAreHarmless(t *testing.T) {
	s := demoScene(t)
	for _, c := range cameras(200, 150) {
		for _, at := range [][2]float64{{0, 0}, {100, 75}, {200, 150}} {
			d := c
			d.ZoomAt(at[0], at[1], 1e6)
			painted(s, d, Show{Words: true, Rulers: true})
			d.Pan(1e7, 1e7)
			painted(s, d, Show{Words: true, Rulers: true})
			d = c
			d.ZoomAt(at[0], at[1], 1e-6)
			painted(s, d, Show{Words: true, Rulers: true})
		}
	}
}
