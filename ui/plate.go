package ui

import (
	"image"
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// plate is the edge of a panel: round corners and a thin line round it. What is
// inside the line is the window's own colour, see [grounds]. Fyne works out for
// each pixel of a round rectangle how far the edge is, which on a machine without
// a graphics card costs five times a plain pixel; so cap and foot are pictures,
// painted once.
type plate struct {
	cap, foot   *canvas.Raster
	left, right *canvas.Rectangle
	line, out   color.Color
}

// plateRound is the radius of a corner and the height of cap and foot.
const plateRound float32 = 5

// newPlate is an edge of a colour, with another colour outside its corners.
func newPlate(line, out color.Color) *plate {
	p := &plate{left: canvas.NewRectangle(line), right: canvas.NewRectangle(line)}
	p.cap = canvas.NewRaster(func(w, h int) image.Image { return p.end(w, h, false) })
	p.foot = canvas.NewRaster(func(w, h int) image.Image { return p.end(w, h, true) })
	p.colour(line, out)
	return p
}

// colour gives it other colours.
func (p *plate) colour(line, out color.Color) {
	p.line, p.out = line, out
	p.left.FillColor, p.right.FillColor = line, line
	for _, o := range p.objects() {
		o.Refresh()
	}
}

// resize makes it as large as a panel.
func (p *plate) resize(size fyne.Size) {
	high := min(plateRound, size.Height/2)
	sides := max(0, size.Height-2*high)
	box{fyne.NewPos(0, 0), fyne.NewSize(size.Width, high)}.put(p.cap)
	box{fyne.NewPos(0, size.Height-high), fyne.NewSize(size.Width, high)}.put(p.foot)
	box{fyne.NewPos(0, high), fyne.NewSize(1, sides)}.put(p.left)
	box{fyne.NewPos(size.Width-1, high), fyne.NewSize(1, sides)}.put(p.right)
}

// objects lists what is painted, the lowest first.
func (p *plate) objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{p.cap, p.foot, p.left, p.right}
}

// end paints the cap, or the foot, which is the cap upside down.
func (p *plate) end(w, h int, foot bool) image.Image {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		row := y
		if foot {
			row = h - 1 - y
		}
		for x := range w {
			img.Set(x, row, p.at(float64(min(x, w-1-x))+0.5, float64(y)+0.5, float64(h)))
		}
	}
	return img
}

// at is the colour of a pixel by how far its middle is from the plate's side and
// top, when a corner's radius is as many pixels as the cap is high.
func (p *plate) at(x, y, radius float64) color.Color {
	deep := y // how far inside the edge
	if x < radius {
		deep = radius - math.Hypot(radius-x, radius-y)
	}
	thick := radius / float64(plateRound) // the line is 1 wide
	inner := min(max(deep-thick+0.5, 0), 1)
	outer := 1 - min(max(deep+0.5, 0), 1)
	return blended(p.line, 1-inner-outer, p.out, outer)
}

// blended is two opaque colours, each covering its share of a pixel.
func blended(a color.Color, partA float64, b color.Color, partB float64) color.RGBA {
	ar, ag, ab, _ := a.RGBA()
	br, bg, bb, _ := b.RGBA()
	mix := func(x, y uint32) uint8 { return uint8((float64(x)*partA+float64(y)*partB)/257 + 0.5) }
	return color.RGBA{mix(ar, br), mix(ag, bg), mix(ab, bb), uint8((partA+partB)*255 + 0.5)}
}
