package board

import "slices"

// rect is a place on the picture, px.
type rect struct{ x0, y0, x1, y1 float32 }

func (r rect) hits(o rect) bool { return r.x0 < o.x1 && o.x0 < r.x1 && r.y0 < o.y1 && o.y0 < r.y1 }

// grown is the rectangle with a margin.
func (r rect) grown(by float32) rect { return rect{r.x0 - by, r.y0 - by, r.x1 + by, r.y1 + by} }

// sight is what can be seen of one id, from a sample of the pixels.
type sight struct {
	n        int
	sx, sy   float32
	x, y     float32 // of the sample nearest to the middle of all
	nearest  float32
	lo, hi   [2]float32
	measured bool
}

// sampleStep is how many px of a plain screen lie between samples.
const sampleStep = 5

// look takes stock of what can be seen where.
func (p *Painter) look() {
	p.seen = room(p.seen, len(p.scene.targets))
	clear(p.seen)
	p.samples(func(s *sight, x, y float32) {
		if s.n == 0 {
			s.lo, s.hi = [2]float32{x, y}, [2]float32{x, y}
		}
		s.n++
		s.sx, s.sy = s.sx+x, s.sy+y
		s.lo[0], s.lo[1] = min(s.lo[0], x), min(s.lo[1], y)
		s.hi[0], s.hi[1] = max(s.hi[0], x), max(s.hi[1], y)
	})
	p.samples(func(s *sight, x, y float32) {
		dx, dy := x-s.sx/float32(s.n), y-s.sy/float32(s.n)
		if d := dx*dx + dy*dy; !s.measured || d < s.nearest {
			s.measured, s.nearest, s.x, s.y = true, d, x, y
		}
	})
}

// samples calls each for a grid of pixels that show something.
func (p *Painter) samples(each func(s *sight, x, y float32)) {
	f := p.ids()
	step := int(sampleStep*p.scale) * p.over
	for y := step / 2; y < f.h; y += step {
		for x := step / 2; x < f.w; x += step {
			if id := f.id[y*f.w+x]; id != 0 {
				each(&p.seen[id], (float32(x)+0.5)/float32(p.over), (float32(y)+0.5)/float32(p.over))
			}
		}
	}
}

// idAt is what is drawn at a pixel of the picture.
func (p *Painter) idAt(x, y float32) uint16 {
	f := p.ids()
	px, py := int(x*float32(p.over)), int(y*float32(p.over))
	if x < 0 || y < 0 || px >= f.w || py >= f.h {
		return 0
	}
	return f.id[py*f.w+px]
}

// free reports whether a word may stand here.
func (p *Painter) free(r rect) bool {
	if r.x0 < float32(p.cam.Inset[0]) || r.y0 < 0 || r.x1 > float32(p.cam.W) || r.y1 > float32(p.cam.H-p.cam.Inset[3]) {
		return false
	}
	return !slices.ContainsFunc(p.taken, r.hits)
}
