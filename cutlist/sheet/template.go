package sheet

import (
	"math"

	"tubewright/bends"
	"tubewright/cutlist"
	"tubewright/cutlist/draw"
)

// sameplane is how far a roll may be from 0 or from a half turn and still leave
// the tube in one plane, degrees: what the sheets print as 0.0° or 180.0°.
const sameplane = 0.05

// template is a stretch of a formed tube that lies in one plane, at full size:
// some of its bends with the straights around them, seen so that its first bend
// turns left on the way from A to B. Places along it count from the finished end
// A, mm; below 0 and beyond the aim is what is trimmed off.
type template struct {
	tube        cutlist.Tube
	number, of  int // of the tube's templates; counts from 1
	first, last int // its bends
	from, to    float64
	pieces      []flatPiece
}

// flatPiece is a straight or an arc of a template.
type flatPiece struct {
	s0, s1     float64
	start, end draw.Point
	arc        draw.Arc // Radius 0: a straight
}

// templates is a tube's planar stretches in order; none for a straight tube.
func templates(t cutlist.Tube) (all []template) {
	bench := t.Bench.Bends
	for i := 0; i < len(bench); {
		last := i
		for last+1 < len(bench) && planar(bench[last+1].Roll) {
			last++
		}
		all = append(all, template{tube: t, first: i, last: last})
		i = last + 1
	}
	for i := range all {
		all[i].number, all[i].of = i+1, len(all)
		all[i].lay(0)
	}
	return all
}

// planar reports whether a roll leaves the plane of the bend before.
func planar(roll float64) bool {
	return math.Abs(roll) <= sameplane || math.Abs(roll) >= 180-sameplane
}

// lay works out the pieces, the way at the template's start running at an angle
// on the page; 0 is to the right, 90 down.
func (t *template) lay(angle float64) {
	bench := t.tube.Bench
	w := walker{heading: angle}
	t.from, t.to = 0, t.tube.Cut.Aim
	if t.first > 0 {
		t.from = bench.Bends[t.first-1].FromA.End
	}
	if t.last+1 < len(bench.Bends) {
		t.to = bench.Bends[t.last+1].FromA.Start
	}
	w.s = t.from
	trim := t.tube.Way.Formed.Tube.Trim
	if t.first == 0 {
		w.s = -trim
		w.straight(trim)
	}
	left := true
	for i := t.first; i <= t.last; i++ {
		b := bench.Bends[i]
		if i > t.first && math.Abs(b.Roll) > 90 {
			left = !left
		}
		w.straight(bench.Straights[i])
		w.bend(b, left)
	}
	w.straight(bench.Straights[t.last+1])
	if t.last+1 == len(bench.Bends) {
		w.straight(trim)
	}
	t.pieces = w.pieces
}

// walker walks along a centreline on the page.
type walker struct {
	at      draw.Point
	heading float64 // degrees
	s       float64
	pieces  []flatPiece
}

func (w *walker) straight(length float64) {
	if length <= 0 {
		return
	}
	to := w.at.Plus(compass(w.heading).Times(length))
	w.pieces = append(w.pieces, flatPiece{s0: w.s, s1: w.s + length, start: w.at, end: to})
	w.at, w.s = to, w.s+length
}

func (w *walker) bend(b bends.BenchBend, left bool) {
	side := 1.0
	if left {
		side = -1
	}
	length := b.FromA.End - b.FromA.Start
	arc := draw.Arc{Centre: w.at.Plus(compass(w.heading + 90*side).Times(b.Radius)), Radius: b.Radius, From: w.heading - 90*side, Sweep: b.Turn * side}
	p := flatPiece{s0: w.s, s1: w.s + length, start: w.at, end: arc.At(arc.From + arc.Sweep), arc: arc}
	w.pieces = append(w.pieces, p)
	w.at, w.s, w.heading = p.end, w.s+length, w.heading+arc.Sweep
}

// compass is the unit direction at an angle on the page, degrees.
func compass(degrees float64) draw.Point { return draw.Arc{Radius: 1}.At(degrees) }

// at is a place along the template and the direction of travel there.
func (t template) at(s float64) (at, way draw.Point) {
	p := t.pieces[len(t.pieces)-1]
	for _, q := range t.pieces {
		if s <= q.s1 {
			p = q
			break
		}
	}
	part := math.Max(0, math.Min(1, (s-p.s0)/(p.s1-p.s0)))
	if p.arc.Radius == 0 {
		step := p.end.Minus(p.start)
		return p.start.Plus(step.Times(part)), heading(step)
	}
	angle := p.arc.From + p.arc.Sweep*part
	return p.arc.At(angle), compass(angle + math.Copysign(90, p.arc.Sweep))
}

// bounds is the first and the last place, trims included.
func (t template) bounds() (s0, s1 float64) { return t.pieces[0].s0, t.pieces[len(t.pieces)-1].s1 }

// outside is the unit direction from a bend's centre to its middle, and left is
// whether the way turns left there.
func (t template) outside(i int) (out draw.Point, left bool) {
	b := t.tube.Bench.Bends[i]
	at, _ := t.at(b.FromA.Middle)
	for _, p := range t.pieces {
		if p.arc.Radius > 0 && p.s0 <= b.FromA.Middle && b.FromA.Middle <= p.s1 {
			return heading(at.Minus(p.arc.Centre)), p.arc.Sweep < 0
		}
	}
	panic("sheet: a template does not hold its own bend")
}

// od is the tube's outside diameter, mm.
func (t template) od() float64 { return t.tube.Way.Formed.Tube.OD }

// skinStep is how far apart points on a template's skin are asked where they
// are, mm.
const skinStep = 2.0

// skin is points along both edges.
func (t template) skin() (points []draw.Point) {
	s0, s1 := t.bounds()
	n := max(1, int(math.Ceil((s1-s0)/skinStep)))
	for i := range n + 1 {
		at, way := t.at(s0 + (s1-s0)*float64(i)/float64(n))
		side := draw.Point{X: way.Y, Y: -way.X}.Times(t.od() / 2)
		points = append(points, at.Plus(side), at.Minus(side))
	}
	return points
}
