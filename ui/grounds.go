package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// grounds is what shows between the panels. Fyne clears the window in the theme's
// background colour, which is that of the panels, and only the strips between
// them are painted: painting the panels instead would cost three times as many
// pixels, at every picture, on a machine without a graphics card.
type grounds struct {
	strips []*canvas.Rectangle
}

func newGrounds() *grounds {
	g := &grounds{}
	for range gapsOf(fyne.Size{}, frame{}) {
		g.strips = append(g.strips, canvas.NewRectangle(paint(ground)))
	}
	return g
}

// objects lists the strips.
func (g *grounds) objects() (all []fyne.CanvasObject) {
	for _, s := range g.strips {
		all = append(all, s)
	}
	return all
}

// recolour follows a change of the theme.
func (g *grounds) recolour() {
	for _, s := range g.strips {
		s.FillColor = paint(ground)
		s.Refresh()
	}
}

// lay stands the strips between the parts of a window.
func (g *grounds) lay(size fyne.Size, f frame) {
	for i, b := range gapsOf(size, f) {
		b.put(g.strips[i])
	}
}
