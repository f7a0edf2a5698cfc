package check

import (
	"fmt"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route/clear"
)

// move is a part moved along an axis to clear another.
type move struct {
	part string
	by   mgl64.Vec3
	size float64
	// harm counts what is worse after it: 2 for a part out of the case, 1 for
	// one that stands in a third part, 3 for both.
	harm int
}

// told is the move as a finding holds it.
func (m move) told() *Move { return &Move{Part: m.part, By: m.by, Free: m.harm == 0} }

func (m move) sentence(r *referee) string {
	return fmt.Sprintf("Move %s %s.", m.part, r.shift(m.by))
}

// sameMove is how much shorter a move must be to be preferred, mm.
const sameMove = 1e-6

// wayApart is the shortest move along an axis that parts two parts, of those
// that do the least harm; the later part in the plan before the earlier.
func (r *referee) wayApart(i, j int) move {
	var best move
	for _, pair := range [2][2]int{{j, i}, {i, j}} {
		for axis := range 3 {
			for _, sign := range [2]float64{1, -1} {
				var way mgl64.Vec3
				way[axis] = sign
				m := r.moveOut(pair[0], pair[1], way)
				if best.part == "" || m.harm < best.harm || m.harm == best.harm && m.size < best.size-sameMove {
					best = m
				}
			}
		}
	}
	return best
}

// moveOut moves a part one way until it is clear of another.
func (r *referee) moveOut(part, other int, way mgl64.Vec3) move {
	p := &r.parts[part]
	size := clearAlong(p.shapes, r.parts[other].shapes, way)
	m := move{part: p.name, by: way.Mul(size), size: size}
	box := bounds{p.box.lo.Add(m.by), p.box.hi.Add(m.by)}
	if side, _ := r.beyond(box); side.past > PartSlack {
		m.harm += 2
	}
	if r.hitsThird(part, other, m.by) {
		m.harm++
	}
	return m
}

// clearAlong is how far the first shapes must move one way until none stands in
// the second: whenever a pair still overlaps, on to where that pair is clear.
func clearAlong(moved, still []clear.Shape, way mgl64.Vec3) float64 {
	size := 0.0
	for again := true; again; {
		again = false
		for _, a := range moved {
			for _, b := range still {
				need := clear.Along(a, b, way)
				if need > size+sameMove && clear.Between(clear.Moved(a, way.Mul(size)), b).Distance < -PartSlack {
					size, again = need, true
				}
			}
		}
	}
	return size
}

// free reports whether a moved part stands inside the case and in no other part.
func (r *referee) free(part int, by mgl64.Vec3) bool {
	b := r.parts[part].box
	side, _ := r.beyond(bounds{b.lo.Add(by), b.hi.Add(by)})
	return side.past <= PartSlack && !r.hitsThird(part, part, by)
}

// hitsThird reports whether a moved part stands in another than those two.
func (r *referee) hitsThird(part, other int, by mgl64.Vec3) bool {
	shifted := r.parts[part].moved(by)
	for k := range r.parts {
		if k == part || k == other {
			continue
		}
		if _, met := deepest(&shifted, &r.parts[k]); met {
			return true
		}
	}
	return false
}

func (p *standPart) moved(by mgl64.Vec3) standPart {
	q := standPart{name: p.name, box: bounds{p.box.lo.Add(by), p.box.hi.Add(by)}}
	for i, s := range p.shapes {
		q.shapes = append(q.shapes, clear.Moved(s, by))
		q.boxes = append(q.boxes, bounds{p.boxes[i].lo.Add(by), p.boxes[i].hi.Add(by)})
	}
	return q
}
