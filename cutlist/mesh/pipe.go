package mesh

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
)

// bendStep is the greatest turn between two stations of a bend, degrees: the
// chords are short of the arc by 1 part in 3000 (1 − sinc of half of it).
const bendStep = 5.0

// Pipe is a formed tube cut to its aim: between its stops less the seat gaps,
// with its bore open at both ends. A tube without a bore is solid. A tube that
// nothing is left of is an empty mesh.
func Pipe(f bends.Formed, e bends.Ends) Mesh {
	stations := along(f, e.SeatGap[0], f.Developed-e.SeatGap[1])
	if len(stations) < 2 {
		return Mesh{}
	}
	var m Mesh
	m.sweep(stations, f.Tube.OD/2, false)
	if f.Tube.ID > 0 {
		m.sweep(stations, f.Tube.ID/2, true)
	}
	m.end(stations[0], f.Tube.ID/2, f.Tube.OD/2, -1)
	m.end(stations[len(stations)-1], f.Tube.ID/2, f.Tube.OD/2, 1)
	return m
}

// sweep is the surface of a circle carried along the stations.
func (m *Mesh) sweep(stations []station, radius float64, inside bool) {
	outward := 1.0
	if inside {
		outward = -1
	}
	last := m.ring(stations[0], radius, 0, outward)
	for _, s := range stations[1:] {
		next := m.ring(s, radius, 0, outward)
		m.skin(last, next, inside)
		last = next
	}
}

// end closes the wall at a station with a flat ring, or a disc when the inner
// radius is 0; ahead is 1 when it looks along the tube and −1 when it looks back.
func (m *Mesh) end(s station, inner, outer, ahead float64) {
	a, b := m.ring(s, inner, ahead, 1), m.ring(s, outer, ahead, 1)
	m.skin(a, b, ahead > 0)
}

// along gives the stations of a tube from one place to another, both mm from
// the first stop. The direction that angles count from is carried along without
// turning about the tube, so that the sides run straight on.
func along(f bends.Formed, from, to float64) []station {
	var all []station
	var u mgl64.Vec3
	for _, p := range f.Pieces() {
		lo, hi := math.Max(p.Start, from), math.Min(p.End, to)
		if hi-lo <= shortest {
			continue
		}
		at, dir := p.At(lo)
		if len(all) == 0 {
			u = Square(dir)
			all = append(all, station{at, dir, u})
		}
		steps := 1
		if p.Radius > 0 {
			steps = int(math.Ceil(p.Turn * (hi - lo) / (p.End - p.Start) / bendStep))
		}
		for i := 1; i <= steps; i++ {
			at, next := p.At(lo + (hi-lo)*float64(i)/float64(steps))
			u = carried(u, dir, next)
			dir = next
			all = append(all, station{at, dir, u})
		}
	}
	return all
}

// shortest is the least stretch of tube that is drawn, mm: below it is rounding.
const shortest = 1e-6

// carried turns a direction as one way turns into the next, about the axis
// square to both (Rodrigues' rotation), and squares it up again.
func carried(u, dir, next mgl64.Vec3) mgl64.Vec3 {
	axis := dir.Cross(next)
	cos := dir.Dot(next)
	turned := u.Mul(cos).Add(axis.Cross(u)).Add(axis.Mul(axis.Dot(u) / (1 + cos)))
	return turned.Sub(next.Mul(next.Dot(turned))).Normalize()
}
