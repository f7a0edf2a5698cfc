package board

import "github.com/go-gl/mathgl/mgl64"

// vec is a point or direction as the renderer keeps it: single precision is
// finer than a micrometre in a case of metres, and half the memory to walk.
type vec [3]float32

func narrow(v mgl64.Vec3) vec { return vec{float32(v[0]), float32(v[1]), float32(v[2])} }

func (v vec) wide() mgl64.Vec3 {
	return mgl64.Vec3{float64(v[0]), float64(v[1]), float64(v[2])}
}

// mesh is the surfaces of a scene: vertices, triangles that turn left as seen
// from outside, and edges.
type mesh struct {
	at, normal []vec
	tris       [][3]int32
	edges      []edge
}

// newMesh has room for a usual machine, so that growing does not copy it about:
// a scene is made anew for every frame of a drag.
func newMesh() mesh {
	const usual = 18000
	return mesh{
		at: make([]vec, 0, usual), normal: make([]vec, 0, usual),
		tris: make([][3]int32, 0, usual), edges: make([]edge, 0, 2*usual),
	}
}

// edge is a line between two vertices where two triangles meet. A crease is
// drawn wherever one side of it can be seen; any other edge only where it is
// an outline, with one side toward the viewer and one away.
type edge struct {
	a, b   int32
	f, g   int32 // triangles at its sides
	crease bool
}

// solid is a stretch of the mesh that is one body of one thing.
type solid struct {
	id     uint16
	part   int16 // index of the part that carries it, -1 for none
	ink    ink
	verts  span
	tris   span
	edges  span
	lo, hi vec
}

type span struct{ from, to int32 }

// body adds what make builds to the scene as one solid.
func (s *Scene) body(id uint16, part int, k ink, make func(*mesh)) {
	m := &s.mesh
	b := solid{id: id, part: int16(part), ink: k}
	b.verts.from, b.tris.from, b.edges.from = int32(len(m.at)), int32(len(m.tris)), int32(len(m.edges))
	make(m)
	b.verts.to, b.tris.to, b.edges.to = int32(len(m.at)), int32(len(m.tris)), int32(len(m.edges))
	if b.verts.from == b.verts.to {
		return
	}
	b.lo, b.hi = bounds(m.at[b.verts.from:b.verts.to])
	s.solids = append(s.solids, b)
}

func bounds(at []vec) (lo, hi vec) {
	lo, hi = at[0], at[0]
	for _, v := range at {
		for k := range v {
			lo[k], hi[k] = min(lo[k], v[k]), max(hi[k], v[k])
		}
	}
	return lo, hi
}

// vertex adds a vertex and gives its number.
func (m *mesh) vertex(at, normal mgl64.Vec3) int32 {
	m.at, m.normal = append(m.at, narrow(at)), append(m.normal, narrow(normal))
	return int32(len(m.at) - 1)
}

// tri adds a triangle and gives its number.
func (m *mesh) tri(a, b, c int32) int32 {
	m.tris = append(m.tris, [3]int32{a, b, c})
	return int32(len(m.tris) - 1)
}

// box adds a block with its twelve edges.
func (m *mesh) box(centre mgl64.Vec3, axes mgl64.Mat3, half mgl64.Vec3) {
	var corner [8]mgl64.Vec3
	for i := range corner {
		p := boxCorner(half.Mul(-1), half, i)
		corner[i] = centre.Add(axes.Mul3x1(p))
	}
	var face [6]boxFace
	for k := range 3 {
		face[2*k] = m.boxFace(corner, axes.Col(k).Mul(-1), k, 0)
		face[2*k+1] = m.boxFace(corner, axes.Col(k), k, 1)
	}
	for k := range 3 {
		m.boxEdges(face, k)
	}
}

// boxFace is a face of a block: one of its triangles and its vertices by corner.
type boxFace struct {
	tri  int32
	vert [8]int32
}

// boxFace adds the face at the end of axis k where its bit is side.
func (m *mesh) boxFace(corner [8]mgl64.Vec3, normal mgl64.Vec3, k, side int) boxFace {
	i, j := (k+1)%3, (k+2)%3
	if side == 0 {
		i, j = j, i
	}
	var f boxFace
	base := side << k
	round := [4]int{base, base | 1<<i, base | 1<<i | 1<<j, base | 1<<j}
	for _, c := range round {
		f.vert[c] = m.vertex(corner[c], normal)
	}
	v := f.vert
	f.tri = m.tri(v[round[0]], v[round[1]], v[round[2]])
	m.tri(v[round[0]], v[round[2]], v[round[3]])
	return f
}

// boxEdges adds the four edges that run along axis k.
func (m *mesh) boxEdges(face [6]boxFace, k int) {
	i, j := (k+1)%3, (k+2)%3
	for n := range 4 {
		si, sj := n&1, n>>1
		f, g := face[2*i+si], face[2*j+sj]
		from := si<<i | sj<<j
		m.edges = append(m.edges, edge{f.vert[from], f.vert[from|1<<k], f.tri, g.tri, true})
	}
}
