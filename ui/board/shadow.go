package board

// Shadows are soft: what lies behind the edge of something nearer is darkened a
// little, the more the farther behind. It is the depth buffer less a blurred
// copy of itself (T. Luft, C. Colditz, O. Deussen, "Image enhancement by
// unsharp masking the depth buffer", 2006), shifted away from the light.
const (
	shadowStep  = 4    // px of the picture per cell of the blurred copy
	shadowReach = 3    // cells over which one pass of the blur goes, each side
	shadowMost  = 0.22 // how dark at most, as part of black
	shadowDepth = 30.0 // mm behind at which half of that is reached
	shadowShift = 4    // px to the right and down
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
	depth, more []float32
	count, sum  []float32
	row         []float32
}

// shadows darkens the picture.
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

// shadowRow darkens one row: the blurred depths between two rows of cells are
// worked out once, those between two of these along the way.
func (p *Painter) shadowRow(f *frame, y int) {
	d, src := &p.dim, p.ids()
	d.between(float32(y-shadowShift) - shadowStep/2)
	depth := src.depth[y*p.over*src.w : (y*p.over+1)*src.w]
	next := min(y+1, f.h-1) * p.over * src.w
	below := src.depth[next : next+src.w]
	row := f.colour[y*f.w : (y+1)*f.w]
	for x := range row {
		z := depth[x*p.over]
		if z == behind {
			continue
		}
		cell, part := d.cell(x)
		ahead := d.row[cell] + (d.row[cell+1]-d.row[cell])*part - real(z) - shadowDead
		if ahead > 0 {
			ahead -= shadowSlope * (fall(z, depth[min(x+1, f.w-1)*p.over]) + fall(z, below[x*p.over]))
		}
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

// cell gives the cell left of a column, and how far the column is on from its
// middle to the next one's, 0 to 1.
func (d *dimmed) cell(x int) (int, float32) {
	x -= shadowShift + shadowStep/2
	if x < 0 {
		return 0, 0
	}
	if c := x / shadowStep; c < d.w-1 {
		return c, float32(x%shadowStep) / shadowStep
	}
	return d.w - 1, 0
}

// between fills row with the blurred depths at a height between the cells, and
// one more at its end.
func (d *dimmed) between(y float32) {
	y = min(max(y/shadowStep, 0), float32(d.h-1))
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
