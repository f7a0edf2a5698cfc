package ui

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"tubewright/ui/board"
)

// thumb is a small picture of a scene. It is painted when it is first shown and
// after a change of the theme or the size.
type thumb struct {
	widget.BaseWidget
	scene   board.Scene
	look    board.Look
	raster  *canvas.Raster
	painted *image.RGBA
	dark    bool
	size    fyne.Size
}

func newThumb(scene board.Scene, look board.Look, size fyne.Size) *thumb {
	t := &thumb{scene: scene, look: look, size: size}
	t.raster = canvas.NewRaster(t.paint)
	t.ExtendBaseWidget(t)
	return t
}

// show changes what is shown.
func (t *thumb) show(scene board.Scene) {
	t.scene, t.painted = scene, nil
	t.raster.Refresh()
}

func (t *thumb) paint(w, h int) image.Image {
	if t.painted != nil && t.painted.Rect.Dx() == w && t.painted.Rect.Dy() == h && t.dark == isDark() {
		return t.painted
	}
	t.dark, t.painted = isDark(), image.NewRGBA(image.Rect(0, 0, w, h))
	style := boardStyle(t.dark)
	style.Background = opaque(paint(face))
	camera := board.NewCamera(t.look, t.scene.Case, w, h)
	camera.Inset = [4]int{}
	camera.Fit(&t.scene, w, h)
	var p board.Painter
	scale := 1.0
	if width := t.Size().Width; width > 0 {
		scale = float64(w) / float64(width)
	}
	p.Render(t.painted, &t.scene, camera, &style, board.Show{Quality: board.Fine, Scale: scale})
	return t.painted
}

func (t *thumb) CreateRenderer() fyne.WidgetRenderer { return &thumbRenderer{t} }

type thumbRenderer struct{ *thumb }

func (r *thumbRenderer) MinSize() fyne.Size           { return r.size }
func (r *thumbRenderer) Layout(size fyne.Size)        { r.raster.Resize(size) }
func (r *thumbRenderer) Refresh()                     { r.raster.Refresh() }
func (r *thumbRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.raster} }
func (r *thumbRenderer) Destroy()                     {}
