package ui

import (
	"image/color"
	"math"

	"tubewright/bends"
	"tubewright/cutlist/draw"
	"tubewright/cutlist/sheet"
)

// Measures of a card's strip, in mm of the drawing; see perMM.
const (
	stripText  = 2.9 // height of type
	stripAbove = 4.6 // row of the turns above the tube
	stripBelow = 5.0 // row of the rolls below it
	stripLeast = 2.0 // the tube is drawn at least this thick
	stripMost  = 5.0 // and at most this
	dialRadius = 1.5 // of the circle that shows a roll
	textApart  = 1.0 // between two texts
)

// strip is a tube straightened to scale, as a card shows it: its bends as
// darker stretches with their turn above, the roll between two bends below.
type strip struct {
	m                cardModel
	scale            float64 // mm of the drawing to one of the tube
	top, thick       float64
	ink, faint, body draw.Colour
	d                draw.Drawing
}

// newStrip settles the scale and the rows of a strip in a width in mm.
func newStrip(m cardModel, width float64) strip {
	s := strip{m: m, ink: tone(ink), faint: tone(soft), d: draw.Drawing{W: width}}
	if m.letter == "" || m.scale <= 0 {
		return s
	}
	s.body = sheet.ColourOf(m.letter)
	s.scale = width / m.scale
	s.thick = min(max(m.tube.Way.Tube.OD*s.scale, stripLeast), stripMost)
	s.d.H = s.thick + 0.5
	if n := len(m.tube.Bench.Bends); n > 0 {
		s.top = stripAbove
		s.d.H += stripAbove + 0.8
		if n > 1 {
			s.d.H += stripBelow
		}
	}
	return s
}

// drawStrip draws a card's tube in a width in mm; its height says how high it is.
func drawStrip(m cardModel, width float64) draw.Drawing {
	s := newStrip(m, width)
	if s.d.H > 0 {
		s.tube()
		s.turns()
		s.rolls()
	}
	return s.d
}

func tone(r role) draw.Colour { return toneOf(paint(r)) }

func toneOf(c color.NRGBA) draw.Colour { return draw.Colour{R: c.R, G: c.G, B: c.B} }

// tube draws the body and its bends.
func (s *strip) tube() {
	edge := draw.Stroke{Width: 0.25, Colour: s.ink}
	s.d.Add(draw.Box(edge.Width/2, s.top, s.m.tube.Cut.Aim*s.scale-edge.Width, s.thick, s.body, edge))
	for _, b := range s.m.tube.Bench.Bends {
		from, to := b.FromA.Start*s.scale, b.FromA.End*s.scale
		s.d.Add(draw.Box(from, s.top, to-from, s.thick, shade(s.body), edge))
		mid := b.FromA.Middle * s.scale
		s.d.Add(draw.Segment(mid, s.top-0.8, mid, s.top+s.thick+0.8, edge))
	}
}

// shade is a darker tone of a colour.
func shade(c draw.Colour) draw.Colour {
	return draw.Colour{R: uint8(float64(c.R) * 0.68), G: uint8(float64(c.G) * 0.68), B: uint8(float64(c.B) * 0.68)}
}

// turns writes each bend's turn above its middle, shifted where two would meet.
func (s *strip) turns() {
	end := math.Inf(-1)
	for _, b := range s.m.tube.Bench.Bends {
		text := degrees(b.Turn)
		wide := draw.TextWidth(text, stripText, false)
		x := min(max(b.FromA.Middle*s.scale-wide/2, end+textApart, 0), s.d.W-wide)
		s.write(text, x, s.top-1.3, s.ink)
		end = x + wide
	}
}

// rolls draws a dial and the roll between each two bends.
func (s *strip) rolls() {
	end := math.Inf(-1)
	y := s.top + s.thick + stripBelow/2 + 0.4
	for i, b := range s.m.tube.Bench.Bends {
		if i == 0 {
			continue
		}
		text := degrees(b.Roll)
		wide := 2*dialRadius + textApart + draw.TextWidth(text, stripText, false)
		mid := (s.m.tube.Bench.Bends[i-1].FromA.Middle + b.FromA.Middle) / 2 * s.scale
		x := min(max(mid-wide/2, end+2*textApart, 0), s.d.W-wide)
		s.dial(draw.Point{X: x + dialRadius, Y: y}, b)
		s.write(text, x+2*dialRadius+textApart, y+stripText*0.36, s.faint)
		end = x + wide
	}
}

// dial shows a roll as an arc around the end of the tube, from its top.
func (s *strip) dial(at draw.Point, b bends.BenchBend) {
	s.d.Add(draw.Arc{Centre: at, Radius: dialRadius, Sweep: 360, Stroke: draw.Stroke{Width: 0.2, Colour: s.faint}})
	s.d.Add(draw.Arc{Centre: at, Radius: dialRadius, From: -90, Sweep: b.Roll, Stroke: draw.Stroke{Width: 0.6, Colour: s.ink}})
}

func (s *strip) write(text string, x, base float64, c draw.Colour) {
	s.d.Add(draw.Text{At: draw.Point{X: x, Y: base}, Text: text, Size: stripText, Colour: c})
}
