package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// slide is a slider whose whole way can be seen: Fyne draws the part that is
// not covered in the colour of a field, which on a panel is no colour at all.
type slide struct {
	widget.BaseWidget
	slider *keySlider
	way    *canvas.Rectangle
}

func newSlide(least, most, step float64, onChanged func(float64)) *slide {
	s := &slide{slider: newKeySlider(least, most), way: canvas.NewRectangle(paint(edge))}
	s.slider.Step, s.slider.OnChanged = step, onChanged
	s.ExtendBaseWidget(s)
	return s
}

// HeightFor is the slider's height.
func (s *slide) HeightFor(float32) float32 { return s.slider.MinSize().Height }

func (s *slide) CreateRenderer() fyne.WidgetRenderer { return &slideRenderer{s} }

type slideRenderer struct{ *slide }

func (r *slideRenderer) MinSize() fyne.Size { return fyne.NewSize(40, r.HeightFor(0)) }

func (r *slideRenderer) Layout(size fyne.Size) {
	const ends = 10 // what the knob needs at either end
	box{fyne.NewPos(ends, size.Height/2-0.5), fyne.NewSize(max(0, size.Width-2*ends), 1)}.put(r.way)
	r.slider.Resize(size)
}

func (r *slideRenderer) Refresh() {
	r.way.FillColor = paint(edge)
	r.way.Refresh()
	r.slider.Refresh()
}

func (r *slideRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.way, r.slider} }
func (r *slideRenderer) Destroy()                     {}
