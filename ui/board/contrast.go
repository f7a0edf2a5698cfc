package board

import (
	"image/color"

	"tubewright/cutlist/draw"
)

// Contrast is the contrast ratio of two opaque colours; see [draw.Contrast].
func Contrast(a, b color.RGBA) float64 {
	return draw.Contrast(draw.Colour{R: a.R, G: a.G, B: a.B}, draw.Colour{R: b.R, G: b.G, B: b.B})
}
