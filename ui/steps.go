package ui

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// steps is the quiet strip of first things to do; each ticks itself off.
type steps struct {
	widget.BaseWidget
	presses []*press
	labels  []*stepLabel
	shut    *press
	done    []string
	dark    bool
}

// stepsHigh is the height of a row of the strip, in Fyne's pixels.
const stepsHigh float32 = 30

// newSteps makes the strip. onPress gets the hint of the step that is pressed,
// onClose that the strip shall not come again.
func newSteps(onPress func(hint string), onClose func()) *steps {
	s := &steps{shut: newPress(newFlow("Close", smallSize, accent), onClose)}
	s.shut.inset = fyne.NewSize(8, 4)
	for _, one := range firstSteps {
		label := newStepLabel(one.name)
		p := newPress(label, func() { onPress(one.hint) })
		p.inset = fyne.NewSize(6, 4)
		s.labels, s.presses = append(s.labels, label), append(s.presses, p)
	}
	s.ExtendBaseWidget(s)
	return s
}

// show ticks off what is done.
func (s *steps) show(done []string) {
	if slices.Equal(done, s.done) && s.dark == isDark() {
		return
	}
	s.done, s.dark = slices.Clone(done), isDark()
	for i, one := range firstSteps {
		s.labels[i].tick(slices.Contains(done, one.key))
	}
}

// wides are the widths of the steps.
func (s *steps) wides() []float32 {
	wides := make([]float32, len(s.presses))
	for i, p := range s.presses {
		wides[i] = s.labels[i].want() + 2*p.inset.Width
	}
	return wides
}

func (s *steps) shutWide() float32 {
	text := s.shut.content.(*flow)
	return text.measure(text.text) + 2*s.shut.inset.Width + 1
}

// places puts the steps side by side, left of what closes them, and under one
// another where that has no room.
func (s *steps) places(width float32) ([]linedUp, int) {
	return lineUp(s.wides(), width-s.shutWide()-rowGap, rowGap)
}

// HeightFor is the height of all rows of steps.
func (s *steps) HeightFor(width float32) float32 {
	_, rows := s.places(width)
	return float32(rows) * grown(stepsHigh)
}

func (s *steps) CreateRenderer() fyne.WidgetRenderer { return &stepsRenderer{s} }

type stepsRenderer struct{ *steps }

func (r *stepsRenderer) MinSize() fyne.Size { return fyne.NewSize(0, r.HeightFor(r.Size().Width)) }

func (r *stepsRenderer) Layout(size fyne.Size) {
	wides := r.wides()
	places, _ := r.places(size.Width)
	high := grown(stepsHigh)
	for i, p := range r.presses {
		box{fyne.NewPos(places[i].x, float32(places[i].row)*high), fyne.NewSize(wides[i], high)}.put(p)
	}
	wide := r.shutWide()
	shut := r.shut.HeightFor(wide)
	box{fyne.NewPos(size.Width-wide, (high-shut)/2), fyne.NewSize(wide, shut)}.put(r.shut)
}

func (r *stepsRenderer) Refresh() {}

func (r *stepsRenderer) Objects() (all []fyne.CanvasObject) {
	for _, p := range r.presses {
		all = append(all, p)
	}
	return append(all, r.shut)
}

func (r *stepsRenderer) Destroy() {}

// stepLabel is a step's name behind its tick.
type stepLabel struct {
	widget.BaseWidget
	icon *widget.Icon
	name *flow
}

const stepIcon float32 = 16

func newStepLabel(name string) *stepLabel {
	l := &stepLabel{icon: widget.NewIcon(theme.CheckButtonIcon()), name: newFlow(name, smallSize, ink)}
	l.name.most = 1
	l.ExtendBaseWidget(l)
	return l
}

func (l *stepLabel) tick(done bool) {
	icon, r := theme.CheckButtonIcon(), ink
	if done {
		icon, r = theme.CheckButtonCheckedIcon(), soft
	}
	l.icon.SetResource(icon)
	l.name.set(l.name.text, r)
	l.name.Refresh()
}

// want is the width that shows the name whole.
func (l *stepLabel) want() float32 { return grown(stepIcon) + 5 + l.name.measure(l.name.text) + 1 }

func (l *stepLabel) CreateRenderer() fyne.WidgetRenderer { return &stepLabelRenderer{l} }

type stepLabelRenderer struct{ *stepLabel }

func (r *stepLabelRenderer) MinSize() fyne.Size { return fyne.NewSize(0, grown(stepIcon)) }

func (r *stepLabelRenderer) Layout(size fyne.Size) {
	icon := grown(stepIcon)
	box{fyne.NewPos(0, (size.Height-icon)/2), fyne.NewSquareSize(icon)}.put(r.icon)
	left := icon + 5
	high := r.name.lineHeight()
	box{fyne.NewPos(left, (size.Height-high)/2), fyne.NewSize(max(0, size.Width-left), high)}.put(r.name)
}

func (r *stepLabelRenderer) Refresh() {
	r.icon.Refresh()
	r.name.Refresh()
}

func (r *stepLabelRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.icon, r.name} }
func (r *stepLabelRenderer) Destroy()                     {}
