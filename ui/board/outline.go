package board

// Widths of lines in px of a plain screen.
const (
	creaseWidth  = 0.9
	outlineWidth = 1.3
	tubeWidth    = 1.5
	chosenWidth  = 2.4
	chosenHalo   = 5.4
	hoverWidth   = 1.9
)

// slackPx is how far a line may lie behind a surface and still count as on it,
// in px: half a line's breadth on a surface that falls away steeply.
const slackPx = 1.6

// outlines draws the edges of every solid.
func (p *Painter) outlines(f *frame, v *lens, show *Show) {
	for i := range p.scene.solids {
		b := &p.scene.solids[i]
		q := pen{c: p.shades.edge[b.ink], alpha: 1, hide: true, slack: slackPx * v.unit}
		if b.ink == inkPort && greyed(show, p.scene.targets[b.id]) {
			q.c = p.shades.edge[inkGreyed]
		}
		k := v.over * float32(p.scale)
		crease, outline := creaseWidth*k, outlineWidth*k
		if b.ink.tube() {
			outline = tubeWidth * k
		}
		p.edgesOf(f, b, q, crease, outline)
	}
}

// edgesOf draws the edges of a solid that can be seen from here: creases with
// one side toward the viewer, and outlines.
func (p *Painter) edgesOf(f *frame, b *solid, q pen, crease, outline float32) {
	m := &p.scene.mesh
	for n := b.edges.from; n < b.edges.to; n++ {
		e := &m.edges[n]
		s, t := p.front[e.f], p.front[e.g]
		switch {
		case s != t:
			q.width = outline
		case s && e.crease && crease > 0:
			q.width = crease
		default:
			continue
		}
		f.line(p.spots[e.a], p.spots[e.b], q)
	}
}

// hiddenAlpha is how strongly what is chosen shows through what hides it.
const hiddenAlpha = 0.28

// highlights goes round what is chosen and what is under the pointer. What is
// chosen gets a light line under the coloured one, so that it stands out from
// a tube of any colour.
func (p *Painter) highlights(f *frame, v *lens, style *Style, show *Show) {
	k := v.over * float32(p.scale)
	near := 2 * slackPx * v.unit
	p.around(show.chosen, func(b *solid) {
		p.edgesOf(f, b, pen{c: pack(style.Select), alpha: hiddenAlpha}, 0, outlineWidth*k)
		p.edgesOf(f, b, pen{c: pack(style.Halo), alpha: 0.85, hide: true, slack: near}, 0, chosenHalo*k)
	})
	p.around(show.chosen, func(b *solid) {
		p.edgesOf(f, b, pen{c: pack(style.Select), alpha: 1, hide: true, slack: near}, outlineWidth*k, chosenWidth*k)
	})
	p.around(show.hovered, func(b *solid) {
		p.edgesOf(f, b, pen{c: pack(style.Hover), alpha: 1, hide: true, slack: near}, 0, hoverWidth*k)
	})
}

// around calls each for the solids of some targets.
func (p *Painter) around(which func(Target) bool, each func(*solid)) {
	for i := range p.scene.solids {
		if b := &p.scene.solids[i]; which(p.scene.targets[b.id]) {
			each(b)
		}
	}
}
