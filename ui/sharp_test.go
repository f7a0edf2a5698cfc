//go:build window

package ui

import (
	"fmt"
	"image"
	"math"
	"strings"
	"testing"

	"tubewright/ui/board"
)

// boardAlone is the picture of the demo's board of so many pixels.
func boardAlone(t *testing.T, ratio float64, w, h int) *image.RGBA {
	t.Helper()
	b := newBench(t)
	if err := b.OpenDemo(eightRuns); err != nil {
		t.Fatal(err)
	}
	b.settle()
	b.snapshot.List = complete(b.snapshot.List, b.snapshot.Solution) // as the window has it after a moment
	full, style := b.scene(), boardStyle(false)
	scene := &full
	c := board.NewCamera(board.Side, scene.Case, w, h)
	for i := range c.Inset {
		c.Inset[i] = int(float64(c.Inset[i]) * ratio) // of the rulers
	}
	c.Fit(scene, w, h)
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	new(board.Painter).Render(img, scene, c, &style, board.Show{
		Quality: board.Fine, Scale: ratio, Words: true, Rulers: true, Caption: board.Side.String(),
	})
	return img
}

// What is on the screen is the board's picture, byte for byte: nothing is
// stretched or smoothed on its way.
func TestWindowShowsTheBoardPixelForPixel(t *testing.T) {
	for _, row := range []struct {
		scale float32 // Fyne takes tenths
		size  string
	}{{1, "1280x800"}, {1, "1111x777"}, {1.5, "830x620"}, {2, "700x490"}} {
		t.Run(fmt.Sprint(row.scale, " ", row.size), func(t *testing.T) {
			s := newEmptyStage(t)
			s.env = append(s.env, fmt.Sprint("FYNE_SCALE=", row.scale))
			s.do("mousemove 1090 6") // beside the menus: where it hovers over nothing
			s.start("--size", row.size, "--demo", eightRuns)
			s.until("how the tubes go in", func(b Boxes) bool { return atRest(b) && !strings.Contains(b.Ready, "Looking how") })
			s.boardOn()
			at := s.boxes().Boxes["board"]
			edge := func(units float32) int { return int(math.Round(float64(units * row.scale))) }
			x0, y0, x1, y1 := edge(at[0]), edge(at[1]), edge(at[0]+at[2]), edge(at[1]+at[3])
			wide := float32(x1)/row.scale - float32(x0)/row.scale // a part in 10⁷ decides where a line goes
			want := boardAlone(t, float64(x1-x0)/float64(wide), x1-x0, y1-y0)
			note := int(2 * statusHigh * row.scale) // on a narrow screen the line at the foot grows over the board
			seen := want.SubImage(image.Rect(0, 0, x1-x0, y1-y0-note)).(*image.RGBA)
			if n, first := s.screen.unlike(seen, x0, y0); n > 0 {
				t.Errorf("%d of %d pixels on the screen differ from the board's picture, the first at %v", n, (x1-x0)*(y1-y0), first)
			}
		})
	}
}

// unlike counts the pixels of the screen that differ from a picture whose upper
// left corner is at x0, y0.
func (s *screen) unlike(want *image.RGBA, x0, y0 int) (n int, first image.Point) {
	for y := range want.Rect.Dy() {
		got := s.row(x0, x0+want.Rect.Dx(), y0+y) // blue, green, red, nothing
		for x := range want.Rect.Dx() {
			p, q := want.Pix[want.PixOffset(x, y):], got[4*x:]
			if p[0] != q[2] || p[1] != q[1] || p[2] != q[0] {
				if n == 0 {
					first = image.Pt(x, y)
				}
				n++
			}
		}
	}
	return n, first
}
