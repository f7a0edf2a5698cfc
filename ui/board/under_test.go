package board

import (
	"image"
	"image/color"
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"github.com/go-gl/mathgl/mgl64"
)

// halves is a picture of w by h pixels, its left half red, its right half blue.
func halves(w, h int) *Picture {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			c := color.RGBA{200, 0, 0, 255}
			if x >= w/2 {
				c = color.RGBA{0, 0, 200, 255}
			}
			img.SetRGBA(x, y, c)
		}
	}
	return NewPicture(img, w, h)
}

// bare is an empty case of 200 by 100 by 80 mm with a picture of 200 by 100
// pixels under a look, 0.5 mm each.
func bare(u Underlay) *Scene {
	u.Picture, u.Scale = halves(200, 100), 0.5
	return &Scene{Case: mgl64.Vec3{200, 100, 80}, targets: []Target{{}}, mesh: newMesh(), Under: []Underlay{u}}
}

func colourAt(t *testing.T, s *Scene, l Look, q Quality, at mgl64.Vec3) color.RGBA {
	t.Helper()
	img := image.NewRGBA(image.Rect(0, 0, 600, 400))
	var p Painter
	style := Light()
	c := NewCamera(l, s.Case, 600, 400)
	p.Render(img, s, c, &style, Show{Quality: q})
	x, y := p.cam.Project(at)
	return img.RGBAAt(int(x), int(y))
}

// The picture is 100 by 50 mm. From the side its corner at (20, 30) puts the
// middle of its left quarter at x = 45, y = 55; from above upright counts down
// z, so that the middle is at z = 70 − 25; from the front right is −z.
func TestAPictureLiesWhereItIsSaidTo(t *testing.T) {
	red, blue := color.RGBA{200, 0, 0, 255}, color.RGBA{0, 0, 200, 255}
	for _, row := range []struct {
		look        Look
		at          [2]float64
		left, right mgl64.Vec3
	}{
		{Side, [2]float64{20, 30}, mgl64.Vec3{45, 55, 0}, mgl64.Vec3{95, 55, 0}},
		{Above, [2]float64{20, 70}, mgl64.Vec3{45, 0, 45}, mgl64.Vec3{95, 0, 45}},
		{Front, [2]float64{90, 30}, mgl64.Vec3{0, 55, 65}, mgl64.Vec3{0, 55, 15}},
	} {
		s := bare(Underlay{Look: row.look, At: row.at})
		for _, q := range []Quality{Quick, Fine} {
			if got := colourAt(t, s, row.look, q, row.left); got != red {
				t.Errorf("%v, quality %v: its left is %v, want red", row.look, q, got)
			}
			if got := colourAt(t, s, row.look, q, row.right); got != blue {
				t.Errorf("%v, quality %v: its right is %v, want blue", row.look, q, got)
			}
		}
		for _, other := range Looks() {
			if got := colourAt(t, s, other, Quick, row.left); other != row.look && (got == red || got == blue) {
				t.Errorf("a picture under %v shows in %v", row.look, other)
			}
		}
	}
}

func TestAFadedPictureLetsThePaperThrough(t *testing.T) {
	at := mgl64.Vec3{45, 55, 0}
	paper := colourAt(t, bare(Underlay{Look: Side, Fade: 1}), Side, Quick, at)
	half := colourAt(t, bare(Underlay{Look: Side, At: [2]float64{20, 30}, Fade: 0.5}), Side, Quick, at)
	want := (float64(paper.R) + 200) / 2
	if paper.R < 230 || math.Abs(float64(half.R)-want) > 2 || math.Abs(float64(half.G)-float64(paper.G)/2) > 2 {
		t.Errorf("half faded it is %v on a paper of %v", half, paper)
	}
}

// Shown at an eighth of its size, a picture of one-pixel stripes is their mean.
func TestASmallPictureDoesNotSparkle(t *testing.T) {
	img := image.NewRGBA(image.Rect(0, 0, 1024, 1024))
	for y := range 1024 {
		for x := range 1024 {
			v := uint8(x % 2 * 240)
			img.SetRGBA(x, y, color.RGBA{v, v, v, 255})
		}
	}
	s := bare(Underlay{Look: Side})
	s.Under[0].Picture, s.Under[0].Scale = NewPicture(img, 1024, 1024), 0.1
	for x := range 20 {
		if got := colourAt(t, s, Side, Quick, mgl64.Vec3{10 + float64(x)*1.7, 50, 0}); math.Abs(float64(got.R)-120) > 2 {
			t.Fatalf("a stripe shows: %v", got)
		}
	}
}

func (s *stage) withPicture(locked bool) (told *[][2]float64, ends *int) {
	told, ends = new([][2]float64), new(int)
	s.OnUnder = func(_ int, by [2]float64, done bool) {
		*told = append(*told, by)
		if done {
			*ends++
		}
	}
	scene := *s.scene
	scene.Under = []Underlay{{Picture: halves(100, 100), Scale: 0.3, At: [2]float64{-40, -40}, Locked: locked}}
	s.SetScene(scene)
	s.draw()
	return told, ends
}

func TestAPictureIsDraggedUnlessItIsLocked(t *testing.T) {
	s := onStage(t)
	told, ends := s.withPicture(false)
	from := s.pixel(mgl64.Vec3{-30, -30, 0})
	if s.UnderAt(float64(from.X), float64(from.Y)) != 0 || s.UnderAt(2, 2) != -1 {
		t.Fatalf("at %v lies picture %d", from, s.UnderAt(float64(from.X), float64(from.Y)))
	}
	s.drag(from, s.pixel(mgl64.Vec3{-10, -20, 0}), desktop.MouseButtonPrimary)
	last := (*told)[len(*told)-1]
	if math.Abs(last[0]-20) > pixelNoise || math.Abs(last[1]-10) > pixelNoise || *ends != 1 {
		t.Errorf("it was dragged by %v and ended %d times, want 20, 10 and once", last, *ends)
	}
	s.down(from, desktop.MouseButtonPrimary)
	s.dragTo(from.AddXY(30, 0))
	s.key(fyne.KeyEscape)
	if last := (*told)[len(*told)-1]; last != [2]float64{} || *ends != 2 {
		t.Errorf("given up, it was moved by %v", last)
	}
	told, _ = s.withPicture(true)
	before := s.camera().Centre
	s.drag(s.pixel(mgl64.Vec3{-30, -30, 0}), s.pixel(mgl64.Vec3{-10, -20, 0}), desktop.MouseButtonPrimary)
	if len(*told) != 0 || s.camera().Centre == before {
		t.Error("a locked picture moved, or the drag did not pan")
	}
}

func TestPointsAreAskedFor(t *testing.T) {
	s := onStage(t)
	var got []mgl64.Vec3
	calls := 0
	ask := func(n int) {
		s.Point(Pointing{Hint: "click there", Points: n, Through: mgl64.Vec3{0, 0, 50}, Done: func(at []mgl64.Vec3) { got, calls = at, calls+1 }})
	}
	ask(2)
	if s.taken[len(s.taken)-1] != "click there" || s.Cursor() != desktop.CrosshairCursor {
		t.Errorf("told %q", s.taken)
	}
	s.click(s.pixel(mgl64.Vec3{40, 60, 50}))
	if len(s.show().Points) != 1 || len(s.picked) != 0 {
		t.Errorf("after one click %v are shown and %v chosen", s.show().Points, s.picked)
	}
	s.draw()
	s.click(s.pixel(mgl64.Vec3{140, 60, 50}))
	if len(got) != 2 || got[1].Sub(got[0]).Sub(mgl64.Vec3{100, 0, 0}).Len() > pixelNoise || got[0][2] != 50 || s.Pointing() {
		t.Errorf("two clicks gave %v", got)
	}
	for name, giveUp := range map[string]func(){
		"Esc":          func() { s.key(fyne.KeyEscape) },
		"another look": func() { s.SetLook(Above); s.SetLook(Side) },
		"measuring":    func() { s.SetMeasuring(true); s.SetMeasuring(false) },
	} {
		ask(1)
		giveUp()
		if got != nil || s.Pointing() {
			t.Errorf("%s: the question goes on with %v", name, got)
		}
	}
	if calls != 4 {
		t.Errorf("answered %d times, want 4", calls)
	}
}

func BenchmarkUnderlay(b *testing.B) {
	img := image.NewRGBA(image.Rect(0, 0, 900, 650))
	s := bare(Underlay{Look: Side, Fade: 0.3})
	s.Under[0].Picture, s.Under[0].Scale = halves(2000, 2000), 0.1
	c := NewCamera(Side, s.Case, 900, 650)
	style := Light()
	for _, q := range []struct {
		name    string
		quality Quality
	}{{"quick", Quick}, {"fine", Fine}} {
		for _, under := range [][]Underlay{s.Under, nil} {
			name := q.name + "/with"
			if under == nil {
				name = q.name + "/without"
			}
			b.Run(name, func(b *testing.B) {
				var p Painter
				one := *s
				one.Under = under
				for b.Loop() {
					p.Render(img, &one, c, &style, Show{Quality: q.quality})
				}
			})
		}
	}
}
