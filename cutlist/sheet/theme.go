package sheet

import "tubewright/cutlist/draw"

// Theme is the colours of a drawing, so that paper, a light and a dark window
// can show the same one.
type Theme struct {
	Paper, Ink, Faint, Rule draw.Colour // ground, writing, lesser writing, thin lines
	Part, PartSide, Edge    draw.Colour // a part's face, its other faces, its edges
	Fitting                 draw.Colour // bodies and collars
	Band                    draw.Colour // behind headings and every other row
	Alarm, AlarmBand        draw.Colour // drafts and findings; the ground behind
}

// PaperTheme is black on white, with greys that survive a copier.
func PaperTheme() Theme {
	return Theme{
		Paper: draw.Colour{R: 255, G: 255, B: 255}, Ink: draw.Colour{R: 17, G: 17, B: 17},
		Faint: draw.Colour{R: 85, G: 85, B: 85}, Rule: draw.Colour{R: 150, G: 150, B: 150},
		Part: draw.Colour{R: 232, G: 232, B: 228}, PartSide: draw.Colour{R: 212, G: 212, B: 208},
		Edge: draw.Colour{R: 110, G: 110, B: 110}, Fitting: draw.Colour{R: 186, G: 190, B: 196},
		Band:  draw.Colour{R: 242, G: 242, B: 240},
		Alarm: draw.Colour{R: 160, G: 55, B: 0}, AlarmBand: draw.Colour{R: 255, G: 240, B: 222},
	}
}

// LightTheme is for a light window: the paper's colours.
func LightTheme() Theme { return PaperTheme() }

// DarkTheme is for a dark window.
func DarkTheme() Theme {
	return Theme{
		Paper: draw.Colour{R: 30, G: 32, B: 35}, Ink: draw.Colour{R: 236, G: 236, B: 234},
		Faint: draw.Colour{R: 176, G: 178, B: 182}, Rule: draw.Colour{R: 96, G: 99, B: 104},
		Part: draw.Colour{R: 66, G: 69, B: 74}, PartSide: draw.Colour{R: 52, G: 55, B: 59},
		Edge: draw.Colour{R: 140, G: 143, B: 148}, Fitting: draw.Colour{R: 108, G: 113, B: 120},
		Band:  draw.Colour{R: 42, G: 44, B: 48},
		Alarm: draw.Colour{R: 240, G: 150, B: 90}, AlarmBand: draw.Colour{R: 66, G: 46, B: 32},
	}
}

// palette is the seven colours beside black that Okabe and Ito chose for all
// kinds of colour vision (Color Universal Design, 2008), blue first.
var palette = [...]draw.Colour{
	{R: 0x00, G: 0x72, B: 0xB2}, // blue
	{R: 0xE6, G: 0x9F, B: 0x00}, // orange
	{R: 0x00, G: 0x9E, B: 0x73}, // bluish green
	{R: 0xCC, G: 0x79, B: 0xA7}, // reddish purple
	{R: 0x56, G: 0xB4, B: 0xE9}, // sky blue
	{R: 0xD5, G: 0x5E, B: 0x00}, // vermillion
	{R: 0xF0, G: 0xE4, B: 0x42}, // yellow
}

// ColourOf is the colour of the tube with a letter: A, B, ... Z, AA, ... go
// round the palette. The letter is always drawn too: colour alone tells nothing.
func ColourOf(letter string) draw.Colour {
	n := 0
	for _, r := range letter {
		n = n*26 + int(r-'A') + 1
	}
	n = (n - 1) % len(palette)
	return palette[max(n, 0)]
}

// mix gives the colour part of the way from one to another.
func mix(a, b draw.Colour, part float64) draw.Colour {
	at := func(x, y uint8) uint8 { return uint8(float64(x) + part*(float64(y)-float64(x)) + 0.5) }
	return draw.Colour{R: at(a.R, b.R), G: at(a.G, b.G), B: at(a.B, b.B)}
}

// pen is a solid line.
func pen(width float64, c draw.Colour) draw.Stroke { return draw.Stroke{Width: width, Colour: c} }

// dashedPen is a broken line.
func dashedPen(width float64, c draw.Colour, dash ...float64) draw.Stroke {
	return draw.Stroke{Width: width, Colour: c, Dash: dash}
}
