package clear

import "math"

const (
	// firstSpan is the widest stretch of an arc that is measured by one chord, radians.
	firstSpan = math.Pi / 4
	// leastSag is where splitting an arc ends: chords set midway then stay within
	// half of ChordError, for one arc or for two together.
	leastSag = ChordError / 2
	// spansOpen is room for the stretches still to be looked at: the first
	// eight, and two for each halving of a full circle of 10 m down to leastSag.
	spansOpen = 64
)

// span is a stretch of an arc's centreline, by the unit directions from the
// centre to its ends.
type span struct{ a, b v3 }

// middle is the direction to the middle of the span and the cosine of half its angle.
func (s span) middle() (v3, float64) {
	m := s.a.add(s.b)
	l := m.len()
	return m.mul(1 / l), l / 2
}

// chord is a span's chord moved out midway to the arc, so that no place of the
// arc is farther from it than half the sagitta, which it gives too.
func (r *ring) chord(s span) (p, q v3, sag float64) {
	m, c := s.middle()
	sag = r.bend * (1 - c) / 2
	o := r.c.plus(sag, m)
	return o.plus(r.bend, s.a), o.plus(r.bend, s.b), sag
}

// point is the arc's point in a direction between a span's ends.
func (r *ring) point(s span, part float64) v3 {
	d := s.a.mul(1-part).plus(part, s.b)
	return r.c.plus(r.bend/d.len(), d)
}

// spans cuts the arc into stretches of at most firstSpan.
func (r *ring) spans(list []span) []span {
	n := max(1, int(math.Ceil(r.angle/firstSpan)))
	a := r.u
	for i := range n {
		b := r.dir(r.angle * float64(i+1) / float64(n))
		list = append(list, span{a, b})
		a = b
	}
	return list
}

// arcCore is the distance from an arc's centreline to a convex core: branch and
// bound over chords (Land and Doig's principle). A stretch whose chord, less
// half its sagitta, is no nearer than a place already found is left out; the
// others are halved until the chord is as good as the arc. What it gives is
// never too large and less than ChordError too small.
func arcCore(a *ring, s *core, enough float64) near {
	var room [spansOpen]span
	open := a.spans(room[:0])
	best, sure := near{d: math.Inf(1)}, math.Inf(1)
	for len(open) > 0 {
		top := open[len(open)-1]
		open = open[:len(open)-1]
		p, q, sag := a.chord(top)
		n := s.toSegment(p, q)
		low := n.d - sag
		if low >= best.d-leastSag {
			sure = min(sure, low)
			continue
		}
		_, part := onSegment(n.a, p, q)
		x := a.point(top, part)
		if best = nearer(best, spanned(x, s.nearest(x))); best.d <= touch {
			return near{meet: true}
		}
		if best.d < enough {
			return best
		}
		if sag <= leastSag || enough > 0 && low >= enough {
			sure = min(sure, low)
			continue
		}
		m, _ := top.middle()
		open = push(open, span{top.a, m}, span{m, top.b}, part < 0.5)
	}
	return near{d: max(0, min(sure, best.d)), a: best.a, b: best.b}
}

// push puts two halves on the pile, the likelier one on top.
func push(open []span, a, b span, first bool) []span {
	if first {
		return append(open, b, a)
	}
	return append(open, a, b)
}

// core is the core of a convex shape: a segment, a block or a drum.
type core struct {
	kind  int // as rank has it
	p, q  v3
	block block
	drum  drum
}

func coreOf(s Shape) (c core) {
	c.kind = rank(s)
	switch s := s.(type) {
	case Rod:
		c.p, c.q = from(s.From), from(s.To)
	case Box:
		c.block = s.block()
	case Cylinder:
		c.drum = s.drum()
	}
	return c
}

// toSegment is the distance from a segment to the core.
func (c *core) toSegment(p, q v3) near {
	switch c.kind {
	case isRod:
		return segSeg(p, q, c.p, c.q)
	case isBox:
		return segBox(p, q, &c.block)
	}
	return segDrum(p, q, &c.drum)
}

// nearest is the point of the core nearest to x.
func (c *core) nearest(x v3) v3 {
	switch c.kind {
	case isRod:
		p, _ := onSegment(x, c.p, c.q)
		return p
	case isBox:
		return c.block.nearest(x)
	}
	return c.drum.nearest(x)
}
