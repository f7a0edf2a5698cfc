package sheet

import (
	"fmt"
	"math"
	"strconv"

	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/route"
)

// Sizes of a wrap strip, mm.
const (
	stripHeight  = 19.0 // along the tube
	stripLap     = 8.0  // glued under
	stripGap     = 5.0
	stripCaption = 4.4
	stripLine    = 0.5
)

// wrapStrip is the roll between two bends on a strip of paper that goes once
// round the tube, printed side out and its upper side toward end B. The left
// edge comes round to the line where the lap begins: both are the start line,
// the line of the bend before. By the right-hand rule along the travel a
// positive roll goes to the right from it, a negative one to the left.
type wrapStrip struct {
	tube   cutlist.Tube
	bend   int     // the bend that is rolled, from 0; never the first
	around float64 // the tube's circumference, mm
	arc    float64 // mm, signed as the roll
}

// wrapStrips is a tube's strips in order: one for each roll that is not 0.
func wrapStrips(t cutlist.Tube) (all []wrapStrip) {
	for i, b := range t.Bench.Bends {
		if i > 0 && math.Abs(b.Roll) > sameplane {
			all = append(all, wrapStrip{tube: t, bend: i, around: math.Pi * t.Way.Formed.Tube.OD, arc: b.Wrap})
		}
	}
	return all
}

// width is how long the strip is with its lap.
func (s wrapStrip) width() float64 { return s.around + stripLap }

// mark is where the line of the rolled bend is, from the left edge.
func (s wrapStrip) mark() float64 {
	if s.arc < 0 {
		return s.around + s.arc
	}
	return s.arc
}

// drawing is the strip at full size.
func (s wrapStrip) drawing(u route.Units, th Theme) draw.Drawing {
	d := draw.Drawing{W: s.width(), H: stripHeight}
	hatch(&d, frame{draw.Point{X: s.around}, draw.Point{X: s.width(), Y: stripHeight}}, th)
	d.Add(draw.Frame(0, 0, s.width(), stripHeight, pen(0.2, th.Ink)))
	for _, x := range []float64{0, s.around} {
		d.Add(draw.Segment(x, 0, x, stripHeight, pen(stripLine, th.Ink)))
	}
	mark := s.mark()
	d.Add(arrow(draw.Point{X: mark, Y: stripHeight}, draw.Point{X: mark}, stripLine, 2.6, th)...)
	start := 0.0
	if s.arc < 0 {
		start = s.around
	}
	if math.Abs(s.arc) > 3 {
		y := stripHeight / 2
		d.Add(arrow(draw.Point{X: start, Y: y}, draw.Point{X: mark, Y: y}, 0.3, 2.2, th)...)
	}
	s.write(&d, u, th)
	glue := draw.Text{Text: "glue", Size: fineSize, Turn: 90, Align: draw.Centre, Colour: th.Ink, At: draw.Point{X: s.around + stripLap/2 - halfCap*fineSize, Y: stripHeight / 2}}
	lo, hi := glue.Bounds()
	d.Add(draw.Box(lo.X, lo.Y-0.6, hi.X-lo.X, hi.Y-lo.Y+1.2, th.Paper, draw.Stroke{}), glue)
	return d
}

// write sets what the strip says in the wider part beside the mark, which is
// never less than half of it: the names of the lines along them, and between
// them the tube's letter, the roll and its arc.
func (s wrapStrip) write(d *draw.Drawing, u route.Units, th Theme) {
	lo, hi, atLo, atHi := s.mark(), s.around, s.bend+1, s.bend
	if s.arc < 0 {
		lo, hi, atLo, atHi = 0, s.mark(), s.bend, s.bend+1
	}
	k := math.Min(1, (hi-lo)/18)
	size := fineSize * k
	upright := func(x float64, bend int) {
		d.Add(draw.Text{At: draw.Point{X: x - halfCap*size, Y: stripHeight / 2}, Text: "bend " + strconv.Itoa(bend), Size: size, Turn: 90, Align: draw.Centre, Colour: th.Ink})
	}
	upright(lo+2*k, atLo)
	upright(hi-1.6*k, atHi)
	x := (lo + hi) / 2
	d.Add(disc(s.tube.Letter, draw.Point{X: x, Y: 4.4}, 3*k, th)...)
	for i, line := range []string{signed(s.tube.Bench.Bends[s.bend].Roll), u.TextUnit(math.Abs(s.arc))} {
		fit := shrunk(line, size*1.1, 1, i == 0, hi-lo-7*k)
		d.Add(draw.Text{At: draw.Point{X: x, Y: 11 + 3.6*float64(i)}, Text: line, Size: fit, Bold: i == 0, Align: draw.Centre, Colour: th.Ink})
	}
}

// arrow is a line with a filled head.
func arrow(from, to draw.Point, width, head float64, th Theme) []draw.Item {
	way := heading(to.Minus(from))
	side := draw.Point{X: -way.Y, Y: way.X}.Times(head * 0.3)
	foot := to.Minus(way.Times(head))
	return []draw.Item{
		draw.Segment(from.X, from.Y, foot.X, foot.Y, pen(width, th.Ink)),
		draw.Fill{Points: []draw.Point{to, foot.Plus(side), foot.Minus(side)}, Colour: th.Ink},
	}
}

// wrapStrips is the strips of all tubes, as many beside each other as go on a
// page.
func (b *book) wrapStrips() {
	var all []wrapStrip
	for _, t := range b.jigTubes() {
		all = append(all, wrapStrips(t)...)
	}
	if len(all) == 0 {
		return
	}
	const title = "Wrap strips"
	if b.left() < (b.floor()-b.start())/2 {
		b.fullPage(title, title)
	} else {
		b.title[len(b.title)-1] = "Full-size templates · " + title
		b.y += 4
	}
	b.heading(title, headSize, 30)
	b.para("Print at 100 %. Cut a strip out and lay it round the tube, printed side out and the arrow toward end B; its left edge must meet the line where the hatching begins: it is π times the outside diameter long. " +
		"Set that line on the line of the bend before, slide the strip along to the next bend, and mark the tube at the arrow: there is the line of the next bend.")
	b.y += 2
	x := margin
	for i, s := range all {
		if s.width() > b.width() {
			b.fullNeed(title, 3*bodySize*leading)
			b.para(fmt.Sprintf("Tube %s, bend %d: the strip is longer than this paper is wide; measure %s round the tube instead.",
				s.tube.Letter, s.bend+1, b.units.TextUnit(math.Abs(s.arc))))
			continue
		}
		if x == margin {
			b.fullNeed(title, stripCaption+stripHeight+stripGap)
		}
		b.strip(s, x)
		x += s.width() + stripGap
		if i+1 == len(all) || x+all[i+1].width() > b.w-margin {
			x, b.y = margin, b.y+stripCaption+stripHeight+stripGap
		}
	}
}

// strip sets one strip under its caption and does not move on.
func (b *book) strip(s wrapStrip, x float64) {
	said := fmt.Sprintf("%s, bend %d to %d", s.tube.Letter, s.bend, s.bend+1)
	b.write(x, b.y+3, shortened(said+": "+s.tube.Run, fineSize, false, s.width()), fineSize, false, draw.Left, b.theme.Ink)
	b.pages[len(b.pages)-1].Place(s.drawing(b.units, b.theme), draw.Point{X: x, Y: b.y + stripCaption})
}
