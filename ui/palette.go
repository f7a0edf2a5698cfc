package ui

import "image/color"

// role says what a colour is for. Every text role has a contrast of at least
// 4.5 to 1 on every ground it may stand on; see the test.
type role int

// The roles, first the grounds, then the lines, then the inks.
const (
	ground  role = iota // the window
	face                // panels, cards, fields
	chosen              // ground of what is selected
	hovered             // ground under the pointer
	rule                // separating lines
	edge                // around fields
	ink                 // text
	soft                // text that matters less
	accent              // what one may press, focus, the mark of what is selected
	onTone              // text on accent, bad, careful or fine
	bad                 // errors
	careful             // warnings
	fine                // all is well
	hint                // notes
	roles               // how many there are
)

// palette is one colour for each role.
type palette [roles]color.NRGBA

// nothing is the colour of what is not painted.
var nothing = color.NRGBA{}

func hex(rgb uint32) color.NRGBA {
	return color.NRGBA{R: uint8(rgb >> 16), G: uint8(rgb >> 8), B: uint8(rgb), A: 0xff}
}

// Light is paper and slate; dark is slate and paper. The inks for bad, careful,
// fine and hint differ in lightness too, and a mark or a word goes with each,
// so that nothing is told by colour alone.
var (
	lightPalette = palette{
		ground: hex(0xEFEDE7), face: hex(0xFBFAF7), chosen: hex(0xDCE7EA), hovered: hex(0xE9E8E2), rule: hex(0xD3CFC4), edge: hex(0x8E8C84),
		ink: hex(0x20272B), soft: hex(0x555D60), accent: hex(0x1B5E73), onTone: hex(0xFFFFFF),
		bad: hex(0xA1261D), careful: hex(0x7A4E00), fine: hex(0x28633A), hint: hex(0x44548A),
	}
	darkPalette = palette{
		ground: hex(0x1B1F22), face: hex(0x252A2E), chosen: hex(0x30444D), hovered: hex(0x2E3439), rule: hex(0x3D454A), edge: hex(0x7A8489),
		ink: hex(0xE8E5DE), soft: hex(0xB1B7B5), accent: hex(0x83C3D4), onTone: hex(0x14181A),
		bad: hex(0xF5978D), careful: hex(0xE6B95C), fine: hex(0x8FCB9D), hint: hex(0xADBDEA),
	}
)
