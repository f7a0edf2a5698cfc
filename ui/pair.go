package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// pair is a short text with a longer one beside it.
type pair struct {
	widget.BaseWidget
	short, long *flow
}

func newPair(short, long string) *pair {
	p := &pair{short: newFlow(short, textSize, ink), long: newFlow(long, textSize, soft)}
	p.short.bold = true
	p.ExtendBaseWidget(p)
	return p
}

// split shares a width between the two.
func (p *pair) split(width float32) (short, long float32) {
	short = width * 0.36
	return short, max(0, width-short-10)
}

// HeightFor is the height of the higher of the two.
func (p *pair) HeightFor(width float32) float32 {
	short, long := p.split(width)
	return max(p.short.HeightFor(short), p.long.HeightFor(long))
}

func (p *pair) CreateRenderer() fyne.WidgetRenderer { return &pairRenderer{p} }

type pairRenderer struct{ *pair }

func (r *pairRenderer) MinSize() fyne.Size { return fyne.NewSize(0, r.HeightFor(r.Size().Width)) }

func (r *pairRenderer) Layout(size fyne.Size) {
	short, long := r.split(size.Width)
	r.short.Resize(fyne.NewSize(short, r.short.HeightFor(short)))
	box{fyne.NewPos(short+10, 0), fyne.NewSize(long, r.long.HeightFor(long))}.put(r.long)
}

func (r *pairRenderer) Refresh()                     {}
func (r *pairRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.short, r.long} }
func (r *pairRenderer) Destroy()                     {}
