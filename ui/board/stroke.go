package board

import "math"

// pen is how a line is drawn.
type pen struct {
	c     pixel
	width float32 // px
	alpha float32 // 0 to 1
	// hide: the line vanishes behind what is nearer than it by more than slack.
	hide  bool
	slack float32 // in the unit of depth
	dash  float32 // px of line and of gap; 0 for a whole line
}

// line draws a straight line with soft edges. Whether it is hidden is settled
// once for each step along it, so that it never frays where it runs along the
// edge of its own solid.
func (f *frame) line(a, b spot, p pen) {
	if r := p.width + 1; max(a.x, b.x) < -r || max(a.y, b.y) < -r ||
		min(a.x, b.x) > float32(f.w)+r || min(a.y, b.y) > float32(f.h)+r {
		return
	}
	dx, dy := b.x-a.x, b.y-a.y
	if abs(dx) >= abs(dy) {
		if b.x < a.x {
			a, b = b, a
		}
		f.along(a.x, a.y, a.z, b.x, b.y, b.z, false, p)
		return
	}
	if b.y < a.y {
		a, b = b, a
	}
	f.along(a.y, a.x, a.z, b.y, b.x, b.z, true, p)
}

func abs(x float32) float32 { return float32(math.Abs(float64(x))) }

// along walks a line from u0 to u1 along the axis it follows most, which is y
// when it stands steep, and paints across that axis.
func (f *frame) along(u0, v0, z0, u1, v1, z1 float32, steep bool, p pen) {
	if u1-u0 < 1e-3 {
		return
	}
	n := nib{most: f.h, uStep: 1, vStep: f.w, c: p.c, half: p.width/2 + 0.5, top: min(p.width, 1)}
	most := f.w
	if steep {
		n.most, n.uStep, n.vStep, most = f.w, f.w, 1, f.h
	}
	sv, sz := (v1-v0)/(u1-u0), (z1-z0)/(u1-u0)
	n.lean = float32(1 / math.Sqrt(float64(1+sv*sv)))
	n.reach = n.half / n.lean
	from, to := int(max(u0, 0)), int(min(u1, float32(most-1)))
	for u := from; u <= to; u++ {
		covered := min(float32(u+1), u1) - max(float32(u), u0)
		mid := float32(u) + 0.5
		if covered <= 0 || p.dash > 0 && int((mid-u0)/(n.lean*p.dash))&1 == 1 {
			continue
		}
		v := v0 + (mid-u0)*sv
		if v < -n.reach || v > float32(n.most)+n.reach || p.hide && !f.seen(&n, u, v, z0+(mid-u0)*sz+p.slack) {
			continue
		}
		f.across(&n, u, v, covered*p.alpha*256)
	}
}

// nib is what stays the same along a line: how pixels follow one another along
// it and across it, and how broad it is.
type nib struct {
	most         int // pixels across the frame
	uStep, vStep int
	c            pixel
	half, reach  float32 // half its breadth and a soft rim: square to it, and across the axis it follows
	lean, top    float32
}

// seen reports whether a point of a line can be seen: in the pixel under it or
// in one of those beside it nothing is nearer.
func (f *frame) seen(n *nib, u int, v, z float32) bool {
	c := int(v)
	for w := max(c-1, 0); w <= min(c+1, n.most-1); w++ {
		if f.depth[u*n.uStep+w*n.vStep] <= z {
			return true
		}
	}
	return false
}

// across paints one step of a line: each pixel by how much of the line's
// breadth covers it.
func (f *frame) across(n *nib, u int, v, strength float32) {
	from, to := max(int(v-n.reach), 0), min(int(v+n.reach), n.most-1)
	i := u*n.uStep + from*n.vStep
	for w := from; w <= to; w++ {
		d := float32(w) + 0.5 - v
		if d < 0 {
			d = -d
		}
		if cover := n.half - d*n.lean; cover > 0 {
			f.colour[i] = blend(f.colour[i], n.c, uint32(min(cover, n.top)*strength))
		}
		i += n.vStep
	}
}

// rule draws a line of whole px. One that runs along the rows or columns is put
// on whole pixels, also of the picture that is halved later, so that it is even
// and sharp; over is how many px of the frame make one of the picture.
func (f *frame) rule(a, b spot, c pixel, over, px int) {
	const askew = 0.02 // px over the whole length that cannot be seen
	wide := over * px
	switch {
	case abs(a.y-b.y) < askew:
		y := int(floor(a.y/float32(over)+0.5))*over - wide/2/over*over
		f.box(int(min(a.x, b.x)), y, int(max(a.x, b.x)), y+wide, c, 1)
	case abs(a.x-b.x) < askew:
		x := int(floor(a.x/float32(over)+0.5))*over - wide/2/over*over
		f.box(x, int(min(a.y, b.y)), x+wide, int(max(a.y, b.y)), c, 1)
	default:
		f.line(a, b, pen{c: c, width: float32(wide), alpha: 1})
	}
}

// disc fills a circle with soft edges.
func (f *frame) disc(x, y, r float32, c pixel, alpha float32) { f.ringed(x, y, -1, r, c, alpha) }

// circle draws a line of some width round a circle.
func (f *frame) circle(x, y, r, width float32, c pixel, alpha float32) {
	f.ringed(x, y, r-width/2, r+width/2, c, alpha)
}

func (f *frame) ringed(x, y, inner, outer float32, c pixel, alpha float32) {
	for py := int(y - outer - 1); py <= int(y+outer+1); py++ {
		for px := int(x - outer - 1); px <= int(x+outer+1); px++ {
			dx, dy := float32(px)+0.5-x, float32(py)+0.5-y
			d := float32(math.Sqrt(float64(dx*dx + dy*dy)))
			cover := min(outer+0.5-d, 1)
			if inner > 0 {
				cover = min(cover, d-inner+0.5)
			}
			if cover > 0 {
				f.lay(px, py, c, uint32(cover*alpha*256))
			}
		}
	}
}

// box fills a rectangle of whole pixels.
func (f *frame) box(x0, y0, x1, y1 int, c pixel, alpha float32) {
	a := uint32(alpha * 256)
	if a == 256 && x1 > x0 {
		f.block(x0, y0, x1, y1, c)
		return
	}
	for y := max(y0, 0); y < min(y1, f.h); y++ {
		for x := max(x0, 0); x < min(x1, f.w); x++ {
			f.colour[y*f.w+x] = blend(f.colour[y*f.w+x], c, a)
		}
	}
}

// block fills a rectangle without blending.
func (f *frame) block(x0, y0, x1, y1 int, c pixel) {
	x0, x1 = max(x0, 0), min(x1, f.w)
	for y := max(y0, 0); y < min(y1, f.h) && x0 < x1; y++ {
		row := f.colour[y*f.w+x0 : y*f.w+x1]
		for x := range row {
			row[x] = c
		}
	}
}

// wedge fills a triangle with soft edges, as marks and arrow heads need.
func (f *frame) wedge(p [3]spot, c pixel, alpha float32) {
	if facing(&p[0], &p[1], &p[2]) < 0 {
		p[1], p[2] = p[2], p[1]
	}
	x0, x1 := min(p[0].x, p[1].x, p[2].x), max(p[0].x, p[1].x, p[2].x)
	y0, y1 := min(p[0].y, p[1].y, p[2].y), max(p[0].y, p[1].y, p[2].y)
	for y := int(y0 - 1); y <= int(y1+1); y++ {
		for x := int(x0 - 1); x <= int(x1+1); x++ {
			cover := float32(1)
			for i := range p {
				cover = min(cover, inside(&p[i], &p[(i+1)%3], float32(x)+0.5, float32(y)+0.5)+0.5)
			}
			if cover > 0 {
				f.lay(x, y, c, uint32(cover*alpha*256))
			}
		}
	}
}

// inside is how far a point lies inside the edge from a to b, px.
func inside(a, b *spot, x, y float32) float32 {
	dx, dy := b.x-a.x, b.y-a.y
	l := float32(math.Sqrt(float64(dx*dx + dy*dy)))
	return ((y-a.y)*-dx + (x-a.x)*dy) / max(l, 1e-6)
}

func sqrt(x float32) float32 { return float32(math.Sqrt(float64(x))) }

func floor(x float32) float32 { return float32(math.Floor(float64(x))) }
