package board

// Shadows are soft: what lies behind the edge of something nearer is darkened a
// little, the more the farther behind. It is the depth buffer less a blurred
// copy of itself (T. Luft, C. Colditz, O. Deussen, "Image enhancement by
// unsharp masking the depth buffer", 2006), shifted away from the light.
const (
	shadowStep  = 4    // px of the picture per cell of the blurred copy
	shadowReach = 3    // cells over which one pass of the blur goes, each side
	shadowMost  = 0.26 // how dark at most, as part of black
	shadowDepth = 30.0 // mm behind at which half of that is reached
	shadowShift = 3    // px to the right and down
	// shadowDead is what a surface seen askew falls away within the shift, mm.
	shadowDead = 3.0
)

// dimmed is a grid of depths, with how much each cell counts.
type dimmed struct {
	w, h        int
	depth, more []float32
	count, sum  []float32
}

// shadows darkens the picture; the depths are those of the supersampled frame.
func (p *Painter) shadows(f *frame) {
	d := &p.dim
	d.take(p.ids(), f, p.over)
	for range 2 {
		d.blur()
	}
	for y := range f.h {
		p.shadowRow(f, y)
	}
}

// real is a depth with the walls put back where they are.
func real(z float32) float32 {
	if z < -wallDepth/2 {
		return z + wallDepth
	}
	return z
}

// take samples the depth of each cell; empty space does not count.
func (d *dimmed) take(src, f *frame, over int) {
	d.w, d.h = (f.w+shadowStep-1)/shadowStep, (f.h+shadowStep-1)/shadowStep
	n := d.w * d.h
	d.depth, d.more = room(d.depth, n), room(d.more, n)
	d.count, d.sum = room(d.count, n), room(d.sum, n)
	for y := range d.h {
		for x := range d.w {
			sx := min(x*shadowStep+shadowStep/2, f.w-1) * over
			sy := min(y*shadowStep+shadowStep/2, f.h-1) * over
			i := y*d.w + x
			d.depth[i], d.count[i] = 0, 0
			if z := src.depth[sy*src.w+sx]; z > behind {
				d.depth[i], d.count[i] = real(z), 1
			}
		}
	}
}

// blur spreads depths and counts along rows, then along columns.
func (d *dimmed) blur() {
	for y := range d.h {
		smear(d.depth[y*d.w:], d.more[y*d.w:], d.w, 1)
		smear(d.count[y*d.w:], d.sum[y*d.w:], d.w, 1)
	}
	for x := range d.w {
		smear(d.more[x:], d.depth[x:], d.h, d.w)
		smear(d.sum[x:], d.count[x:], d.h, d.w)
	}
}

// smear gives each of n elements, step apart, the sum over its neighbours
// within shadowReach. Sums keep their share because counts go the same way.
func smear(from, to []float32, n, step int) {
	const share = 1.0 / (2*shadowReach + 1)
	sum := float32(0)
	for i := range min(shadowReach, n) {
		sum += from[i*step]
	}
	for i := range n {
		if k := i + shadowReach; k < n {
			sum += from[k*step]
		}
		to[i*step] = sum * share
		if k := i - shadowReach; k >= 0 {
			sum -= from[k*step]
		}
	}
}

func (p *Painter) shadowRow(f *frame, y int) {
	src, d := p.ids(), &p.dim
	depth := src.depth[y*p.over*src.w:]
	row := f.colour[y*f.w : (y+1)*f.w]
	fy := (float32(y-shadowShift) - shadowStep/2) / shadowStep
	for x := range row {
		z := depth[x*p.over]
		if z == behind {
			continue
		}
		fx := (float32(x-shadowShift) - shadowStep/2) / shadowStep
		if ahead := d.at(fx, fy) - real(z) - shadowDead; ahead > 0 {
			k := uint32(shadowMost * 256 * ahead / (ahead + shadowDepth))
			row[x] = blend(row[x], 0, k)
		}
	}
}

// at is the blurred depth between the cells.
func (d *dimmed) at(x, y float32) float32 {
	x, y = min(max(x, 0), float32(d.w-1)), min(max(y, 0), float32(d.h-1))
	ix, iy := min(int(x), max(d.w-2, 0)), min(int(y), max(d.h-2, 0))
	kx, ky := x-float32(ix), y-float32(iy)
	i := iy*d.w + ix
	r, b := min(1, d.w-1), d.w*min(1, d.h-1)
	z := (d.depth[i]*(1-kx)+d.depth[i+r]*kx)*(1-ky) + (d.depth[i+b]*(1-kx)+d.depth[i+b+r]*kx)*ky
	n := (d.count[i]*(1-kx)+d.count[i+r]*kx)*(1-ky) + (d.count[i+b]*(1-kx)+d.count[i+b+r]*kx)*ky
	return z / max(n, 1e-6)
}
