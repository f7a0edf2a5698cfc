package sheet

import (
	"fmt"
	"strconv"

	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/route"
)

// cutList is the pages for the saw: the table of tubes, then bar by bar the
// pieces in sawing order.
func (b *book) cutList() {
	b.page("Cut list", "Cut list")
	b.scaleBar()
	b.heading("Tubes", headSize, 20)
	if len(b.list.Tubes) == 0 {
		b.para("There is nothing to cut.")
		return
	}
	b.tubesTable()
	b.heading("Bars, in sawing order", headSize, 40)
	b.faint(fmt.Sprintf("Each cut loses %s (kerf). Lengths are of blanks: they hold %s to square the ends and, on bent tubes, what is trimmed after forming. "+
		"Measure each piece from its own fresh end: the column “saw at” counts from the bar's first end and shows where the piece ends.",
		b.units.TextUnit(b.list.Plan.Saw.Kerf), b.units.TextUnit(b.list.Plan.Saw.Square)))
	for _, s := range b.list.Spares {
		b.para(s.Tube + ": " + s.Why + ".")
	}
	for _, p := range b.list.Proof {
		b.para(p.Tube + ": " + p.Words() + ".")
	}
	for i, bar := range b.list.Bars {
		b.bar(i, bar)
	}
	b.sawn()
	b.howToRead()
}

// readings explains the words of the tubes' pages.
var readings = [...][2]string{
	{"A and B", "the tube's ends: A goes to the port its run starts from. Everything counts from A unless it says B."},
	{"blank to saw", "the finished length, twice what is trimmed off after forming (bent tubes only), and what squaring the ends takes."},
	{"marks", "start, middle and end of a bend along the centreline. The start is the one met first from A, also where it is measured from B. Marks on the blank count from its ends after squaring; the bold ones are what you mark before bending."},
	{"roll", "how far the plane of a bend is turned from that of the bend before, clockwise (+) looking from A toward B. The wrap arc is the same, measured round the outside of the tube."},
	{"form to", "the turn on the former: the bend's turn with the springback added."},
	{"heat", "the length to heat: the bend's arc and one diameter on each side (common practice)."},
	{"back before, after", "from the tube's end, or from the back of the bend before, to the back of this bend, and from there on: where the outsides of its two legs would meet. Take it with a ruler and a square."},
	{"wall", "what is left of the wall on the outside of the bend, and what gathers on the inside."},
	{"insertion mark", "how deep the end goes into its socket when fully home; in at the aim: when cut to the aim; never less: the shallowest safe."},
}

// howToRead is the words of the tubes' pages, once for all of them.
func (b *book) howToRead() {
	b.heading("How to read the pages of the tubes", headSize, 20)
	for _, r := range readings {
		b.need(b.factsHeight([][2]string{r}, b.width(), 32))
		b.fact(r[0], r[1], margin, b.width(), 32)
	}
}

// scaleBarLength is what the bar for checking the printer measures, mm.
const scaleBarLength = 100.0

// scaleBar draws a bar that a ruler must find 100 mm long.
func (b *book) scaleBar() {
	b.y += 6
	x := margin + 0.2
	b.add(ruler(draw.Point{X: x, Y: b.y}, draw.Point{X: 1}, b.theme)...)
	said := "Measure me: 100 mm (3.937 in)."
	b.write(x+scaleBarLength+4, b.y, said, rowSize, true, draw.Left, b.theme.Ink)
	b.y += 1
	b.faint("If it is not 100 mm long, print again at 100 % (“actual size”) before you measure anything on these sheets.")
}

// window writes shortest to longest.
func window(t cutlist.Tube, u route.Units) string {
	return u.Text(t.Cut.Shortest) + " – " + u.Text(t.Cut.Longest)
}

func (b *book) tubesTable() {
	cols := []column{
		{head: ""},
		{head: "run", wraps: true},
		{head: "tube", wraps: true},
		{head: "way", wraps: true},
		{head: "bends", align: draw.Right},
		{head: "cut to (aim)", align: draw.Right, bold: true},
		{head: "shortest – longest", align: draw.Right},
		{head: "blank", align: draw.Right},
	}
	if b.units == route.Inches {
		cols = append(cols, column{head: "blank, mm", align: draw.Right})
	}
	var rows [][]cell
	for _, t := range b.list.Tubes {
		row := say("", t.Run, t.Way.Tube.Name, t.Way.Name, strconv.Itoa(len(t.Bench.Bends)),
			b.units.Text(t.Cut.Aim), window(t, b.units), b.units.Text(t.Cut.Blank))
		row[0].letter = t.Letter
		if b.units == route.Inches {
			row = append(row, cell{text: route.Millimetres.Text(t.Cut.Blank)})
		}
		rows = append(rows, row)
	}
	b.table(cols, rows)
}

// money writes a price; the plan does not say in which money.
func money(v float64) string { return strconv.FormatFloat(v, 'f', 2, 64) }

// barHeight is how high a bar is drawn, mm.
const barHeight = 7.0

// bar sets one bar with its pieces to tick.
func (b *book) bar(i int, bar cutlist.Bar) {
	head := fmt.Sprintf("Bar %d of %d: %s, %s from %s", i+1, len(b.list.Bars), bar.Tube, b.units.TextUnit(bar.Length), source(bar))
	b.heading(head, bodySize+0.2, barHeight+14)
	d := Bar(b.list, bar, b.theme, b.width(), barHeight)
	b.pages[len(b.pages)-1].Place(d, draw.Point{X: margin, Y: b.y})
	b.y += barHeight + 1
	cols := []column{
		{head: "done"},
		{head: ""},
		{head: "run", wraps: true},
		{head: "for"},
		{head: "length", align: draw.Right, bold: true},
		{head: "saw at", align: draw.Right},
	}
	if b.units == route.Inches {
		cols = append(cols, column{head: "length, mm", align: draw.Right})
	}
	b.table(cols, b.pieceRows(bar))
	b.y -= 1
	b.faint(b.leftLine(bar))
}

func source(bar cutlist.Bar) string {
	if bar.From == "offcut" {
		return "your offcuts"
	}
	return bar.From
}

// pieceRows lists a bar's pieces with the place of each cut.
func (b *book) pieceRows(bar cutlist.Bar) (rows [][]cell) {
	at := 0.0
	for _, p := range bar.Pieces {
		at += p.Length
		row := say("", "", p.Run, b.purpose(p), b.units.Text(p.Length), b.units.Text(at))
		row[0].tick, row[1].letter = true, letterOf(b.list, p.Run)
		if b.units == route.Inches {
			row = append(row, cell{text: route.Millimetres.Text(p.Length)})
		}
		rows = append(rows, row)
		at += b.list.Plan.Saw.Kerf
	}
	return rows
}

func (b *book) purpose(p cutlist.Piece) string {
	if p.Spare {
		return "spare"
	}
	return "machine " + strconv.Itoa(max(1, p.Machine))
}

func (b *book) leftLine(bar cutlist.Bar) string {
	said := "Left: " + b.units.TextUnit(bar.Left)
	if bar.Keep {
		return said + ". Worth keeping: write its length on it."
	}
	return said + "."
}
