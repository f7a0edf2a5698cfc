package sheet

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"tubewright/bends"
	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/route"
)

// tube is the page of one tube for the bench.
func (b *book) tube(t cutlist.Tube) {
	h := formedHeights[0]
	if b.fits(t, formedHeights[len(formedHeights)-1]) {
		for _, h = range formedHeights {
			if b.fits(t, h) {
				break
			}
		}
	}
	b.tubePage(t, h)
}

// fits reports whether a tube's page holds all with a drawing of this height.
func (b *book) fits(t cutlist.Tube, formedHeight float64) bool {
	try := newBook(b.list, b.opt)
	try.tubePage(t, formedHeight)
	return len(try.pages) == 1
}

// formedHeights is how high the drawing of the formed tube may be, mm: the
// first with which all goes on one page; the first of all when none does.
var formedHeights = [...]float64{70, 60, 50, 42, 36}

func (b *book) tubePage(t cutlist.Tube, formedHeight float64) {
	b.page("Tube "+t.Letter+": "+t.Run, "Tube "+t.Letter+": "+t.Run)
	b.tubeTitle(t)
	b.madeLine(t)
	b.facts(t)
	b.joins(t)
	b.straight(t)
	if len(t.Bench.Bends) > 0 {
		b.formed(t, formedHeight)
		b.bendTable(t)
		b.markTable(t)
	}
	b.work(t)
}

// tubeTitle sets the letter, the run's name and the length to cut to.
func (b *book) tubeTitle(t cutlist.Tube) {
	const size = 6.0
	aim := b.lengthText(t.Cut.Aim)
	aimW := draw.TextWidth(aim, size, true)
	letterW := discWidth(t.Letter, size)
	lines := wrapped(t.Run, headSize, true, b.width()-letterW-aimW-10, 4)
	base := b.y + 7
	b.add(disc(t.Letter, draw.Point{X: margin + letterW/2 + 0.5, Y: base - 2.1}, size, b.theme)...)
	b.write(b.w-margin, base, aim, size, true, draw.Right, b.theme.Ink)
	b.write(b.w-margin, base+3.6, "finished length (aim)", fineSize, false, draw.Right, b.theme.Faint)
	for i, line := range lines {
		b.write(margin+letterW+4, base+float64(i)*headSize*leading, line, headSize, true, draw.Left, b.theme.Ink)
	}
	b.y = base + math.Max(4.5, float64(len(lines)-1)*headSize*leading+1.5) + 1
}

// lengthText writes a length in the plan's units, and in mm beside inches.
func (b *book) lengthText(mm float64) string {
	if b.units == route.Inches {
		return b.units.TextUnit(mm) + " (" + route.Millimetres.TextUnit(mm) + ")"
	}
	return b.units.TextUnit(mm)
}

// facts is the tube's numbers that belong to no bend.
func (b *book) facts(t cutlist.Tube) {
	spec := t.Way.Tube
	made := fmt.Sprintf("%s: %s, %s outside, %s inside", spec.Name, spec.Material, b.units.Text(spec.OD), b.units.TextUnit(spec.ID))
	left := [][2]string{
		{"shortest", b.lengthText(t.Cut.Shortest)},
		{"longest", b.lengthText(t.Cut.Longest)},
		{"blank to saw", b.lengthText(t.Cut.Blank) + b.blankSum(t)},
	}
	right := [][2]string{{"tube", made}, {"way", t.Way.Name + b.because(t.Way.Reason)}}
	if len(t.Bench.Bends) > 0 {
		right = append(right, [2]string{"former", fmt.Sprintf("centreline radius %s; springback %s + %s %%",
			b.units.TextUnit(spec.Radius), route.Degrees(spec.Springback.Degrees), trimmed(spec.Springback.Percent))})
	}
	half := b.width()/2 - 2
	most := math.Max(b.factsHeight(left, half, 21), b.factsHeight(right, half, 14))
	b.need(most)
	y := b.y
	b.factColumn(left, margin, half, 21)
	b.y = y
	b.factColumn(right, margin+half+4, half, 14)
	b.y = y + most + 1
}

func (b *book) factsHeight(rows [][2]string, w, indent float64) (h float64) {
	for _, r := range rows {
		h += float64(len(wrapped(r[1], rowSize, false, w-indent, 8)))*rowSize*leading + 0.6
	}
	return h
}

func (b *book) factColumn(rows [][2]string, x, w, indent float64) {
	for _, r := range rows {
		b.fact(r[0], r[1], x, w, indent)
	}
}

func (b *book) because(reason string) string {
	if reason == "" {
		return ""
	}
	return ": " + reason
}

// blankSum says what a blank is made of: the aim, two trims, what squares the ends.
func (b *book) blankSum(t cutlist.Tube) string {
	square := b.units.Text(b.list.Plan.Saw.Square)
	if len(t.Bench.Bends) == 0 {
		return fmt.Sprintf(" = %s + %s", b.units.Text(t.Cut.Aim), square)
	}
	return fmt.Sprintf(" = %s + 2 × %s + %s", b.units.Text(t.Cut.Aim), b.units.Text(t.Way.Formed.Tube.Trim), square)
}

// fact sets a name and, moved in, what it is; w is the width of both.
func (b *book) fact(name, text string, x, w, indent float64) {
	for i, line := range wrapped(text, rowSize, false, w-indent, 8) {
		b.y += rowSize * leading
		if i == 0 {
			b.write(x, b.y-0.3*rowSize, name, rowSize, false, draw.Left, b.theme.Faint)
		}
		b.write(x+indent, b.y-0.3*rowSize, line, rowSize, false, draw.Left, b.theme.Ink)
	}
	b.y += 0.6
}

// joins says what each end goes into.
func (b *book) joins(t cutlist.Tube) {
	var rows [][]cell
	for i, laid := range []route.Laid{t.Way.Start, t.Way.End} {
		in := laid.Socket.Insertion
		rows = append(rows, say([]string{"A", "B"}[i], laid.Port.Ref.String(), chainText(laid),
			b.units.Text(in.Full), b.units.Text(in.Full-t.Way.Ends.SeatGap[i]), b.units.Text(in.Least)))
	}
	b.table([]column{
		{head: "end", bold: true},
		{head: "goes to port", wraps: true},
		{head: "fittings, from the port outward", wraps: true},
		{head: "insertion mark", align: draw.Right, bold: true},
		{head: "in at the aim", align: draw.Right},
		{head: "never less", align: draw.Right},
	}, rows)
}

// chainText names the fittings of a chain with their rolls.
func chainText(l route.Laid) string {
	var names []string
	for _, body := range l.Bodies {
		name := body.Fitting.Name
		if k := body.Fitting.Kind; k == route.Offset || k == route.Elbow {
			name += " at " + signed(body.Roll)
		}
		names = append(names, name)
	}
	return strings.Join(names, ", ")
}

// straight draws the tube before bending.
func (b *book) straight(t cutlist.Tube) {
	h := roomyFor(t, b.units, b.width())
	b.need(h + 6)
	b.y += bodySize * leading
	said := "Before bending: marks from end A of the squared blank"
	if len(t.Bench.Bends) == 0 {
		said = "The tube"
	}
	b.write(margin, b.y-0.8, said, bodySize, true, draw.Left, b.theme.Ink)
	s := newStrip(t, b.units, b.theme, b.width(), roomyHeight)
	s.roomy()
	b.pages[len(b.pages)-1].Place(s.d, draw.Point{X: margin, Y: b.y})
	b.y += h + 1
}

// formed draws the tube after bending, in two views when one is not enough.
func (b *book) formed(t cutlist.Tube, h float64) {
	w := b.width()
	views := []bool{false}
	if !flat(t.Way.Formed) {
		views, w = []bool{false, true}, (b.width()-4)/2
	}
	b.need(h + 5)
	b.y += bodySize * leading
	for i, edge := range views {
		d, scale := FormedView(t, b.units, b.theme, edge, w, h)
		title := [...]string{"After bending, lying flat", "Seen along the bench"}[i] + " (" + scale + ")"
		x := margin + float64(i)*(w+4)
		b.write(x, b.y-0.8, title, shrunk(title, bodySize, 1.8, true, w), true, draw.Left, b.theme.Ink)
		b.add(draw.Frame(x, b.y, w, h, pen(0.12, b.theme.Rule)))
		b.pages[len(b.pages)-1].Place(d, draw.Point{X: x, Y: b.y})
	}
	b.y += h + 1.5
}

// bendTable is one row per bend: what to set and what to measure.
func (b *book) bendTable(t cutlist.Tube) {
	b.heading("Bends, in order from end A", bodySize+0.2, 14)
	right := func(head string) column { return column{head: head, align: draw.Right} }
	cols := []column{
		{head: "bend", bold: true, align: draw.Right},
		{head: "turn", align: draw.Right, bold: true},
		{head: "roll", align: draw.Right, bold: true},
		right("wrap arc"),
		{head: "form to", align: draw.Right, bold: true},
		right("radius"), right("heat"),
		right("back before"), right("back after"), right("wall outside"), right("wall inside"),
	}
	var rows [][]cell
	for i, m := range t.Bench.Bends {
		rows = append(rows, say(strconv.Itoa(i+1), route.Degrees(m.Turn), b.roll(i, m.Roll), b.units.Text(m.Wrap), route.Degrees(m.FormTo),
			b.units.Text(m.Radius), b.units.Text(m.Heat), b.units.Text(m.Back.Before), b.units.Text(m.Back.After),
			b.fine(m.OuterWall), b.fine(m.InnerWall)))
	}
	b.table(cols, rows)
	b.y -= 1
	b.faint("Straights of the finished tube from A to B: " + b.straights(t) + ".")
}

func (b *book) roll(i int, roll float64) string {
	if i == 0 {
		return "first"
	}
	return signed(roll)
}

// fine writes a wall's thickness, which a tenth of a millimetre is too coarse for.
func (b *book) fine(mm float64) string {
	if b.units == route.Inches {
		return b.units.Text(mm)
	}
	return strconv.FormatFloat(mm, 'f', 2, 64)
}

func (b *book) straights(t cutlist.Tube) string {
	texts := make([]string, len(t.Bench.Straights))
	for i, s := range t.Bench.Straights {
		texts[i] = b.units.Text(s)
	}
	return strings.Join(texts, " · ")
}

// markedOn is the marks one makes before bending.
const markedOn = "blank, from A"

// markTable is where each bend starts, has its middle and ends, from both ends
// of the finished tube and of the squared blank.
func (b *book) markTable(t cutlist.Tube) {
	b.heading("Marks: start, middle and end of each bend", bodySize+0.2, 14)
	cols := []column{{head: "bend", bold: true, align: draw.Right}}
	for _, from := range []string{"finished, from A", "finished, from B", markedOn, "blank, from B"} {
		for _, what := range []string{"start", "middle", "end"} {
			cols = append(cols, column{head: what, group: from, align: draw.Right, bold: from == markedOn})
		}
	}
	var rows [][]cell
	for i, m := range t.Bench.Bends {
		row := []string{strconv.Itoa(i + 1)}
		for _, k := range []bends.Marks{m.FromA, m.FromB, m.BlankA, m.BlankB} {
			row = append(row, b.units.Text(k.Start), b.units.Text(k.Middle), b.units.Text(k.End))
		}
		rows = append(rows, say(row...))
	}
	b.table(cols, rows)
}

// trimmed writes a number with no more digits than it needs, to two decimals.
func trimmed(v float64) string {
	return strconv.FormatFloat(math.Round(v*100)/100, 'f', -1, 64)
}
