package board

import (
	"image"
	"image/color"
	"math"
)

// pixel is a colour as the frame keeps it: red in the lowest byte, then green,
// blue and 255, which is the order of image.RGBA's bytes.
type pixel uint32

func pack(c color.RGBA) pixel {
	return pixel(c.R) | pixel(c.G)<<8 | pixel(c.B)<<16 | 0xFF000000
}

// frame is a picture being made: colour, depth and id of each pixel. It is kept
// from picture to picture so that drawing asks for no memory.
type frame struct {
	w, h   int
	colour []pixel
	depth  []float32
	id     []uint16

	// wrote is told each text that is written, for the check that all can be read; nil
	// outside of tests.
	wrote func(t *typeface, text string, x, y float32)
}

// behind is a depth farther than anything drawn.
const behind = -math.MaxFloat32

// resize makes room for w by h pixels; what was drawn is lost.
func (f *frame) resize(w, h int) {
	f.w, f.h = w, h
	if cap(f.colour) < w*h {
		f.colour, f.depth, f.id = make([]pixel, w*h), make([]float32, w*h), make([]uint16, w*h)
	}
	f.colour, f.depth, f.id = f.colour[:w*h], f.depth[:w*h], f.id[:w*h]
}

// clear paints everything with one colour, empty and far away.
func (f *frame) clear(c pixel) {
	fill(f.colour, c)
	fill(f.depth, behind)
	clear(f.id)
}

// fill sets every element, doubling what is already set: copying is quicker
// than a loop.
func fill[T any](s []T, v T) {
	if len(s) == 0 {
		return
	}
	s[0] = v
	for n := 1; n < len(s); n *= 2 {
		copy(s[n:], s[:n])
	}
}

// blend lays c over p; alpha runs from 0 to 256. Red and blue are mixed in one
// product, green in another: neither can reach the other's bits.
func blend(p, c pixel, alpha uint32) pixel {
	const rb, g = 0xFF00FF, 0x00FF00
	under, over := pixel(256-alpha), pixel(alpha)
	m := (p&rb*under + c&rb*over) >> 8 & rb
	n := (p&g*under + c&g*over) >> 8 & g
	return m | n | 0xFF000000
}

// lay blends c over a pixel when it is inside the frame.
func (f *frame) lay(x, y int, c pixel, alpha uint32) {
	if uint(x) < uint(f.w) && uint(y) < uint(f.h) {
		i := y*f.w + x
		f.colour[i] = blend(f.colour[i], c, alpha)
	}
}

// halve makes f the picture of twice its size, each pixel the mean of four.
func (f *frame) halve(big *frame) {
	for y := range f.h {
		top := big.colour[2*y*big.w : (2*y+1)*big.w]
		low := big.colour[(2*y+1)*big.w : (2*y+2)*big.w]
		out := f.colour[y*f.w : (y+1)*f.w]
		for x := range out {
			out[x] = mean(top[2*x], top[2*x+1], low[2*x], low[2*x+1])
		}
	}
}

// mean adds red with blue and green by itself, each with room to carry.
func mean(a, b, c, d pixel) pixel {
	const rb, g = 0xFF00FF, 0x00FF00
	m := (a&rb + b&rb + c&rb + d&rb + 0x020002) >> 2 & rb
	n := (a&g + b&g + c&g + d&g + 0x000200) >> 2 & g
	return m | n | 0xFF000000
}

// put copies the frame into an image of the same size.
func (f *frame) put(img *image.RGBA) {
	for y := range f.h {
		row := img.Pix[y*img.Stride : y*img.Stride+4*f.w]
		for x, c := range f.colour[y*f.w : (y+1)*f.w] {
			p := row[4*x : 4*x+4 : 4*x+4]
			p[0], p[1], p[2], p[3] = byte(c), byte(c>>8), byte(c>>16), byte(c>>24)
		}
	}
}
