package sheet

import (
	"fmt"
	"io"
	"math"
	"slices"

	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/cutlist/measure"
	"tubewright/route"
	"tubewright/route/survey"
)

// Sizes of the survey's form, mm: what a pencil needs.
const (
	surveyRow  = 9.0 // a port's row
	surveyHead = 5.0
	surveyW    = 108.0 // the drawing of a part in two looks
	surveyH    = 42.0
)

// SurveyPages is the survey of a plan's ports to print and fill in by hand: all
// ports, part by part, with the faces of the case to measure from. A plan needs
// no run for it. What the options say of paper, date and revision holds.
func SurveyPages(plan route.Plan, o Options) []draw.Drawing {
	b := newBook(cutlist.List{Plan: plan}, o)
	b.surveyOf(survey.Groups(plan))
	return b.finished()
}

// SurveyPDF writes the survey as one document.
func SurveyPDF(w io.Writer, plan route.Plan, o Options) error {
	return draw.PDF(w, draw.About{Title: plan.Name, Subject: "survey of the ports"}, SurveyPages(plan, o)...)
}

// surveying is the survey as a chapter: the parts with a port that a draft wants
// measured.
func (b *book) surveying() {
	if !b.list.Draft {
		return
	}
	wanted := func(part string) bool {
		return slices.ContainsFunc(b.list.Measure, func(t measure.Thing) bool { return t.Of == measure.Port && t.Ref.Part == part })
	}
	groups := slices.DeleteFunc(survey.Groups(b.list.Plan), func(g survey.Group) bool { return !wanted(g.Part) })
	if len(groups) > 0 {
		b.surveyOf(groups)
	}
}

func (b *book) surveyOf(groups []survey.Group) {
	b.page("Survey of the ports", "Survey of the ports")
	b.heading("Survey of the ports", headSize, 20)
	b.surveyTop()
	if len(groups) == 0 {
		b.para("The plan has no port yet: give its parts ports, and print again.")
	}
	for _, g := range groups {
		b.surveyPart(g)
	}
}

// surveyTop is the lines for name and date, and how to measure.
func (b *book) surveyTop() {
	const gap = 4.0
	b.pages[len(b.pages)-1].Place(MeasureSketch(measure.SketchPort, "", b.theme), draw.Point{X: margin, Y: b.y + 1})
	b.add(draw.Frame(margin, b.y+1, SketchWidth, SketchHeight, pen(0.12, b.theme.Rule)))
	x, y, w := margin+SketchWidth+gap, b.y+1, b.width()-SketchWidth-gap
	for _, said := range []string{
		fmt.Sprintf("Fit every part as it will stay, screws tight. Measure in %s to the middle of each port's face, with a square against the wall, so that the rule runs along the axis.", unitName(b.units)),
		fmt.Sprintf("x runs right, y up, z toward you. z is always from the back wall, for the front is open. x and y are from the wall that is named, the nearer one. The case is %s wide, %s high, %s deep: measure it first.",
			b.units.Text(b.list.Plan.Case[0]), b.units.Text(b.list.Plan.Case[1]), b.units.TextUnit(b.list.Plan.Case[2])),
		"Small print is what the plan has: hold it against what you read, do not copy it.",
	} {
		for _, line := range wrapped(said, rowSize, false, w, 6) {
			y += rowSize * leading
			b.write(x, y-0.3*rowSize, line, rowSize, false, draw.Left, b.theme.Ink)
		}
		y += 0.8
	}
	b.y += SketchHeight + 4
	third := b.width() / 3
	for i, word := range []string{"measured by", "date", "checked by"} {
		at := margin + float64(i)*third
		b.write(at, b.y+6, word, fineSize, false, draw.Left, b.theme.Faint)
		from := at + draw.TextWidth(word, fineSize, false) + 1.5
		b.add(draw.Segment(from, b.y+6.5, at+third-4, b.y+6.5, pen(0.2, b.theme.Ink)))
	}
	b.y += 10
}

func unitName(u route.Units) string {
	if u == route.Inches {
		return "inches"
	}
	return "millimetres"
}

// surveyPart is a part's drawing and its form.
func (b *book) surveyPart(g survey.Group) {
	b.heading(g.Part, bodySize+0.8, surveyH+surveyHead+2*surveyRow)
	part, _ := b.list.Plan.FindPart(g.Part)
	b.pages[len(b.pages)-1].Place(SurveyPicture(b.list.Plan.Place(part), b.theme), draw.Point{X: margin, Y: b.y})
	x, y := margin+surveyW+5, b.y+4
	for _, word := range []string{"fitted as it will stay", "all of it measured", "typed into the plan"} {
		b.add(tick(x, y-2.4, 3, b.theme))
		b.write(x+5, y, word, rowSize, false, draw.Left, b.theme.Ink)
		y += 6
	}
	b.write(x, y+2, "notes", fineSize, false, draw.Left, b.theme.Faint)
	for i := range 2 {
		at := y + 9 + 7*float64(i)
		b.add(draw.Segment(x, at, b.w-margin, at, pen(0.15, b.theme.Rule)))
	}
	b.y += surveyH + 1
	b.surveyHeads()
	for _, r := range g.Rows {
		if b.need(surveyRow) {
			b.surveyHeads()
		}
		b.surveyPort(r)
	}
	b.y += 2
}

// surveyColumns are the widths of the form in parts of the page: letter, port,
// three distances, facing, thread.
var surveyColumns = [...]float64{0.045, 0.175, 0.17, 0.17, 0.17, 0.14, 0.13}

func (b *book) surveyHeads() {
	x := margin
	for i, head := range []string{"", "port", "x", "y", "z", "facing", "thread"} {
		w := surveyColumns[i] * b.width()
		b.add(draw.Box(x, b.y, w, surveyHead, b.theme.Band, pen(0.15, b.theme.Rule)))
		b.write(x+1.2, b.y+3.6, head, fineSize, true, draw.Left, b.theme.Ink)
		x += w
	}
	b.y += surveyHead
}

// surveyPort is a port's row: small print above, room to write below.
func (b *book) surveyPort(r survey.Row) {
	x := margin
	for i := range surveyColumns {
		w := surveyColumns[i] * b.width()
		b.add(draw.Frame(x, b.y, w, surveyRow, pen(0.15, b.theme.Rule)))
		switch i {
		case 0:
			b.write(x+w/2, b.y+5.8, r.Letter, bodySize, true, draw.Centre, b.theme.Ink)
		case 1:
			for n, line := range wrapped(r.Ref.Port, rowSize, false, w-2, 2) {
				b.write(x+1.2, b.y+3.6+float64(n)*rowSize*leading, line, rowSize, false, draw.Left, b.theme.Ink)
			}
		case 2, 3, 4:
			b.smallPrint(x, w, string(r.From[i-2]), b.units.Text(r.Plan[i-2]))
		case 5:
			b.smallPrint(x, w, "", r.Facing)
		case 6:
			b.smallPrint(x, w, "", r.Thread)
		}
		x += w
	}
	b.y += surveyRow
}

func (b *book) smallPrint(x, w float64, left, right string) {
	const size = 2.0
	b.write(x+1, b.y+2.5, left, size, false, draw.Left, b.theme.Faint)
	room := w - 3 - draw.TextWidth(left, size, false)
	b.write(x+w-1, b.y+2.5, shortened(right, size, false, room), size, false, draw.Right, b.theme.Faint)
}

// SurveyPicture draws a part with its ports lettered as the survey names them:
// through the open side, and from above.
func SurveyPicture(part route.Placed, th Theme) draw.Drawing {
	d := draw.Drawing{W: surveyW, H: surveyH}
	for i, k := range []Look{Side, Above} {
		w := (surveyW - 4) / 2
		x := float64(i) * (w + 4)
		d.Add(draw.Frame(x, 0, w, surveyH, pen(0.12, th.Rule)),
			draw.Text{At: draw.Point{X: x + 1.2, Y: 3}, Text: [...]string{"through the open side", "from above"}[i], Size: 2, Colour: th.Faint})
		d.Place(lettered(part, k, th, w, surveyH-4), draw.Point{X: x, Y: 4})
	}
	return d
}

// letterAir is left around a part for its letters, mm.
const letterAir = 4.5

// lettered is a part in one look that fills a box, its ports on top.
func lettered(part route.Placed, k Look, th Theme, w, h float64) draw.Drawing {
	d := draw.Drawing{W: w, H: h}
	v := k.view()
	bounds := emptyFrame()
	for _, p := range v.solids(part.Solids, th.Part, th.PartSide, th.Edge) {
		bounds = bounds.with(p.outline...)
	}
	for _, q := range part.Ports {
		bounds = bounds.with(v.on(q.Frame.At))
	}
	v.scale = math.Min((w-2*letterAir)/math.Max(bounds.w(), 1), (h-2*letterAir)/math.Max(bounds.h(), 1))
	mid := draw.Point{X: (bounds.lo.X + bounds.hi.X) / 2, Y: (bounds.lo.Y + bounds.hi.Y) / 2}
	v.zero = draw.Point{X: w/2 - v.scale*mid.X, Y: h/2 - v.scale*mid.Y}
	all := v.solids(part.Solids, th.Part, th.PartSide, th.Edge)
	backToFront(all)
	for _, p := range all {
		d.Add(p.items...)
	}
	portLetters(&d, part, v, th)
	return d
}

// portLetters marks the ports; those that fall on one spot share a mark.
func portLetters(d *draw.Drawing, part route.Placed, v view, th Theme) {
	const size, near = 2.4, 4.2
	type mark struct {
		at   draw.Point
		text string
	}
	var marks []mark
	for i, q := range part.Ports {
		at := v.on(q.Frame.At)
		n := slices.IndexFunc(marks, func(m mark) bool { return math.Hypot(m.at.X-at.X, m.at.Y-at.Y) < near })
		if n < 0 {
			marks = append(marks, mark{at, survey.Letter(i)})
			continue
		}
		marks[n].text += " " + survey.Letter(i)
	}
	for _, m := range marks {
		half := discWidth(m.text, size) / 2
		m.at.X = min(max(m.at.X, half+0.5), d.W-half-0.5)
		d.Add(badge(m.text, m.at, size, th.Ink, th)...)
	}
}
