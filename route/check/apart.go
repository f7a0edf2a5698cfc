package check

import (
	"fmt"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route/clear"
)

// move is a part moved to clear another.
type move struct {
	part string
	by   mgl64.Vec3
	size float64
	harm int // what is amiss after it: hitsThird, leavesCase or both
}

// told is the move as a finding holds it.
func (m move) told() *Move { return &Move{Part: m.part, By: m.by, Free: m.harm == 0} }

func (m move) sentence(r *referee) string {
	return fmt.Sprintf("Move %s %s.", m.part, r.shift(m.by))
}

// sameMove is how much shorter a move must be to be preferred, mm.
const sameMove = 1e-6

// wayApart is the move along an axis of the case that parts two parts and does
// the least harm, the shortest of those; the later part in the plan is moved
// rather than the earlier.
func (r *referee) wayApart(i, j int) move {
	var best move
	for _, pair := range [2][2]int{{j, i}, {i, j}} {
		for axis := range 3 {
			for _, sign := range [2]float64{1, -1} {
				var way mgl64.Vec3
				way[axis] = sign
				best = better(best, r.moveOut(pair[0], pair[1], way))
			}
		}
	}
	return best
}

// better keeps the move that does less harm, or as much and is shorter; the
// first on a tie.
func better(a, b move) move {
	if a.part == "" || b.harm < a.harm || b.harm == a.harm && b.size < a.size-sameMove {
		return b
	}
	return a
}

// moveOut moves a part one way until it is clear of another, or on until it is
// clear of every part where that does less harm.
func (r *referee) moveOut(part, other int, way mgl64.Vec3) move {
	m := r.moved(part, other, way, clearAlong(r.parts[part].shapes, r.parts[other].shapes, way))
	if m.harm&hitsThird == 0 {
		return m
	}
	return better(m, r.moved(part, other, way, clearAlong(r.parts[part].shapes, r.allBut(part), way)))
}

// What a move may do amiss.
const (
	hitsThird  = 1
	leavesCase = 2
)

func (r *referee) moved(part, other int, way mgl64.Vec3, size float64) move {
	m := move{part: r.parts[part].name, by: way.Mul(size), size: size}
	b := r.parts[part].box
	if side, _ := r.beyond(bounds{b.lo.Add(m.by), b.hi.Add(m.by)}); side.past > PartSlack {
		m.harm |= leavesCase
	}
	if r.hitsThird(part, other, m.by) {
		m.harm |= hitsThird
	}
	return m
}

// allBut are the solids of every part but one.
func (r *referee) allBut(part int) (list []clear.Shape) {
	for k := range r.parts {
		if k != part {
			list = append(list, r.parts[k].shapes...)
		}
	}
	return list
}

// clearAlong is how far the first shapes must move one way until none stands in
// the second: whenever a pair still overlaps, on to where that pair parts. It is
// the least such move, since a pair of convex shapes overlaps over one stretch
// of the way only.
func clearAlong(moved, still []clear.Shape, way mgl64.Vec3) float64 {
	size := 0.0
	for again := true; again; {
		again = false
		for _, a := range moved {
			for _, b := range still {
				if clear.Along(a, b, way) <= size+sameMove {
					continue
				}
				at := clear.Moved(a, way.Mul(size))
				if clear.Between(at, b).Distance >= -PartSlack {
					continue
				}
				if need := size + clear.Leave(at, b, way); need > size+sameMove {
					size, again = need, true
				}
			}
		}
	}
	return size
}

// leastApart is the shortest move found in any direction that parts two parts,
// of those that do the least harm, if it is shorter than one along an axis and
// does no more harm. Tried are the ways out of each pair of solids that overlap
// and the directions their faces look: for two single solids the first is the
// shortest there is.
func (r *referee) leastApart(i, j int, along move) *Move {
	best := along
	for _, pair := range [2][2]int{{j, i}, {i, j}} {
		for _, way := range waysOut(r.parts[pair[0]].shapes, r.parts[pair[1]].shapes) {
			best = better(best, r.moveOut(pair[0], pair[1], way))
		}
	}
	if best.size >= along.size-leastPart {
		return nil
	}
	return best.told()
}

// waysOut are directions in which some of the first shapes may leave the second.
func waysOut(moved, still []clear.Shape) (list []mgl64.Vec3) {
	for _, a := range moved {
		for _, b := range still {
			g := clear.Between(a, b)
			if g.Distance >= -PartSlack {
				continue
			}
			list = append(list, g.Out())
			list = append(append(list, facesOf(a)...), facesOf(b)...)
		}
	}
	return list
}

// facesOf are the directions the faces of a box, or the ends of a cylinder, look.
func facesOf(s clear.Shape) (list []mgl64.Vec3) {
	add := func(u mgl64.Vec3) { list = append(list, u, u.Mul(-1)) }
	switch s := s.(type) {
	case clear.Box:
		for i := range 3 {
			add(s.Axes.Col(i))
		}
	case clear.Cylinder:
		if axis := s.To.Sub(s.From); axis.Len() > sameMove {
			add(axis.Normalize())
		}
	}
	return list
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
