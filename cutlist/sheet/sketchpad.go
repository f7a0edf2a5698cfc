package sheet

import (
	"math"

	"tubewright/cutlist/draw"
	"tubewright/cutlist/measure"
)

// The size of every drawing of how to measure, mm.
const (
	SketchWidth  = 58.0
	SketchHeight = 34.0
)

// sketchType is the size of a sketch's type, mm.
const sketchType = 2.3

// sketchpad is a drawing of how to measure while it is made.
type sketchpad struct {
	d   draw.Drawing
	th  Theme
	lit measure.Key // this measure stands out
}

// MeasureSketch draws how a number is measured: the thing, the tool (jaws as two
// plates, a depth rod as a foot and a rod) and from where to where. The measure
// of the number lit stands out; with "" all are alike. It is for paper and for
// the window.
func MeasureSketch(s measure.Sketch, lit measure.Key, th Theme) draw.Drawing {
	p := &sketchpad{d: draw.Drawing{W: SketchWidth, H: SketchHeight}, th: th, lit: lit}
	if paint, ok := sketches[s]; ok {
		paint(p)
	}
	return p.d
}

var sketches = map[measure.Sketch]func(*sketchpad){
	measure.SketchStop: (*sketchpad).stop, measure.SketchInsertion: (*sketchpad).insertion, measure.SketchCollar: (*sketchpad).collar,
	measure.SketchLength: (*sketchpad).length, measure.SketchOffset: (*sketchpad).offset, measure.SketchElbow: (*sketchpad).elbow,
	measure.SketchTee: (*sketchpad).tee, measure.SketchTube: (*sketchpad).tubeEnds, measure.SketchFormer: (*sketchpad).former,
	measure.SketchSpring: (*sketchpad).spring, measure.SketchStraights: (*sketchpad).straights, measure.SketchTrim: (*sketchpad).trim,
	measure.SketchPort: (*sketchpad).port,
}

// ink is the colour and width of a measure's lines.
func (p *sketchpad) ink(key measure.Key) draw.Stroke {
	if p.lit == "" || key == p.lit {
		if key == p.lit && key != "" {
			return pen(0.5, p.th.Alarm)
		}
		return pen(0.3, p.th.Ink)
	}
	return pen(0.2, p.th.Rule)
}

func (p *sketchpad) bold(key measure.Key) bool { return p.lit != "" && key == p.lit }

// text sets a word in the middle of a place.
func (p *sketchpad) text(x, y float64, word string, key measure.Key) {
	c := p.ink(key).Colour
	if c == p.th.Rule {
		c = p.th.Faint
	}
	p.d.Add(draw.Text{At: draw.Point{X: x, Y: y}, Text: word, Size: sketchType, Bold: p.bold(key), Align: draw.Centre, Colour: c})
}

// solid is a block of a part, a fitting or a tube.
func (p *sketchpad) solid(x1, y1, x2, y2 float64, c draw.Colour) {
	p.d.Add(draw.Box(x1, y1, x2-x1, y2-y1, c, pen(0.2, p.th.Edge)))
}

func (p *sketchpad) line(s draw.Stroke, at ...float64) {
	l := draw.Line{Stroke: s}
	for i := 0; i+1 < len(at); i += 2 {
		l.Points = append(l.Points, draw.Point{X: at[i], Y: at[i+1]})
	}
	p.d.Add(l)
}

// axis is a centre line.
func (p *sketchpad) axis(at ...float64) { p.line(dashedPen(0.15, p.th.Edge, 2, 0.7, 0.5, 0.7), at...) }

// wall is the part with the port: its face is at x = 10.
func (p *sketchpad) wall() { p.solid(2, 4, 10, 31, p.th.Part) }

// glass is the colour of a tube in a sketch.
func (p *sketchpad) glass() draw.Colour { return mix(p.th.Paper, ColourOf("A"), 0.22) }

const (
	arrowLong = 1.6 // of a measure's arrow heads, mm
	arrowWide = 0.55
)

// arrow is a head at a point that looks along a direction in degrees.
func (p *sketchpad) arrow(x, y, degrees float64, c draw.Colour) {
	s, co := math.Sincos(degrees * math.Pi / 180)
	at := func(along, across float64) draw.Point {
		return draw.Point{X: x - along*co - across*s, Y: y - along*s + across*co}
	}
	p.d.Add(draw.Fill{Points: []draw.Point{{X: x, Y: y}, at(arrowLong, arrowWide), at(arrowLong, -arrowWide)}, Colour: c})
}

// span is a measure between two points, with its name beside it.
func (p *sketchpad) span(key measure.Key, x1, y1, x2, y2 float64, word string, wordX, wordY float64) {
	s := p.ink(key)
	p.line(s, x1, y1, x2, y2)
	angle := math.Atan2(y2-y1, x2-x1) * 180 / math.Pi
	p.arrow(x2, y2, angle, s.Colour)
	p.arrow(x1, y1, angle+180, s.Colour)
	p.text(wordX, wordY, word, key)
}

// jaws are a caliper's outside jaws closed over two upright faces, from above
// (up) or from below.
func (p *sketchpad) jaws(key measure.Key, x1, x2, y float64, up bool) {
	s := p.ink(key)
	beam := y + 6
	if up {
		beam = y - 6
	}
	c := mix(p.th.Paper, s.Colour, 0.35)
	for _, j := range [][2]float64{{x1, x1 - 1.6}, {x2, x2 + 1.6}} {
		p.d.Add(draw.Fill{Points: []draw.Point{{X: j[0], Y: y}, {X: j[0], Y: beam}, {X: j[1], Y: beam}}, Colour: c, Stroke: pen(0.2, s.Colour)})
	}
	p.line(pen(0.7, s.Colour), x1-3, beam, x2+3, beam)
}

// rod is a depth rod: its foot stands on a face at x1, its rod reaches to x2.
func (p *sketchpad) rod(key measure.Key, x1, x2, y float64) {
	s := p.ink(key)
	p.d.Add(draw.Box(x1, y-2.2, 2, 4.4, mix(p.th.Paper, s.Colour, 0.35), pen(0.2, s.Colour)))
	p.line(pen(0.6, s.Colour), x1+7, y, x2, y)
}
