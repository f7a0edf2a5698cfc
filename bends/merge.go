package bends

import "github.com/go-gl/mathgl/mgl64"

// merged leaves out the corners without a turn, with their radii. A corner goes
// when it, and all that went since the last one kept, stand on the line from
// there to the next.
func merged(t Tube, p Path) ([]mgl64.Vec3, []float64) {
	last := len(p.Corners) - 1
	corners := append(make([]mgl64.Vec3, 0, len(p.Corners)), p.Corners[0])
	radii := make([]float64, 0, last)
	kept := 0
	for i := 1; i < last; i++ {
		if allOnLine(p.Corners[kept : i+2]) {
			continue
		}
		kept = i
		corners = append(corners, p.Corners[i])
		radii = append(radii, p.radius(t, i))
	}
	return append(corners, p.Corners[last]), radii
}

// radius is the one asked for at a corner.
func (p Path) radius(t Tube, corner int) float64 {
	if p.Radii == nil {
		return t.Radius
	}
	return p.Radii[corner-1]
}

// allOnLine reports whether every point between the first and the last stands
// on the line from one to the other.
func allOnLine(points []mgl64.Vec3) bool {
	from, to := points[0], points[len(points)-1]
	for _, p := range points[1 : len(points)-1] {
		if beside(p, from, to) > onLine {
			return false
		}
	}
	return true
}

// beside is the distance from a point to a segment, mm.
func beside(p, from, to mgl64.Vec3) float64 {
	along, off := to.Sub(from), p.Sub(from)
	length := along.Len()
	if length <= sameSpot {
		return off.Len()
	}
	at := min(max(off.Dot(along)/length, 0), length)
	return off.Sub(along.Mul(at / length)).Len()
}
