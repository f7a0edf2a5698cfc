package sheet

import (
	"slices"

	"tubewright/cutlist/draw"
	"tubewright/cutlist/measure"
	"tubewright/route"
)

// measuring is what to measure so that a draft becomes a plan to cut from: the
// short list, then each with its drawing and room to write.
func (b *book) measuring() {
	if !b.list.Draft {
		return
	}
	b.reasons()
	for _, group := range sittings(b.list.Measure) {
		b.sitting(group)
	}
}

// sittings parts the list where another kind of thing begins: one way of holding
// the tool serves all of a kind.
func sittings(things []measure.Thing) (groups [][]measure.Thing) {
	for _, t := range things {
		if n := len(groups); n > 0 && groups[n-1][0].Of == t.Of && groups[n-1][0].Kind == t.Kind {
			groups[n-1] = append(groups[n-1], t)
			continue
		}
		groups = append(groups, []measure.Thing{t})
	}
	return groups
}

// sittingNames head the groups of fittings.
var sittingNames = map[route.FittingKind]string{
	route.Socket: "Sockets", route.Extender: "Extenders", route.Offset: "Offsets", route.Elbow: "Elbows",
	route.Tee: "Tees", route.Valve: "Valves", route.Coupler: "Couplers", route.Plug: "Plugs",
}

func sittingName(t measure.Thing) string {
	switch t.Of {
	case measure.Port, measure.Place:
		return "Ports, part by part"
	case measure.Tube:
		return "Tube"
	case measure.Fitting:
	}
	return sittingNames[t.Kind]
}

// sitting is one kind of thing: how its numbers are taken, then a row to fill in
// for each.
func (b *book) sitting(group []measure.Thing) {
	most := slices.MaxFunc(group, func(x, y measure.Thing) int { return len(x.Numbers) - len(y.Numbers) })
	b.heading("To measure: "+sittingName(most), bodySize+0.8, SketchHeight+10)
	if most.Before != "" {
		b.para(most.Before)
	}
	if most.Of == measure.Port {
		b.howTo(measure.SketchPort, portHow())
		b.portRows(group)
		return
	}
	for i, n := range most.Numbers {
		if i == 0 || n.Sketch != most.Numbers[i-1].Sketch {
			b.howTo(n.Sketch, sketched(most.Numbers, n.Sketch))
		}
	}
	b.numberRows(group)
}

// sketched are the numbers that one drawing shows.
func sketched(all []measure.Number, s measure.Sketch) (list []measure.Number) {
	for _, n := range all {
		if n.Sketch == s {
			list = append(list, n)
		}
	}
	return list
}

func portHow() []measure.Number {
	return []measure.Number{
		{Name: "x, y, z", How: "Steel rule or depth rod from the wall that the table names to the middle of the port's face. z always from the back: the front is open while you work. x and y from the nearer wall."},
		{Name: "facing", How: "See with the square which way the port looks, out of its part; write it when the plan has it otherwise."},
	}
}

// howTo sets a drawing and beside it how each of its numbers is taken.
func (b *book) howTo(s measure.Sketch, numbers []measure.Number) {
	const gap = 4.0
	x, w := margin+SketchWidth+gap, b.width()-SketchWidth-gap
	var lines []struct {
		text string
		bold bool
	}
	for _, n := range numbers {
		lines = append(lines, struct {
			text string
			bold bool
		}{n.Name, true})
		for _, l := range wrapped(n.How, rowSize, false, w, 12) {
			lines = append(lines, struct {
				text string
				bold bool
			}{l, false})
		}
	}
	h := max(SketchHeight, float64(len(lines))*rowSize*leading+1) + 3
	b.need(h)
	b.pages[len(b.pages)-1].Place(MeasureSketch(s, "", b.theme), draw.Point{X: margin, Y: b.y + 1})
	b.add(draw.Frame(margin, b.y+1, SketchWidth, SketchHeight, pen(0.12, b.theme.Rule)))
	y := b.y + 1
	for _, l := range lines {
		y += rowSize * leading
		b.write(x, y-0.3*rowSize, l.text, rowSize, l.bold, draw.Left, b.theme.Ink)
	}
	b.y += h
}

// roomToWrite widens a column for handwriting.
const roomToWrite = "measured in the workshop"

// numberRows is a row for each number of each thing.
func (b *book) numberRows(group []measure.Thing) {
	var rows [][]cell
	for _, t := range group {
		for i, n := range t.Numbers {
			row := say("", t.Name, b.lettersOf(t.Runs), n.Name, b.typical(n), "")
			row[0].tick, row[1].bold = true, i == 0
			rows = append(rows, row)
		}
	}
	b.table([]column{
		{head: "done"},
		{head: "what", wraps: true},
		{head: "tubes", wraps: true},
		{head: "number"},
		{head: "typical", align: draw.Right},
		{head: roomToWrite, wraps: true},
	}, rows)
}

// typical writes a number as the plan has it.
func (b *book) typical(n measure.Number) string {
	switch n.Unit {
	case "deg":
		return trimmed(n.Value) + "°"
	case "%":
		return trimmed(n.Value) + " %"
	}
	return b.units.Text(n.Value)
}

// portRows is a row for each port.
func (b *book) portRows(group []measure.Thing) {
	var rows [][]cell
	for _, t := range group {
		row := say("", t.Name, b.lettersOf(t.Runs))
		row[0].tick = true
		for _, n := range t.Numbers {
			row = append(row, say(n.Name, b.typical(n), "")...)
		}
		rows = append(rows, append(row, cell{}))
	}
	cols := []column{{head: "done"}, {head: "port", wraps: true, bold: true}, {head: "tubes", wraps: true}}
	for _, axis := range []string{"x", "y", "z"} {
		cols = append(cols, column{head: axis, wraps: true}, column{head: "typical", align: draw.Right}, column{head: "measured", wraps: true})
	}
	b.table(append(cols, column{head: "facing", wraps: true}), rows)
}

// measureNumbers is every number to measure in full.
func (b *book) measureNumbers() {
	cols := []column{{head: "thing", wraps: true}, {head: "number", wraps: true}, figure("only typical"), {head: "unit"}}
	var rows [][]cell
	for _, t := range b.list.Measure {
		for _, n := range t.Numbers {
			rows = append(rows, say(t.Name, string(n.Key)+": "+n.Name, exact(n.Value), n.Unit))
		}
	}
	b.tableOf("To measure", cols, rows)
}
