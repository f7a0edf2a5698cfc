package draw

import "math"

// Box is a rectangle from its upper left corner.
func Box(x, y, w, h float64, colour Colour, edge Stroke) Fill {
	return Fill{Points: []Point{{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}}, Colour: colour, Stroke: edge}
}

// Frame is the outline of a rectangle from its upper left corner.
func Frame(x, y, w, h float64, edge Stroke) Line {
	return Line{Points: []Point{{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}, {x, y}}, Stroke: edge}
}

// Segment is a line between two points.
func Segment(x1, y1, x2, y2 float64, stroke Stroke) Line {
	return Line{Points: []Point{{x1, y1}, {x2, y2}}, Stroke: stroke}
}

// roundness is how many corners stand for a full circle: the flat between two
// of them stays within 0.12 % of the radius, less than ink spreads.
const roundness = 64

// Disc is a filled circle.
func Disc(centre Point, radius float64, colour Colour, edge Stroke) Fill {
	points := make([]Point, roundness)
	for i := range points {
		s, c := math.Sincos(2 * math.Pi * float64(i) / roundness)
		points[i] = Point{centre.X + radius*c, centre.Y + radius*s}
	}
	return Fill{Points: points, Colour: colour, Stroke: edge}
}

// At is the point of an arc at an angle in degrees; 0 points right, 90 down.
func (a Arc) At(degrees float64) Point {
	s, c := math.Sincos(degrees * math.Pi / 180)
	return Point{a.Centre.X + a.Radius*c, a.Centre.Y + a.Radius*s}
}

// Bounds is the upright box around a turned text: from above the letters with
// accents to below the tails, as wide as the writing.
func (t Text) Bounds() (lo, hi Point) {
	w := TextWidth(t.Text, t.Size, t.Bold)
	x := t.start()
	top, bottom := -Ascent*t.Size, Descent*t.Size
	lo, hi = Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for _, p := range []Point{{x, top}, {x + w, top}, {x, bottom}, {x + w, bottom}} {
		q := t.At.Plus(p.turned(t.Turn))
		lo = Point{math.Min(lo.X, q.X), math.Min(lo.Y, q.Y)}
		hi = Point{math.Max(hi.X, q.X), math.Max(hi.Y, q.Y)}
	}
	return lo, hi
}

// turned is p turned clockwise about the origin, exact at right angles.
func (p Point) turned(degrees float64) Point {
	switch math.Mod(math.Mod(degrees, 360)+360, 360) {
	case 0:
		return p
	case 90:
		return Point{-p.Y, p.X}
	case 180:
		return Point{-p.X, -p.Y}
	case 270:
		return Point{p.Y, -p.X}
	}
	s, c := math.Sincos(degrees * math.Pi / 180)
	return Point{p.X*c - p.Y*s, p.X*s + p.Y*c}
}
