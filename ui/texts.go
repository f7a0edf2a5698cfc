package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// newLine is one line of text in a role's colour.
func newLine(text string, size typeSize, r role) *canvas.Text {
	t := canvas.NewText(text, paint(r))
	t.TextSize = size.px()
	return t
}

func newBold(text string, size typeSize, r role) *canvas.Text {
	t := newLine(text, size, r)
	t.TextStyle = fyne.TextStyle{Bold: true}
	return t
}

// setLine changes a line only where something differs: each new text costs the
// graphics card a texture for a minute.
func setLine(t *canvas.Text, text string, r role) {
	if c := paint(r); t.Text != text || t.Color != c {
		t.Text, t.Color = text, c
		t.Refresh()
	}
}

// widthOf is how wide a text is.
func widthOf(text string, size typeSize, bold bool) float32 {
	return fyne.MeasureText(text, size.px(), fyne.TextStyle{Bold: bold}).Width
}
