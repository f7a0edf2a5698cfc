package check

import (
	"fmt"

	"github.com/go-gl/mathgl/mgl64"
)

// walls names the case's sides: [axis][0 at the origin, 1 away from it].
var walls = [3][2]string{{"left wall", "right wall"}, {"floor", "top"}, {"far wall", "open side"}}

// side is a wall and how far something stands past it.
type side struct {
	axis, end int
	past      float64
}

func (s side) name() string { return walls[s.axis][s.end] }

// beyond gives the wall a box stands farthest past, the first of those it stands
// equally far past, and the shift that brings it back inside every wall it fits
// between. Without a case there are no walls.
func (r *referee) beyond(b bounds) (worst side, back mgl64.Vec3) {
	if r.plan.Case == (mgl64.Vec3{}) {
		return worst, back
	}
	for i := range b.lo {
		for end, past := range [2]float64{-b.lo[i], b.hi[i] - r.plan.Case[i]} {
			if past <= 0 {
				continue
			}
			back[i] += past * float64(1-2*end)
			if past > worst.past+sameMove {
				worst = side{i, end, past}
			}
		}
	}
	return worst, back
}

// checkWalls tells of parts and runs that stand past a wall of the case.
func (r *referee) checkWalls() {
	for i := range r.parts {
		p := &r.parts[i]
		if worst, back := r.beyond(p.box); len(p.shapes) > 0 && worst.past > PartSlack {
			r.tellPartOutside(i, worst, back)
		}
	}
	for i := range r.runs {
		r.checkRunWalls(&r.runs[i])
	}
}

func (r *referee) tellPartOutside(part int, worst side, back mgl64.Vec3) {
	p := &r.parts[part]
	fix, move := fmt.Sprintf("Move %s %s.", p.name, r.shift(back)), &Move{p.name, back, r.free(part, back)}
	if size := p.box.hi[worst.axis] - p.box.lo[worst.axis]; size > r.plan.Case[worst.axis]+PartSlack {
		move = nil
		fix = fmt.Sprintf("It is %s long that way and the case %s: take a larger case, or turn %s.",
			r.length(size), r.length(r.plan.Case[worst.axis]), p.name)
	}
	f := Finding{
		Code: PartOutsideCase, Parts: []string{p.name}, Measure: -worst.past, Unit: "mm",
		What: fmt.Sprintf("Part %s stands %s past the %s of the case.", p.name, r.length(worst.past), worst.name()),
		Fix:  fix, Move: move,
	}
	r.tell(f.at(onWall(p.box, worst)))
}

// onWall is the middle of the side of a box that stands past a wall.
func onWall(b bounds, s side) mgl64.Vec3 {
	at := b.lo.Add(b.hi).Mul(0.5)
	at[s.axis] = b.lo[s.axis]
	if s.end == 1 {
		at[s.axis] = b.hi[s.axis]
	}
	return at
}

// checkRunWalls tells of the place of a run that is farthest past a wall.
func (r *referee) checkRunWalls(run *laidRun) {
	var worst side
	var at *element
	for i := range run.elements {
		e := &run.elements[i]
		if s, _ := r.beyond(e.box); s.past > max(Rounding, worst.past+sameMove) {
			worst, at = s, e
		}
	}
	if at == nil {
		return
	}
	var in mgl64.Vec3
	in[worst.axis] = worst.past * float64(1-2*worst.end)
	f := Finding{
		Code: TubeOutsideCase, Runs: []string{run.name}, Measure: -worst.past, Unit: "mm",
		What: fmt.Sprintf("%s stands %s past the %s of the case.", capital(run.called(at)), r.length(worst.past), worst.name()),
		Fix:  fmt.Sprintf("Lead it %s with a via point or other fittings, or move the part it stands on.", r.shift(in)),
	}
	r.tell(f.at(onWall(at.box, worst)))
}
