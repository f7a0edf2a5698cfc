package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// iconRow is a picture of a fixed size with a text beside it.
type iconRow struct {
	widget.BaseWidget
	icon fyne.CanvasObject
	text fyne.CanvasObject
}

const iconGap = 12

func newIconRow(icon, text fyne.CanvasObject) *iconRow {
	r := &iconRow{icon: icon, text: text}
	r.ExtendBaseWidget(r)
	return r
}

func (r *iconRow) beside(width float32) float32 {
	return max(0, width-r.icon.MinSize().Width-iconGap)
}

// HeightFor is the height of the picture, or of the text where that is higher.
func (r *iconRow) HeightFor(width float32) float32 {
	return max(r.icon.MinSize().Height, heightFor(r.text, r.beside(width)))
}

func (r *iconRow) CreateRenderer() fyne.WidgetRenderer { return &iconRowRenderer{r} }

type iconRowRenderer struct{ *iconRow }

func (r *iconRowRenderer) MinSize() fyne.Size { return fyne.NewSize(0, r.HeightFor(r.Size().Width)) }

func (r *iconRowRenderer) Layout(size fyne.Size) {
	icon := r.icon.MinSize()
	box{fyne.NewPos(0, (size.Height-icon.Height)/2), icon}.put(r.icon)
	wide := r.beside(size.Width)
	high := heightFor(r.text, wide)
	box{fyne.NewPos(icon.Width+iconGap, (size.Height-high)/2), fyne.NewSize(wide, high)}.put(r.text)
}

func (r *iconRowRenderer) Refresh()                     { r.text.Refresh() }
func (r *iconRowRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.icon, r.text} }
func (r *iconRowRenderer) Destroy()                     {}
