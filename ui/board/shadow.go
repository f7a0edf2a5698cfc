package board

// Shadows are soft: what lies behind the edge of something nearer is darkened a
// little, the more the farther behind. It is the depth buffer less a blurred
// copy of itself (T. Luft, C. Colditz, O. Deussen, "Image enhancement by
// unsharp masking the depth buffer", 2006), shifted away from the light.
const (
	shadowStep  = 4    // px of a plain screen per cell of the blurred copy
	shadowReach = 3    // cells over which one pass of the blur goes, each side
	shadowMost  = 0.22 // how dark at most, as part of black
	shadowDepth = 30.0 // mm behind at which half of that is reached
	shadowShift = 4    // px of a plain screen to the right and down
	// shadowDead is what a surface seen askew falls away within the shift, mm.
	shadowDead = 3.0
	// shadowSlope is over how many px a slope is let off; shadowJump is the
	// depth between two pixels, mm, that is no slope but an edge.
	shadowSlope = 9.0
	shadowJump  = 8.0
)

// dimmed is a grid of depths, with how much each cell counts.
type dimmed struct {
	w, h        int
	step, shift int // px of the picture
	depth, more []float32
	count, sum  []float32
	row, line   []float32
}

// shadows darkens the picture.
func (p *Painter) shadows(f *frame) {
	d, k := &p.dim, max(1, int(p.scale+0.5))
	d.step, d.shift = shadowStep*k, shadowShift*k
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
	d.w, d.h = (f.w+d.step-1)/d.step, (f.h+d.step-1)/d.step
	n := d.w * d.h
	d.depth, d.more = room(d.depth, n), room(d.more, n)
	d.count, d.sum = room(d.count, n), room(d.sum, n)
	for y := range d.h {
		for x := range d.w {
			sx := min(x*d.step+d.step/2, f.w-1) * over
			sy := min(y*d.step+d.step/2, f.h-1) * over
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

// shadowRow darkens one row: the blurred depths between two rows of cells are
// worked out once, then those between two of these.
func (p *Painter) shadowRow(f *frame, y int) {
	d, src := &p.dim, p.ids()
	d.between(y)
	d.stretch(f.w)
	depth := src.depth[y*p.over*src.w : (y*p.over+1)*src.w]
	next := min(y+1, f.h-1) * p.over * src.w
	below := src.depth[next : next+src.w]
	slope := float32(shadowSlope) * float32(d.step) / shadowStep
	row, line := f.colour[y*f.w:(y+1)*f.w], d.line[:f.w]
	for x, around := range line {
		z := depth[x*p.over]
		ahead := around - real(z) - shadowDead
		if ahead <= 0 || z == behind {
			continue
		}
		ahead -= slope * (fall(z, depth[min(x+1, f.w-1)*p.over]) + fall(z, below[x*p.over]))
		if ahead > 0 {
			row[x] = blend(row[x], 0, uint32(shadowMost*256*ahead/(ahead+shadowDepth)))
		}
	}
}

// fall is how much deeper or nearer the pixel beside is, mm; a jump to something
// else is no slope.
func fall(a, b float32) float32 {
	if d := abs(a - b); d < shadowJump {
		return d
	}
	return 0
}

// stretch fills line with the blurred depth at each of w columns.
func (d *dimmed) stretch(w int) {
	d.line = room(d.line, w)
	first := d.shift + d.step/2
	for x := range min(first, w) {
		d.line[x] = d.row[0]
	}
	for cell, x := 0, first; x < w; cell, x = cell+1, x+d.step {
		z, step := d.row[cell], (d.row[cell+1]-d.row[cell])/float32(d.step)
		part := d.line[x:min(x+d.step, w)]
		for i := range part {
			part[i] = z
			z += step
		}
	}
}

// between fills row with the blurred depths at a row of the picture, which lies
// between two rows of cells, and one more at its end.
func (d *dimmed) between(row int) {
	y := min(max(float32(row-d.shift-d.step/2)/float32(d.step), 0), float32(d.h-1))
	top := min(int(y), max(d.h-2, 0))
	k := y - float32(top)
	a, b := top*d.w, min(top+1, d.h-1)*d.w
	d.row = room(d.row, d.w+1)
	for x := range d.w {
		z := d.depth[a+x]*(1-k) + d.depth[b+x]*k
		n := d.count[a+x]*(1-k) + d.count[b+x]*k
		d.row[x] = z / max(n, leastCount)
	}
	d.row[d.w] = d.row[d.w-1]
}

// leastCount keeps cells that saw nothing from dividing by nothing.
const leastCount = 1e-6
