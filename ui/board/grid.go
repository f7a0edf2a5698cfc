package board

import (
	"math"
	"strconv"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// Bands along the left and the lower edge for the grid's numbers, px.
const rulerWide, rulerHigh = 38, 20

// coarsePx is how far apart numbered lines are at least, px.
const coarsePx = 52.0

// gridSteps gives the steps of the fine and of the numbered grid lines, mm, at
// a scale in px per mm: 1, 2 or 5 times a power of ten of millimetres, or
// halves and doubles of an inch.
func gridSteps(zoom float64, u route.Units) (fine, coarse float64) {
	least := coarsePx / zoom
	if u == route.Inches {
		coarse = route.Inch * math.Pow(2, math.Ceil(math.Log2(least/route.Inch)-1e-9))
		return coarse / 4, coarse
	}
	coarse = log125(least)
	if lead := coarse / math.Pow(10, math.Floor(math.Log10(coarse)+1e-9)); math.Abs(lead-2) < 1e-6 {
		return coarse / 4, coarse
	}
	return coarse / 5, coarse
}

// log125 gives the step 1, 2 or 5 times a power of ten that is at least least.
func log125(least float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(least)))
	for _, k := range []float64{1, 2, 5} {
		if k*power >= least*(1-1e-9) {
			return k * power
		}
	}
	return 10 * power
}

// axisName names the axis of the case that a unit direction follows.
func axisName(d mgl64.Vec3) (name string, index int, sign float64) {
	for k, n := range []string{"x", "y", "z"} {
		if math.Abs(d[k]) > 0.5 {
			return n, k, math.Copysign(1, d[k])
		}
	}
	return "", 0, 1
}

// rulers writes the grid's numbers along the left and the lower edge.
func (p *Painter) rulers(f *frame, style *Style) {
	right, up, _ := p.cam.Axes()
	s := p.scale
	wide, high := int(rulerWide*s), int(rulerHigh*s)
	f.box(0, 0, wide, f.h, pack(style.Ruler), 1)
	f.box(wide, f.h-high, f.w, f.h, pack(style.Ruler), 1)
	line := pack(style.GridBold)
	px := max(1, int(s+0.5))
	f.box(wide-px, 0, wide, f.h-high, line, 1)
	f.box(wide, f.h-high, f.w, f.h-high+px, line, 1)
	p.ticks(f, style, right, false)
	p.ticks(f, style, up, true)
}

// ticks writes the numbers of one axis.
func (p *Painter) ticks(f *frame, style *Style, dir mgl64.Vec3, upright bool) {
	name, axis, sign := axisName(dir)
	_, step := gridSteps(p.cam.Zoom/p.scale, p.scene.Units)
	face := p.letters.face(10.5*p.scale, regular)
	mx, my := p.cam.middle()
	// px of the axis' zero, and px per mm with its sign.
	per := p.cam.Zoom * sign
	zero := mx - p.cam.Centre[axis]*per
	end := float64(f.w)
	if upright {
		per = -per
		zero, end = my-p.cam.Centre[axis]*per, float64(f.h)
	}
	a, b := (0-zero)/per, (end-zero)/per
	for i := math.Ceil(min(a, b) / step); i <= math.Floor(max(a, b)/step); i++ {
		p.tick(f, face, style, zero+i*step*per, i*step, upright)
	}
	p.axisLabel(f, style, name, upright)
}

// numberText writes a grid line's place without needless decimals.
func numberText(u route.Units, mm float64) string {
	v := mm / u.Factor()
	return strconv.FormatFloat(math.Round(v*1e4)/1e4+0, 'f', -1, 64)
}

// number is numberText with a tail, kept from picture to picture.
func (p *Painter) number(mm float64, tail string) string {
	key := numberKey{p.scene.Units, mm, tail}
	text, ok := p.numbers[key]
	if !ok {
		if p.numbers == nil || len(p.numbers) > mostNumbers {
			p.numbers = map[numberKey]string{}
		}
		text = numberText(p.scene.Units, mm) + tail
		p.numbers[key] = text
	}
	return text
}

type numberKey struct {
	units route.Units
	mm    float64
	tail  string
}

// mostNumbers bounds what number keeps; zooming about makes new ones.
const mostNumbers = 2000

func (p *Painter) tick(f *frame, face *typeface, style *Style, at, mm float64, upright bool) {
	text := p.number(mm, "")
	w, s := face.width(text), float32(p.scale)
	ink, muted := pack(style.Muted), pack(style.CaseLine)
	wide, foot := float32(rulerWide)*s, float32(f.h)-float32(rulerHigh)*s
	px := max(1, int(s+0.5))
	if upright {
		y := float32(at)
		if y < 24*s || y > foot-4*s {
			return
		}
		f.box(int(wide-4*s), int(y), int(wide), int(y)+px, muted, 0.8)
		f.text(face, text, wide-7*s-w, y+face.high/2, ink)
		return
	}
	x := float32(at)
	if x < wide+w/2+2*s || x > float32(f.w)-w/2-p.axisWide()-10*s {
		return
	}
	f.box(int(x), int(foot), int(x)+px, int(foot+4*s), muted, 0.8)
	f.text(face, text, x-w/2, foot+15*s, ink)
}

// axisWide is how wide an axis' name is with its unit: all names are about as wide.
func (p *Painter) axisWide() float32 {
	face := p.letters.face(10.5*p.scale, bold)
	return face.width("z") + face.width(" ") + face.width(string(unitsOf(p.scene.Units)))
}

// axisLabel writes an axis' name with the unit at the end of its ruler.
func (p *Painter) axisLabel(f *frame, style *Style, name string, upright bool) {
	face, s := p.letters.face(10.5*p.scale, bold), float32(p.scale)
	unit := string(unitsOf(p.scene.Units))
	gap, w := face.width(" "), p.axisWide()
	x, y := float32(f.w)-w-6*s, float32(f.h)-5*s
	if upright {
		x, y = float32(rulerWide)*s-7*s-w, 14*s
	}
	f.text(face, name, x, y, pack(style.Muted))
	f.text(face, unit, x+face.width(name)+gap, y, pack(style.Muted))
}

func unitsOf(u route.Units) route.Units {
	if u == route.Inches {
		return u
	}
	return route.Millimetres
}

// scaleBar draws a length to measure by in the lower right corner.
func (p *Painter) scaleBar(f *frame, style *Style) {
	s := float32(p.scale)
	_, step := gridSteps(p.cam.Zoom/p.scale/1.7, p.scene.Units)
	long := float32(step * p.cam.Zoom)
	right := float32(f.w) - 16*s
	y := float32(f.h-p.cam.Inset[3]) - 14*s
	c, px := pack(style.Text), max(1, int(s+0.5))
	face := p.letters.face(10.5*p.scale, regular)
	text := p.number(step, scaleTail(unitsOf(p.scene.Units), p.cam.deep()))
	x0, x1 := int(right-long), int(right)
	f.box(x0, int(y), x1, int(y)+2*px, c, 1)
	f.box(x0, int(y-4*s), x0+px, int(y)+2*px, c, 1)
	f.box(x1-px, int(y-4*s), x1, int(y)+2*px, c, 1)
	w := face.width(text)
	tx := min(right-long/2-w/2, right-w)
	f.haloed(face, text, tx, y-7*s, c, pack(style.Background))
	p.taken = append(p.taken, rect{min(tx, float32(x0)), y - 20*s, right, y + 4*s})
}

// scaleTail is what follows the number at the scale bar. In perspective the bar
// is true only in one plane.
func scaleTail(u route.Units, deep bool) string {
	switch {
	case u == route.Inches && deep:
		return " in at the centre"
	case u == route.Inches:
		return " in"
	case deep:
		return " mm at the centre"
	}
	return " mm"
}

// triad draws the case's three axes in the lower left corner.
func (p *Painter) triad(f *frame, style *Style) {
	s := float32(p.scale)
	right, up, back := p.cam.Axes()
	ox, oy, l := 40*s, float32(f.h)-40*s, 24*s
	face := p.letters.face(11*p.scale, bold)
	for k, name := range []string{"x", "y", "z"} {
		dx, dy := float32(right[k])*l, -float32(up[k])*l
		alpha := float32(1)
		if back[k] < -0.2 {
			alpha = 0.55
		}
		f.line(spot{x: ox, y: oy}, spot{x: ox + dx, y: oy + dy}, pen{c: pack(style.Muted), width: 1.6 * s, alpha: alpha})
		k := (l + 9*s) / l
		f.haloed(face, name, ox+dx*k-face.width(name)/2, oy+dy*k+face.high/2, pack(style.Muted), pack(style.Background))
	}
	p.taken = append(p.taken, rect{ox - 36*s, oy - 36*s, ox + 36*s, oy + 36*s})
}
