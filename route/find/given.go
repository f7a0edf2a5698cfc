package find

import (
	"math"

	"tubewright/route"
)

// rolled adds a fitting turned toward a side.
func rolled(b *build, fit *route.Fitting, toward vec, ok bool) (*build, bool) {
	roll, has := rollToward(b.frame, toward)
	return b.with(fit, roll), ok && has
}

// closeWith gives the directions in which one or two offsets must point so
// that together they move by the miss, within what the sockets give. Two
// offsets d1 and d2 close any miss m between |d1−d2| and d1+d2, in two mirrored
// ways: the miss and the two offsets are the sides of a triangle.
func closeWith(miss vec, f route.Frame, fits kits, give float64) [][]vec {
	m := miss.Len()
	toward, ok := unit(miss)
	if !ok {
		toward = f.Ref
	}
	across := f.Dir.Cross(toward)
	d1 := fits[0].Sideways
	if len(fits) == 1 {
		if math.Abs(m-d1) > give+sameSpot {
			return nil
		}
		return [][]vec{{toward}}
	}
	d2 := fits[1].Sideways
	reach := min(max(m, math.Abs(d1-d2)), d1+d2)
	if math.Abs(reach-m) > give+sameSpot {
		return nil
	}
	if reach <= sameSpot {
		return opposed(toward, across)
	}
	cos1 := (d1*d1 + reach*reach - d2*d2) / (2 * d1 * reach)
	return mirrored(toward, across, min(max(cos1, -1), 1), d1, d2, reach)
}

// mirrored gives both solutions of the triangle; one when it is flat.
func mirrored(toward, across vec, cos1, d1, d2, reach float64) [][]vec {
	sin1 := math.Sqrt(max(0, 1-cos1*cos1))
	var out [][]vec
	for _, s := range []float64{sin1, -sin1} {
		first := toward.Mul(cos1).Add(across.Mul(s))
		second := toward.Mul(reach).Sub(first.Mul(d1)).Mul(1 / d2)
		out = append(out, []vec{first, second})
		if sin1 <= sameWay {
			break
		}
	}
	return out
}

// opposed is two equal offsets that undo each other: a tube beside the line of
// the ports, in any of four ways.
func opposed(toward, across vec) [][]vec {
	var out [][]vec
	for _, v := range []vec{toward, across, toward.Mul(-1), across.Mul(-1)} {
		out = append(out, []vec{v, v.Mul(-1)})
	}
	return out
}

// givenLine offers straights where the plan prescribes a chain.
func (h *hunt) givenLine() {
	for _, start := range h.lineBuilds(h.a, h.b.plain.ray()) {
		for _, end := range h.lineBuilds(h.b, start.ray()) {
			h.line(start, end)
		}
		h.closeGiven(start)
	}
}

// lineBuilds are the chains of an end that may be prescribed.
func (h *hunt) lineBuilds(s *side, target ray) []*build {
	if s.given != nil {
		return s.givenBuilds(target)
	}
	list := []*build{s.plain}
	for _, kind := range []kindOf{route.Offset, route.Elbow} {
		for _, fit := range s.kit[kind] {
			list = append(list, s.oneFitting(fit, target)...)
		}
	}
	return ranked(list)
}

// closeGiven closes what a settled start leaves with the free offsets of a
// prescribed end.
func (h *hunt) closeGiven(start *build) {
	if h.b.given == nil {
		return
	}
	for _, end := range h.b.closings(start.ray()) {
		h.line(start, end)
	}
}

// closings settles the free offsets of a given chain so that its ray falls on
// a target's line: possible where every other roll is settled and no elbow
// comes after the first free offset.
func (s *side) closings(target ray) []*build {
	fits, ok := s.freeOffsets()
	if !ok {
		return nil
	}
	miss := aside(target.at.Sub(s.settled(nil).frame.At), s.plain.frame.Dir)
	var list []*build
	for _, sides := range closeWith(miss, s.plain.frame, fits, s.plain.socket().Give.Sideways) {
		list = append(list, s.settled(sides))
	}
	return ranked(list)
}

// freeOffsets are the offsets of the given chain whose roll is free; false when
// there are none, more than two, or an elbow stands after one of them or is free.
func (s *side) freeOffsets() (kits, bool) {
	var fits kits
	for _, g := range s.given {
		switch {
		case g.fit.Kind == route.Elbow && (!g.rolled || len(fits) > 0):
			return nil, false
		case g.fit.Kind == route.Offset && g.fit.Rotary && !g.rolled:
			fits = append(fits, g.fit)
		}
	}
	return fits, len(fits) == 1 || len(fits) == 2
}

// settled is the given chain with its free offsets pointing to these sides;
// with none, as if they did not move the way aside.
func (s *side) settled(sides []vec) *build {
	b := s.bare()
	for _, g := range s.given {
		free := g.fit.Kind == route.Offset && g.fit.Rotary && !g.rolled
		switch {
		case free && sides == nil:
			b.frame.At = b.frame.Ahead(g.fit.Length)
		case free:
			b, _ = rolled(b, g.fit, sides[0], true)
			sides = sides[1:]
		default:
			b = b.with(g.fit, g.roll)
		}
	}
	return b
}
