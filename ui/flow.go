package ui

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// tall is an object whose height hangs on the width it is given.
type tall interface {
	fyne.CanvasObject
	HeightFor(width float32) float32
}

// heightFor is the height an object wants at a width.
func heightFor(o fyne.CanvasObject, width float32) float32 {
	if t, ok := o.(tall); ok {
		return t.HeightFor(width)
	}
	return o.MinSize().Height
}

// flow is a text that takes as many lines as its width asks for.
type flow struct {
	widget.BaseWidget
	text  string
	size  typeSize
	bold  bool
	role  role
	align fyne.TextAlign
	most  int // lines; 0: as many as needed

	lines []string // as broken for width
	width float32
}

func newFlow(text string, size typeSize, r role) *flow {
	f := &flow{text: text, size: size, role: r}
	f.ExtendBaseWidget(f)
	return f
}

func (f *flow) style() fyne.TextStyle { return fyne.TextStyle{Bold: f.bold} }

func (f *flow) measure(s string) float32 { return fyne.MeasureText(s, f.size.px(), f.style()).Width }

// set changes what is said and in which colour, and reports whether that
// changed anything.
func (f *flow) set(text string, r role) bool {
	if f.text == text && f.role == r {
		return false
	}
	f.text, f.role, f.lines = text, r, nil
	f.Refresh()
	return true
}

// broken gives the lines for a width.
func (f *flow) broken(width float32) []string {
	if f.lines != nil && width == f.width {
		return f.lines
	}
	lines := wrapText(f.text, width, f.measure)
	if f.most > 0 && len(lines) > f.most {
		lines = slices.Clone(lines[:f.most])
		lines[f.most-1] = shorten(lines[f.most-1]+" …", width, f.measure)
	}
	return lines
}

// short reports whether there is room for a part of the text only.
func (f *flow) short() bool {
	return f.most > 0 && len(wrapText(f.text, f.Size().Width, f.measure)) > f.most
}

func (f *flow) lineHeight() float32 { return fyne.MeasureText("Ág", f.size.px(), f.style()).Height }

// HeightFor is the height of the lines the text takes at a width.
func (f *flow) HeightFor(width float32) float32 {
	if f.text == "" {
		return 0
	}
	return float32(len(f.broken(width))) * f.lineHeight()
}

func (f *flow) CreateRenderer() fyne.WidgetRenderer { return laidOut(f, &flowRenderer{flow: f}) }

// laidOut lays a new renderer out at once where its widget has its size already.
// Fyne throws away what has not been shown for a while, makes it anew when it is
// shown again, and lays it out only where its size becomes another.
func laidOut(w fyne.CanvasObject, r fyne.WidgetRenderer) fyne.WidgetRenderer {
	if size := w.Size(); !size.IsZero() {
		r.Layout(size)
	}
	return r
}

type flowRenderer struct {
	flow  *flow
	texts []*canvas.Text
}

func (r *flowRenderer) MinSize() fyne.Size {
	return fyne.NewSize(0, r.flow.HeightFor(r.flow.Size().Width))
}

func (r *flowRenderer) Layout(size fyne.Size) {
	f := r.flow
	f.lines, f.width = f.broken(size.Width), size.Width
	for len(r.texts) < len(f.lines) {
		r.texts = append(r.texts, canvas.NewText("", paint(f.role)))
	}
	high := f.lineHeight()
	for i, t := range r.texts {
		t.Text = ""
		if i < len(f.lines) {
			t.Text = f.lines[i]
		}
		t.TextSize, t.TextStyle, t.Color, t.Alignment = f.size.px(), f.style(), paint(f.role), f.align
		t.Move(fyne.NewPos(0, float32(i)*high))
		t.Resize(fyne.NewSize(size.Width, high))
	}
}

func (r *flowRenderer) Refresh() {
	r.Layout(r.flow.Size())
	for _, t := range r.texts {
		t.Refresh()
	}
}

func (r *flowRenderer) Objects() []fyne.CanvasObject {
	used := min(len(r.flow.lines), len(r.texts)) // a line that is not used costs its share of every picture
	objects := make([]fyne.CanvasObject, used)
	for i, t := range r.texts[:used] {
		objects[i] = t
	}
	return objects
}

func (r *flowRenderer) Destroy() {}
