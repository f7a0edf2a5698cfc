package board

import (
	"image/color"
	"slices"
)

// overlay draws what stands in front of everything: guides, words, marks and rulers.
func (p *Painter) overlay(f *frame, style *Style, show *Show) {
	p.taken = p.taken[:0]
	p.marks = p.marks[:0]
	p.tags, p.discs = p.tags[:0], p.discs[:0]
	if show.Caption != "" {
		p.taken = append(p.taken, p.captionAt(show.Caption))
	}
	p.hands(f, style, show)
	if show.Rulers {
		p.scaleBar(f, style)
		if !p.cam.Look.Flat() {
			p.triad(f, style)
		}
	}
	if show.Words {
		p.look()
		p.placeMarks(show)
		p.tubeLetters(f, style, show)
		p.drawMarks(f, style, show)
		p.findingGaps(f, style)
		p.partNames(f, style, show)
	}
	p.writeTags(f, style)
	if show.Rulers && p.cam.Look.Flat() {
		p.rulers(f, style)
	}
	if show.Caption != "" {
		p.caption(f, style, show.Caption)
	}
	p.border(f, style, show)
}

// captionAt is the place of the look's name.
func (p *Painter) captionAt(text string) rect {
	s, face := float32(p.scale), p.letters.face(11.5*p.scale, bold)
	x := float32(p.cam.Inset[0]) + 9*s
	return rect{x, 18*s - face.high, x + face.width(text), 18 * s}.grown(4 * s)
}

// caption writes the look's name in the upper left corner.
func (p *Painter) caption(f *frame, style *Style, text string) {
	s := float32(p.scale)
	face := p.letters.face(11.5*p.scale, bold)
	f.haloed(face, text, float32(p.cam.Inset[0])+9*s, 18*s, pack(style.Muted), pack(style.Background))
}

// border draws a line round the picture: strong when keys go to it.
func (p *Painter) border(f *frame, style *Style, show *Show) {
	c, px := pack(style.GridBold), max(1, int(p.scale+0.5))
	switch {
	case show.Focus:
		c, px = pack(style.Select), 2*px
	case !show.Frame:
		return
	}
	f.box(0, 0, f.w, px, c, 1)
	f.box(0, f.h-px, f.w, f.h, c, 1)
	f.box(0, 0, px, f.h, c, 1)
	f.box(f.w-px, 0, f.w, f.h, c, 1)
}

// hands draws what the person has in hand: guides, the line of a run to be, the
// corners of a path, a measure.
func (p *Painter) hands(f *frame, style *Style, show *Show) {
	p.broken(f, style)
	for _, g := range show.Guides {
		p.guide(f, style, g)
	}
	if show.Rubber != nil {
		p.rubber(f, style, show.Rubber)
	}
	if show.Path != nil {
		p.path(f, style, show.Path)
	}
	if show.Measure != nil {
		p.measure(f, style, show.Measure)
	}
	p.pointed(f, style, show.Points)
}

// broken draws where a run was asked for that has no tube.
func (p *Painter) broken(f *frame, style *Style) {
	s := float32(p.scale)
	for i := range p.scene.Tubes {
		t := &p.scene.Tubes[i]
		if !t.Broken {
			continue
		}
		for k := range len(t.Corners) - 1 {
			a, b := p.spotOf(t.Corners[k]), p.spotOf(t.Corners[k+1])
			f.line(a, b, pen{c: pack(style.Halo), width: 3.6 * s, alpha: 0.7})
			f.line(a, b, pen{c: pack(style.Error), width: 1.8 * s, alpha: 1, dash: 6 * s})
		}
	}
}

// spotOf is a point of the case on the picture.
func (p *Painter) spotOf(at [3]float64) spot {
	x, y := p.cam.Project(at)
	return spot{x: float32(x), y: float32(y)}
}

// guide draws the line on which two ports look at each other: whole when a
// straight tube joins them, dashed when they still miss across the look.
func (p *Painter) guide(f *frame, style *Style, g Guide) {
	s := float32(p.scale)
	a, b := p.spotOf(g.A), p.spotOf(g.B)
	q := pen{c: pack(style.Guide), width: 2 * s, alpha: 1}
	if g.Miss > 0 {
		q.dash = 7 * s
	}
	f.line(a, b, pen{c: pack(style.Halo), width: 4 * s, alpha: 0.7})
	f.line(a, b, q)
	for _, e := range [2]spot{a, b} {
		f.disc(e.x, e.y, 4.5*s, pack(style.Halo), 1)
		f.disc(e.x, e.y, 3.2*s, pack(style.Guide), 1)
	}
	text := "in line: " + p.scene.Units.TextUnit(g.B.Sub(g.A).Len())
	if g.Miss > 0 {
		text = "in line here, " + p.scene.Units.TextUnit(g.Miss) + " apart across"
	}
	p.tag(text, (a.x+b.x)/2, (a.y+b.y)/2, style.Guide)
}

// tagAt is a word on a little ground of its own.
type tagAt struct {
	text string
	at   rect
	c    color.RGBA
}

// tag keeps the room for a word on a little ground of its own beside a point. It is
// written when all else is drawn: marks stand where they must, and would cover it.
func (p *Painter) tag(text string, x, y float32, c color.RGBA) {
	s := float32(p.scale)
	w := p.tagFace().width(text)
	view := rect{float32(p.cam.Inset[0]) + 4*s, 4 * s, float32(p.cam.W) - 4*s, float32(p.cam.H-p.cam.Inset[3]) - 4*s}
	at := rect{x - w/2, y - 24*s, x + w/2, y - 8*s}.within(view)
	for _, down := range [3]float32{32 * s, -26 * s, 58 * s} {
		if slices.ContainsFunc(p.tags, func(t tagAt) bool { return t.at.grown(5 * s).hits(at) }) {
			at = rect{x - w/2, y - 24*s + down, x + w/2, y - 8*s + down}.within(view)
		}
	}
	p.tags = append(p.tags, tagAt{text, at, c})
	p.taken = append(p.taken, at.grown(5*s))
}

func (p *Painter) tagFace() *typeface { return p.letters.face(11.5*p.scale, bold) }

// writeTags writes the words that were kept room for.
func (p *Painter) writeTags(f *frame, style *Style) {
	s := float32(p.scale)
	for _, t := range p.tags {
		f.box(int(t.at.x0-5*s), int(t.at.y0), int(t.at.x1+5*s), int(t.at.y1+2*s), pack(style.Halo), 0.92)
		f.text(p.tagFace(), t.text, t.at.x0, t.at.y1-4*s, pack(t.c))
	}
}

// within moves a rectangle into another.
func (r rect) within(o rect) rect {
	dx := max(o.x0-r.x0, 0) + min(o.x1-max(r.x1, o.x0+r.x1-r.x0), 0)
	dy := max(o.y0-r.y0, 0) + min(o.y1-max(r.y1, o.y0+r.y1-r.y0), 0)
	return rect{r.x0 + dx, r.y0 + dy, r.x1 + dx, r.y1 + dy}
}

// rubber draws the line from a port in hand.
func (p *Painter) rubber(f *frame, style *Style, r *Rubber) {
	s := float32(p.scale)
	a, b := p.spotOf(r.From), p.spotOf(r.To)
	c := style.Select
	if r.Why != "" {
		c = style.Error
	}
	q := pen{c: pack(c), width: 2.4 * s, alpha: 1}
	if !r.Joins || r.Why != "" {
		q.dash = 8 * s
	}
	f.line(a, b, pen{c: pack(style.Halo), width: 4.4 * s, alpha: 0.7})
	f.line(a, b, q)
	f.disc(a.x, a.y, 4*s, pack(c), 1)
	f.circle(b.x, b.y, 6*s, 2*s, pack(c), 1)
	if r.Why != "" {
		p.tag(r.Why, b.x, b.y-4*s, c)
	}
}

// path marks the corners of a run that can be taken hold of.
func (p *Painter) path(f *frame, style *Style, path *Path) {
	s := float32(p.scale)
	for i, c := range path.Corners {
		if i == 0 || i == len(path.Corners)-1 {
			continue
		}
		at := p.spotOf(c)
		f.disc(at.x, at.y, 7.5*s, pack(style.Halo), 0.9)
		f.disc(at.x, at.y, 6*s, pack(style.Select), 1)
		if i != path.Chosen {
			f.disc(at.x, at.y, 3.8*s, pack(style.Halo), 1)
		}
	}
}

// measure draws a length with its share along each axis.
func (p *Painter) measure(f *frame, style *Style, m *Measure) {
	s := float32(p.scale)
	a := p.spotOf(m.A)
	f.circle(a.x, a.y, 5*s, 2*s, pack(style.Guide), 1)
	if !m.Both {
		return
	}
	b := p.spotOf(m.B)
	f.line(a, b, pen{c: pack(style.Halo), width: 4 * s, alpha: 0.8})
	f.line(a, b, pen{c: pack(style.Guide), width: 1.8 * s, alpha: 1})
	f.circle(b.x, b.y, 5*s, 2*s, pack(style.Guide), 1)
	p.tag(m.Text(p.scene.Units), (a.x+b.x)/2, (a.y+b.y)/2, style.Guide)
}
