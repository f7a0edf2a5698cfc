package clear

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// boxDrum is the distance between a block and a solid cylinder.
//
// Apart, the nearest place of the block is on an edge, or inside a face: then
// the cylinder's nearest is the one farthest against that face. Each of these
// pairs is a true distance, so the least is the answer if they are apart at
// all, which the plane between its two points proves.
func boxDrum(b Box, d drum, enough float64) near {
	best := near{d: math.Inf(1)}
	for i := range 3 {
		for _, sign := range [2]float64{-1, 1} {
			u := b.Axes.Col(i).Mul(sign)
			x := d.far(u)
			best = nearer(best, spanned(inBox(x, b), x))
			if gap := -d.reach(u.Mul(-1)) - b.reach(u); enough > 0 && gap >= enough {
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
	return best.proven(-d.reach(best.way().Mul(-1)) - b.reach(best.way()))
}

// way is the unit direction from the first point to the second.
func (n near) way() mgl64.Vec3 {
	if n.d <= touch {
		return mgl64.Vec3{}
	}
	return n.b.Sub(n.a).Mul(1 / n.d)
}

// proven keeps an answer between whose points planes part the two cores by a
// gap, and says that they meet where there is none. Half the distance will do:
// rounding of the way between points all but touching takes some of the gap.
func (n near) proven(gap float64) near {
	if n.meet || n.d <= touch || gap < n.d/2 {
		return near{meet: true}
	}
	return n
}

// rimDrum is the least distance from the rim of one end of a cylinder to
// another cylinder. Where the cap's rim is nearest, it is the only place of the
// cap that is (both are convex); along the rim a few places may look so, and
// each found among the samples is followed down.
func rimDrum(centre mgl64.Vec3, z mgl64.Vec3, r float64, d drum) near {
	x := square(z)
	y := z.Cross(x)
	at := func(angle float64) mgl64.Vec3 {
		s, c := math.Sincos(angle)
		return centre.Add(x.Mul(r * c)).Add(y.Mul(r * s))
	}
	angle := roundMin(func(angle float64) float64 {
		p := at(angle)
		return p.Sub(inDrum(p, d)).Len()
	})
	p := at(angle)
	return spanned(p, inDrum(p, d))
}
