package board

import "image/color"

// Style is the colours of a picture. Every text stands out from what is behind
// it by a contrast of at least 4.5:1 (WCAG 2, criterion 1.4.3, level AA).
type Style struct {
	Dark bool

	Background color.RGBA // around the case
	Paper      color.RGBA // the far walls of the case
	GridFine   color.RGBA
	GridBold   color.RGBA
	CaseLine   color.RGBA
	Ruler      color.RGBA // band behind the grid's numbers
	Text       color.RGBA
	Muted      color.RGBA // text of lesser weight
	Halo       color.RGBA // round text and marks
	Edge       color.RGBA // edges of parts
	Select     color.RGBA
	Hover      color.RGBA
	Guide      color.RGBA
	Port       color.RGBA // ring and arrow of a free port, face of a used one
	PortFace   color.RGBA // face of a free port
	Greyed     color.RGBA // a port that cannot be joined
	Metal      color.RGBA // fittings' bodies
	Collar     color.RGBA
	Error      color.RGBA
	Warning    color.RGBA
	Note       color.RGBA
	Tints      [6]color.RGBA // parts; calm, so that the tubes lead
	Tubes      [7]color.RGBA
}

// tubeColours is the palette of Okabe and Ito (2008), Color Universal Design,
// without its black, which shows no shading. The order keeps neighbours in the
// alphabet apart in lightness as well as in hue.
func tubeColours() [7]color.RGBA {
	return [7]color.RGBA{
		rgb(0x0072B2), // blue
		rgb(0xE69F00), // orange
		rgb(0x009E73), // bluish green
		rgb(0xCC79A7), // reddish purple
		rgb(0x56B4E9), // sky blue
		rgb(0xD55E00), // vermillion
		rgb(0xF0E442), // yellow
	}
}

func rgb(hex uint32) color.RGBA {
	return color.RGBA{uint8(hex >> 16), uint8(hex >> 8), uint8(hex), 255}
}

// Light is the style on a light ground.
func Light() Style {
	return Style{
		Background: rgb(0xE9EBEE), Paper: rgb(0xF8F9FA),
		GridFine: rgb(0xEBEDF0), GridBold: rgb(0xD8DCE1), CaseLine: rgb(0x5B6672),
		Ruler: rgb(0xF3F4F6), Text: rgb(0x1E252C), Muted: rgb(0x56606B), Halo: rgb(0xFCFCFD),
		Edge: rgb(0x3E4852), Select: rgb(0x1557C0), Hover: rgb(0x5B8DE0), Guide: rgb(0xA0158A),
		Port: rgb(0x27313B), PortFace: rgb(0xFDFDFE), Greyed: rgb(0xA9B0B8),
		Metal: rgb(0xB4BAC1), Collar: rgb(0x8D959E),
		Error: rgb(0xB3261E), Warning: rgb(0x8A5A00), Note: rgb(0x3F6078),
		Tints: [6]color.RGBA{
			rgb(0xC9D3DC), rgb(0xD6D0C4), rgb(0xC8D5CB), rgb(0xD3CBD6), rgb(0xBFC9D6), rgb(0xDACDC6),
		},
		Tubes: tubeColours(),
	}
}

// Dark is the style on a dark ground.
func Dark() Style {
	return Style{
		Dark:       true,
		Background: rgb(0x1B1F24), Paper: rgb(0x262B31),
		GridFine: rgb(0x2D333A), GridBold: rgb(0x3A424B), CaseLine: rgb(0x9AA5B1),
		Ruler: rgb(0x20252A), Text: rgb(0xECEFF2), Muted: rgb(0xA9B3BE), Halo: rgb(0x15181C),
		Edge: rgb(0x14181C), Select: rgb(0x8AB8FF), Hover: rgb(0x5F86C4), Guide: rgb(0xF0A6E4),
		Port: rgb(0xE6EAEE), PortFace: rgb(0x1B1F24), Greyed: rgb(0x626C77),
		Metal: rgb(0x8C949D), Collar: rgb(0x6A727B),
		Error: rgb(0xFF8A80), Warning: rgb(0xF2B84B), Note: rgb(0x8FC1DE),
		Tints: [6]color.RGBA{
			rgb(0x56616D), rgb(0x635E55), rgb(0x55625A), rgb(0x605864), rgb(0x4D5968), rgb(0x665A54),
		},
		Tubes: tubeColours(),
	}
}
