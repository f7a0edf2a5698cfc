package find_test

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

const (
	// pace is how far apart the points on a centreline are at most, mm. Every
	// point is on the tube, so a fault found is one; a finer pace finds smaller.
	pace = 1.0
	// tread is how far apart they are while the length is measured, mm. On a
	// radius of 28 mm a chord of it is short of its arc by tread³/24·28² < 6e-8 mm,
	// which over any tube stays far under the 0.01 mm the length must agree to.
	tread = 0.1
)

// footprint is a point on a centreline: how far along, on which straight (−1 in
// a bend), and where.
type footprint struct {
	s        float64
	straight int
	at       mgl64.Vec3
}

// walk goes along the centreline with these corners and radii. Each corner is
// rounded by the circle that touches both legs, centred on their bisector.
func walk(corners []mgl64.Vec3, radii []float64) (path []footprint) {
	from, s := corners[0], 0.0
	for i, r := range radii {
		v := corners[i+1]
		back := corners[i].Sub(v).Normalize()
		on := corners[i+2].Sub(v).Normalize()
		half := math.Acos(max(-1, min(1, back.Dot(on)))) / 2 // between a leg and the bisector
		centre := v.Add(back.Add(on).Normalize().Mul(r / math.Sin(half)))
		a, b := v.Add(back.Mul(r/math.Tan(half))), v.Add(on.Mul(r/math.Tan(half)))
		path, s = walkLine(path, s, i, from, a)
		path, s = walkArc(path, s, centre, a, b)
		from = b
	}
	path, _ = walkLine(path, s, len(radii), from, corners[len(corners)-1])
	return path
}

func walkLine(path []footprint, s float64, straight int, a, b mgl64.Vec3) ([]footprint, float64) {
	length := b.Sub(a).Len()
	n := max(1, int(math.Ceil(length/pace)))
	for i := range n + 1 {
		part := float64(i) / float64(n)
		path = append(path, footprint{s + length*part, straight, a.Mul(1 - part).Add(b.Mul(part))})
	}
	return path, s + length
}

// walkArc halves the arc again and again: the middle of two of its points stands
// on the ray from the centre through the middle of their chord.
func walkArc(path []footprint, s float64, c, a, b mgl64.Vec3) ([]footprint, float64) {
	if b.Sub(a).Len() <= pace {
		s += paces(c, a, b)
		return append(path, footprint{s, -1, b}), s
	}
	middle := halfway(c, a, b)
	path, s = walkArc(path, s, c, a, middle)
	return walkArc(path, s, c, middle, b)
}

// paces is the length of an arc, walked in small steps.
func paces(c, a, b mgl64.Vec3) float64 {
	if chord := b.Sub(a).Len(); chord <= tread {
		return chord
	}
	middle := halfway(c, a, b)
	return paces(c, a, middle) + paces(c, middle, b)
}

func halfway(c, a, b mgl64.Vec3) mgl64.Vec3 {
	return a.Add(b).Mul(0.5).Sub(c).Normalize().Mul(a.Sub(c).Len()).Add(c)
}

// tightest is the least radius of the circles through three footprints in turn.
func tightest(path []footprint) float64 {
	least := math.Inf(1)
	for i := 2; i < len(path); i++ {
		a, b, c := path[i-2].at, path[i-1].at, path[i].at
		u, v, w := b.Sub(a), c.Sub(b), c.Sub(a)
		if area2 := u.Cross(w).Len(); area2 > 1e-6 && min(u.Len(), v.Len()) > pace/10 {
			least = min(least, u.Len()*v.Len()*w.Len()/(2*area2))
		}
	}
	return least
}
