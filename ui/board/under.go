package board

import (
	"image"
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// Underlay is a picture that lies under one of the flat looks, behind
// everything: a photo of the open case to place things by.
type Underlay struct {
	Picture *Picture
	Look    Look
	At      [2]float64 // place of its lower left corner along the look's two axes, mm
	Scale   float64    // mm that a pixel of the file stands for
	Fade    float64    // 0: as it is, 1: not to be seen
	Locked  bool       // dragging does not move it
}

// Picture is the pixels of an underlay, with halves of halves of it, so that it
// is shown small without sparkling. It is made once and never changed.
type Picture struct {
	w, h   int // pixels of the file, which may be more than are kept
	levels []level
}

type level struct {
	w, h int
	px   []pixel
}

// NewPicture takes the pixels of a picture whose file has w by h of them.
func NewPicture(img *image.RGBA, w, h int) *Picture {
	p := &Picture{w: w, h: h}
	l := level{img.Rect.Dx(), img.Rect.Dy(), make([]pixel, img.Rect.Dx()*img.Rect.Dy())}
	for y := range l.h {
		row := img.Pix[y*img.Stride:]
		for x := range l.w {
			l.px[y*l.w+x] = pixel(row[4*x]) | pixel(row[4*x+1])<<8 | pixel(row[4*x+2])<<16 | 0xFF000000
		}
	}
	p.levels = append(p.levels, l)
	for l.w > 64 && l.h > 64 {
		l = l.half()
		p.levels = append(p.levels, l)
	}
	return p
}

func (l level) half() level {
	s := level{l.w / 2, l.h / 2, make([]pixel, (l.w/2)*(l.h/2))}
	for y := range s.h {
		a, b := l.px[2*y*l.w:], l.px[(2*y+1)*l.w:]
		for x := range s.w {
			s.px[y*s.w+x] = mean(a[2*x], a[2*x+1], b[2*x], b[2*x+1])
		}
	}
	return s
}

// corner is the point of the case where the lower left corner lies.
func (u *Underlay) corner() mgl64.Vec3 {
	switch u.Look {
	case Above:
		return mgl64.Vec3{u.At[0], 0, u.At[1]}
	case Front:
		return mgl64.Vec3{0, u.At[1], u.At[0]}
	case Side, Turntable:
	}
	return mgl64.Vec3{u.At[0], u.At[1], 0}
}

// Along gives a shift of the case as shares along a flat look's two axes, as
// the place of an underlay counts them.
func Along(l Look, by mgl64.Vec3) [2]float64 {
	switch l {
	case Above:
		return [2]float64{by[0], by[2]}
	case Front:
		return [2]float64{by[2], by[1]}
	case Side, Turntable:
	}
	return [2]float64{by[0], by[1]}
}

// on gives the rectangle of the picture on the screen.
func (u *Underlay) on(c *Camera) (x0, y0, x1, y1 float64) {
	x0, y1 = c.Project(u.corner())
	x1 = x0 + float64(u.Picture.w)*u.Scale*c.Zoom
	y0 = y1 - float64(u.Picture.h)*u.Scale*c.Zoom
	return x0, y0, x1, y1
}

// under draws the pictures of the look, the first lowest.
func (p *Painter) under(f *frame) {
	for i := range p.scene.Under {
		if u := &p.scene.Under[i]; u.Look == p.cam.Look && u.Fade < 1 {
			p.underlay(f, u)
		}
	}
}

// underlay takes for each pixel the nearest of the level that has about as many.
func (p *Painter) underlay(f *frame, u *Underlay) {
	k := float64(p.over)
	x0, y0, x1, y1 := u.on(&p.cam)
	x0, y0, x1, y1 = x0*k, y0*k, x1*k, y1*k
	if x1-x0 < 1 || y1-y0 < 1 {
		return
	}
	l := u.Picture.level(x1 - x0)
	alpha := uint32(math.Round((1 - u.Fade) * 256))
	left, right := max(0, int(math.Ceil(x0-0.5))), min(f.w, int(math.Ceil(x1-0.5)))
	stepX, stepY := float64(l.w)/(x1-x0), float64(l.h)/(y1-y0)
	for y := max(0, int(math.Ceil(y0-0.5))); y < min(f.h, int(math.Ceil(y1-0.5))); y++ {
		row := l.px[min(int((float64(y)+0.5-y0)*stepY), l.h-1)*l.w:]
		out := f.colour[y*f.w : (y+1)*f.w]
		at, step := int64(((float64(left)+0.5-x0)*stepX)*(1<<32)), int64(stepX*(1<<32))
		for x := left; x < right; x++ {
			out[x] = blend(out[x], row[min(int(at>>32), l.w-1)], alpha)
			at += step
		}
	}
}

// level is the smallest that is no coarser than the screen.
func (p *Picture) level(wide float64) level {
	best := p.levels[0]
	for _, l := range p.levels[1:] {
		if float64(l.w) < wide {
			break
		}
		best = l
	}
	return best
}

// UnderAt is the picture of the look at a pixel of the widget, −1 for none; the
// last drawn lies on top.
func (b *Board) UnderAt(x, y float64) int {
	for i := len(b.scene.Under) - 1; i >= 0; i-- {
		if u := &b.scene.Under[i]; u.Look == b.look {
			if x0, y0, x1, y1 := u.on(b.camera()); x >= x0 && x < x1 && y >= y0 && y < y1 {
				return i
			}
		}
	}
	return -1
}

// underGrip moves a picture that is not locked.
type underGrip struct {
	index int
	from  mgl64.Vec3
	by    [2]float64
}

// takeUnder takes hold of the picture at a press; nil when none is there, or it
// is locked.
func (b *Board) takeUnder(p press) grip {
	i := b.UnderAt(p.x, p.y)
	if i < 0 || b.scene.Under[i].Locked || b.OnUnder == nil || p.on.Kind != Nothing {
		return nil
	}
	return &underGrip{index: i, from: b.camera().Unproject(p.x, p.y, mgl64.Vec3{})}
}

func (g *underGrip) move(b *Board, x, y float64) bool {
	by := Along(b.look, b.camera().Unproject(x, y, mgl64.Vec3{}).Sub(g.from))
	changed := by != g.by
	if changed {
		g.by = by
		b.OnUnder(g.index, by, false)
	}
	b.say("the picture moves; lock it when it lies right")
	return changed
}

func (g *underGrip) end(b *Board, kept bool) {
	if !kept {
		g.by = [2]float64{}
	}
	b.OnUnder(g.index, g.by, true)
}

func (g *underGrip) show(*Board, *Show) {}
