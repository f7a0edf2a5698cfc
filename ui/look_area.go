package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// lookArea is a ground that is told when the pointer comes and goes.
type lookArea struct {
	widget.BaseWidget
	ground *canvas.Rectangle
	onLook func(on bool)
}

func newLookArea(onLook func(bool)) *lookArea {
	a := &lookArea{ground: canvas.NewRectangle(nothing), onLook: onLook}
	a.ground.Hide()
	a.ExtendBaseWidget(a)
	return a
}

// fill paints the ground; without, there is none of its own.
func (a *lookArea) fill(on bool) {
	a.ground.FillColor = paint(ground)
	setVisible(a.ground, on)
}

// MouseIn, MouseMoved and MouseOut tell the pointer.
func (a *lookArea) MouseIn(*desktop.MouseEvent) { a.onLook(true) }

// MouseMoved is part of being hoverable.
func (a *lookArea) MouseMoved(*desktop.MouseEvent) {}

// MouseOut ends it.
func (a *lookArea) MouseOut() { a.onLook(false) }

// CreateRenderer is for Fyne.
func (a *lookArea) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(a.ground)
}
