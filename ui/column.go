package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// column puts objects under one another, each as wide as the column and as
// high as it wants at that width.
type column struct {
	widget.BaseWidget
	items      []fyne.CanvasObject
	inset, gap float32
}

func newColumn(inset, gap float32, items ...fyne.CanvasObject) *column {
	c := &column{items: items, inset: inset, gap: gap}
	c.ExtendBaseWidget(c)
	return c
}

// set replaces what stands in the column.
func (c *column) set(items ...fyne.CanvasObject) {
	c.items = items
	c.Refresh()
}

func (c *column) boxes(width float32) ([]box, float32) {
	heights := make([]float32, len(c.items))
	for i, o := range c.items {
		if o.Visible() {
			heights[i] = heightFor(o, max(0, width-2*c.inset))
		}
	}
	return columnBoxes(width, c.inset, c.gap, heights)
}

// HeightFor is the height of all that stands in the column at a width.
func (c *column) HeightFor(width float32) float32 {
	if len(c.items) == 0 {
		return 0
	}
	_, height := c.boxes(width)
	return height
}

func (c *column) CreateRenderer() fyne.WidgetRenderer { return &columnRenderer{c} }

type columnRenderer struct{ *column }

func (r *columnRenderer) MinSize() fyne.Size {
	wide := float32(0)
	for _, o := range r.items {
		if _, flows := o.(tall); !flows && o.Visible() {
			wide = max(wide, o.MinSize().Width)
		}
	}
	if wide > 0 {
		wide += 2 * r.inset
	}
	return fyne.NewSize(wide, r.HeightFor(r.Size().Width))
}

func (r *columnRenderer) Layout(size fyne.Size) {
	boxes, _ := r.boxes(size.Width)
	for i, o := range r.items {
		boxes[i].put(o)
	}
}

// Refresh lays out again; each object refreshes itself when it changes.
func (r *columnRenderer) Refresh()                     { r.Layout(r.Size()) }
func (r *columnRenderer) Objects() []fyne.CanvasObject { return r.items }
func (r *columnRenderer) Destroy()                     {}

// pane is a column that scrolls when it is higher than its place.
type pane struct {
	widget.BaseWidget
	body   *column
	scroll *container.Scroll
}

func newPane(body *column) *pane {
	p := &pane{body: body, scroll: container.NewVScroll(body)}
	p.ExtendBaseWidget(p)
	return p
}

// HeightFor is the height that shows the column whole.
func (p *pane) HeightFor(width float32) float32 { return p.body.HeightFor(width) }

// reflow lays the column out again after something in it changed.
func (p *pane) reflow() {
	p.body.Resize(fyne.NewSize(p.Size().Width, p.body.HeightFor(p.Size().Width)))
	p.body.Refresh()
	relay(p.body)
	p.scroll.Refresh()
}

// relay lays out what stands in columns that kept their size, though what is in
// them may want another place.
func relay(o fyne.CanvasObject) {
	switch o := o.(type) {
	case *column:
		o.Refresh()
		for _, item := range o.items {
			relay(item)
		}
	case *beside:
		relay(o.left)
		relay(o.right)
	case *indent:
		relay(o.content)
	}
}

// reveal scrolls so that an object of the column can be seen.
func (p *pane) reveal(o fyne.CanvasObject) {
	top, height := p.within(o), o.Size().Height
	switch view := p.scroll.Size().Height; {
	case top < p.scroll.Offset.Y || height > view:
		p.scroll.Offset.Y = max(0, top-p.body.gap)
	case top+height > p.scroll.Offset.Y+view:
		p.scroll.Offset.Y = top + height - view + p.body.gap
	default:
		return
	}
	p.scroll.Refresh()
}

// scrollStep is how far one press of an arrow key scrolls a text.
const scrollStep = 40

// scrollBy scrolls as a key asks, and reports whether it asks for that.
func (p *pane) scrollBy(name fyne.KeyName) bool {
	page := max(scrollStep, p.scroll.Size().Height-scrollStep)
	steps := map[fyne.KeyName]float32{
		fyne.KeyUp: -scrollStep, fyne.KeyDown: scrollStep, fyne.KeyPageUp: -page, fyne.KeyPageDown: page,
		fyne.KeyHome: -p.body.Size().Height, fyne.KeyEnd: p.body.Size().Height,
	}
	step, ok := steps[name]
	if ok {
		p.scroll.Offset.Y = between(0, p.scroll.Offset.Y+step, max(0, p.body.Size().Height-p.scroll.Size().Height))
		p.scroll.Refresh()
	}
	return ok
}

// within is how far down the column an object stands.
func (p *pane) within(o fyne.CanvasObject) float32 {
	if y, ok := downIn(p.body, o); ok {
		return y
	}
	d := fyne.CurrentApp().Driver()
	return d.AbsolutePositionForObject(o).Y - d.AbsolutePositionForObject(p.body).Y
}

func (p *pane) CreateRenderer() fyne.WidgetRenderer { return &paneRenderer{p} }

type paneRenderer struct{ *pane }

func (r *paneRenderer) MinSize() fyne.Size { return fyne.NewSize(60, 40) }
func (r *paneRenderer) Layout(size fyne.Size) {
	r.body.Resize(fyne.NewSize(size.Width, max(size.Height, r.body.HeightFor(size.Width))))
	r.scroll.Resize(size)
}
func (r *paneRenderer) Refresh()                     { r.scroll.Refresh() }
func (r *paneRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.scroll} }
func (r *paneRenderer) Destroy()                     {}
