package board

import (
	"slices"
)

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
