package board

import (
	"fmt"
	"testing"

	"tubewright/cutlist"
	"tubewright/route/find"
)

// frame sizes as in the window: one px per unit of the screen, and two.
var benchSizes = []struct {
	name string
	w, h int
	sc   float64
}{{"900x650", 900, 650, 1}, {"1800x1300", 1800, 1300, 2}}

// BenchmarkRender draws the invented machine with words and rulers: Quick as
// for every frame of a drag, Fine as once when the pointer rests. The plainest
// picture, an empty case, shows what of it is the ground.
func BenchmarkRender(b *testing.B) {
	s := demoScene(b)
	empty := NewScene(demoPlanWithoutParts(), cutlist.List{}, find.Solution{})
	for _, size := range benchSizes {
		for _, q := range []Quality{Quick, Fine} {
			for _, l := range []Look{Above, Turntable} {
				b.Run(fmt.Sprintf("%s/quality%d/%v", size.name, q, l), func(b *testing.B) {
					benchRender(b, s, l, q, size.w, size.h, size.sc)
				})
			}
		}
	}
	b.Run("900x650/quality0/empty", func(b *testing.B) { benchRender(b, &empty, Turntable, Quick, 900, 650, 1) })
}

func benchRender(b *testing.B, s *Scene, l Look, q Quality, w, h int, scale float64) {
	c := NewCamera(l, s.Case, w, h)
	style, img, p := Light(), picture(w, h), &Painter{}
	show := Show{Quality: q, Words: true, Rulers: true, Caption: l.String(), Scale: scale}
	p.Render(img, s, c, &style, show)
	b.ReportAllocs()
	for b.Loop() {
		p.Render(img, s, c, &style, show)
	}
}

// BenchmarkNewScene is what a changed plan costs before it can be drawn.
func BenchmarkNewScene(b *testing.B) {
	plan, list, sol := demo(b)
	b.ReportAllocs()
	for b.Loop() {
		NewScene(plan, list, sol)
	}
}

// TestDrawingAsksForNoMemory keeps the garbage collector out of a drag.
func TestDrawingAsksForNoMemory(t *testing.T) {
	s := demoScene(t)
	for _, l := range Looks() {
		for _, q := range []Quality{Quick, Fine} {
			c := NewCamera(l, s.Case, 300, 200)
			style, img, p := Light(), picture(300, 200), &Painter{}
			show := Show{Quality: q, Words: true, Rulers: true, Caption: l.String(), Selection: []Target{PartTarget("pump")}}
			got := testing.AllocsPerRun(5, func() { p.Render(img, s, c, &style, show) })
			if got > 0 {
				t.Errorf("%v, quality %d: %g allocations a frame", l, q, got)
			}
		}
	}
}
