package ui

import (
	"image/color"

	"tubewright/ui/board"
)

// switchTheme goes from light to dark and back.
func (w *Window) switchTheme() {
	w.settle()
	w.setTheme(!isDark())
	w.settings.Theme = "light"
	if isDark() {
		w.settings.Theme = "dark"
	}
	w.keepSettings()
}

// lookOf is the light or the dark look with the person's size of text.
func (w *Window) lookOf(dark bool) *Theme { return NewTheme(dark).WithText(w.settings.Text) }

// setTheme gives everything the light or the dark look.
func (w *Window) setTheme(dark bool) {
	w.wear(dark)
	w.grounds.recolour()
	p := w.panels
	for _, panel := range []*panel{p.parts, p.details, p.runs, p.findings, p.rack, p.buying, w.welcome} {
		panel.recolour()
	}
	w.machines.recolour()
	w.placeStatus()
	w.board.SetStyle(boardStyle(dark))
	w.header.show(headerOf(w.snapshot))
	w.showPanels()
}

// wear puts the light or the dark look on.
func (w *Window) wear(dark bool) {
	w.freeTexts()
	w.app.Settings().SetTheme(w.lookOf(dark))
}

// freeTexts throws the pictures of all texts away while OpenGL has a hand on the
// window. Fyne 2.7.1 does so itself when the theme changes, but without: OpenGL
// then keeps them for ever, about 1 MB at each change.
func (w *Window) freeTexts() {
	if gl, ok := w.win.(interface {
		RunWithContext(f func())
		RescaleContext()
	}); ok {
		gl.RunWithContext(gl.RescaleContext)
	}
}

// boardStyle is the board's own style on the window's ground.
func boardStyle(dark bool) board.Style {
	style := board.Light()
	if dark {
		style = board.Dark()
	}
	style.Background, style.Select = opaque(paint(ground)), opaque(paint(accent))
	return style
}

func opaque(c color.NRGBA) color.RGBA { return color.RGBA{R: c.R, G: c.G, B: c.B, A: 255} }
