package ui

import (
	"image"
	"image/color"
	"image/draw"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	sketch "tubewright/cutlist/draw"
)

// picture shows a drawing as pixels. It paints anew only when the drawing, the
// size or the ground has changed: Fyne asks for the pixels far more often.
type picture struct {
	widget.BaseWidget
	raster *canvas.Raster
	back   role
	clear  bool                               // painted on nothing: what is behind shows
	make   func(width float32) sketch.Drawing // 1 mm of the drawing is shown as perMM pixels
	height func(width float32) float32
	perMM  float64 // of Fyne's pixels

	drawing sketch.Drawing
	width   float32 // the drawing was made for
	painted *image.RGBA
	ground  color.NRGBA // the picture was painted on
}

// perMM is how many of Fyne's pixels a millimetre of a drawing takes: 96 to the
// inch, the size that screens without a scale of their own count on.
const perMM = 96 / 25.4

// linePerMM is perMM for drawings whose writing grows with the text.
func linePerMM() float64 { return perMM * float64(textScale()) }

func newPicture(back role, height func(float32) float32, make func(float32) sketch.Drawing) *picture {
	p := &picture{back: back, height: height, make: make, perMM: linePerMM()}
	p.raster = canvas.NewRaster(p.paint)
	p.ExtendBaseWidget(p)
	return p
}

// redraw makes the drawing anew.
func (p *picture) redraw() {
	p.painted = nil
	p.width = -1
	p.raster.Refresh()
}

// HeightFor is the height the picture wants at a width.
func (p *picture) HeightFor(width float32) float32 { return p.height(width) }

func (p *picture) paint(w, h int) image.Image {
	size := p.Size()
	ground := p.backing()
	if p.painted != nil && p.painted.Rect.Dx() == w && p.painted.Rect.Dy() == h && p.width == size.Width && p.ground == ground {
		return p.painted
	}
	if p.painted == nil || p.painted.Rect.Dx() != w || p.painted.Rect.Dy() != h {
		p.painted = image.NewRGBA(image.Rect(0, 0, w, h))
	}
	p.drawing, p.width, p.ground = p.make(size.Width), size.Width, ground
	draw.Draw(p.painted, p.painted.Rect, image.NewUniform(ground), image.Point{}, draw.Src)
	if size.Width > 0 {
		sketch.Raster(p.painted, p.drawing, p.perMM*float64(w)/float64(size.Width))
	}
	return p.painted
}

// backing is the colour under the drawing.
func (p *picture) backing() color.NRGBA {
	if p.clear {
		return nothing
	}
	return paint(p.back)
}

func (p *picture) CreateRenderer() fyne.WidgetRenderer { return &pictureRenderer{p} }

type pictureRenderer struct{ *picture }

func (r *pictureRenderer) MinSize() fyne.Size {
	return fyne.NewSize(40, r.height(r.Size().Width))
}
func (r *pictureRenderer) Layout(size fyne.Size)        { r.raster.Resize(size) }
func (r *pictureRenderer) Refresh()                     { r.redraw() }
func (r *pictureRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.raster} }
func (r *pictureRenderer) Destroy()                     {}
