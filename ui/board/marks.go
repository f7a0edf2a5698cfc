package board

import (
	"image/color"
	"slices"

	"tubewright/route/check"
)

// markAt is a finding's mark as it is drawn.
type markAt struct {
	index   int // in the scene's findings
	finding int // in the list's
	x, y, r float32
}

// placeMarks settles where each finding's mark stands, the gravest last and so
// on top.
func (p *Painter) placeMarks(show *Show) {
	for i := len(p.scene.Findings) - 1; i >= 0; i-- {
		m := p.markOf(i, show)
		p.marks = append(p.marks, m)
		p.taken = append(p.taken, rect{m.x - m.r, m.y - m.r, m.x + m.r, m.y + m.r}.grown(2))
	}
}

func (p *Painter) markOf(i int, show *Show) markAt {
	g, s := &p.scene.Findings[i], float32(p.scale)
	at := p.spotOf(g.At)
	m := markAt{index: i, finding: g.Index, x: at.x, y: at.y, r: 8 * s}
	if g.Severity == check.Note { // often on a port, which should stay free to see and take
		aside, r := p.noteSize()
		m.x, m.y, m.r = m.x+aside*s, m.y-aside*s, r*s
	}
	if show.chosen(FindingTarget(g.Index)) {
		m.r += 2 * s
	}
	m.x = p.besideMarks(m.x, m.y, m.r)
	return m
}

// drawMarks draws each finding where it is.
func (p *Painter) drawMarks(f *frame, style *Style, show *Show) {
	for _, m := range p.marks {
		g := &p.scene.Findings[m.index]
		p.badge(f, style, g.Severity, m.x, m.y, m.r, severityColour(g.Severity, style))
		if s := float32(p.scale); show.chosen(FindingTarget(g.Index)) {
			f.circle(m.x, m.y, m.r+5*s, 2*s, pack(style.Select), 1)
		}
	}
}

// besideMarks moves a mark to the right until it covers no other.
func (p *Painter) besideMarks(x, y, r float32) float32 {
	for range 8 {
		i := slices.IndexFunc(p.marks, func(m markAt) bool {
			return sqrt((m.x-x)*(m.x-x)+(m.y-y)*(m.y-y)) < r+m.r
		})
		if i < 0 {
			break
		}
		x = p.marks[i].x + r + p.marks[i].r + 1
	}
	return x
}

// noteAside is how far up and to the right of its place a note's mark stands, px
// of a plain screen.
const noteAside = 16

// manyNotes is how many notes are drawn large; more would hide what they are about.
const manyNotes = 16

// noteSize is how far aside a note's mark stands and its radius, px of a plain screen.
func (p *Painter) noteSize() (aside, radius float32) {
	n := 0
	for i := range p.scene.Findings {
		if p.scene.Findings[i].Severity == check.Note {
			n++
		}
	}
	if n > manyNotes {
		return noteAside / 2, noteDot
	}
	return noteAside, 7
}

// noteDot is the radius of a note's mark without its letter, px of a plain screen.
const noteDot = 3.5

func severityColour(v check.Severity, style *Style) color.RGBA {
	switch v {
	case check.Error:
		return style.Error
	case check.Warning:
		return style.Warning
	case check.Note:
	}
	return style.Note
}

// badge is a mark whose shape tells the severity as well as its colour does: a
// disc for an error, a triangle for a warning, a ring for a note.
func (p *Painter) badge(f *frame, style *Style, v check.Severity, x, y, r float32, c color.RGBA) {
	s := float32(p.scale)
	face := p.letters.face(12*p.scale, bold)
	drop := float32(0)
	switch v {
	case check.Error:
		f.disc(x, y, r+1.8*s, pack(style.Halo), 1)
		f.disc(x, y, r, pack(c), 1)
	case check.Warning:
		f.wedge(upward(x, y, r+3.4*s), pack(style.Halo), 1)
		f.wedge(upward(x, y, r+1*s), pack(c), 1)
		drop = 2 * s
	case check.Note:
		f.disc(x, y, r+0.6*s, pack(style.Halo), 1)
		f.circle(x, y, r-1*s, 1.8*s, pack(c), 1)
		if r >= 2*noteDot*s {
			f.info(x, y, s, pack(c))
		}
		return
	}
	f.text(face, "!", x-face.width("!")/2, y+drop+face.high/2, pack(style.Halo))
}

// info draws the letter i in a note's ring out of whole pixels: its thin stem, set
// between two, would be too faint.
func (f *frame) info(x, y, s float32, c pixel) {
	wide := max(2, int(1.8*s+0.5))
	x0 := int(x+0.5) - wide/2
	row := func(from, to float32) { f.box(x0, int(y+from*s+0.5), x0+wide, int(y+to*s+0.5), c, 1) }
	row(-4, -2.3)
	row(-1, 4)
}

func upward(x, y, r float32) [3]spot {
	return [3]spot{{x: x, y: y - 1.15*r}, {x: x + 1.1*r, y: y + 0.85*r}, {x: x - 1.1*r, y: y + 0.85*r}}
}

// findingGaps writes the measures beside the marks, where there is room.
func (p *Painter) findingGaps(f *frame, style *Style) {
	s := float32(p.scale)
	face := p.letters.face(11.5*p.scale, bold)
	for i := len(p.marks) - 1; i >= 0; i-- {
		m := p.marks[i]
		g := &p.scene.Findings[m.index]
		if g.Gap == "" {
			continue
		}
		w, h := face.width(g.Gap), face.high+4*s
		for _, at := range beside(m, w, h, 6*s) {
			if p.free(at) {
				c := severityColour(g.Severity, style)
				f.haloed(face, g.Gap, at.x0, at.y1-2*s, pack(c), pack(style.Halo))
				p.taken = append(p.taken, at.grown(2*s))
				break
			}
		}
	}
}

// beside lists the places for a word by a mark: right, left, above, below, and
// the same once more farther off.
func beside(m markAt, w, h, gap float32) [8]rect {
	var list [8]rect
	for i := range 2 {
		d := m.r + gap*float32(1+3*i)
		list[4*i] = rect{m.x + d, m.y - h/2, m.x + d + w, m.y + h/2}
		list[4*i+1] = rect{m.x - d - w, m.y - h/2, m.x - d, m.y + h/2}
		list[4*i+2] = rect{m.x - w/2, m.y - d - h, m.x + w/2, m.y - d}
		list[4*i+3] = rect{m.x - w/2, m.y + d, m.x + w/2, m.y + d + h}
	}
	return list
}
