package sheet

import (
	"math"

	"tubewright/cutlist/draw"
)

// column is one column of a table.
type column struct {
	head  string // wraps when it must
	group string // written once over columns that share it
	align draw.Align
	wraps bool // its cells are words and may take several lines
	bold  bool
}

// cell is one field of a table.
type cell struct {
	text   string
	letter string // a tube's letter in its colour
	tick   bool   // a box to tick
	bold   bool
}

// say makes a row of plain texts.
func say(texts ...string) []cell {
	row := make([]cell, len(texts))
	for i, s := range texts {
		row[i].text = s
	}
	return row
}

// table is rows under columns, laid out so that nothing is cut off.
type table struct {
	b      *book
	cols   []column
	rows   [][]cell
	size   float64
	widths []float64 // of the columns, with their padding
}

// padding is the white on each side of a cell's text, mm.
const padding = 1.1

// hair is given to a text as wide as its column, mm, so that it stays on one line.
const hair = 0.01

// widestHead is how wide a head may ask a column to be rather than wrap, mm.
const widestHead = 15.0

// mostLines is how many lines one cell may take before it is shortened.
const mostLines = 12

// table sets rows under columns, breaking pages between rows and setting the
// heads again on each page.
func (b *book) table(cols []column, rows [][]cell) {
	t := &table{b: b, cols: cols, rows: rows}
	for t.size = rowSize; !t.layOut(b.width()) && t.size > 1.6; t.size -= 0.1 {
	}
	t.heads(t.rowHeight(0))
	for i := range rows {
		if h := t.rowHeight(i); b.left() < h && b.need(h) {
			t.heads(0)
		}
		t.row(i)
	}
	b.y += 1.5
}

// layOut gives each column what its texts ask for, and takes what is too much
// from the columns that wrap. It reports whether that was possible.
func (t *table) layOut(width float64) bool {
	t.widths = make([]float64, len(t.cols))
	least := make([]float64, len(t.cols))
	sum, slack := 0.0, 0.0
	for c := range t.cols {
		t.widths[c], least[c] = t.wish(c)
		sum += t.widths[c]
		slack += t.widths[c] - least[c]
	}
	if over := sum - width; over > 0 && slack > 0 {
		part := math.Min(1, over/slack)
		for c := range t.widths {
			t.widths[c] -= part * (t.widths[c] - least[c])
		}
		return over <= slack
	}
	t.spread(width - sum)
	return sum <= width
}

// spread shares what is over among the columns that wrap, else among all.
func (t *table) spread(over float64) {
	n := 0
	for _, c := range t.cols {
		if c.wraps {
			n++
		}
	}
	for i, c := range t.cols {
		if n == 0 {
			t.widths[i] += math.Min(over/float64(len(t.cols)), 6)
		} else if c.wraps {
			t.widths[i] += over / float64(n)
		}
	}
}

// wish is the width a column would like and the least it can live with.
func (t *table) wish(c int) (wish, least float64) {
	col := t.cols[c]
	for _, word := range words(col.head) {
		least = math.Max(least, draw.TextWidth(word, t.headSize(), true))
	}
	wish = math.Max(least, math.Min(draw.TextWidth(col.head, t.headSize(), true), widestHead))
	for _, row := range t.rows {
		w := t.cellWidth(row[c], col)
		wish = math.Max(wish, w)
		if col.wraps {
			w = math.Min(w, 9*t.size) // a short word or two
		}
		least = math.Max(least, w)
	}
	return wish + 2*padding, least + 2*padding
}

func (t *table) headSize() float64 { return math.Min(t.size, fineSize) }

func (t *table) cellWidth(x cell, col column) float64 {
	switch {
	case x.tick:
		return 3
	case x.letter != "":
		return discWidth(x.letter, t.size)
	}
	return draw.TextWidth(x.text, t.size, col.bold || x.bold)
}

// lines breaks a cell's text.
func (t *table) lines(i, c int) []string {
	x, col := t.rows[i][c], t.cols[c]
	return wrapped(x.text, t.size, col.bold || x.bold, t.widths[c]-2*padding+hair, mostLines)
}

func (t *table) rowHeight(i int) float64 {
	if i >= len(t.rows) {
		return 0
	}
	most := 1
	for c := range t.cols {
		most = max(most, len(t.lines(i, c)))
	}
	return float64(most)*t.size*leading + 1.3
}

// heads sets the columns' heads, kept with a first row of this height.
func (t *table) heads(keep float64) {
	size, most := t.headSize(), 1
	heads := make([][]string, len(t.cols))
	for c, col := range t.cols {
		heads[c] = wrapped(col.head, size, true, t.widths[c]-2*padding+hair, 4)
		most = max(most, len(heads[c]))
	}
	over := t.groupHeight()
	h := over + float64(most)*size*leading + 1.4
	t.b.need(h + keep)
	th := t.b.theme
	t.b.add(draw.Box(margin, t.b.y, t.total(), h, th.Band, draw.Stroke{}))
	t.groups()
	x := margin
	for c, col := range t.cols {
		for n, line := range heads[c] {
			y := t.b.y + h - 1.5 - float64(len(heads[c])-1-n)*size*leading
			t.b.write(t.along(x, c, col.align), y, line, size, true, col.align, th.Ink)
		}
		x += t.widths[c]
	}
	t.b.y += h
	t.b.add(draw.Segment(margin, t.b.y, margin+t.total(), t.b.y, pen(0.25, th.Ink)))
}

// groupHeight is the room of the line over the heads, none without groups.
func (t *table) groupHeight() float64 {
	for _, c := range t.cols {
		if c.group != "" {
			return t.headSize()*leading + 0.8
		}
	}
	return 0
}

// groups writes each group's name over its columns, with a rule under it.
func (t *table) groups() {
	x, y := margin, t.b.y+t.headSize()*leading
	for c := 0; c < len(t.cols); {
		w, n := 0.0, c
		for ; n < len(t.cols) && t.cols[n].group == t.cols[c].group; n++ {
			w += t.widths[n]
		}
		if name := t.cols[c].group; name != "" {
			t.b.write(x+w/2, y-0.2*t.headSize(), name, t.headSize(), true, draw.Centre, t.b.theme.Ink)
			t.b.add(draw.Segment(x+2*padding, y+0.6, x+w-padding, y+0.6, pen(0.15, t.b.theme.Ink)))
		}
		x, c = x+w, n
	}
}

func (t *table) total() float64 {
	sum := 0.0
	for _, w := range t.widths {
		sum += w
	}
	return sum
}

// along is where a text of a column stands that starts at x.
func (t *table) along(x float64, c int, align draw.Align) float64 {
	switch align {
	case draw.Right:
		return x + t.widths[c] - padding
	case draw.Centre:
		return x + t.widths[c]/2
	case draw.Left:
	}
	return x + padding
}

func (t *table) row(i int) {
	h, x, th := t.rowHeight(i), margin, t.b.theme
	base := t.b.y + t.size*leading - 0.15
	for c, col := range t.cols {
		switch at := t.rows[i][c]; {
		case at.tick:
			t.b.add(tick(x+padding, base-t.size+0.1, 3, th))
		case at.letter != "":
			t.b.add(disc(at.letter, draw.Point{X: x + t.widths[c]/2, Y: base - halfCap*t.size}, t.size*0.95, th)...)
		default:
			for n, line := range t.lines(i, c) {
				y := base + float64(n)*t.size*leading
				t.b.write(t.along(x, c, col.align), y, line, t.size, col.bold || at.bold, col.align, th.Ink)
			}
		}
		x += t.widths[c]
	}
	t.b.y += h
	t.b.add(draw.Segment(margin, t.b.y, margin+t.total(), t.b.y, pen(0.12, th.Rule)))
}
