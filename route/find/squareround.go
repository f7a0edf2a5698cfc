package find

import (
	"math"

	"tubewright/route/clear"
)

// body is a shape that is no upright box, made ready for measuring how far a
// point stands from it.
type body struct {
	kind         bodyKind
	centre       vec
	u, v, w      vec // unit axes; of a cylinder and a rod w runs along it, of an arc the bend runs from u to v
	half         vec // of a box; [2] half the length of a cylinder or rod
	radius, bend float64
	turn         float64 // of an arc, radians
	along        int     // the axis a bar lies along; −1: none
}

type bodyKind uint8

const (
	skewBox bodyKind = iota
	roundBar
	flatBar
	bentBar
)

// bodyOf makes a shape ready.
func bodyOf(s clear.Shape) *body {
	b := bodyKindOf(s)
	b.along = b.barAxis()
	return &b
}

func bodyKindOf(s clear.Shape) body {
	switch s := s.(type) {
	case clear.Box:
		return body{kind: skewBox, centre: s.Centre, u: s.Axes.Col(0), v: s.Axes.Col(1), w: s.Axes.Col(2), half: s.Half}
	case clear.Rod:
		return barOf(roundBar, s.From, s.To, s.Radius)
	case clear.Cylinder:
		return barOf(flatBar, s.From, s.To, s.Radius)
	case clear.Arc:
		return body{kind: bentBar, centre: s.Centre, u: s.U, v: s.V, bend: s.Bend, radius: s.Radius, turn: s.Turn * perDegree}
	}
	panic("find: a shape of no known kind")
}

func barOf(kind bodyKind, from, to vec, radius float64) body {
	along, length, ok := legOf(from, to)
	if !ok {
		along = vec{1, 0, 0}
	}
	return body{kind: kind, centre: from.Add(to).Mul(0.5), w: along, half: vec{0, 0, length / 2}, radius: radius}
}

// away is how far a point stands from the body; at most 0 inside.
func (b *body) away(p vec) float64 {
	d := p.Sub(b.centre)
	switch b.kind {
	case skewBox:
		x, y, z := over(d.Dot(b.u), b.half[0]), over(d.Dot(b.v), b.half[1]), over(d.Dot(b.w), b.half[2])
		return math.Sqrt(x*x + y*y + z*z)
	case bentBar:
		return b.awayFromArc(d)
	}
	along := d.Dot(b.w)
	out := math.Sqrt(max(0, d.Dot(d)-along*along))
	past := over(along, b.half[2])
	if b.kind == roundBar {
		return math.Hypot(past, out) - b.radius
	}
	return math.Hypot(past, max(0, out-b.radius))
}

// outward is the unit way from a convex body's nearest point to a point; false
// when the point is in it.
func (b *body) outward(p vec) (vec, bool) {
	d := p.Sub(b.centre)
	if b.kind == skewBox {
		out := b.u.Mul(beyond(d.Dot(b.u), b.half[0])).Add(b.v.Mul(beyond(d.Dot(b.v), b.half[1])))
		return unit(out.Add(b.w.Mul(beyond(d.Dot(b.w), b.half[2]))))
	}
	along := d.Dot(b.w)
	out := d.Sub(b.w.Mul(along))
	if b.kind == flatBar {
		size := out.Len()
		if size <= b.radius {
			out = vec{}
		} else {
			out = out.Mul((size - b.radius) / size)
		}
	}
	return unit(out.Add(b.w.Mul(beyond(along, b.half[2]))))
}

// beyond is by how much x lies beyond ±half, to the side it does.
func beyond(x, half float64) float64 { return math.Copysign(over(x, half), x) }

// over is by how much x lies beyond ±half.
func over(x, half float64) float64 { return max(0, math.Abs(x)-half) }

// awayFromArc is away for an arc, d from its centre.
func (b *body) awayFromArc(d vec) float64 {
	x, y := d.Dot(b.u), d.Dot(b.v)
	flat := x*x + y*y
	up := max(0, d.Dot(d)-flat)
	angle := math.Atan2(y, x)
	if angle < 0 {
		angle += 2 * math.Pi
	}
	if angle <= b.turn {
		beside := math.Sqrt(flat) - b.bend
		return math.Sqrt(beside*beside+up) - b.radius
	}
	sin, cos := math.Sincos(b.turn)
	first := (x-b.bend)*(x-b.bend) + y*y
	last := (x-b.bend*cos)*(x-b.bend*cos) + (y-b.bend*sin)*(y-b.bend*sin)
	return math.Sqrt(min(first, last)+up) - b.radius
}

const (
	// edgeFound is how exactly the gap is met at the ends of a span, mm.
	edgeFound = 1e-7
	// edgeRounds bounds the search for one: it more than halves the stretch in
	// any two rounds that matter, and a metre is down to edgeFound by 2 · 34.
	edgeRounds = 68
	// finePiece is half the length of the pieces in which what is not convex is
	// looked over, mm: between two such places a gap sinks by less than the
	// search keeps to spare, since a tube's own gap bends no tighter than 8 mm.
	finePiece = 0.01
	// goldenRounds narrows a metre down to edgeFound by the golden section.
	goldenRounds = 48
)

// roundSpans is spans for a wall that is no upright box, between lo and hi.
func (w *wall) roundSpans(list []span, at vec, axis int, lo, hi float64, number int32) []span {
	if w.body.along >= 0 {
		if half, ok := w.barSpan(at, axis); ok {
			mid := w.body.centre[axis]
			list = append(list, span{mid - half, mid + half, number})
		}
		return list
	}
	if w.body.kind == skewBox {
		if from, to, ok := w.skewSpan(at, axis); ok {
			list = append(list, span{from, to, number})
		}
		return list
	}
	probe := probe{w, at, axis}
	if w.body.kind == bentBar {
		return probe.search(list, lo, hi, number)
	}
	deep, ok := probe.deepest(lo, hi)
	if !ok {
		return list
	}
	return append(list, span{probe.edge(lo, deep), probe.edge(hi, deep), number})
}

// probe is a line on which a wall's distance is measured.
type probe struct {
	w    *wall
	at   vec
	axis int
}

// lacks is how much the gap at a place lacks, mm; below 0 when it is enough.
func (p *probe) lacks(x float64) float64 {
	at := p.at
	at[p.axis] = x
	return p.w.keep - p.w.body.away(at)
}

// deepest finds a place that is too near to a convex wall; false when there is
// none. The distance from a convex body is convex along a line: the golden
// section closes in on its least.
func (p *probe) deepest(lo, hi float64) (float64, bool) {
	const part = 0.6180339887498949
	a, b := hi-part*(hi-lo), lo+part*(hi-lo)
	fa, fb := p.lacks(a), p.lacks(b)
	for range goldenRounds {
		switch {
		case fa > sameSpot:
			return a, true
		case fb > sameSpot:
			return b, true
		case fa > fb:
			hi, b, fb = b, a, fa
			a = hi - part*(hi-lo)
			fa = p.lacks(a)
		default:
			lo, a, fa = a, b, fb
			b = lo + part*(hi-lo)
			fb = p.lacks(b)
		}
	}
	return 0, false
}

// edge is where a line that is clear at a place and not at another becomes so:
// the false position, with the value of an end that stays halved each time (the
// Illinois rule, M. Dowell and P. Jarratt 1971).
func (p *probe) edge(out, in float64) float64 {
	fo, fi := p.lacks(out), p.lacks(in)
	for range edgeRounds {
		if fo > -edgeFound || math.Abs(out-in) < edgeFound {
			return out
		}
		mid := out + (in-out)*fo/(fo-fi)
		f := p.lacks(mid)
		switch {
		case math.Abs(f) <= edgeFound:
			return mid
		case f > 0:
			in, fi, fo = mid, f, fo/2
		default:
			out, fo, fi = mid, f, fi/2
		}
	}
	return out
}

// search looks a line over piece by piece: along it a gap changes no faster
// than one goes.
func (p *probe) search(list []span, lo, hi float64, number int32) []span {
	mid, half := (lo+hi)/2, (hi-lo)/2
	lack := p.lacks(mid)
	switch {
	case lack+half <= sameSpot:
		return list
	case lack-half > 0, half < finePiece && lack > sameSpot:
		if n := len(list) - 1; n >= 0 && list[n].wall == number && lo-list[n].hi < edgeFound {
			list[n].hi = hi
			return list
		}
		return append(list, span{lo, hi, number})
	case half < finePiece:
		return list
	}
	return p.search(p.search(list, lo, mid, number), mid, hi, number)
}

// bendAway reports whether a quarter circle keeps its distance from the wall: at
// angle x its point is centre + radius·(cos x·u + sin x·v). A convex wall lies
// wholly behind the plane square to the way to its nearest point: with n that way
// at the middle, o from the centre and t along the circle there, the distance
// sinks within an angle h to either side by at most
//
//	radius·(|n·t|·sin h + max(0, n·o)·(1 − cos h))
//
// which is little where n is all but square to the circle, as it is where it comes
// nearest.
func (w *wall) bendAway(centre, u, v vec, radius, lo, hi float64) bool {
	mid, half := (lo+hi)/2, (hi-lo)/2*radius
	sin, cos := math.Sincos(mid)
	out := u.Mul(cos).Add(v.Mul(sin))
	p := centre.Add(out.Mul(radius))
	lack := w.keep - w.body.away(p)
	switch {
	case lack > sameSpot:
		return false
	case lack+half <= sameSpot || half < finePiece:
		return true
	case w.body.kind != bentBar:
		if from, ok := w.body.outward(p); ok {
			along := math.Abs(from.Dot(v.Mul(cos).Sub(u.Mul(sin))))
			if lack+half*(along+max(0, from.Dot(out))*half/radius/2) <= sameSpot {
				return true
			}
		}
	}
	angle := mid
	return w.bendAway(centre, u, v, radius, lo, angle) && w.bendAway(centre, u, v, radius, angle, hi)
}
