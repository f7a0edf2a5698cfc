package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// buyLine is one line of the buying list; its count on hand can be typed.
type buyLine struct {
	widget.BaseWidget
	item    *canvas.Text
	full    string // the item's name, which may not fit
	cells   [4]*canvas.Text
	heading bool
	high    float32      // of a line with an entry
	onHand  *numberEntry // nil in the heading and for a bar, which is no count
	hint    string       // told while the pointer is on the line
	onHover func(string) // nil: nobody is told
}

func newBuyHeading() *buyLine {
	l := &buyLine{heading: true, full: "item", item: newLine("", smallSize, soft)}
	for i, head := range [...]string{"need", "on hand", "buy", "price"} {
		l.cells[i] = newLine(head, smallSize, soft)
	}
	return l.ready()
}

func newBuyLine(row buyRow, keep func(string) error, onWrong func(error), onHover func(string)) *buyLine {
	l := &buyLine{item: newLine("", textSize, ink), onHover: onHover}
	for i := range l.cells {
		l.cells[i] = newLine("", textSize, ink)
	}
	l.cells[2].TextStyle.Bold = true
	entry := newNumberEntry(keep, onWrong)
	if l.high = entry.MinSize().Height; !row.bar {
		l.onHand = entry
	}
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
	l.full, l.hint = row.label, hintOf(row)
	for i, text := range [...]string{row.need, onHandText(row), row.buy, row.price} {
		r := ink
		if (i == 2 && text == "0") || (i == 1 && row.bar) {
			r = soft
		}
		setLine(l.cells[i], text, r)
	}
	if l.onHand != nil {
		l.onHand.show(plainInt(row.onHand))
	}
	l.Refresh()
}

// onHandText stands where a bar has no count.
func onHandText(row buyRow) string {
	if row.bar {
		return "–"
	}
	return ""
}

// hintOf is what there is to say about a line: its whole name, which may not
// fit, and where to list bars one has.
func hintOf(row buyRow) string {
	bar := ""
	if row.bar {
		bar = "list bars you have under offcuts in the plan file"
	}
	return dotted(row.label, row.note, bar)
}

// MouseIn, MouseMoved and MouseOut tell what there is to say about the line.
func (l *buyLine) MouseIn(*desktop.MouseEvent) { l.tell(l.hint) }

// MouseMoved is part of being hoverable.
func (l *buyLine) MouseMoved(*desktop.MouseEvent) {}

// MouseOut ends it.
func (l *buyLine) MouseOut() { l.tell("") }

func (l *buyLine) tell(text string) {
	if l.onHover != nil {
		l.onHover(text)
	}
}

func (l *buyLine) height() float32 {
	if l.heading {
		return l.cells[0].MinSize().Height
	}
	return l.high
}

// HeightFor is the height of the entry, or of the heading.
func (l *buyLine) HeightFor(float32) float32 { return l.height() }

func (l *buyLine) CreateRenderer() fyne.WidgetRenderer { return &buyLineRenderer{l} }

type buyLineRenderer struct{ *buyLine }

func (r *buyLineRenderer) MinSize() fyne.Size { return fyne.NewSize(0, r.height()) }

func (r *buyLineRenderer) Layout(size fyne.Size) {
	boxes := buyBoxes(size.Width, size.Height)
	text := shorten(r.full, boxes[0].size.Width, func(s string) float32 { return fyne.MeasureText(s, r.item.TextSize, r.item.TextStyle).Width })
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
	if r.heading {
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
