package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// buyLine is one line of the buying list; its count on hand can be typed.
type buyLine struct {
	widget.BaseWidget
	item   *canvas.Text
	full   string // the item's name, which may not fit
	cells  [4]*canvas.Text
	onHand *numberEntry // nil in the heading
}

func newBuyHeading() *buyLine {
	l := &buyLine{full: "item", item: newLine("", smallSize, soft)}
	for i, head := range [...]string{"need", "on hand", "buy", "price"} {
		l.cells[i] = newLine(head, smallSize, soft)
	}
	return l.ready()
}

func newBuyLine(row buyRow, keep func(string) error, onWrong func(error)) *buyLine {
	l := &buyLine{item: newLine("", textSize, ink)}
	for i := range l.cells {
		l.cells[i] = newLine("", textSize, ink)
	}
	l.cells[2].TextStyle.Bold = true
	l.onHand = newNumberEntry(keep, onWrong)
	l.ready()
	l.show(row)
	return l
}

func (l *buyLine) ready() *buyLine {
	for _, c := range l.cells {
		c.Alignment = fyne.TextAlignTrailing
	}
	l.ExtendBaseWidget(l)
	return l
}

func (l *buyLine) show(row buyRow) {
	l.full = row.item
	for i, text := range [...]string{row.need, "", row.buy, row.price} {
		r := ink
		if i == 2 && text == "0" {
			r = soft
		}
		setLine(l.cells[i], text, r)
	}
	l.onHand.show(plainInt(row.onHand))
	l.Refresh()
}

func (l *buyLine) height() float32 {
	if l.onHand != nil {
		return l.onHand.MinSize().Height
	}
	return l.cells[0].MinSize().Height
}

// HeightFor is the height of the entry, or of the heading.
func (l *buyLine) HeightFor(float32) float32 { return l.height() }

func (l *buyLine) CreateRenderer() fyne.WidgetRenderer { return &buyLineRenderer{l} }

type buyLineRenderer struct{ *buyLine }

func (r *buyLineRenderer) MinSize() fyne.Size { return fyne.NewSize(0, r.height()) }

func (r *buyLineRenderer) Layout(size fyne.Size) {
	boxes := buyBoxes(size.Width, size.Height)
	text := shorten(r.full, boxes[0].size.Width, func(s string) float32 { return widthOf(s, r.item.TextSize, false) })
	setLine(r.item, text, r.itemRole())
	centred(boxes[0], r.item)
	for i, c := range r.cells {
		centred(boxes[i+1], c)
	}
	if r.onHand != nil {
		boxes[2].put(r.onHand)
	}
}

func (r *buyLineRenderer) itemRole() role {
	if r.onHand == nil {
		return soft
	}
	return ink
}

// centred puts a line of text into the middle of a box's height.
func centred(b box, t *canvas.Text) {
	high := t.MinSize().Height
	b.at.Y += (b.size.Height - high) / 2
	b.size.Height = high
	b.put(t)
}

func (r *buyLineRenderer) Refresh() { r.Layout(r.Size()) }

func (r *buyLineRenderer) Objects() []fyne.CanvasObject {
	all := []fyne.CanvasObject{r.item}
	for _, c := range r.cells {
		all = append(all, c)
	}
	if r.onHand != nil {
		all = append(all, r.onHand)
	}
	return all
}

func (r *buyLineRenderer) Destroy() {}
