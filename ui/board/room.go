package board

import "github.com/go-gl/mathgl/mgl64"

// wallDepth is how far the case's walls are put behind where they are, mm, so
// that a part that sticks out of the case still shows: farther than any part
// can stand, and near enough for single precision to keep hundredths.
const wallDepth = 2e4

// wall is a side of the case seen from inside: a corner and its two edges.
type wall struct{ at, u, v mgl64.Vec3 }

// normal points into the case.
func (w wall) normal() mgl64.Vec3 { return w.u.Cross(w.v) }

// walls are the six sides of the case.
func walls(size mgl64.Vec3) [6]wall {
	x, y, z := mgl64.Vec3{size[0]}, mgl64.Vec3{0, size[1]}, mgl64.Vec3{0, 0, size[2]}
	return [6]wall{
		{mgl64.Vec3{}, x, y}, // far: looks toward +z
		{mgl64.Vec3{}, z, x}, // floor: looks up
		{mgl64.Vec3{}, y, z}, // left: looks right
		{z, y, x},            // near
		{y, x, z},            // ceiling
		{x, z, y},            // right
	}
}

// facesViewer reports whether the inside of a wall can be seen.
func (v *lens) facesViewer(w wall) bool {
	a, b, c := v.of(w.at), v.of(w.at.Add(w.u)), v.of(w.at.Add(w.v))
	return facing(&a, &b, &c) > leastArea
}

// room paints the walls of the case that look at the viewer, with a grid. Walls
// turned from the light are a little darker.
func (p *Painter) room(f *frame, v *lens, style *Style) {
	for _, w := range walls(p.scene.Case) {
		if v.facesViewer(w) {
			p.wall(f, v, w, style)
		}
	}
}

// wallShade is how much darker a wall may be than paper.
const wallShade = 0.16

func (p *Painter) wall(f *frame, v *lens, w wall, style *Style) {
	tone := float64(v.tone(narrow(w.normal().Normalize()))) / (2 * halfLight)
	dim := min(max((facingTone-tone)/facingTone, 0), 1) * wallShade
	shade := mixed(style.Paper, style.CaseLine, dim)
	var table [256]pixel
	fill(table[:], pack(shade))
	q := [4]spot{v.of(w.at), v.of(w.at.Add(w.u)), v.of(w.at.Add(w.u).Add(w.v)), v.of(w.at.Add(w.v))}
	for i := range q {
		q[i].z -= wallDepth
	}
	f.triangle(&q[0], &q[1], &q[2], &table, 0)
	f.triangle(&q[0], &q[2], &q[3], &table, 0)
	p.wallGrid(f, v, w, style, dim)
}

// wallGrid rules a wall in the steps that suit the zoom.
func (p *Painter) wallGrid(f *frame, v *lens, w wall, style *Style, dim float64) {
	fine, coarse := gridSteps(p.cam.Zoom/p.scale, p.scene.Units)
	lines := func(u, across mgl64.Vec3, step float64, c pixel) {
		l := u.Len()
		for d := step; d < l-step*1e-6; d += step {
			a := w.at.Add(u.Mul(d / l))
			f.rule(v.of(a), v.of(a.Add(across)), c, int(v.over), int(max(p.scale, 1)+0.5))
		}
	}
	faint := pack(mixed(style.GridFine, style.CaseLine, dim*0.8))
	strong := pack(mixed(style.GridBold, style.CaseLine, dim*0.8))
	if p.cam.Look.Flat() || w.normal()[1] > 0 { // on the turntable the floor alone is ruled finely
		lines(w.u, w.v, fine, faint)
		lines(w.v, w.u, fine, faint)
	}
	lines(w.u, w.v, coarse, strong)
	lines(w.v, w.u, coarse, strong)
}

// caseLines draws the edges of the case that border a wall one looks at; those
// nearest the viewer are left out, so that one looks into the case and not at
// it. Parts are drawn over them.
func (p *Painter) caseLines(f *frame, v *lens, style *Style) {
	c := pack(style.CaseLine)
	for i := range 8 {
		for k := range 3 {
			if i>>k&1 == 1 || !p.farEdge(i, k) {
				continue
			}
			a := boxCorner(mgl64.Vec3{}, p.scene.Case, i)
			b := boxCorner(mgl64.Vec3{}, p.scene.Case, i|1<<k)
			f.line(v.of(a), v.of(b), pen{c: c, width: 1.3 * v.over * float32(p.scale), alpha: 0.75})
		}
	}
}

// farEdge reports whether an edge of the case borders a wall that is seen from inside.
func (p *Painter) farEdge(corner, axis int) bool {
	for k := range 3 {
		if k == axis {
			continue
		}
		inward := mgl64.Vec3{}
		inward[k] = 1
		if corner>>k&1 == 1 {
			inward[k] = -1
		}
		at := boxCorner(mgl64.Vec3{}, p.scene.Case, corner)
		if p.toward(at).Dot(inward) > 1e-9 {
			return true
		}
	}
	return false
}

// toward is the unit direction from a point to the viewer.
func (p *Painter) toward(at mgl64.Vec3) mgl64.Vec3 {
	_, _, back := p.cam.Axes()
	if !p.cam.deep() {
		return back
	}
	to := p.cam.Centre.Add(back.Mul(p.cam.Eye)).Sub(at)
	if l := to.Len(); l > 0 {
		return to.Mul(1 / l)
	}
	return back
}
