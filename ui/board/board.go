package board

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// Board is the large view: a widget that shows a scene in one of the four looks
// and lets a person take hold of it. Set its Callbacks before it is shown.
type Board struct {
	widget.BaseWidget
	Callbacks

	scene     *Scene
	style     *Style
	look      Look
	cameras   [4]Camera
	selection []Target
	grid      float64
	raster    *canvas.Raster
	pump      Pump
}

// NewBoard is a board with nothing on it.
func NewBoard() *Board {
	style := Light()
	b := &Board{scene: &Scene{}, style: &style, grid: 5}
	b.raster = canvas.NewRaster(func(w, h int) image.Image { return image.NewUniform(color.White) })
	b.ExtendBaseWidget(b)
	return b
}

// SetScene shows another state of the plan. The cameras stay.
func (b *Board) SetScene(s Scene) { b.scene = &s }

// SetSelection marks what is chosen; none, nothing is.
func (b *Board) SetSelection(chosen ...Target) { b.selection = chosen }

// Selection gives what is marked as chosen.
func (b *Board) Selection() []Target { return b.selection }

// SetLook makes a look the large one. It does not call OnLook.
func (b *Board) SetLook(l Look) { b.look = l }

// Look gives the large look.
func (b *Board) Look() Look { return b.look }

// SetStyle changes the colours.
func (b *Board) SetStyle(s Style) { b.style = &s }

// SetGrid sets the step to which dragged parts snap, mm; 0 for none.
func (b *Board) SetGrid(mm float64) { b.grid = mm }

// SetPerspective switches the turntable between perspective and parallel.
func (b *Board) SetPerspective(on bool) { b.cameras[Turntable].Perspective = on }

// SetMeasuring takes up the measuring tool or puts it away.
func (b *Board) SetMeasuring(on bool) {}

// FitAll shows the whole scene in every look.
func (b *Board) FitAll() {}

// FitSelection shows what is chosen as large as is sensible; with nothing
// chosen it is FitAll.
func (b *Board) FitSelection() {}

// SetPump replaces what calls the board once per frame.
func (b *Board) SetPump(p Pump) { b.pump = p }

// CreateRenderer is for Fyne.
func (b *Board) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(b.raster) }

// A Pump calls tick once per frame from Start until Stop, on the UI goroutine.
type Pump interface {
	Start(tick func())
	Stop()
}

// NewDesk is the large board with the three other looks small beside it where
// there is room; a click on one of them makes it the large one.
func NewDesk(b *Board) fyne.CanvasObject { return b }
