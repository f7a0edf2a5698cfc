package sheet

import (
	"strconv"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/route/check"
)

// numbers is the pages with every number of the answer as it is, for whoever
// checks a tube by other means: the other pages round to what a saw can do.
func (b *book) numbers() {
	if len(b.list.Tubes) == 0 && len(b.list.Findings) == 0 {
		return
	}
	b.section("Numbers in full")
	b.heading("Numbers in full", headSize, 30)
	b.faint("To 0.01, in mm and degrees whatever the plan counts in: the same numbers as in the answer file. " +
		"The other pages round them to what can be sawn and marked.")
	b.cutNumbers()
	b.cornerNumbers()
	b.bendNumbers()
	b.budgetNumbers()
	b.barNumbers()
	b.findingNumbers()
	b.measureNumbers()
	b.madeNumbers()
	b.batchNumbers()
}

// exact writes a number to 0.01 without needless zeros.
func exact(v float64) string { return trimmed(v + 0) } // +0 turns −0 into 0

func exactAll(values []float64, between string) string {
	texts := make([]string, len(values))
	for i, v := range values {
		texts[i] = exact(v)
	}
	return strings.Join(texts, between)
}

func figure(head string) column { return column{head: head, align: draw.Right} }

func (b *book) cutNumbers() {
	cols := []column{{head: ""}, figure("aim"), figure("shortest"), figure("longest"), figure("blank"), figure("cost"), {head: "straights, from A to B", wraps: true}}
	var rows [][]cell
	for _, t := range b.list.Tubes {
		row := say("", exact(t.Cut.Aim), exact(t.Cut.Shortest), exact(t.Cut.Longest), exact(t.Cut.Blank), exact(t.Way.Cost), exactAll(t.Bench.Straights, " · "))
		row[0].letter = t.Letter
		rows = append(rows, row)
	}
	b.tableOf("Lengths", cols, rows)
}

func (b *book) cornerNumbers() {
	cols := []column{{head: ""}, {head: "corners of the centreline from stop to stop: x y z in the case", wraps: true}}
	var rows [][]cell
	for _, t := range b.list.Tubes {
		texts := make([]string, len(t.Way.Formed.Corners))
		for i, c := range t.Way.Formed.Corners {
			texts[i] = coordinates(c)
		}
		row := say("", strings.Join(texts, " · "))
		row[0].letter = t.Letter
		rows = append(rows, row)
	}
	b.tableOf("Corners", cols, rows)
}

func coordinates(v mgl64.Vec3) string { return exactAll(v[:], " ") }

func (b *book) bendNumbers() {
	cols := []column{
		{head: ""}, figure("bend"), figure("turn"), figure("roll"), figure("radius"), figure("start"), figure("middle"), figure("end"), figure("form to"), figure("heat"),
	}
	var rows [][]cell
	for _, t := range b.list.Tubes {
		for i, m := range t.Bench.Bends {
			row := say("", strconv.Itoa(i+1), exact(m.Turn), exact(m.Roll), exact(m.Radius),
				exact(m.FromA.Start), exact(m.FromA.Middle), exact(m.FromA.End), exact(m.FormTo), exact(m.Heat))
			row[0].letter = t.Letter
			rows = append(rows, row)
		}
	}
	b.tableOf("Bends, marks from end A of the finished tube", cols, rows)
}

func (b *book) barNumbers() {
	cols := []column{figure("bar"), {head: "tube", wraps: true}, figure("length"), {head: "pieces, in sawing order", wraps: true}, figure("left")}
	var rows [][]cell
	for i, bar := range b.list.Bars {
		lengths := make([]float64, len(bar.Pieces))
		for n, p := range bar.Pieces {
			lengths[n] = p.Length
		}
		rows = append(rows, say(strconv.Itoa(i+1), bar.Tube, exact(bar.Length), exactAll(lengths, " · "), exact(bar.Left)))
	}
	b.tableOf("Bars", cols, rows)
	b.faint(strings.Join(proofNumbers(b.list.Proof), ". "))
}

func proofNumbers(all []cutlist.Proof) (texts []string) {
	for _, p := range all {
		texts = append(texts, p.Tube+": cost "+exact(p.Cost)+", bound "+exact(p.Bound))
	}
	return texts
}

func (b *book) findingNumbers() {
	cols := []column{{head: "finding"}, {head: "of", wraps: true}, figure("measure"), {head: "unit"}, {head: "move by x y z", wraps: true}, {head: "or shortest by x y z", wraps: true}}
	var rows [][]cell
	for _, f := range b.list.Findings {
		if f.Measure != 0 || f.Move != nil || f.Least != nil {
			rows = append(rows, say(string(f.Code), strings.Join(append(f.Runs, f.Parts...), ", "), exact(f.Measure), f.Unit, moveNumbers(f.Move), moveNumbers(f.Least)))
		}
	}
	b.tableOf("Findings", cols, rows)
}

func moveNumbers(m *check.Move) string {
	if m == nil {
		return ""
	}
	return m.Part + ": " + coordinates(m.By)
}

// tableOf sets a table under a heading, or nothing when it has no rows.
func (b *book) tableOf(head string, cols []column, rows [][]cell) {
	if len(rows) == 0 {
		return
	}
	b.heading(head, bodySize+0.2, 14)
	b.table(cols, rows)
}
