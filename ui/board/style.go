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
		Background: rgb(0xE8E6E0), Paper: rgb(0xFBFAF7),
		GridFine: rgb(0xF0EEE8), GridBold: rgb(0xDEDAD1), CaseLine: rgb(0x5C6468),
		Ruler: rgb(0xF3F1EC), Text: rgb(0x20272B), Muted: rgb(0x555D60), Halo: rgb(0xFDFCFA),
		Edge: rgb(0x3B4347), Select: rgb(0x1B5E73), Hover: rgb(0x3E8499), Guide: rgb(0x9A1580),
		Port: rgb(0x2A3237), PortFace: rgb(0xFDFCFA), Greyed: rgb(0xB4B3AD),
		Metal: rgb(0xBBBEBF), Collar: rgb(0x8F9597),
		Error: rgb(0xA1261D), Warning: rgb(0x7A4E00), Note: rgb(0x44548A),
		Tints: [6]color.RGBA{
			rgb(0xCBD3D6), rgb(0xD9D2C3), rgb(0xC9D4C8), rgb(0xD5CCD2), rgb(0xBFC9CF), rgb(0xDCCFC4),
		},
		Tubes: tubeColours(),
	}
}

// Dark is the style on a dark ground.
func Dark() Style {
	return Style{
		Dark:       true,
		Background: rgb(0x1B1F22), Paper: rgb(0x282D31),
		GridFine: rgb(0x2F3539), GridBold: rgb(0x3C4449), CaseLine: rgb(0x9DA5A6),
		Ruler: rgb(0x212629), Text: rgb(0xE8E5DE), Muted: rgb(0xB1B7B5), Halo: rgb(0x14181A),
		Edge: rgb(0x14181A), Select: rgb(0x83C3D4), Hover: rgb(0x5C9DB0), Guide: rgb(0xF0A6E4),
		Port: rgb(0xBEC3C2), PortFace: rgb(0x1B1F22), Greyed: rgb(0x5E6668),
		Metal: rgb(0x8E9496), Collar: rgb(0x6C7375),
		Error: rgb(0xF5978D), Warning: rgb(0xE6B95C), Note: rgb(0xADBDEA),
		Tints: [6]color.RGBA{
			rgb(0x5A6569), rgb(0x665F52), rgb(0x576359), rgb(0x635A62), rgb(0x4E5B62), rgb(0x695B52),
		},
		Tubes: tubeColours(),
	}
}
