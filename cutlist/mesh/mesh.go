// Package mesh makes solids of triangles: tubes with their bore and their true
// bends, fittings, parts, and the whole machine as a binary glTF file for
// programs that show things in 3-D.
//
// Points are millimetres in the case's frame. glTF counts in metres with y up
// and z toward the viewer, which is how the case's frame stands, so that the
// file only divides by a thousand.
package mesh

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// Mesh is a closed surface of triangles; the corners of each go round to the
// left as seen from outside. Points with their normals are repeated where the
// surface has an edge, so that it is shaded as one.
type Mesh struct {
	Points, Normals []mgl64.Vec3 // mm; unit
	Faces           [][3]uint32
}

// Volume is what the surface encloses, mm³: the sum of the signed tetrahedra
// between the origin and each triangle (the divergence theorem).
func (m Mesh) Volume() float64 {
	sum := 0.0
	for _, f := range m.Faces {
		sum += m.Points[f[0]].Dot(m.Points[f[1]].Cross(m.Points[f[2]]))
	}
	return sum / 6
}

// point adds a point and gives its number.
func (m *Mesh) point(at, normal mgl64.Vec3) uint32 {
	m.Points, m.Normals = append(m.Points, at), append(m.Normals, normal)
	return uint32(len(m.Points) - 1)
}

// quad adds two triangles; the corners go round to the left as seen from outside.
func (m *Mesh) quad(a, b, c, d uint32) {
	m.Faces = append(m.Faces, [3]uint32{a, b, c}, [3]uint32{a, c, d})
}

// join adds another mesh.
func (m *Mesh) join(other Mesh) {
	first := uint32(len(m.Points))
	m.Points, m.Normals = append(m.Points, other.Points...), append(m.Normals, other.Normals...)
	for _, f := range other.Faces {
		m.Faces = append(m.Faces, [3]uint32{f[0] + first, f[1] + first, f[2] + first})
	}
}

// sides is how many flat sides stand for a circle: the circle's area is met
// within 0.3 % from inside.
const sides = 48

// station is a place along a centreline: where, which way on, and a direction
// square to that from which angles around count.
type station struct{ at, dir, u mgl64.Vec3 }

// out is the unit direction outward at side i of the circle.
func (s station) out(i int) mgl64.Vec3 {
	sin, cos := math.Sincos(2 * math.Pi * float64(i) / sides)
	return s.u.Mul(cos).Add(s.dir.Cross(s.u).Mul(sin))
}

// ring adds the points of a circle around a station and gives the first's
// number. lean is how much the normals lean ahead, 0 for a plain tube, −1 or 1
// for a flat end; outward is −1 for a bore.
func (m *Mesh) ring(s station, radius, lean, outward float64) uint32 {
	first := uint32(len(m.Points))
	across := outward * math.Sqrt(math.Max(0, 1-lean*lean))
	for i := range sides {
		out := s.out(i)
		m.point(s.at.Add(out.Mul(radius)), out.Mul(across).Add(s.dir.Mul(lean)))
	}
	return first
}

// skin joins two rings, the second farther along; inside turns the surface
// toward the centreline.
func (m *Mesh) skin(a, b uint32, inside bool) {
	for i := range uint32(sides) {
		j := (i + 1) % sides
		if inside {
			m.quad(a+i, b+i, b+j, a+j)
		} else {
			m.quad(a+i, a+j, b+j, b+i)
		}
	}
}

// Square is a unit direction square to another: off its smallest component.
func Square(n mgl64.Vec3) mgl64.Vec3 {
	least := 0
	for i := range n {
		if math.Abs(n[i]) < math.Abs(n[least])-noise {
			least = i
		}
	}
	var e mgl64.Vec3
	e[least] = 1
	return e.Sub(n.Mul(n.Dot(e))).Normalize()
}

// noise is how near two components of a unit direction are one: rounding of
// turned frames, far below what shows.
const noise = 1e-9
