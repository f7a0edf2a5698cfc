package sheet

import (
	"fmt"
	"math"

	"tubewright/cutlist/draw"
	"tubewright/route"
)

// templatePicture is what of a template goes on one sheet, while it is drawn.
type templatePicture struct {
	tiling tiling
	tile   int
	units  route.Units
	theme  Theme
	d      draw.Drawing
	labels *labels
}

// picture draws one tile at full size; its window's corner is the drawing's.
func (l tiling) picture(i int, joints []joint, u route.Units, th Theme) draw.Drawing {
	win := l.tiles[i].window
	p := &templatePicture{tiling: l, tile: i, units: u, theme: th, d: draw.Drawing{W: win.w(), H: win.h()}}
	p.labels = &labels{within: win.grown(-0.5), theme: th, strict: true}
	p.lines()
	p.keepClear()
	p.joints(joints)
	p.letters()
	for _, n := range l.template.notes(u) {
		p.note(n)
	}
	return p.d
}

// add paints items given where they stand on the template.
func (p *templatePicture) add(items ...draw.Item) {
	win := p.tiling.tiles[p.tile].window
	p.d.Place(draw.Drawing{Items: items}, draw.Point{}.Minus(win.lo))
}

func (p *templatePicture) lines() {
	win := p.tiling.tiles[p.tile].window
	for _, it := range p.tiling.template.lines(p.theme) {
		p.add(draw.Clipped(it, win.lo, win.hi)...)
	}
}

// jointWidth is the width of a cross's lines, mm; no other line has it.
const jointWidth = 0.22

// joints draws the crosses that this sheet shares with others, each with its
// letter and the sheet it is on too.
func (p *templatePicture) joints(all []joint) {
	for _, j := range all {
		if j.tiles[0] != p.tile && j.tiles[1] != p.tile {
			continue
		}
		other := j.tiles[0] + j.tiles[1] - p.tile
		x, y := draw.Point{X: jointArm}, draw.Point{Y: jointArm}
		line := pen(jointWidth, p.theme.Ink)
		for _, arm := range []draw.Point{x, y} {
			a, b := j.at.Minus(arm), j.at.Plus(arm)
			p.add(draw.Segment(a.X, a.Y, b.X, b.Y, line))
		}
		p.add(draw.Arc{Centre: j.at, Radius: jointArm / 2, Sweep: 360, Stroke: line})
		p.labels.taken = append(p.labels.taken, frame{j.at, j.at}.grown(jointArm))
		p.mustSay(templateNote{at: j.at, reach: jointArm, lines: []string{fmt.Sprintf("%s, sheet %d", j.letter, other+1)}, bold: true})
	}
}

// mustSay writes over the tube rather than not at all.
func (p *templatePicture) mustSay(n templateNote) {
	if p.block(n) {
		return
	}
	tube := p.labels.avoid
	p.labels.avoid = nil
	p.block(n)
	p.labels.avoid = tube
}

// keepClear has the writing stand beside the tube and its marks.
func (p *templatePicture) keepClear() {
	t := p.tiling.template
	s0, s1 := t.bounds()
	n := max(1, int(math.Ceil((s1-s0)/skinStep)))
	for i := range n + 1 {
		at, _ := t.at(s0 + (s1-s0)*float64(i)/float64(n))
		p.labels.avoid = append(p.labels.avoid, frame{at, at}.grown(t.od()/2*0.72), frame{at, at}.grown(0.5))
	}
	for _, q := range t.skin() {
		p.labels.avoid = append(p.labels.avoid, frame{q, q}.grown(0.6))
	}
	for _, it := range t.lines(p.theme) {
		if l, ok := it.(draw.Line); ok && len(l.Points) == 2 {
			p.labels.avoid = append(p.labels.avoid, beads(l.Points[0], l.Points[1])...)
		}
	}
}

// beads is small frames along a line.
func beads(a, b draw.Point) (all []frame) {
	n := max(1, int(math.Hypot(b.X-a.X, b.Y-a.Y)))
	for i := range n + 1 {
		at := a.Plus(b.Minus(a).Times(float64(i) / float64(n)))
		all = append(all, frame{at, at}.grown(0.4))
	}
	return all
}

// letters sets A and B on the tube, inside its finished ends.
func (p *templatePicture) letters() {
	const size = 4.0
	t := p.tiling.template
	for _, e := range t.ends() {
		at, way := t.at(e.s)
		at = at.Minus(way.Times(e.sign * (size + 1)))
		f := frame{at, at}.grown(size)
		if e.letter == "" || !p.labels.within.holds(f) {
			continue
		}
		p.labels.taken = append(p.labels.taken, f)
		p.add(badge(e.letter, at, math.Min(size, t.od()/2), p.theme.Ink, p.theme)...)
	}
}

// note writes beside a place of the tube, when that place is on this sheet.
func (p *templatePicture) note(n templateNote) {
	if p.tiling.tiles[p.tile].window.has(n.at) {
		p.block(n)
	}
}

// block sets lines of writing at the first free spot: on the side asked for,
// then on the other, then around, with a line leading there from afar. It
// reports whether there was one.
func (p *templatePicture) block(n templateNote) bool {
	size := fineSize
	w, h := 0.0, float64(len(n.lines))*size*leading
	for i, line := range n.lines {
		w = math.Max(w, draw.TextWidth(line, size, n.bold && i == 0))
	}
	for i, at := range n.spots(w, h) {
		f := frame{at, at}
		f.lo.X, f.hi.X, f.lo.Y, f.hi.Y = at.X-w/2-0.3, at.X+w/2+0.3, at.Y-h/2-0.2, at.Y+h/2+0.2
		if !p.labels.free(f) || p.labels.overTube(f) {
			continue
		}
		p.labels.taken = append(p.labels.taken, f)
		if i > 1 {
			p.leader(n, f)
		}
		for k, line := range n.lines {
			y := f.lo.Y + 0.2 + (float64(k)+0.5)*size*leading + halfCap*size
			p.add(draw.Text{At: draw.Point{X: at.X, Y: y}, Text: line, Size: size, Bold: n.bold && k == 0, Align: draw.Centre, Colour: p.theme.Ink})
		}
		return true
	}
	return false
}

// leader draws a line from a note's place toward its frame.
func (p *templatePicture) leader(n templateNote, f frame) {
	to := draw.Point{X: math.Max(f.lo.X, math.Min(n.at.X, f.hi.X)), Y: math.Max(f.lo.Y, math.Min(n.at.Y, f.hi.Y))}
	from := n.at.Plus(n.side.Times(n.reach))
	if step := to.Minus(from); math.Hypot(step.X, step.Y) < 1.5 {
		return
	}
	win := p.tiling.tiles[p.tile].window
	p.add(draw.Clipped(draw.Segment(from.X, from.Y, to.X, to.Y, pen(0.12, p.theme.Faint)), win.lo, win.hi)...)
}

// spots is where the middle of a note of w by h mm may stand.
func (n templateNote) spots(w, h float64) (spots []draw.Point) {
	if n.side != (draw.Point{}) {
		for _, far := range []float64{0, 2, 5} {
			for _, sign := range []float64{1, -1} {
				reach := n.reach + 0.8 + far + math.Abs(n.side.X)*w/2 + math.Abs(n.side.Y)*h/2
				spots = append(spots, n.at.Plus(n.side.Times(sign*reach)))
			}
		}
		return append(spots, nearby(n.at.Plus(n.side.Times(n.reach+h/2)), 4)...)
	}
	for _, side := range []draw.Point{{X: 1}, {X: -1}, {Y: -1}, {Y: 1}} {
		spots = append(spots, n.at.Plus(side.Times(n.reach+0.8+math.Abs(side.X)*w/2+math.Abs(side.Y)*h/2)))
	}
	return spots
}
