package find

import (
	"math"

	"tubewright/route"
)

// straights offers every straight tube that a chain at each end can bring
// about: the stops in line within what the sockets give.
func (h *hunt) straights() {
	h.inLine()
	h.oneElbow(h.a, h.b, false)
	h.oneElbow(h.b, h.a, true)
	h.twoElbows()
}

// give is what both sockets together take up.
type give struct {
	sideways [2]float64 // mm
	degrees  [2]float64
}

func giveOf(a, b *route.Fitting) give {
	return give{[2]float64{a.Give.Sideways, b.Give.Sideways}, [2]float64{a.Give.Degrees, b.Give.Degrees}}
}

// fits reports whether a straight tube can join two rays, and what the sockets
// must give. The tube may lie along either ray or along their mean; what is
// then left sideways is shared by both sockets in proportion to their give. A
// tube is never let lie askew merely to close a sideways miss.
func (g give) fits(a, b ray) (Miss, bool) {
	best, found := Miss{}, false
	for _, u := range tubeWays(a.dir, b.dir) {
		w := b.at.Sub(a.at)
		if w.Dot(u) <= 0 {
			continue
		}
		m, ok := g.share(aside(w, u).Len(), degreesBetween(u, a.dir), degreesBetween(u, b.dir.Mul(-1)))
		if ok && (!found || m.Degrees < best.Degrees-sameWay) {
			best, found = m, true
		}
	}
	return best, found
}

// tubeWays are the directions a straight tube may take between two rays.
func tubeWays(a, b vec) []vec {
	if a.Add(b).Len() <= sameWay {
		return []vec{a}
	}
	mean, ok := unit(a.Sub(b))
	if !ok {
		return nil
	}
	return []vec{mean, a, b.Mul(-1)}
}

// share splits a sideways miss between the sockets.
func (g give) share(sideways, first, second float64) (Miss, bool) {
	sum := g.sideways[0] + g.sideways[1]
	m := Miss{Degrees: max(first, second)}
	if sum > 0 {
		m.Sideways = sideways * max(g.sideways[0], g.sideways[1]) / sum
	}
	ok := sideways <= sum+sameSpot && first <= g.degrees[0]+sameWay && second <= g.degrees[1]+sameWay
	if sideways <= sameSpot {
		m.Sideways = 0
	}
	return m, ok
}

// line offers a straight tube between two chains when they stand in line.
func (h *hunt) line(start, end *build) {
	if m, ok := giveOf(start.socket(), end.socket()).fits(start.ray(), end.ray()); ok {
		h.offer(idea{start: start, end: end, miss: m})
	}
}

// facing reports whether two ways out point at each other within the give of
// ordinary sockets; the exact check is done by fits.
func facing(a, b vec) bool { return degreesBetween(a, b.Mul(-1)) <= looseFacing }

// looseFacing is more than any socket gives, degrees.
const looseFacing = 5

// inLine offers straights without elbows: as the ports stand, with one offset,
// or with two.
func (h *hunt) inLine() {
	if h.a.given != nil || h.b.given != nil {
		h.givenLine()
		return
	}
	if !facing(h.a.port.Frame.Dir, h.b.port.Frame.Dir) {
		return
	}
	h.line(h.a.plain, h.b.plain)
	for _, start := range h.offsetChains(h.a, 2) {
		for _, end := range h.offsetChains(h.b, 2-len(start)) {
			if len(start)+len(end) > 0 {
				h.closeOffsets(start, end)
			}
		}
	}
}

// offsetChains lists up to most rotary offsets in a row, the empty chain first.
func (h *hunt) offsetChains(s *side, most int) []kits {
	list := []kits{nil}
	from := 0
	for range most {
		to := len(list)
		for _, chain := range list[from:to] {
			for _, fit := range s.kit[route.Offset] {
				if fit.Rotary {
					list = append(list, append(chain[:len(chain):len(chain)], fit))
				}
			}
		}
		from = to
	}
	return list
}

// closeOffsets sets the rolls of one or two rotary offsets so that the two
// rays fall into line: what they must close is the miss square to the way.
func (h *hunt) closeOffsets(start, end kits) {
	miss := aside(h.b.port.Frame.At.Sub(h.a.port.Frame.At), h.a.port.Frame.Dir)
	fits := append(start[:len(start):len(start)], end...)
	g := h.a.socket.Give.Sideways + h.b.socket.Give.Sideways
	for _, sides := range closeWith(miss, h.a.port.Frame, fits, g) {
		a, b := h.a.bare(), h.b.bare()
		ok := true
		for i, fit := range fits {
			if i < len(start) {
				a, ok = rolled(a, fit, sides[i], ok)
			} else {
				b, ok = rolled(b, fit, sides[i].Mul(-1), ok)
			}
		}
		if ok {
			h.line(h.a.closed(a), h.b.closed(b))
		}
	}
}

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
