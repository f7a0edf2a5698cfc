package sheet

import (
	"fmt"
	"strconv"
	"strings"

	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/route"
)

// batch is the pages for machines built in batches: which tubes share a jig, and
// what to check on the first piece of each.
func (b *book) batch() {
	if b.list.Plan.Build <= 1 || len(b.list.Tubes) == 0 {
		return
	}
	templates := b.list.Batch()
	b.page("The batch", "The batch")
	b.heading(fmt.Sprintf("The batch: %d machines", b.list.Plan.Build), headSize, 30)
	b.para(jigsSaid(templates))
	b.jigs(templates)
	b.heading("First article check", headSize, 40)
	b.para("Make one piece of each and check it before you make the rest. Each tolerance holds while all else is true; together they add up, so a dry fit in the machine has the last word. " +
		"Lengths to a back and spans: what both sockets give sideways. Turns and rolls: what both give in degrees. Finished length: what the sockets' insertion leaves.")
	for _, m := range templates {
		b.firstArticle(m)
	}
}

// jigsSaid says how many jigs there are to make, and why not more.
func jigsSaid(all []cutlist.Template) string {
	mirrors := 0
	for _, m := range all {
		if m.MirrorOf != "" {
			mirrors++
		}
	}
	said := fmt.Sprintf("%s to make: tubes of one shape, read from either end, share one.", count(len(all), "jig"))
	if mirrors > 0 {
		said += fmt.Sprintf(" %s another's mirror image: the same straights and turns, with every roll the other way.", isAre(mirrors))
	}
	return said
}

func isAre(n int) string {
	if n == 1 {
		return "One is"
	}
	return strconv.Itoa(n) + " are"
}

func (b *book) jigs(all []cutlist.Template) {
	var rows [][]cell
	for _, m := range all {
		row := say("", runsSaid(m), strconv.Itoa(len(m.Tube.Bench.Bends)), b.units.Text(m.Tube.Cut.Aim), strconv.Itoa(m.Each), strconv.Itoa(m.Pieces), jigSaid(m))
		row[0].letter = m.Letter
		rows = append(rows, row)
	}
	b.table([]column{
		{head: ""}, {head: "tube: runs", wraps: true}, figure("bends"), figure("cut to (aim)"), figure("a machine"), figure("pieces to make"), {head: "jig", wraps: true},
	}, rows)
}

// runsSaid names a template's runs, and which of them is turned round on it.
func runsSaid(m cutlist.Template) string {
	names := make([]string, len(m.Runs))
	for i, r := range m.Runs {
		names[i] = r
		if m.Reversed[i] {
			names[i] += " (from its end B)"
		}
	}
	return strings.Join(names, ", ")
}

func jigSaid(m cutlist.Template) string {
	switch {
	case len(m.Tube.Bench.Bends) == 0:
		return "a stop on the saw"
	case m.MirrorOf != "":
		return "mirror of " + m.MirrorOf
	}
	return "template " + m.Letter
}

// firstArticle is the table of one template's first piece.
func (b *book) firstArticle(m cutlist.Template) {
	checks := m.Tube.FirstArticle()
	b.heading("Tube "+m.Letter+": "+strings.Join(m.Runs, ", ")+"; "+count(m.Pieces, "piece"), bodySize+0.4, 30)
	if m.MirrorOf != "" {
		b.faint("Mirror of " + m.MirrorOf + ": take care not to mix the two up; every roll goes the other way.")
	}
	var rows [][]cell
	for _, c := range checks {
		rows = append(rows, say(c.What, b.checked(c.Nominal, c.Unit), b.tolerance(c), "", ""))
		rows[len(rows)-1][4].tick = true
	}
	b.table([]column{
		{head: "check on the first piece", wraps: true},
		{head: "nominal", align: draw.Right, bold: true},
		{head: "tolerance", align: draw.Right},
		{head: roomToWrite, wraps: true},
		{head: "good"},
	}, rows)
}

func (b *book) checked(v float64, unit string) string {
	if unit == "deg" {
		return route.Degrees(v)
	}
	return b.units.Text(v)
}

func (b *book) tolerance(c cutlist.Check) string {
	if c.Below == c.Above {
		return "± " + b.checked(c.Above, c.Unit)
	}
	return "−" + b.checked(c.Below, c.Unit) + " +" + b.checked(c.Above, c.Unit)
}

// batchNumbers is every number of the batch in full.
func (b *book) batchNumbers() {
	if b.list.Plan.Build <= 1 {
		return
	}
	cols := []column{{head: ""}, {head: "check", wraps: true}, figure("nominal"), figure("below"), figure("above"), {head: "unit"}}
	var rows [][]cell
	for _, m := range b.list.Batch() {
		for _, c := range m.Tube.FirstArticle() {
			row := say("", c.What, exact(c.Nominal), exact(c.Below), exact(c.Above), c.Unit)
			row[0].letter = m.Letter
			rows = append(rows, row)
		}
	}
	b.tableOf("First article checks", cols, rows)
}

// jigTubes are the tubes that need a template of their own: in a batch one of
// each shape.
func (b *book) jigTubes() []cutlist.Tube {
	if b.list.Plan.Build <= 1 {
		return b.list.Tubes
	}
	var tubes []cutlist.Tube
	for _, m := range b.list.Batch() {
		tubes = append(tubes, m.Tube)
	}
	return tubes
}

// jigRuns names the runs a template is for.
func (b *book) jigRuns(t cutlist.Tube) string {
	if b.list.Plan.Build > 1 {
		for _, m := range b.list.Batch() {
			if m.Letter == t.Letter {
				return runsSaid(m)
			}
		}
	}
	return t.Run
}
