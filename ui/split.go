package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// split is a list at the left and, at the right, something that stays in sight
// above rows that scroll.
type split struct {
	widget.BaseWidget
	list *pane
	top  *column
	rows *pane
	gap  float32
}

// splitGap is between what stays in sight and the rows under it, in Fyne's pixels.
const splitGap float32 = 8

func newSplit(gap float32, list *pane, top *column, rows *pane) *split {
	s := &split{list: list, top: top, rows: rows, gap: gap}
	s.ExtendBaseWidget(s)
	return s
}

func (s *split) each(width float32) float32 { return max(0, (width-s.gap)/2) }

// HeightFor is the height that shows the higher side whole.
func (s *split) HeightFor(width float32) float32 {
	each := s.each(width)
	right := s.top.HeightFor(each) + splitGap + s.rows.body.HeightFor(each)
	return max(s.list.body.HeightFor(each), right)
}

// reflow lays all of it out again.
func (s *split) reflow() {
	s.Refresh()
	s.list.reflow()
	s.rows.reflow()
}

func (s *split) held() []fyne.CanvasObject { return []fyne.CanvasObject{s.list, s.top, s.rows} }

// reveal scrolls the side in which something stands, so that it can be seen.
func (s *split) reveal(o fyne.CanvasObject) {
	for _, side := range []*pane{s.list, s.rows} {
		if _, ok := downIn(side.body, o); ok {
			side.reveal(o)
		}
	}
}

func (s *split) CreateRenderer() fyne.WidgetRenderer { return &splitRenderer{s} }

type splitRenderer struct{ *split }

func (r *splitRenderer) MinSize() fyne.Size { return fyne.NewSize(120, 80) }

func (r *splitRenderer) Layout(size fyne.Size) {
	each := r.each(size.Width)
	x, top := each+r.gap, r.top.HeightFor(each)
	box{size: fyne.NewSize(each, size.Height)}.put(r.list)
	box{fyne.NewPos(x, 0), fyne.NewSize(each, top)}.put(r.top)
	r.top.Refresh()
	box{fyne.NewPos(x, top+splitGap), fyne.NewSize(each, max(0, size.Height-top-splitGap))}.put(r.rows)
}

func (r *splitRenderer) Refresh() { r.Layout(r.Size()) }

func (r *splitRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.list, r.top, r.rows}
}

func (r *splitRenderer) Destroy() {}
