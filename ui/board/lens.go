package board

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// lens is a camera made ready to throw many points on a frame.
type lens struct {
	centre          vec
	right, up, back vec // scaled to px, px, mm
	light           vec
	mx, my          float32
	eye             float32 // 0: parallel
	over            float32 // px of the frame per px of the picture
	unit            float32 // mm of depth that a px is worth
	near, far       float32 // depth of the case's nearest and farthest corner
	view            mgl64.Vec3
}

func (p *Painter) lens() lens {
	c := &p.cam
	right, up, back := c.Axes()
	over := float64(p.over)
	mx, my := c.middle()
	sun := right.Mul(light[0]).Add(up.Mul(light[1])).Add(back.Mul(light[2]))
	v := lens{
		centre: narrow(c.Centre), right: narrow(right.Mul(c.Zoom * over)), up: narrow(up.Mul(c.Zoom * over)),
		back: narrow(back), light: narrow(sun.Mul(halfLight)),
		mx: float32(mx * over), my: float32(my * over),
		over: float32(over), unit: float32(1 / (c.Zoom * over)), view: back,
	}
	if c.deep() {
		v.eye = float32(c.Eye)
	}
	v.near, v.far = float32(math.Inf(-1)), float32(math.Inf(1))
	for i := range 8 {
		z := v.spot(narrow(boxCorner(mgl64.Vec3{}, p.scene.Case, i))).z
		v.near, v.far = max(v.near, z), min(v.far, z)
	}
	return v
}

// spot throws a point on the frame; its brightness is left at 0.
func (v *lens) spot(at vec) spot {
	x, y, z := at[0]-v.centre[0], at[1]-v.centre[1], at[2]-v.centre[2]
	depth := x*v.back[0] + y*v.back[1] + z*v.back[2]
	px := x*v.right[0] + y*v.right[1] + z*v.right[2]
	py := x*v.up[0] + y*v.up[1] + z*v.up[2]
	if v.eye > 0 {
		s := v.eye / (v.eye - min(depth, nearClip*v.eye))
		px, py, depth = px*s, py*s, depth*s
	}
	return spot{v.mx + px, v.my - py, depth, 0}
}

func (v *lens) of(at mgl64.Vec3) spot { return v.spot(narrow(at)) }

// tone is how bright a surface with this normal is, 0 to 255.
func (v *lens) tone(n vec) float32 {
	return halfLight + n[0]*v.light[0] + n[1]*v.light[1] + n[2]*v.light[2]
}

// haze says which table of growing haze suits a solid by its nearest point.
func (v *lens) haze(spots []spot) int {
	k := (v.near - nearest(spots)) / max(v.near-v.far, 1e-3)
	return int(min(max(k, 0), 1) * (fadeSteps - 1))
}

// transform throws every vertex of the scene on the frame.
func (p *Painter) transform(v *lens, show *Show) {
	m := &p.scene.mesh
	p.spots, p.front = room(p.spots, len(m.at)), room(p.front, len(m.tris))
	for i := range p.scene.solids {
		b := &p.scene.solids[i]
		by := p.shiftOf(b, show)
		for n := b.verts.from; n < b.verts.to; n++ {
			at := m.at[n]
			at[0], at[1], at[2] = at[0]+by[0], at[1]+by[1], at[2]+by[2]
			s := v.spot(at)
			s.t = v.tone(m.normal[n])
			p.spots[n] = s
		}
	}
}

// shiftOf is how far a solid is drawn from where the scene has it.
func (p *Painter) shiftOf(b *solid, show *Show) vec {
	if b.part < 0 || p.scene.Parts[b.part].Name != show.Shift.Part {
		return vec{}
	}
	return narrow(show.Shift.By)
}

// room gives a slice of n elements, the same memory when it is large enough.
func room[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n, n+n/4)
	}
	return s[:n]
}
