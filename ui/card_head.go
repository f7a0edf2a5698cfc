package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// cardHead is the first line of a card: letter, run, cut length.
type cardHead struct {
	widget.BaseWidget
	badge      *badge
	name       *flow
	figure     *canvas.Text
	unit       *canvas.Text
	lastLetter string
	lastDark   bool
}

func newCardHead() *cardHead {
	h := &cardHead{
		badge: newBadge(""), name: newFlow("", textSize, ink),
		figure: newBold("", largeSize, ink), unit: newLine("", smallSize, soft),
	}
	h.name.bold, h.name.most = true, 2
	h.ExtendBaseWidget(h)
	return h
}

func (h *cardHead) show(m cardModel) {
	if h.lastLetter != m.letter || h.lastDark != isDark() {
		h.lastLetter, h.lastDark = m.letter, isDark()
		h.badge.show(m.letter)
	}
	h.name.set(m.run, ink)
	setLine(h.figure, m.length, ink)
	unit := m.unit
	if m.length == "" {
		unit = ""
	}
	setLine(h.unit, unit, soft)
	h.Refresh()
}

func (h *cardHead) boxes(width float32) (name, figure, unit box) {
	return cardHeadBoxes(width, sizeOf(h.figure), sizeOf(h.unit))
}

// sizeOf is the size of a line of text; nothing for an empty one.
func sizeOf(t *canvas.Text) fyne.Size {
	if t.Text == "" {
		return fyne.Size{}
	}
	return t.MinSize()
}

// HeightFor is the height of the line at a width.
func (h *cardHead) HeightFor(width float32) float32 {
	name, figure, _ := h.boxes(width)
	return max(grown(badgeSize), figure.size.Height, h.name.HeightFor(name.size.Width))
}

func (h *cardHead) CreateRenderer() fyne.WidgetRenderer { return &cardHeadRenderer{h} }

type cardHeadRenderer struct{ *cardHead }

func (r *cardHeadRenderer) MinSize() fyne.Size {
	return fyne.NewSize(0, r.HeightFor(r.Size().Width))
}

func (r *cardHeadRenderer) Layout(size fyne.Size) {
	name, figure, unit := r.boxes(size.Width)
	high := r.HeightFor(size.Width)
	across := grown(badgeSize)
	box{fyne.NewPos(0, (high-across)/2), fyne.NewSquareSize(across)}.put(r.badge)
	text := r.name.HeightFor(name.size.Width)
	name.at.Y, name.size.Height = (high-text)/2, text
	name.put(r.name)
	down := (high - max(figure.size.Height, across)) / 2
	figure.at.Y += down
	unit.at.Y += down
	figure.put(r.figure)
	unit.put(r.unit)
}

func (r *cardHeadRenderer) Refresh() { r.Layout(r.Size()) }

func (r *cardHeadRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.badge, r.name, r.figure, r.unit}
}

func (r *cardHeadRenderer) Destroy() {}
