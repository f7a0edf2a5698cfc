package board

import (
	"image/color"
	"slices"

	"tubewright/route/check"
)

// rect is a place on the picture, px.
type rect struct{ x0, y0, x1, y1 float32 }

func (r rect) hits(o rect) bool { return r.x0 < o.x1 && o.x0 < r.x1 && r.y0 < o.y1 && o.y0 < r.y1 }

// grown is the rectangle with a margin.
func (r rect) grown(by float32) rect { return rect{r.x0 - by, r.y0 - by, r.x1 + by, r.y1 + by} }

// sight is what can be seen of one id, from a sample of the pixels.
type sight struct {
	n        int
	sx, sy   float32
	x, y     float32 // of the sample nearest to the middle of all
	nearest  float32
	lo, hi   [2]float32
	measured bool
}

// sampleStep is how many px of a plain screen lie between samples.
const sampleStep = 5

// look takes stock of what can be seen where.
func (p *Painter) look() {
	p.seen = room(p.seen, len(p.scene.targets))
	clear(p.seen)
	p.samples(func(s *sight, x, y float32) {
		if s.n == 0 {
			s.lo, s.hi = [2]float32{x, y}, [2]float32{x, y}
		}
		s.n++
		s.sx, s.sy = s.sx+x, s.sy+y
		s.lo[0], s.lo[1] = min(s.lo[0], x), min(s.lo[1], y)
		s.hi[0], s.hi[1] = max(s.hi[0], x), max(s.hi[1], y)
	})
	p.samples(func(s *sight, x, y float32) {
		dx, dy := x-s.sx/float32(s.n), y-s.sy/float32(s.n)
		if d := dx*dx + dy*dy; !s.measured || d < s.nearest {
			s.measured, s.nearest, s.x, s.y = true, d, x, y
		}
	})
}

// samples calls each for a grid of pixels that show something.
func (p *Painter) samples(each func(s *sight, x, y float32)) {
	f := p.ids()
	step := int(sampleStep*p.scale) * p.over
	for y := step / 2; y < f.h; y += step {
		for x := step / 2; x < f.w; x += step {
			if id := f.id[y*f.w+x]; id != 0 {
				each(&p.seen[id], (float32(x)+0.5)/float32(p.over), (float32(y)+0.5)/float32(p.over))
			}
		}
	}
}

// idAt is what is drawn at a pixel of the picture.
func (p *Painter) idAt(x, y float32) uint16 {
	f := p.ids()
	px, py := int(x*float32(p.over)), int(y*float32(p.over))
	if x < 0 || y < 0 || px >= f.w || py >= f.h {
		return 0
	}
	return f.id[py*f.w+px]
}

// free reports whether a word may stand here.
func (p *Painter) free(r rect) bool {
	if r.x0 < float32(p.cam.Inset[0]) || r.y0 < 0 || r.x1 > float32(p.cam.W) || r.y1 > float32(p.cam.H-p.cam.Inset[3]) {
		return false
	}
	return !slices.ContainsFunc(p.taken, r.hits)
}

// tubeLetters puts each tube's letter in a disc on the straight that shows most.
func (p *Painter) tubeLetters(f *frame, style *Style, show *Show) {
	for i := range p.scene.Tubes {
		t := &p.scene.Tubes[i]
		if x, y, ok := p.letterSpot(t); ok {
			p.letter(f, style, t, x, y, show.chosen(RunTarget(t.Run)))
		}
	}
}

// letterSpot is on the axis of the piece of a tube that shows most; straights
// count for more than bends.
func (p *Painter) letterSpot(t *SceneTube) (x, y float32, ok bool) {
	if t.Broken {
		a, b := p.spotOf(t.Corners[0]), p.spotOf(t.Corners[1])
		return (a.x + b.x) / 2, (a.y + b.y) / 2, true
	}
	best, most := scenePiece{}, 0
	for _, piece := range t.pieces {
		n := p.seen[piece.id].n
		if piece.straight() {
			n *= 3
		}
		if n > most {
			best, most = piece, n
		}
	}
	if most == 0 {
		return 0, 0, false
	}
	s := p.seen[best.id]
	if !best.straight() {
		return s.x, s.y, true
	}
	x, y = p.alongAxis(best, s.x, s.y)
	return x, y, true
}

// alongAxis is the place on a straight's axis nearest to a pixel at which the
// straight itself shows and no mark stands; the nearest one when there is none.
func (p *Painter) alongAxis(piece scenePiece, x, y float32) (float32, float32) {
	const steps = 24
	a, b := p.spotOf(piece.from), p.spotOf(piece.to)
	bestX, bestY, least := x, y, float32(1e18)
	for i := range steps + 1 {
		k := float32(i) / steps
		px, py := a.x+(b.x-a.x)*k, a.y+(b.y-a.y)*k
		cost := (px-x)*(px-x) + (py-y)*(py-y)
		if p.idAt(px, py) != piece.id {
			cost += 1e6
		}
		r := letterRadius * float32(p.scale)
		if !p.free(rect{px - r, py - r, px + r, py + r}) {
			cost += 1e5
		}
		if cost < least {
			bestX, bestY, least = px, py, cost
		}
	}
	return bestX, bestY
}

// letterRadius is of the disc behind a tube's letter, px of a plain screen.
const letterRadius = 9

func (p *Painter) letter(f *frame, style *Style, t *SceneTube, x, y float32, chosen bool) {
	s := float32(p.scale)
	face := p.letters.face(11.5*p.scale, bold)
	w := face.width(t.Letter)
	r := max(letterRadius*s, w/2+4*s)
	fillc := style.Tubes[t.Colour]
	ring := pack(style.Halo)
	if chosen {
		ring = pack(style.Select)
	}
	f.disc(x, y, r+1.8*s, ring, 1)
	f.disc(x, y, r, pack(fillc), 1)
	f.text(face, t.Letter, x-w/2, y+face.high/2, pack(inkOn(fillc)))
	p.taken = append(p.taken, rect{x - r, y - r, x + r, y + r}.grown(2*s))
}

// inkOn is black or white, whichever stands out more from a ground.
func inkOn(ground color.RGBA) color.RGBA {
	black, white := color.RGBA{0, 0, 0, 255}, color.RGBA{255, 255, 255, 255}
	if Contrast(black, ground) >= Contrast(white, ground) {
		return black
	}
	return white
}

// partNames writes the names of the parts that can be seen, chosen ones first,
// then those that show most.
func (p *Painter) partNames(f *frame, style *Style, show *Show) {
	p.order = p.order[:0]
	for i := range p.scene.Parts {
		p.order = append(p.order, i)
	}
	slices.SortStableFunc(p.order, func(a, b int) int { return p.weight(b, show) - p.weight(a, show) })
	for _, i := range p.order {
		p.partName(f, style, &p.scene.Parts[i], show)
	}
}

// weight says how early a part's name is placed.
func (p *Painter) weight(i int, show *Show) int {
	part := &p.scene.Parts[i]
	n := p.seen[part.id].n
	if show.chosen(PartTarget(part.Name)) {
		n += 1 << 30
	}
	return n
}

// leastSeen is how many samples of a part must show for its name to be written.
const leastSeen = 3

func (p *Painter) partName(f *frame, style *Style, part *ScenePart, show *Show) {
	chosen := show.chosen(PartTarget(part.Name))
	s := p.seen[part.id]
	if s.n < leastSeen && !chosen {
		return
	}
	x, y := s.x, s.y
	if s.n < leastSeen {
		px, py := p.cam.Project(part.Lo.Add(part.Hi).Mul(0.5))
		x, y = float32(px), float32(py)
	}
	cut, ink := regular, style.Text
	if chosen {
		cut, ink = bold, style.Select
	}
	face := p.letters.face(12.5*p.scale, cut)
	if at, ok := p.placeName(part.id, s, x, y, face.width(part.Name), face); ok {
		f.haloed(face, part.Name, at.x0, at.y1-3*float32(p.scale), pack(ink), pack(style.Halo))
		p.taken = append(p.taken, at.grown(2*float32(p.scale)))
	}
}

// placeName tries places round a part's middle and takes the one that covers
// fewest tubes and ports and strays least.
func (p *Painter) placeName(id uint16, s sight, x, y, w float32, face *typeface) (best rect, ok bool) {
	h, k := face.high+6*float32(p.scale), float32(p.scale)
	least := float32(1e9)
	reach := [2]float32{max((s.hi[0]-s.lo[0])/2, 20*k), max((s.hi[1]-s.lo[1])/2, 12*k)}
	for dy := -3; dy <= 3; dy++ {
		for dx := -3; dx <= 3; dx++ {
			ox, oy := float32(dx)/3*reach[0]*0.8, float32(dy)/3*(reach[1]+6*k)
			at := rect{x + ox - w/2, y + oy - h/2, x + ox + w/2, y + oy + h/2}
			if !p.free(at) {
				continue
			}
			if cost := p.nameCost(id, at) + (abs(ox)+abs(oy))/(40*k); cost < least {
				best, least, ok = at, cost, true
			}
		}
	}
	return best, ok
}

// nameCost counts what a name would cover: its own part is free, other parts
// and empty space are a little dear, tubes and ports very.
func (p *Painter) nameCost(id uint16, at rect) float32 {
	const across, down = 8, 3
	cost := float32(0)
	for i := range across {
		for j := range down {
			x := at.x0 + (at.x1-at.x0)*float32(i)/(across-1)
			y := at.y0 + (at.y1-at.y0)*float32(j)/(down-1)
			switch other := p.idAt(x, y); {
			case other == id:
			case other == 0:
				cost += 0.5
			case p.scene.targets[other].Kind == OnPart:
				cost += 0.7
			default:
				cost += 2
			}
		}
	}
	return cost
}

// markAt is a finding's mark as it is drawn.
type markAt struct {
	finding int
	x, y, r float32
}

// findings draws each finding where it is, with its measure beside it.
func (p *Painter) findings(f *frame, style *Style, show *Show) {
	p.marks = p.marks[:0]
	for i := len(p.scene.Findings) - 1; i >= 0; i-- { // the gravest last, on top
		p.finding(f, style, &p.scene.Findings[i], show)
	}
	for _, m := range p.marks {
		p.taken = append(p.taken, rect{m.x - m.r, m.y - m.r, m.x + m.r, m.y + m.r}.grown(2))
	}
}

func (p *Painter) finding(f *frame, style *Style, m *SceneFinding, show *Show) {
	s := float32(p.scale)
	px, py := p.cam.Project(m.At)
	x, y, r := float32(px), float32(py), 8*s
	chosen := show.chosen(FindingTarget(m.Index))
	if chosen {
		r = 10 * s
	}
	x = p.besideMarks(x, y, r)
	c := severityColour(m.Severity, style)
	p.badge(f, style, m.Severity, x, y, r, c)
	if chosen {
		f.circle(x, y, r+5*s, 2*s, pack(style.Select), 1)
	}
	p.marks = append(p.marks, markAt{m.Index, x, y, r})
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
	word, ink, drop := "!", style.Halo, float32(0)
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
		word, ink = "i", c
	}
	f.text(face, word, x-face.width(word)/2, y+drop+face.high/2, pack(ink))
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
		k := slices.IndexFunc(p.scene.Findings, func(g SceneFinding) bool { return g.Index == m.finding })
		g := &p.scene.Findings[k]
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
