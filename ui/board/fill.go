package board

import "math"

// spot is a vertex on the screen: place in px, depth (larger is nearer), and
// how bright, 0 to 255.
type spot struct{ x, y, z, t float32 }

// facing is twice the area of a triangle on the screen, above 0 when it is seen
// from its outside: y runs down, so what turns left in space turns right here.
func facing(a, b, c *spot) float32 {
	return (b.y-a.y)*(c.x-a.x) - (b.x-a.x)*(c.y-a.y)
}

// leastArea in px² is what a triangle must cover to be filled: thinner, its
// slopes are noise, and it would light no pixel anyway.
const leastArea = 1e-4

// triangle fills a triangle where it is nearer than what is there. A pixel
// belongs to it when its middle does; neighbours share no pixel and leave none
// out, because an edge is always worked out from its upper end.
func (f *frame) triangle(a, b, c *spot, table *[256]pixel, id uint16) {
	area := facing(a, b, c)
	if area < leastArea {
		return
	}
	g := gradients(a, b, c, area)
	if b.y < a.y {
		a, b = b, a
	}
	if c.y < a.y {
		a, c = c, a
	}
	if c.y < b.y {
		b, c = c, b
	}
	g.at = *a
	long := slope(a, c)
	f.rows(g, a, slope(a, b), a, long, rowAt(a.y), rowAt(b.y), table, id)
	f.rows(g, b, slope(b, c), a, long, rowAt(b.y), rowAt(c.y), table, id)
}

// rowAt is the first row whose middle lies at or below y.
func rowAt(y float32) int { return int(math.Ceil(float64(min(max(y, -1), 1<<20)) - 0.5)) }

func slope(a, b *spot) float32 {
	if b.y == a.y {
		return 0
	}
	return (b.x - a.x) / (b.y - a.y)
}

// gradient is how depth and brightness run over a triangle.
type gradient struct {
	at                 spot
	zx, zy, tx, ty     float32
	tLow, tHigh, zHigh float32
}

func gradients(a, b, c *spot, area float32) gradient {
	k := -1 / area
	x1, y1, x2, y2 := b.x-a.x, b.y-a.y, c.x-a.x, c.y-a.y
	z1, z2, t1, t2 := b.z-a.z, c.z-a.z, b.t-a.t, c.t-a.t
	return gradient{
		zx: (z1*y2 - z2*y1) * k, zy: (z2*x1 - z1*x2) * k,
		tx: (t1*y2 - t2*y1) * k, ty: (t2*x1 - t1*x2) * k,
		tLow: min(a.t, b.t, c.t), tHigh: max(a.t, b.t, c.t), zHigh: max(a.z, b.z, c.z),
	}
}

// rows fills the rows from y0 up to y1 between two edges.
func (f *frame) rows(g gradient, p *spot, ps float32, q *spot, qs float32, y0, y1 int, table *[256]pixel, id uint16) {
	y0, y1 = max(y0, 0), min(y1, f.h)
	for y := y0; y < y1; y++ {
		yc := float32(y) + 0.5
		xp, xq := p.x+(yc-p.y)*ps, q.x+(yc-q.y)*qs
		if xq < xp {
			xp, xq = xq, xp
		}
		x0, x1 := max(column(xp), 0), min(column(xq), f.w)
		if x0 < x1 {
			f.row(&g, y, x0, x1, table, id)
		}
	}
}

// column is the first column whose middle lies at or right of x.
func column(x float32) int {
	x = min(max(x, -1), 1<<20) + 0.5
	return int(x+1) - 1 // rounds down for what is left of x, which is above −1
}

func (f *frame) row(g *gradient, y, x0, x1 int, table *[256]pixel, id uint16) {
	dx, dy := float32(x0)+0.5-g.at.x, float32(y)+0.5-g.at.y
	z := g.at.z + dx*g.zx + dy*g.zy
	t := int32((g.at.t + dx*g.tx + dy*g.ty) * 65536)
	step := int32(g.tx * 65536)
	base := y * f.w
	depth, colour, ids := f.depth[base+x0:base+x1], f.colour[base+x0:base+x1], f.id[base+x0:base+x1]
	colour, ids = colour[:len(depth)], ids[:len(depth)]
	for i, d := range depth {
		if z > d {
			depth[i] = z
			colour[i] = table[uint8(min(max(t>>16, 0), 255))]
			ids[i] = id
		}
		z += g.zx
		t += step
	}
}
