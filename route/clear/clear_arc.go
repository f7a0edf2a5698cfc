package clear

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

const (
	// firstSpan is the widest stretch of an arc that is measured by one chord, degrees.
	firstSpan = 45
	// leastSag is where splitting an arc ends: chords set midway then stay within
	// half of ChordError, for one arc or for two together.
	leastSag = ChordError / 2
	// spansOpen is room for the stretches still to be looked at: the first
	// eight, and two for each halving of a full circle of 10 m down to leastSag.
	spansOpen = 64
)

// span is a stretch of an arc's centreline, by the unit directions from the
// centre to its ends.
type span struct{ from, to mgl64.Vec3 }

// middle is the direction to the middle of the span and the cosine of half its angle.
func (s span) middle() (mgl64.Vec3, float64) {
	m := s.from.Add(s.to)
	l := m.Len()
	return m.Mul(1 / l), l / 2
}

// chord is a span's chord moved out midway to the arc, so that no place of the
// arc is farther from it than half the sagitta, which it gives too.
func (a Arc) chord(s span) (p, q mgl64.Vec3, sag float64) {
	m, c := s.middle()
	sag = a.Bend * (1 - c) / 2
	o := a.Centre.Add(m.Mul(sag))
	return o.Add(s.from.Mul(a.Bend)), o.Add(s.to.Mul(a.Bend)), sag
}

// point is the arc's point in a direction between a span's ends.
func (a Arc) point(s span, part float64) mgl64.Vec3 {
	d := s.from.Mul(1 - part).Add(s.to.Mul(part))
	return a.Centre.Add(d.Mul(a.Bend / d.Len()))
}

// spans cuts the arc into stretches of at most firstSpan.
func (a Arc) spans(list []span) []span {
	n := max(1, int(math.Ceil(a.Turn/firstSpan)))
	from := a.U
	for i := range n {
		to := a.dir(a.Turn * float64(i+1) / float64(n))
		list = append(list, span{from, to})
		from = to
	}
	return list
}

// arcCore is the distance from an arc's centreline to a convex core: branch and
// bound over chords (Land and Doig's principle). A stretch whose chord, less
// half its sagitta, is no nearer than a place already found is left out; the
// others are halved until the chord is as good as the arc. What it gives is
// never too large and less than ChordError too small.
func arcCore(a Arc, s Shape, enough float64) near {
	var room [spansOpen]span
	open := a.spans(room[:0])
	best, sure := near{d: math.Inf(1)}, math.Inf(1)
	for len(open) > 0 {
		top := open[len(open)-1]
		open = open[:len(open)-1]
		p, q, sag := a.chord(top)
		n := toCore(p, q, s)
		low := n.d - sag
		if low >= best.d {
			continue
		}
		_, part := onSegment(n.a, p, q)
		x := a.point(top, part)
		if best = nearer(best, spanned(x, inCore(x, s))); best.d <= touch {
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
		open = push(open, span{top.from, m}, span{m, top.to}, part < 0.5)
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

func toCore(p, q mgl64.Vec3, s Shape) near {
	switch s := s.(type) {
	case Rod:
		return segSeg(p, q, s.From, s.To)
	case Box:
		return segBox(p, q, s)
	}
	return segDrum(p, q, s.(Cylinder).drum())
}
