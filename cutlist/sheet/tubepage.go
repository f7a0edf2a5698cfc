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
	b.page("Tube "+t.Letter+": "+t.Run, "Tube "+t.Letter+": "+t.Run)
	b.tubeTitle(t)
	b.facts(t)
	b.joins(t)
	b.straight(t)
	if len(t.Bench.Bends) > 0 {
		b.formed(t)
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
	rows := [][2]string{
		{"tube", made},
		{"way", t.Way.Name + b.because(t.Way.Reason)},
		{"window of lengths", "shortest " + b.lengthText(t.Cut.Shortest) + ", longest " + b.lengthText(t.Cut.Longest)},
		{"blank to saw", b.lengthText(t.Cut.Blank) + b.blankSum(t)},
	}
	if len(t.Bench.Bends) > 0 {
		rows = append(rows, [2]string{"former", fmt.Sprintf("centreline radius %s; springback %s + %s %% of the turn",
			b.units.TextUnit(spec.Radius), route.Degrees(spec.Springback.Degrees), trimmed(spec.Springback.Percent))})
	}
	for _, r := range rows {
		b.fact(r[0], r[1])
	}
	b.y += 1
}

func (b *book) because(reason string) string {
	if reason == "" {
		return ""
	}
	return ": " + reason
}

// blankSum says what a blank is made of.
func (b *book) blankSum(t cutlist.Tube) string {
	square := b.units.Text(b.list.Plan.Saw.Square)
	if len(t.Bench.Bends) == 0 {
		return fmt.Sprintf(" = %s + %s to square the ends", b.units.Text(t.Cut.Aim), square)
	}
	return fmt.Sprintf(" = %s + 2 × %s trim + %s to square the ends", b.units.Text(t.Cut.Aim), b.units.Text(t.Way.Formed.Tube.Trim), square)
}

// factIndent is where the facts start, right of their names.
const factIndent = 32.0

func (b *book) fact(name, text string) {
	lines := wrapped(text, rowSize, false, b.width()-factIndent, 8)
	b.need(float64(len(lines)) * rowSize * leading)
	for i, line := range lines {
		b.y += rowSize * leading
		if i == 0 {
			b.write(margin, b.y-0.3*rowSize, name, rowSize, false, draw.Left, b.theme.Faint)
		}
		b.write(margin+factIndent, b.y-0.3*rowSize, line, rowSize, false, draw.Left, b.theme.Ink)
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
		{head: "end", bold: true}, {head: "goes to port", wraps: true}, {head: "fittings, from the port outward", wraps: true},
		{head: "insertion mark", align: draw.Right, bold: true}, {head: "in at the aim", align: draw.Right}, {head: "never less", align: draw.Right},
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
	h := math.Max(roomyFor(t, b.units, b.width()), roomyHeight)
	b.need(h + 6)
	b.y += bodySize * leading
	said := "Before bending: marks from end A of the finished tube"
	if len(t.Bench.Bends) == 0 {
		said = "The tube"
	}
	b.write(margin, b.y-0.8, said, bodySize, true, draw.Left, b.theme.Ink)
	b.pages[len(b.pages)-1].Place(Straightened(t, b.units, b.theme, b.width(), h), draw.Point{X: margin, Y: b.y})
	b.y += h + 1
}

// formed draws the tube after bending, in two views when one is not enough.
func (b *book) formed(t cutlist.Tube) {
	w, h := b.width(), 62.0
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
		{head: "bend", bold: true, align: draw.Right}, {head: "turn", align: draw.Right, bold: true}, {head: "roll", align: draw.Right, bold: true},
		right("wrap arc"), {head: "form to", align: draw.Right, bold: true}, right("radius"), right("heat"),
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
	b.faint("Roll: turn the tube about itself by this much before the bend, clockwise (+) as seen looking from A toward B; wrap arc: the same measured round the outside. " +
		"Form to: the turn on the former, springback added. Back: from the end or the back of the bend before to the back of this bend, on the outside of the tube. " +
		"Straights of the finished tube from A to B: " + b.straights(t) + ".")
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

// markTable is where each bend starts, has its middle and ends, from both ends
// of the finished tube and of the squared blank.
func (b *book) markTable(t cutlist.Tube) {
	b.heading("Marks: start, middle and end of each bend", bodySize+0.2, 14)
	cols := []column{{head: "bend", bold: true, align: draw.Right}}
	for _, from := range []string{"finished, from A", "finished, from B", "blank, from A", "blank, from B"} {
		for _, what := range []string{"start", "middle", "end"} {
			cols = append(cols, column{head: what + " (" + from + ")", align: draw.Right, bold: from == "blank, from A"})
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
	b.y -= 1
	b.faint("The start is the one met first from A, also where it is measured from B. Marks on the blank count from its ends after squaring; bold is what you mark before bending.")
}

// trimmed writes a number with no more digits than it needs, to two decimals.
func trimmed(v float64) string {
	return strconv.FormatFloat(math.Round(v*100)/100, 'f', -1, 64)
}
