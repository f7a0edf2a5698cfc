package clear

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// Bounds gives the corners of the axis-parallel box around the block.
func (b Box) Bounds() (lo, hi mgl64.Vec3) {
	var half mgl64.Vec3
	for i := range half {
		half[i] = b.Half[0]*math.Abs(b.Axes[i]) + b.Half[1]*math.Abs(b.Axes[3+i]) + b.Half[2]*math.Abs(b.Axes[6+i])
	}
	return b.Centre.Sub(half), b.Centre.Add(half)
}

// Bounds gives the corners of the axis-parallel box around the cylinder.
func (c Cylinder) Bounds() (lo, hi mgl64.Vec3) {
	d := c.drum()
	half := v3{
		d.h*math.Abs(d.z.x) + d.r*math.Hypot(d.z.y, d.z.z),
		d.h*math.Abs(d.z.y) + d.r*math.Hypot(d.z.z, d.z.x),
		d.h*math.Abs(d.z.z) + d.r*math.Hypot(d.z.x, d.z.y),
	}
	return d.c.sub(half).vec(), d.c.add(half).vec()
}

// Bounds gives the corners of the axis-parallel box around the rod.
func (r Rod) Bounds() (lo, hi mgl64.Vec3) {
	for i := range lo {
		lo[i] = min(r.From[i], r.To[i]) - r.Radius
		hi[i] = max(r.From[i], r.To[i]) + r.Radius
	}
	return lo, hi
}

// Bounds gives the corners of the axis-parallel box around the arc.
func (a Arc) Bounds() (lo, hi mgl64.Vec3) {
	r := a.ring()
	for i, u := range [3]v3{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}} {
		lo[i] = -r.reach(u.mul(-1)) - a.Radius
		hi[i] = r.reach(u) + a.Radius
	}
	return lo, hi
}

// boundsApart reports whether the boxes around two shapes alone show them
// this far apart; boxes that meet show nothing.
func boundsApart(a, b Shape, than float64) bool {
	alo, ahi := a.Bounds()
	blo, bhi := b.Bounds()
	gap := boxesApart(alo, ahi, blo, bhi)
	return gap > 0 && gap >= than
}

// boxesApart is the distance between two axis-parallel boxes; 0 when they meet.
func boxesApart(alo, ahi, blo, bhi mgl64.Vec3) float64 {
	sum := 0.0
	for i := range alo {
		if gap := max(alo[i]-bhi[i], blo[i]-ahi[i]); gap > 0 {
			sum += gap * gap
		}
	}
	return math.Sqrt(sum)
}
