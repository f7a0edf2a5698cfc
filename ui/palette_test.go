package ui

import (
	"image/color"
	"math"
	"testing"
)

// contrast is the ratio of WCAG 2 (relative luminance formula, from memory;
// black on white must give 21, and #767676 on white 4.54, the teaching value).
func contrast(a, b color.NRGBA) float64 {
	x, y := luminance(a), luminance(b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

func luminance(c color.NRGBA) float64 {
	linear := func(v uint8) float64 {
		f := float64(v) / 255
		if f <= 0.04045 {
			return f / 12.92
		}
		return math.Pow((f+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B)
}

func TestContrastFormula(t *testing.T) {
	for _, row := range []struct {
		fore, back uint32
		want       float64
		source     string
	}{
		{0x000000, 0xFFFFFF, 21, "WCAG 2, from memory"},
		{0x767676, 0xFFFFFF, 4.54, "WCAG 2 teaching value, from memory"},
		{0x0072B2, 0xFFFFFF, 5.19, "computed by the formula elsewhere (palette check values)"},
	} {
		if got := contrast(hex(row.fore), hex(row.back)); math.Abs(got-row.want) > 0.01 {
			t.Errorf("contrast(%06X, %06X) = %.3f, want %.2f: %s", row.fore, row.back, got, row.want, row.source)
		}
	}
}

// Level AA asks 4.5 to 1 for text (WCAG 2, criterion 1.4.3, from memory).
func TestEveryTextCanBeRead(t *testing.T) {
	const least = 4.5
	for name, p := range map[string]palette{"light": lightPalette, "dark": darkPalette} {
		for _, back := range []role{ground, face, chosen, hovered} {
			for _, fore := range []role{ink, soft, accent, bad, careful, fine, hint} {
				if got := contrast(p[fore], p[back]); got < least {
					t.Errorf("%s: role %d on %d has contrast %.2f, want at least %.1f", name, fore, back, got, least)
				}
			}
		}
		for _, back := range []role{accent, bad, careful, fine} {
			if got := contrast(p[onTone], p[back]); got < least {
				t.Errorf("%s: text on role %d has contrast %.2f, want at least %.1f", name, back, got, least)
			}
		}
	}
}
