package board

import (
	"image"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"
)

// weight chooses one of the two cuts of the typeface.
type weight int

const (
	regular weight = iota
	bold
)

// fonts are parsed once; they are the ones the printed sheets use.
var fonts = sync.OnceValue(func() [2]*opentype.Font {
	return [2]*opentype.Font{mustParse(goregular.TTF), mustParse(gobold.TTF)}
})

// mustParse panics when a font that was compiled in cannot be read.
func mustParse(ttf []byte) *opentype.Font {
	f, err := opentype.Parse(ttf)
	if err != nil {
		panic("board: built-in font: " + err.Error())
	}
	return f
}

// quarters is how many places within a pixel a letter is kept for; letters set
// to whole pixels stand unevenly.
const quarters = 4

// type face of one size, with the letters drawn so far.
type typeface struct {
	face   font.Face
	glyphs map[glyphKey]*glyph
	ascent float32
	high   float32 // of a capital
	halo   int
}

type glyphKey struct {
	r       rune
	quarter int8
}

// glyph is a letter as coverage, and the same grown on all sides for the halo.
type glyph struct {
	advance float32
	x, y    int // of the mask from the pen, px
	w, h    int
	mask    []uint8
	grown   []uint8 // (w+2·halo) by (h+2·halo)
}

// faceKey is a size in 64ths of a pixel, and the cut.
type faceKey struct {
	size   fixed.Int26_6
	weight weight
}

// lettering keeps the faces in use.
type lettering struct{ faces map[faceKey]*typeface }

// face gives a face of a size in px.
func (l *lettering) face(size float64, w weight) *typeface {
	key := faceKey{fixed.Int26_6(size*64 + 0.5), w}
	if t := l.faces[key]; t != nil {
		return t
	}
	if l.faces == nil {
		l.faces = map[faceKey]*typeface{}
	}
	t := newTypeface(size, w)
	l.faces[key] = t
	return t
}

func newTypeface(size float64, w weight) *typeface {
	face, err := opentype.NewFace(fonts()[w], &opentype.FaceOptions{Size: size, DPI: 72, Hinting: font.HintingNone})
	if err != nil {
		panic("board: built-in font: " + err.Error())
	}
	m := face.Metrics()
	return &typeface{
		face: face, glyphs: map[glyphKey]*glyph{},
		ascent: float32(m.Ascent) / 64, high: float32(m.CapHeight) / 64,
		halo: max(2, int(size/6)),
	}
}

// glyph gives a letter set at a fraction of a pixel.
func (t *typeface) glyph(r rune, frac float32) *glyph {
	key := glyphKey{r, int8(frac * quarters)}
	if g := t.glyphs[key]; g != nil {
		return g
	}
	g := t.draw(key)
	t.glyphs[key] = g
	return g
}

func (t *typeface) draw(key glyphKey) *glyph {
	dot := fixed.Point26_6{X: fixed.Int26_6(key.quarter) * 64 / quarters}
	r, mask, from, advance, ok := t.face.Glyph(dot, key.r)
	if !ok {
		return &glyph{}
	}
	g := &glyph{advance: float32(advance) / 64, x: r.Min.X, y: r.Min.Y, w: r.Dx(), h: r.Dy()}
	g.mask = make([]uint8, g.w*g.h)
	if alpha, ok := mask.(*image.Alpha); ok {
		for y := range g.h {
			copy(g.mask[y*g.w:(y+1)*g.w], alpha.Pix[alpha.PixOffset(from.X, from.Y+y):])
		}
	}
	g.grow(t.halo)
	return g
}

// grow makes the halo: each pixel takes the strongest within reach, less toward the rim.
func (g *glyph) grow(reach int) {
	w, h := g.w+2*reach, g.h+2*reach
	g.grown = make([]uint8, w*h)
	for y := range g.h {
		for x := range g.w {
			if m := g.mask[y*g.w+x]; m > 0 {
				g.spread(x, y, reach, w, m)
			}
		}
	}
}

// spread lays the halo of one pixel. Half of a stroke that falls between two pixels
// counts as a whole one: the halo round thin letters is no fainter than round bold ones.
func (g *glyph) spread(x, y, reach, w int, m uint8) {
	far := float32(reach) + 0.5
	for dy := -reach; dy <= reach; dy++ {
		for dx := -reach; dx <= reach; dx++ {
			k := min(max(far-sqrt(float32(dx*dx+dy*dy)), 0), 1) * min(255, 2*float32(m))
			i := (y+dy+reach)*w + x + dx + reach
			g.grown[i] = max(g.grown[i], uint8(k))
		}
	}
}

// width is how long a text is, px.
func (t *typeface) width(text string) float32 {
	x := float32(0)
	for _, r := range text {
		x += t.glyph(r, 0).advance
	}
	return x
}

// text writes along a baseline from x, y and gives where it ends.
func (f *frame) text(t *typeface, text string, x, y float32, c pixel) {
	if f.wrote != nil {
		f.wrote(t, text, x, y)
	}
	line := int(y + 0.5)
	for _, r := range text {
		whole := floor(x)
		g := t.glyph(r, x-whole)
		f.stamp(g.mask, int(whole)+g.x, line+g.y, g.w, c)
		x += g.advance
	}
}

// haloed is text with a halo round it.
func (f *frame) haloed(t *typeface, text string, x, y float32, c, halo pixel) {
	px, line := x, int(y+0.5)
	for _, r := range text {
		whole := floor(px)
		g := t.glyph(r, px-whole)
		f.stamp(g.grown, int(whole)+g.x-t.halo, line+g.y-t.halo, g.w+2*t.halo, halo)
		px += g.advance
	}
	f.text(t, text, x, y, c)
}

// stamp lays a colour through a mask of w columns.
func (f *frame) stamp(mask []uint8, x, y, w int, c pixel) {
	if w <= 0 {
		return
	}
	for row := 0; row*w < len(mask); row++ {
		py := y + row
		if uint(py) >= uint(f.h) {
			continue
		}
		for col, m := range mask[row*w : (row+1)*w] {
			if px := x + col; m > 0 && uint(px) < uint(f.w) {
				i := py*f.w + px
				f.colour[i] = blend(f.colour[i], c, uint32(m)+uint32(m>>7))
			}
		}
	}
}
