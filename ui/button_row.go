package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// button is a word one can press.
type button struct {
	text   string
	act    func()
	strong bool // the one that Enter presses
	cancel bool // the one that Esc presses
}

// buttonRow is small buttons side by side.
type buttonRow struct {
	widget.BaseWidget
	presses []*press
	texts   []*flow
	toRight bool
}

func newButtonRow(buttons ...button) *buttonRow {
	r := &buttonRow{}
	for _, b := range buttons {
		text := newFlow(b.text, smallSize, accent)
		p := newPress(text, b.act)
		p.plain, p.outlined = false, true
		p.inset = fyne.NewSize(8, 4)
		if b.strong {
			p.strong, text.role = true, onTone
		}
		r.presses, r.texts = append(r.presses, p), append(r.texts, text)
	}
	r.ExtendBaseWidget(r)
	return r
}

// HeightFor is the height of one button; a row without buttons takes no room.
func (r *buttonRow) HeightFor(float32) float32 {
	if len(r.presses) == 0 {
		return 0
	}
	return r.presses[0].HeightFor(1000)
}

func (r *buttonRow) CreateRenderer() fyne.WidgetRenderer { return &buttonRowRenderer{r} }

type buttonRowRenderer struct{ *buttonRow }

func (r *buttonRowRenderer) MinSize() fyne.Size { return fyne.NewSize(0, r.HeightFor(0)) }

func (r *buttonRow) wide(i int) float32 {
	return r.texts[i].measure(r.texts[i].text) + 2*r.presses[i].inset.Width + 1
}

func (r *buttonRowRenderer) Layout(size fyne.Size) {
	x := float32(0)
	if r.toRight {
		x = size.Width + 6
		for i := range r.presses {
			x -= r.wide(i) + 6
		}
	}
	for i, p := range r.presses {
		wide := r.wide(i)
		box{fyne.NewPos(x, 0), fyne.NewSize(wide, r.HeightFor(0))}.put(p)
		x += wide + 6
	}
}

func (r *buttonRowRenderer) Refresh() { r.recolour() }

func (r *buttonRowRenderer) Objects() (all []fyne.CanvasObject) {
	for _, p := range r.presses {
		all = append(all, p)
	}
	return all
}

func (r *buttonRowRenderer) Destroy() {}

// recolour follows a change of the theme.
func (r *buttonRow) recolour() {
	for i, p := range r.presses {
		r.texts[i].Refresh()
		p.Refresh()
	}
}
