package draw

import "math"

// Contrast is the contrast ratio of two colours, 1 to 21, after WCAG 2.1:
// (L1 + 0.05)/(L2 + 0.05) with the relative luminances of the lighter and the
// darker one. Criterion 1.4.3, level AA, asks 4.5 of text.
func Contrast(a, b Colour) float64 {
	la, lb := luminance(a), luminance(b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

// luminance is the relative luminance of an sRGB colour, 0 to 1, with the
// weights and the linearisation WCAG 2.1 gives.
func luminance(c Colour) float64 {
	return 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B)
}

func linear(v uint8) float64 {
	s := float64(v) / 255
	if s <= 0.03928 {
		return s / 12.92
	}
	return math.Pow((s+0.055)/1.055, 2.4)
}
