package draw

import (
	"strings"
	"sync"
	"unicode/utf8"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// How far the Go fonts reach above and below the baseline, in parts of the em
// (their hhea table: 1935 and −432 of 2048).
const (
	Ascent  = 0.945
	Descent = 0.211
)

// missing stands for a character that the fonts lack.
const missing = '□'

// lastRune is where the basic plane ends; a PDF's text codes reach no further.
const lastRune = 0xFFFF

// face is one of the two fonts with the advance of every character it holds.
type face struct {
	font    *sfnt.Font
	units   float64
	advance map[rune]float64       // in parts of the em
	plain   [utf8.RuneSelf]float64 // the same of the ASCII characters, which most texts are
}

var (
	regular = sync.OnceValue(func() *face { return newFace(goregular.TTF) })
	bold    = sync.OnceValue(func() *face { return newFace(gobold.TTF) })
)

func faceFor(isBold bool) *face {
	if isBold {
		return bold()
	}
	return regular()
}

// newFace reads an embedded font. It panics when the font is broken: it is our own.
func newFace(ttf []byte) *face {
	f, err := sfnt.Parse(ttf)
	if err != nil {
		panic("draw: embedded font: " + err.Error())
	}
	fc := &face{font: f, units: float64(f.UnitsPerEm()), advance: make(map[rune]float64, f.NumGlyphs())}
	var buf sfnt.Buffer
	for r := rune(' '); r <= lastRune; r++ {
		if i, err := f.GlyphIndex(&buf, r); err == nil && i != 0 {
			fc.advance[r] = fc.measure(&buf, i)
			if r < utf8.RuneSelf {
				fc.plain[r] = fc.advance[r]
			}
		}
	}
	return fc
}

func (fc *face) measure(buf *sfnt.Buffer, i sfnt.GlyphIndex) float64 {
	a, err := fc.font.GlyphAdvance(buf, i, fixed.I(int(fc.units)), font.HintingNone)
	if err != nil {
		panic("draw: embedded font: " + err.Error())
	}
	return float64(a) / 64 / fc.units
}

// Writable gives a text as it is written: in the basic plane, on one line, with
// a hollow square for each character that the fonts lack.
func Writable(text string) string {
	if isPlain(text) {
		return text
	}
	has := regular().advance
	return strings.Map(func(r rune) rune {
		switch _, ok := has[r]; {
		case r == '\t' || r == '\n' || r == '\r' || r == '\u00a0' || r == '\u202f' || r == '\u2009':
			return ' '
		case r < ' ' || r == 0x7f || r == '\u200b' || r == '\u00ad' || r == '\ufeff':
			return -1
		case !ok:
			return missing
		}
		return r
	}, text)
}

// isPlain reports whether a text is nothing but printable ASCII, all of which the
// fonts hold.
func isPlain(text string) bool {
	for i := range len(text) {
		if text[i] < ' ' || text[i] > '~' {
			return false
		}
	}
	return true
}

// TextWidth is how far a text of a size in mm reaches along its line, mm.
func TextWidth(text string, size float64, isBold bool) float64 {
	fc, sum := faceFor(isBold), 0.0
	for _, r := range Writable(text) {
		if r < utf8.RuneSelf {
			sum += fc.plain[r]
		} else {
			sum += fc.advance[r]
		}
	}
	return sum * size
}

// outline is a letter's outline in the font's units, y down; good until the
// buffer is used again.
func (fc *face) outline(buf *sfnt.Buffer, c rune) sfnt.Segments {
	i, err := fc.font.GlyphIndex(buf, c)
	if err != nil {
		panic("draw: embedded font: " + err.Error())
	}
	segments, err := fc.font.LoadGlyph(buf, i, fixed.I(int(fc.units)), nil)
	if err != nil {
		panic("draw: embedded font: " + err.Error())
	}
	return segments
}
