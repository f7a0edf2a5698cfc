package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// content puts the parts of the window together.
func (w *Window) content() fyne.CanvasObject {
	p := w.panels
	w.welcome, w.grounds = w.newWelcome(), newGrounds()
	w.frame = container.New(&frameLayout{w}, append(w.grounds.objects(),
		w.header, p.parts, p.details, w.steps, w.desk, w.welcome, w.under, w.status, p.runs, p.findings, p.rack, p.buying)...)
	return w.frame
}

// frameLayout stands the parts of the window where [frameOf] says.
type frameLayout struct{ w *Window }

func (l *frameLayout) MinSize([]fyne.CanvasObject) fyne.Size { return leastSize }

func (l *frameLayout) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	w := l.w
	f := frameOf(size, w.partsHigh(), w.findingsHigh())
	w.asked = [2]float32{w.partsHigh(), w.findingsHigh()}
	f.header.put(w.header)
	f.parts.put(w.panels.parts)
	f.details.put(w.panels.details)
	if w.steps.Visible() {
		var strip box
		strip, f.board = share(f.board.at.X, f.board.at.Y, f.board.size.Width, f.board.size.Height, w.steps.HeightFor(f.board.size.Width))
		strip.put(w.steps)
	}
	w.grounds.lay(size, f)
	f.board.put(w.desk)
	f.board.put(w.welcome)
	w.foot = f.status
	w.placeStatus()
	f.runs.put(w.panels.runs)
	f.findings.put(w.panels.findings)
	f.rack.put(w.panels.rack)
	f.buying.put(w.panels.buying)
}

// partsHigh and findingsHigh are the heights that show these two lists whole.
func (w *Window) partsHigh() float32 {
	return grown(panelHead) + 4 + w.parts.body.HeightFor(w.parts.Size().Width)
}

func (w *Window) findingsHigh() float32 {
	return grown(panelHead) + 4 + w.findings.body.HeightFor(w.findings.Size().Width)
}

// share again when a list has become longer or shorter.
func (w *Window) reshare() {
	if w.frame != nil && w.asked != [2]float32{w.partsHigh(), w.findingsHigh()} {
		w.frame.Layout.Layout(w.frame.Objects, w.frame.Size())
	}
}
