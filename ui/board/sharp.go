package board

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// sharpRenderer shows a raster that stand puts on whole pixels.
type sharpRenderer struct {
	raster *canvas.Raster
	stand  func()
	least  func() fyne.Size
}

func (r *sharpRenderer) Layout(fyne.Size)             { r.stand() }
func (r *sharpRenderer) MinSize() fyne.Size           { return r.least() }
func (r *sharpRenderer) Refresh()                     { r.raster.Refresh() }
func (r *sharpRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.raster} }
func (r *sharpRenderer) Destroy()                     {}

// onPixels makes a raster fill its widget to the nearest whole pixels of the
// screen, and be shown pixel for pixel. Otherwise Fyne would stretch it by a part
// of a pixel: smoothed, every letter is a little blurred and a software GL fetches
// four pixels for each; not smoothed, a row or a column is lost. It reports
// false while Fyne cannot say where the widget is, as before the first picture.
func onPixels(w fyne.Widget, r *canvas.Raster) bool {
	c := canvasOf(w)
	if c == nil {
		showAs(r, canvas.ImageScaleSmooth, fyne.Position{}, w.Size())
		return false
	}
	at, scale := driver().AbsolutePositionForObject(w), c.Scale()
	lo, hi := pixelAt(at, scale), pixelAt(at.Add(w.Size()), scale)
	mode := canvas.ImageScalePixels
	if size := fyne.NewPos(c.Size().Components()); pixelAt(size, scale) != size {
		mode = canvas.ImageScaleSmooth // Fyne 2.7.1 stretches the whole window to whole units
	}
	showAs(r, mode, lo.Subtract(at), fyne.NewSize(hi.X-lo.X, hi.Y-lo.Y))
	return true
}

func showAs(r *canvas.Raster, mode canvas.ImageScale, at fyne.Position, size fyne.Size) {
	other := mode != r.ScaleMode
	r.ScaleMode = mode
	r.Move(at)
	r.Resize(size)
	if other {
		r.Refresh()
	}
}

// pixelAt is the corner of the pixel nearest to a place, where Fyne puts the
// edge of what is beside. A window that has finer pixels has a corner there too.
func pixelAt(p fyne.Position, scale float32) fyne.Position {
	near := func(v float32) float32 { return float32(math.Round(float64(v*scale))) / scale }
	return fyne.NewPos(near(p.X), near(p.Y))
}

// canvasOf is the window a widget is in; nil before its first picture.
func canvasOf(w fyne.Widget) fyne.Canvas {
	if d := driver(); d != nil {
		return d.CanvasForObject(w)
	}
	return nil
}
