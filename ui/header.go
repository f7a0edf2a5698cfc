package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"tubewright/route"
)

// header is the row on top of the window.
type header struct {
	widget.BaseWidget
	title   *canvas.Text
	ready   *press
	text    *flow
	buttons []*keyButton // undo, redo, units, theme, stop
	model   headerModel
}

// headerActions is what the row's buttons do.
//
// look is told what the ready line says while the pointer or the focus is on it and
// it has no room for all of it; "" after that.
type headerActions struct {
	undo, redo, units, theme, stop, ready func()
	look                                  func(text string)
}

func newHeader(do headerActions) *header {
	h := &header{title: newBold("", titleSize, ink), text: newFlow("", textSize, soft)}
	h.text.most, h.text.bold = 1, true
	h.ready = newPress(h.text, do.ready)
	h.ready.onLook = func(on bool) {
		switch {
		case do.look == nil:
		case on && h.text.short():
			do.look(h.text.text)
		default:
			do.look("")
		}
	}
	icon := func(name string, icon fyne.Resource, act func()) *keyButton {
		b := newKeyButton(name, icon, act)
		b.Importance = widget.LowImportance
		return b
	}
	h.buttons = []*keyButton{
		icon("Undo", theme.ContentUndoIcon(), do.undo),
		icon("Redo", theme.ContentRedoIcon(), do.redo),
		icon("mm", nil, do.units),
		icon("Dark", theme.ColorPaletteIcon(), do.theme),
		icon("Stop", theme.MediaStopIcon(), do.stop),
	}
	h.ExtendBaseWidget(h)
	return h
}

// Places of the buttons in header.buttons.
const (
	undoButton = iota
	redoButton
	unitsButton
	themeButton
	stopButton
)

func (h *header) show(m headerModel) {
	h.model = m
	setLine(h.title, m.title, ink)
	h.text.set(m.ready.text, m.ready.role)
	enable(h.buttons[undoButton], m.undo != "")
	enable(h.buttons[redoButton], m.redo != "")
	setButton(h.buttons[unitsButton], unitsWord(m.units))
	setButton(h.buttons[themeButton], themeWord())
	h.buttons[stopButton].Hidden = !m.ready.busy
	h.Refresh()
}

// unitsWord and themeWord say what is on; a press goes to the other.
func unitsWord(u route.Units) string {
	if u == route.Inches {
		return "inches"
	}
	return "mm"
}

func themeWord() string {
	if isDark() {
		return "Dark"
	}
	return "Light"
}

func enable(b *keyButton, yes bool) {
	if yes == b.Disabled() {
		if yes {
			b.Enable()
		} else {
			b.Disable()
		}
	}
}

func setButton(b *keyButton, text string) {
	if b.Text != text {
		b.SetText(text)
	}
}

func (h *header) shown() (buttons []*keyButton, sizes []fyne.Size) {
	for _, b := range h.buttons {
		if b.Visible() {
			buttons, sizes = append(buttons, b), append(sizes, b.MinSize())
		}
	}
	return buttons, sizes
}

func (h *header) CreateRenderer() fyne.WidgetRenderer { return &headerRenderer{h} }

type headerRenderer struct{ *header }

func (r *headerRenderer) MinSize() fyne.Size { return fyne.NewSize(400, grown(headerHigh)) }

func (r *headerRenderer) Layout(size fyne.Size) {
	buttons, sizes := r.shown()
	full := r.model.title
	title := fyne.MeasureText(full, titleSize.px(), r.title.TextStyle)
	ready := fyne.NewSize(r.text.measure(r.text.text)+2*r.ready.inset.Width+1, r.ready.HeightFor(1000))
	titleBox, boxes, readyBox := headerBoxes(size.Width, size.Height, title, ready, sizes)
	setLine(r.title, shorten(full, titleBox.size.Width, func(s string) float32 { return widthOf(s, titleSize, true) }), ink)
	titleBox.put(r.title)
	for i, b := range buttons {
		boxes[i].put(b)
	}
	readyBox.put(r.ready)
}

func (r *headerRenderer) Refresh() {
	r.Layout(r.Size())
	r.text.Refresh()
	canvas.Refresh(r.header)
}

func (r *headerRenderer) Objects() []fyne.CanvasObject {
	all := []fyne.CanvasObject{r.title}
	for _, b := range r.buttons {
		all = append(all, b)
	}
	return append(all, r.ready)
}

func (r *headerRenderer) Destroy() {}
