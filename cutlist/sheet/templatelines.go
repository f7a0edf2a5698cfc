package sheet

import (
	"fmt"
	"math"
	"strconv"

	"tubewright/cutlist/draw"
	"tubewright/route"
)

// How the lines of a template look and reach, mm. The centreline's dashes and
// the widths tell the lines apart.
const (
	centreWidth = 0.18
	edgeWidth   = 0.35
	tickReach   = 3.0 // of a bend's marks, beyond the edge
	endReach    = 5.0 // of the lines where the template ends, beyond the edge
)

var centreDash = []float64{6, 1, 1, 1}

// lines is the template's drawing but for its writing.
func (t template) lines(th Theme) (items []draw.Item) {
	for _, p := range t.pieces {
		items = append(items, t.edges(p, th)...)
	}
	for _, p := range t.pieces {
		items = append(items, t.centreline(p, th))
	}
	for _, b := range t.tube.Bench.Bends[t.first : t.last+1] {
		items = append(items, t.across(b.FromA.Start, tickReach, pen(0.25, th.Ink)),
			t.across(b.FromA.Middle, tickReach, dashedPen(0.25, th.Ink, 1.2, 0.8)),
			t.across(b.FromA.End, tickReach, pen(0.25, th.Ink)))
	}
	for _, e := range t.ends() {
		items = append(items, t.across(e.s, endReach, e.stroke(th)))
	}
	return items
}

// made says what the tube is and what it is formed on.
func (t template) made(u route.Units) string {
	spec := t.tube.Way.Tube
	return fmt.Sprintf("%s, %s outside; former of centreline radius %s; springback %s + %s %%", spec.Name, u.TextUnit(spec.OD),
		u.TextUnit(spec.Radius), route.Degrees(spec.Springback.Degrees), trimmed(spec.Springback.Percent))
}

// trimmedOff reports whether a piece is cut off after forming.
func (t template) trimmedOff(p flatPiece) bool {
	middle := (p.s0 + p.s1) / 2
	return middle < 0 || middle > t.tube.Cut.Aim
}

// edges is both sides of the tube along a piece, dashed where it is trimmed off.
func (t template) edges(p flatPiece, th Theme) (items []draw.Item) {
	stroke := pen(edgeWidth, th.Ink)
	if t.trimmedOff(p) {
		stroke = dashedPen(edgeWidth, th.Ink, 1.5, 1)
	}
	for _, side := range []float64{1, -1} {
		off := side * t.od() / 2
		if p.arc.Radius == 0 {
			way := heading(p.end.Minus(p.start))
			by := draw.Point{X: -way.Y, Y: way.X}.Times(off)
			items = append(items, draw.Line{Points: []draw.Point{p.start.Plus(by), p.end.Plus(by)}, Stroke: stroke})
			continue
		}
		edge := p.arc
		edge.Radius, edge.Stroke = math.Max(0, edge.Radius+off), stroke
		items = append(items, edge)
	}
	return items
}

// centreline is the line that everything is measured along; its dashes go on
// from piece to piece.
func (t template) centreline(p flatPiece, th Theme) draw.Item {
	s0, _ := t.bounds()
	stroke := draw.Stroke{Width: centreWidth, Colour: th.Ink, Dash: centreDash, Skip: p.s0 - s0}
	if p.arc.Radius == 0 {
		return draw.Line{Points: []draw.Point{p.start, p.end}, Stroke: stroke}
	}
	arc := p.arc
	arc.Stroke = stroke
	return arc
}

// across is a line over the tube that reaches beyond both edges.
func (t template) across(s, reach float64, stroke draw.Stroke) draw.Item {
	at, way := t.at(s)
	side := draw.Point{X: way.Y, Y: -way.X}.Times(t.od()/2 + reach)
	a, b := at.Minus(side), at.Plus(side)
	return draw.Segment(a.X, a.Y, b.X, b.Y, stroke)
}

// templateEnd is where a template ends: at the tube's own end, or where the next
// bend leaves the plane.
type templateEnd struct {
	s      float64
	sign   float64 // −1 at the start, 1 at the far end: which way is off the template
	letter string  // A or B at the tube's own end
	lines  []string
}

func (e templateEnd) stroke(th Theme) draw.Stroke {
	if e.letter == "" {
		return dashedPen(0.4, th.Ink, 2, 1)
	}
	return pen(0.5, th.Ink)
}

func (t template) ends() []templateEnd {
	a := templateEnd{s: t.from, sign: -1, letter: "A", lines: []string{"finished end A: cut here"}}
	b := templateEnd{s: t.to, sign: 1, letter: "B", lines: []string{"finished end B: cut here"}}
	if t.first > 0 {
		a.letter, a.lines = "", []string{fmt.Sprintf("bend %d ends here, roll %s", t.first, signed(t.tube.Bench.Bends[t.first].Roll)), t.rises(t.first, -1)}
	}
	if n := t.last + 1; n < len(t.tube.Bench.Bends) {
		roll := t.tube.Bench.Bends[n].Roll
		b.letter, b.lines = "", []string{fmt.Sprintf("bend %d starts here, roll %s", n+1, signed(roll)), t.rises(n, 1)}
	}
	return []templateEnd{a, b}
}

// rises says which way the tube leaves the paper at the roll before bend n:
// going on along the template to bend n (1), or back to the one before it (-1).
// A bend curves toward the middle of its turn on both of its sides. Seen from
// above, with the template's bend turning left, a positive roll lifts that
// middle up for the bend after, and down for the bend before, which is rolled
// the other way; a right turn swaps the two.
func (t template) rises(n int, way float64) string {
	roll := t.tube.Bench.Bends[n].Roll
	own := n - 1
	if way < 0 {
		own = n
	}
	up := math.Sin(roll * math.Pi / 180)
	if _, left := t.outside(own); !left {
		up = -up
	}
	if way < 0 {
		up = -up
	}
	if up > 0 {
		return "the tube rises toward you"
	}
	return "the tube goes down, off the bench"
}

// templateNote is some lines of writing beside a place.
type templateNote struct {
	at    draw.Point
	side  draw.Point // unit: where it would rather stand; zero: anywhere near
	reach float64    // from the place to what it must clear, mm
	lines []string
	bold  bool // the first line
}

// notes is the writing on a template, what matters most first.
func (t template) notes(u route.Units) (notes []templateNote) {
	for i := t.first; i <= t.last; i++ {
		b := t.tube.Bench.Bends[i]
		at, _ := t.at(b.FromA.Middle)
		out, _ := t.outside(i)
		notes = append(notes, templateNote{at, out, t.od()/2 + tickReach, []string{
			"bend " + strconv.Itoa(i+1) + ": " + route.Degrees(b.Turn), "radius " + u.Text(b.Radius), "form to " + route.Degrees(b.FormTo), "middle " + u.Text(b.BlankA.Middle),
		}, true})
	}
	for _, e := range t.ends() {
		at, way := t.at(e.s)
		notes = append(notes, templateNote{at, draw.Point{X: way.Y, Y: -way.X}, t.od()/2 + endReach, e.lines, e.letter != ""})
	}
	for i := t.first; i <= t.last; i++ {
		b := t.tube.Bench.Bends[i]
		out, _ := t.outside(i)
		for k, m := range []float64{b.FromA.Start, b.FromA.End} {
			at, way := t.at(m)
			side := draw.Point{X: way.Y, Y: -way.X}
			if side.X*out.X+side.Y*out.Y < 0 {
				side = side.Times(-1)
			}
			text := [...]string{"start " + u.Text(b.BlankA.Start), "end " + u.Text(b.BlankA.End)}[k]
			notes = append(notes, templateNote{at, side, t.od()/2 + tickReach, []string{text}, false})
		}
	}
	return notes
}
