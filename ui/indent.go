package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// indent keeps its content off the sides and off what stands above and below.
type indent struct {
	widget.BaseWidget
	content fyne.CanvasObject
	margin  fyne.Size
}

func newIndent(wide, high float32, content fyne.CanvasObject) *indent {
	i := &indent{content: content, margin: fyne.NewSize(wide, high)}
	i.ExtendBaseWidget(i)
	return i
}

// HeightFor is the content's height at a width, with the margins.
func (i *indent) HeightFor(width float32) float32 {
	high := heightFor(i.content, max(0, width-2*i.margin.Width))
	if high == 0 {
		return 0
	}
	return high + 2*i.margin.Height
}

func (i *indent) CreateRenderer() fyne.WidgetRenderer { return &indentRenderer{i} }

type indentRenderer struct{ *indent }

func (r *indentRenderer) MinSize() fyne.Size { return fyne.NewSize(0, r.HeightFor(r.Size().Width)) }

func (r *indentRenderer) Layout(size fyne.Size) {
	m := r.margin
	box{fyne.NewPos(m.Width, m.Height), fyne.NewSize(max(0, size.Width-2*m.Width), max(0, size.Height-2*m.Height))}.put(r.content)
}

func (r *indentRenderer) Refresh()                     { r.content.Refresh() }
func (r *indentRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.content} }
func (r *indentRenderer) Destroy()                     {}
