package ui

import (
	"image/color"
	"testing"

	"fyne.io/fyne/v2"
)

func (b box) holds(x, y float32) bool {
	return x >= b.at.X && y >= b.at.Y && x < b.at.X+b.size.Width && y < b.at.Y+b.size.Height
}

// Under the header's words every pixel belongs to one panel, to the board or to
// one strip of the ground, and to no two.
func TestGroundFillsWhatPanelsLeave(t *testing.T) {
	for _, size := range []fyne.Size{{Width: 1280, Height: 800}, {Width: 1111, Height: 777}, {Width: 800, Height: 560}, {Width: 1920, Height: 1043.5}} {
		f := frameOf(size, 250, 180)
		_, f.board = share(f.board.at.X, f.board.at.Y, f.board.size.Width, f.board.size.Height, stepsHigh)
		all := append(gapsOf(size, f), f.parts, f.details, f.board, f.runs, f.findings, f.rack, f.buying)
		for y := headerHigh - frameGap + 0.5; y < size.Height; y += 1 {
			for x := float32(0.5); x < size.Width; x += 1 {
				n := 0
				for _, b := range all {
					if b.holds(x, y) {
						n++
					}
				}
				if n != 1 {
					t.Fatalf("%v: the pixel at %v, %v belongs to %d", size, x, y, n)
				}
			}
		}
	}
}

// The end of a plate worked by hand: the corner is the ground's, the middle of
// the upper row the line's, what is below the panel's own, which is not painted.
func TestEndOfAPlate(t *testing.T) {
	line, out := color.NRGBA{R: 200, A: 255}, color.NRGBA{B: 100, A: 255}
	p := newPlate(line, out)
	for _, foot := range []bool{false, true} {
		img := p.end(40, 10, foot) // two pixels to a unit
		for _, row := range []struct {
			x, y int
			want color.RGBA
		}{
			{0, 0, color.RGBA{B: 100, A: 255}},
			{39, 0, color.RGBA{B: 100, A: 255}},
			{20, 0, color.RGBA{R: 200, A: 255}},
			{20, 1, color.RGBA{R: 200, A: 255}},
			{20, 2, color.RGBA{}},
			{1, 9, color.RGBA{R: 200, A: 255}},
			{3, 9, color.RGBA{}},
		} {
			y := row.y
			if foot {
				y = 9 - y
			}
			if got := img.At(row.x, y); got != row.want {
				t.Errorf("foot %v: at %d, %d is %v, want %v", foot, row.x, y, got, row.want)
			}
		}
	}
}
