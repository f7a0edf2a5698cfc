package ui

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// plate is the ground of a panel: a rectangle with round corners and a thin line
// round it. It is put together from a cap, a foot and a plain middle. Fyne
// works out for each pixel of a round rectangle how far the edge is, which on a
// machine without a graphics card costs more than the board's whole picture.
type plate struct {
	cap, foot, middle, left, right *canvas.Rectangle
}

const (
	plateRound float32 = 5
	// plateCap is higher than two corners, so that the middle hides its lower ones.
	plateCap float32 = 2*plateRound + 4
)

func newPlate(fill, line color.Color) *plate {
	p := &plate{}
	for _, r := range []**canvas.Rectangle{&p.cap, &p.foot, &p.middle, &p.left, &p.right} {
		*r = canvas.NewRectangle(fill)
	}
	p.cap.CornerRadius, p.cap.StrokeWidth = plateRound, 1
	p.foot.CornerRadius, p.foot.StrokeWidth = plateRound, 1
	p.colour(fill, line)
	return p
}

// colour gives it other colours.
func (p *plate) colour(fill, line color.Color) {
	p.cap.FillColor, p.foot.FillColor, p.middle.FillColor = fill, fill, fill
	p.cap.StrokeColor, p.foot.StrokeColor = line, line
	p.left.FillColor, p.right.FillColor = line, line
	for _, o := range p.objects() {
		o.Refresh()
	}
}

// resize makes it as large as a panel.
func (p *plate) resize(size fyne.Size) {
	high := min(plateCap, size.Height)
	top := high / 2
	sides := max(0, size.Height-high)
	box{fyne.NewPos(0, 0), fyne.NewSize(size.Width, high)}.put(p.cap)
	box{fyne.NewPos(0, size.Height-high), fyne.NewSize(size.Width, high)}.put(p.foot)
	box{fyne.NewPos(0, top), fyne.NewSize(size.Width, sides)}.put(p.middle)
	box{fyne.NewPos(0, top), fyne.NewSize(1, sides)}.put(p.left)
	box{fyne.NewPos(size.Width-1, top), fyne.NewSize(1, sides)}.put(p.right)
}

// objects lists what is painted, the lowest first.
func (p *plate) objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{p.cap, p.foot, p.middle, p.left, p.right}
}
