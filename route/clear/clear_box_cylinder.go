package clear

import "math"

// boxDrum is the distance between a block and a solid cylinder.
//
// Apart, the nearest place of the block is on an edge, or inside a face: then
// the cylinder's nearest is the one farthest against that face. Each of these
// pairs is a true distance, so the least is the answer if they are apart at
// all, which the plane between its two points proves.
func boxDrum(b *block, d *drum, enough float64) near {
	best := near{d: math.Inf(1)}
	for i := range 3 {
		for _, sign := range [2]float64{-1, 1} {
			u := b.axis[i].mul(sign)
			x := d.far(u)
			best = nearer(best, spanned(b.nearest(x), x))
			if gap := -d.reach(u.mul(-1)) - b.reach(u); enough > 0 && gap >= enough {
				return near{d: gap}
			}
		}
	}
	if best.d < enough {
		return best
	}
	p, q := d.ends()
	for _, e := range boxEdges {
		a, c := b.corner(e[0]), b.corner(e[1])
		if segSeg(a, c, p, q).d-d.r < best.d {
			best = nearer(best, segDrum(a, c, d))
		}
	}
	return best.proven(-d.reach(best.way().mul(-1)) - b.reach(best.way()))
}

// rimDrum is the least distance from the rim of one end of a cylinder to
// another cylinder. Where the cap's rim is nearest, it is the only place of the
// cap that is (both are convex); along the rim a few places may look so, and
// each found among the samples is followed down.
func rimDrum(centre, z v3, r float64, d *drum) near {
	x := z.square()
	y := z.cross(x)
	at := func(angle float64) v3 {
		s, c := math.Sincos(angle)
		return centre.plus(r*c, x).plus(r*s, y)
	}
	p := at(roundMin(func(angle float64) float64 {
		p := at(angle)
		return p.sub(d.nearest(p)).len()
	}))
	return spanned(p, d.nearest(p))
}
