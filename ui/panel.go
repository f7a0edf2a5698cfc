package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// panel is a framed part of the window: a title, something small beside it,
// and a body.
type panel struct {
	widget.BaseWidget
	title *canvas.Text
	aside fyne.CanvasObject // nil: nothing
	body  fyne.CanvasObject
	back  *plate
}

// panelHead is the height of a panel's title row.
const panelHead float32 = 30

func newPanel(title string, aside, body fyne.CanvasObject) *panel {
	p := &panel{title: newBold(title, smallSize, soft), aside: aside, body: body, back: newPlate(paint(rule), paint(ground))}
	p.ExtendBaseWidget(p)
	return p
}

// recolour follows a change of the theme.
func (p *panel) recolour() {
	p.back.colour(paint(rule), paint(ground))
	p.title.Color = paint(soft)
	p.title.Refresh()
}

func (p *panel) setTitle(text string) { setLine(p.title, text, soft) }

func (p *panel) CreateRenderer() fyne.WidgetRenderer { return &panelRenderer{p} }

type panelRenderer struct{ *panel }

func (r *panelRenderer) MinSize() fyne.Size { return fyne.NewSize(80, grown(panelHead)+20) }

func (r *panelRenderer) Layout(size fyne.Size) {
	r.back.resize(size)
	title := r.title.MinSize()
	head := grown(panelHead)
	r.title.Move(fyne.NewPos(10, (head-title.Height)/2))
	r.title.Resize(title)
	if r.aside != nil {
		left := 10 + title.Width + 10
		high := r.aside.MinSize().Height
		box{fyne.NewPos(left, (head-high)/2), fyne.NewSize(max(0, size.Width-left-8), high)}.put(r.aside)
	}
	box{fyne.NewPos(1, head), fyne.NewSize(max(0, size.Width-2), max(0, size.Height-head-3))}.put(r.body)
}

func (r *panelRenderer) Refresh() { r.recolour() }

func (r *panelRenderer) Objects() []fyne.CanvasObject {
	all := append(r.back.objects(), r.title)
	if r.aside != nil {
		all = append(all, r.aside)
	}
	return append(all, r.body)
}

func (r *panelRenderer) Destroy() {}
