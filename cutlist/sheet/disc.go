package sheet

import (
	"math"

	"tubewright/cutlist/draw"
)

// discWidth is how wide the disc with a tube's letter is.
func discWidth(letter string, size float64) float64 {
	return math.Max(1.45*size, draw.TextWidth(letter, size, true)+0.8*size)
}

// disc is a tube's letter in a ring of its colour, its middle at a point: the
// mark of the tube on every sheet.
func disc(letter string, at draw.Point, size float64, th Theme) []draw.Item {
	return badge(letter, at, size, ColourOf(letter), th)
}

// badge is a short text in a rounded ring.
func badge(text string, at draw.Point, size float64, ring draw.Colour, th Theme) []draw.Item {
	w, r := discWidth(text, size), 1.45*size/2
	edge := pen(0.22*size, ring)
	shape := draw.Disc(at, r, th.Paper, edge)
	if w > 2*r {
		for i := range shape.Points { // pull the disc apart into a pill
			if shape.Points[i].X > at.X {
				shape.Points[i].X += w/2 - r
			} else {
				shape.Points[i].X -= w/2 - r
			}
		}
	}
	return []draw.Item{shape, draw.Text{
		At: draw.Point{X: at.X, Y: at.Y + halfCap*size}, Text: text, Size: size, Bold: true, Align: draw.Centre, Colour: th.Ink,
	}}
}
