package board

import (
	"cmp"
	"image"
	"slices"
)

// Painter makes pictures of scenes. It keeps its memory from one picture to
// the next, so each view has its own, used by one goroutine at a time.
type Painter struct {
	big, small frame
	shades     shades
	letters    lettering
	spots      []spot
	front      []bool
	seen       []sight
	taken      []rect // where words already stand
	marks      []markAt
	tags       []tagAt
	discs      []markAt // of the tubes' letters
	order      []int
	drawn      []int
	near       []float32
	dim        dimmed
	numbers    map[numberKey]string

	// Of the picture made last, for pointing.
	scene *Scene
	cam   Camera
	over  int // pixels of the id buffer per pixel of the picture, along a side
	scale float64
}

// Render draws a scene into an image as large as the camera's view.
func (p *Painter) Render(img *image.RGBA, scene *Scene, cam Camera, style *Style, show Show) {
	cam.W, cam.H = img.Rect.Dx(), img.Rect.Dy()
	if cam.W <= 0 || cam.H <= 0 {
		return
	}
	p.scene, p.cam, p.scale = scene, cam, show.scale()
	p.shades.set(style)
	p.small.resize(cam.W, cam.H)
	f := &p.small
	p.over = 1
	if show.Quality == Fine {
		p.over = 2
		p.big.resize(2*cam.W, 2*cam.H)
		f = &p.big
	}
	p.solids(f, style, &show)
	if f == &p.big {
		p.small.halve(f)
	}
	p.shadows(&p.small)
	p.overlay(&p.small, style, &show)
	p.small.put(img)
}

// ids is the frame that holds the ids of the picture made last.
func (p *Painter) ids() *frame {
	if p.over == 2 {
		return &p.big
	}
	return &p.small
}

// solids draws everything that has a depth.
func (p *Painter) solids(f *frame, style *Style, show *Show) {
	f.clear(pack(style.Background))
	v := p.lens()
	p.room(f, &v, style)
	p.under(f)
	p.caseLines(f, &v, style)
	p.transform(&v, show)
	p.surfaces(f, &v, show)
	p.outlines(f, &v, show)
	p.highlights(f, &v, style, show)
}

// surfaces fills the triangles of every solid that may be in the view.
func (p *Painter) surfaces(f *frame, v *lens, show *Show) {
	m := &p.scene.mesh
	for _, i := range p.frontToBack(f) {
		b := &p.scene.solids[i]
		table := p.table(v, b, show)
		for n := b.tris.from; n < b.tris.to; n++ {
			t := m.tris[n]
			a, q, c := &p.spots[t[0]], &p.spots[t[1]], &p.spots[t[2]]
			p.front[n] = facing(a, q, c) > 0
			if p.front[n] {
				f.triangle(a, q, c, table, b.id)
			}
		}
	}
}

// frontToBack lists the solids in view, the nearest first: what is hidden then
// costs a look at its depth and no more. Ties keep the scene's order.
func (p *Painter) frontToBack(f *frame) []int {
	p.near, p.drawn = room(p.near, len(p.scene.solids)), p.drawn[:0]
	for i := range p.scene.solids {
		b := &p.scene.solids[i]
		if p.inView(f, b) {
			p.near[i] = nearest(p.spots[b.verts.from:b.verts.to])
			p.drawn = append(p.drawn, i)
		}
	}
	slices.SortStableFunc(p.drawn, func(a, b int) int { return cmp.Compare(p.near[b], p.near[a]) })
	return p.drawn
}

// nearest is the depth of the nearest of some spots.
func nearest(spots []spot) float32 {
	z := float32(behind)
	for i := range spots {
		z = max(z, spots[i].z)
	}
	return z
}

// inView reports whether any of a solid can be on the picture. A solid that is
// not has no front, so that its lines are left out too.
func (p *Painter) inView(f *frame, b *solid) bool {
	r := rect{1e9, 1e9, -1e9, -1e9}
	for n := b.verts.from; n < b.verts.to; n++ {
		s := &p.spots[n]
		r.x0, r.y0, r.x1, r.y1 = min(r.x0, s.x), min(r.y0, s.y), max(r.x1, s.x), max(r.y1, s.y)
	}
	if r.x1 > 0 && r.y1 > 0 && r.x0 < float32(f.w) && r.y0 < float32(f.h) {
		return true
	}
	clear(p.front[b.tris.from:b.tris.to])
	return false
}

// table is the colours of a solid: with the tinge of what is chosen, else paler
// the farther its front lies from the viewer. Tubes and ports do not pale.
func (p *Painter) table(v *lens, b *solid, show *Show) *[256]pixel {
	t := p.scene.targets[b.id]
	if t.Kind != OnPort && show.chosen(t) {
		return &p.shades.chosen[b.ink]
	}
	k := b.ink
	if k == inkPort && t.Kind == OnPort && greyed(show, t) {
		k = inkGreyed
	}
	if k >= inkTube {
		return &p.shades.plain[k][0]
	}
	return &p.shades.plain[k][v.haze(p.spots[b.verts.from:b.verts.to])]
}

func greyed(show *Show, t Target) bool {
	for _, ref := range show.Greyed {
		if ref == t.Port {
			return true
		}
	}
	return false
}
