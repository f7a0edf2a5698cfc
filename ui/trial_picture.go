package ui

import (
	"math"

	"tubewright/bends/trial"
	"tubewright/cutlist/draw"
)

// Measures of the drawing of a test bend, in mm of the drawing.
const (
	benchOD     = 6.0
	benchRadius = 11.0
	benchType   = 3.0
	benchWide   = 66.0
	benchHigh   = 48.0
)

var (
	benchStart  = draw.Point{X: 4, Y: 14}
	benchCorner = draw.Point{X: 44, Y: 14} // of the centreline
	benchEnd    = draw.Point{X: 44, Y: 46}
)

// drawTrial shows where the legs of a test bend are measured.
func drawTrial(from trial.From, to trial.To) draw.Drawing {
	d := draw.Drawing{W: benchWide, H: benchHigh}
	d.Add(bentTube()...)
	corner := benchCorner
	if to != trial.Centre {
		corner = draw.Point{X: benchCorner.X + benchOD/2, Y: benchCorner.Y - benchOD/2}
	}
	thin := draw.Stroke{Width: 0.2, Colour: tone(soft), Dash: []float64{1, 0.7}}
	d.Add(draw.Segment(benchCorner.X-benchRadius-2, corner.Y, corner.X+2, corner.Y, thin),
		draw.Segment(corner.X, corner.Y-2, corner.X, benchCorner.Y+benchRadius+2, thin))
	left, low := benchStart.X, benchEnd.Y
	if from == trial.Marks {
		left, low = benchStart.X+9, benchEnd.Y-7
		mark := draw.Stroke{Width: 0.5, Colour: tone(bad)}
		d.Add(draw.Segment(left, benchStart.Y-benchOD/2-1, left, benchStart.Y+benchOD/2+1, mark),
			draw.Segment(benchEnd.X-benchOD/2-1, low, benchEnd.X+benchOD/2+1, low, mark))
	}
	d.Add(measureAlong(left, corner.X, 5, "leg 1")...)
	d.Add(measureDown(corner.Y, low, 56, "leg 2")...)
	return d
}

// bentTube is the body: a thick line with an edge.
func bentTube() []draw.Item {
	path := []draw.Point{benchStart}
	centre := draw.Point{X: benchCorner.X - benchRadius, Y: benchCorner.Y + benchRadius}
	const steps = 16
	for i := range steps + 1 {
		s, c := math.Sincos(float64(i) * math.Pi / 2 / steps)
		path = append(path, draw.Point{X: centre.X + benchRadius*s, Y: centre.Y - benchRadius*c})
	}
	path = append(path, benchEnd)
	return []draw.Item{
		draw.Line{Points: path, Stroke: draw.Stroke{Width: benchOD, Colour: tone(soft)}},
		draw.Line{Points: path, Stroke: draw.Stroke{Width: benchOD - 0.6, Colour: tone(rule)}},
		draw.Line{Points: path, Stroke: draw.Stroke{Width: 0.2, Colour: tone(soft), Dash: []float64{3, 1, 0.5, 1}}},
	}
}

// measureAlong is a measure between two x at a height, its name above it.
func measureAlong(from, to, y float64, name string) []draw.Item {
	line := draw.Stroke{Width: 0.25, Colour: tone(ink)}
	items := []draw.Item{draw.Segment(from, y, to, y, line)}
	for _, x := range []float64{from, to} {
		items = append(items, draw.Segment(x, y-1.5, x, y+1.5, line))
	}
	return append(items, draw.Text{At: draw.Point{X: (from + to) / 2, Y: y - 1}, Text: name, Size: benchType, Align: draw.Centre, Colour: tone(ink)})
}

// measureDown is the same between two y at an x, its name beside it.
func measureDown(from, to, x float64, name string) []draw.Item {
	line := draw.Stroke{Width: 0.25, Colour: tone(ink)}
	items := []draw.Item{draw.Segment(x, from, x, to, line)}
	for _, y := range []float64{from, to} {
		items = append(items, draw.Segment(x-1.5, y, x+1.5, y, line))
	}
	return append(items, draw.Text{At: draw.Point{X: x + 1.2, Y: (from + to) / 2}, Text: name, Size: benchType, Colour: tone(ink)})
}
