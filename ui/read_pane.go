package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
)

// readPane is a pane with nothing to press in it, that can have the focus and is
// scrolled by keys then.
type readPane struct {
	pane
	ring *canvas.Rectangle
}

func newReadPane(body *column) *readPane {
	p := &readPane{pane: pane{body: body, scroll: container.NewVScroll(body)}, ring: canvas.NewRectangle(nothing)}
	p.ring.StrokeWidth, p.ring.CornerRadius = 2, 4
	p.ring.Hide()
	p.ExtendBaseWidget(p)
	return p
}

// FocusGained shows the ring.
func (p *readPane) FocusGained() {
	p.ring.StrokeColor = paint(accent)
	p.ring.Show()
}

// FocusLost hides it.
func (p *readPane) FocusLost() { p.ring.Hide() }

// TypedRune leaves letters to the window.
func (p *readPane) TypedRune(r rune) { passRune(p, r) }

// TypedKey scrolls; other keys are the window's.
func (p *readPane) TypedKey(k *fyne.KeyEvent) {
	if k.Name == fyne.KeyHome || !p.scrollBy(k.Name) {
		passKey(p, k)
	}
}

func (p *readPane) CreateRenderer() fyne.WidgetRenderer {
	return &readPaneRenderer{paneRenderer{&p.pane}, p}
}

type readPaneRenderer struct {
	paneRenderer
	read *readPane
}

func (r *readPaneRenderer) Layout(size fyne.Size) {
	r.paneRenderer.Layout(size)
	r.read.ring.Resize(size)
}

func (r *readPaneRenderer) Refresh() {
	r.read.ring.StrokeColor = paint(accent)
	r.paneRenderer.Refresh()
}

func (r *readPaneRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.read.scroll, r.read.ring}
}
