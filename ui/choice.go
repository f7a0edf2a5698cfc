package ui

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// choice is a field to choose a word in. Fyne's own has no border, so that beside
// entries it does not look like a field. Up and Down go through the words, Space
// shows them all, and typing the beginning of one chooses it.
type choice struct {
	widget.Select
	onFocus func() // nil: nobody is told
	typed   string // since the focus came, or the last arrow key
}

func newChoice(words []string, onChange func(string)) *choice {
	c := &choice{}
	c.Options, c.OnChanged = words, onChange
	c.ExtendBaseWidget(c)
	return c
}

func (c *choice) CreateRenderer() fyne.WidgetRenderer {
	line := canvas.NewRectangle(color.Transparent)
	r := &choiceRenderer{WidgetRenderer: c.Select.CreateRenderer(), line: line}
	r.tone()
	return r
}

// choiceRenderer draws a line round the field, over what Fyne draws.
type choiceRenderer struct {
	fyne.WidgetRenderer
	line *canvas.Rectangle
}

func (r *choiceRenderer) tone() {
	r.line.StrokeColor, r.line.StrokeWidth = paint(edge), theme.Size(theme.SizeNameInputBorder)
	r.line.CornerRadius = theme.Size(theme.SizeNameInputRadius)
}

func (r *choiceRenderer) Layout(size fyne.Size) {
	r.WidgetRenderer.Layout(size)
	half := r.line.StrokeWidth / 2 // as the line of Fyne's entries
	box{fyne.NewPos(half, half), fyne.NewSize(max(0, size.Width-2*half), max(0, size.Height-2*half))}.put(r.line)
}

func (r *choiceRenderer) Refresh() {
	r.tone()
	r.line.Refresh()
	r.WidgetRenderer.Refresh()
}

func (r *choiceRenderer) Objects() []fyne.CanvasObject {
	return append(append([]fyne.CanvasObject(nil), r.WidgetRenderer.Objects()...), r.line)
}
