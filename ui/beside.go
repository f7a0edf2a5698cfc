package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// beside is two columns of one width, side by side.
type beside struct {
	widget.BaseWidget
	left, right *column
	gap         float32
}

func newBeside(gap float32, left, right *column) *beside {
	b := &beside{left: left, right: right, gap: gap}
	b.ExtendBaseWidget(b)
	return b
}

func (b *beside) each(width float32) float32 { return max(0, (width-b.gap)/2) }

// HeightFor is the height of the higher column.
func (b *beside) HeightFor(width float32) float32 {
	each := b.each(width)
	return max(b.left.HeightFor(each), b.right.HeightFor(each))
}

func (b *beside) CreateRenderer() fyne.WidgetRenderer { return &besideRenderer{b} }

type besideRenderer struct{ *beside }

func (r *besideRenderer) MinSize() fyne.Size { return fyne.NewSize(0, r.HeightFor(r.Size().Width)) }

func (r *besideRenderer) Layout(size fyne.Size) {
	each := r.each(size.Width)
	box{size: fyne.NewSize(each, size.Height)}.put(r.left)
	box{fyne.NewPos(each+r.gap, 0), fyne.NewSize(each, size.Height)}.put(r.right)
}

func (r *besideRenderer) Refresh()                     {}
func (r *besideRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.left, r.right} }
func (r *besideRenderer) Destroy()                     {}
