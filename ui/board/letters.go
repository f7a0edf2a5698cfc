package board

import (
	"image/color"
	"slices"
)

// tubeLetters puts each tube's letter in a disc on the straight that shows most.
func (p *Painter) tubeLetters(f *frame, style *Style, show *Show) {
	for i := range p.scene.Tubes {
		t := &p.scene.Tubes[i]
		if t.Broken {
			p.brokenName(f, style, t)
		} else if x, y, ok := p.letterSpot(t); ok {
			chosen := show.chosen(RunTarget(t.Run))
			if x, y, ok = p.aside(x, y); ok || chosen {
				p.letter(f, style, t, x, y, chosen)
			}
		}
	}
}

// brokenName writes the name of a run without a tube beside its line.
func (p *Painter) brokenName(f *frame, style *Style, t *SceneTube) {
	s := float32(p.scale)
	face := p.letters.face(12*p.scale, bold)
	a, b := p.spotOf(t.Corners[0]), p.spotOf(t.Corners[1])
	mid := markAt{x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, r: 2 * s}
	for _, at := range beside(mid, face.width(t.Run), face.high+4*s, 6*s) {
		if p.free(at) {
			f.haloed(face, t.Run, at.x0, at.y1-2*s, pack(style.Error), pack(style.Halo))
			p.taken = append(p.taken, at.grown(2*s))
			return
		}
	}
}

// letterSpot is on the axis of the piece of a tube that shows most; straights
// count for more than bends.
func (p *Painter) letterSpot(t *SceneTube) (x, y float32, ok bool) {
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

// aside is where a letter goes that would lie on a finding's mark or on another
// letter on its tube: close beside that. Where there is no room either, it is left
// out: on another it would tell nothing, and hide that one.
func (p *Painter) aside(x, y float32) (atX, atY float32, ok bool) {
	r := letterRadius * float32(p.scale)
	over := func(m markAt) bool { return sqrt((m.x-x)*(m.x-x)+(m.y-y)*(m.y-y)) < m.r+r }
	for _, discs := range [2][]markAt{p.marks, p.discs} {
		if i := slices.IndexFunc(discs, over); i >= 0 {
			places := beside(discs[i], 2*r, 2*r, 4*float32(p.scale))
			for _, at := range places[:4] {
				if p.free(at) {
					return (at.x0 + at.x1) / 2, (at.y0 + at.y1) / 2, true
				}
			}
			return x, y, false
		}
	}
	return x, y, true
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
	p.discs = append(p.discs, markAt{x: x, y: y, r: r})
}

// inkOn is black or white, whichever stands out more from a ground.
func inkOn(ground color.RGBA) color.RGBA {
	black, white := color.RGBA{0, 0, 0, 255}, color.RGBA{255, 255, 255, 255}
	if Contrast(black, ground) >= Contrast(white, ground) {
		return black
	}
	return white
}
