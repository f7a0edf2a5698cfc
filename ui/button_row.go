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
	sign   bool // no word but a sign
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
		text.bold = b.sign // a thin sign alone is hard to see
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

// rowGap is between buttons, in Fyne's pixels.
const rowGap float32 = 6

// HeightFor is the height of one button, or of several where a width has no room
// for them side by side; a row without buttons takes none.
func (r *buttonRow) HeightFor(width float32) float32 {
	if len(r.presses) == 0 {
		return 0
	}
	_, rows := lineUp(r.wides(), width, rowGap)
	return float32(rows)*(r.high()+rowGap) - rowGap
}

// high is of one button.
func (r *buttonRow) high() float32 { return r.presses[0].HeightFor(1000) }

// wides are the widths of the buttons.
func (r *buttonRow) wides() []float32 {
	wides := make([]float32, len(r.presses))
	for i, t := range r.texts {
		wides[i] = t.measure(t.text) + 2*r.presses[i].inset.Width + 1
	}
	return wides
}

// least is the width that has room for all of them in one row.
func (r *buttonRow) least() float32 {
	sum := -rowGap
	for _, wide := range r.wides() {
		sum += wide + rowGap
	}
	return max(0, sum)
}

func (r *buttonRow) CreateRenderer() fyne.WidgetRenderer { return &buttonRowRenderer{r} }

type buttonRowRenderer struct{ *buttonRow }

func (r *buttonRowRenderer) MinSize() fyne.Size {
	return fyne.NewSize(0, r.HeightFor(max(r.Size().Width, r.least())))
}

func (r *buttonRowRenderer) Layout(size fyne.Size) {
	wides := r.wides()
	places, _ := lineUp(wides, size.Width, rowGap)
	if r.toRight {
		places = endAt(places, wides, size.Width)
	}
	for i, p := range places {
		box{fyne.NewPos(p.x, float32(p.row)*(r.high()+rowGap)), fyne.NewSize(wides[i], r.high())}.put(r.presses[i])
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
