package clear

import "math"

// spanPair is a stretch of each of two arcs.
type spanPair struct{ a, b span }

// arcArc is the distance between two arcs' centrelines, by [arcCore]'s method
// over pairs of chords.
func arcArc(a, b *ring, enough float64) near {
	var room [2 * spansOpen]spanPair
	open := pairs(a, b, room[:0])
	best, sure := near{d: math.Inf(1)}, math.Inf(1)
	for len(open) > 0 {
		top := open[len(open)-1]
		open = open[:len(open)-1]
		p, q, sagA := a.chord(top.a)
		r, s, sagB := b.chord(top.b)
		n := segSeg(p, q, r, s)
		low := n.d - sagA - sagB
		if low >= best.d-leastSag {
			sure = min(sure, low)
			continue
		}
		_, partA := onSegment(n.a, p, q)
		_, partB := onSegment(n.b, r, s)
		if best = nearer(best, onBoth(a, b, top, partA, partB)); best.d <= touch {
			return near{meet: true}
		}
		if best.d < enough {
			return best
		}
		if sagA+sagB <= leastSag || enough > 0 && low >= enough {
			sure = min(sure, low)
			continue
		}
		open = halve(open, top, sagA >= sagB, partA, partB)
	}
	return near{d: max(0, min(sure, best.d)), a: best.a, b: best.b}
}

// pairs lists each first stretch of one arc with each of the other.
func pairs(a, b *ring, list []spanPair) []spanPair {
	var roomA, roomB [spansOpen]span
	onB := b.spans(roomB[:0])
	for _, x := range a.spans(roomA[:0]) {
		for _, y := range onB {
			list = append(list, spanPair{x, y})
		}
	}
	return list
}

// onBoth is a true distance between two arcs near a place on each: that of the
// point of one to the other arc.
func onBoth(a, b *ring, at spanPair, partA, partB float64) near {
	x, y := a.point(at.a, partA), b.point(at.b, partB)
	return nearer(spanned(x, b.nearest(x)), spanned(a.nearest(y), y))
}

// halve splits the stretch of the first arc, or of the second, the likelier half on top.
func halve(open []spanPair, top spanPair, first bool, partA, partB float64) []spanPair {
	if first {
		m, _ := top.a.middle()
		x, y := spanPair{span{top.a.a, m}, top.b}, spanPair{span{m, top.a.b}, top.b}
		if partA < 0.5 {
			x, y = y, x
		}
		return append(open, x, y)
	}
	m, _ := top.b.middle()
	x, y := spanPair{top.a, span{top.b.a, m}}, spanPair{top.a, span{m, top.b.b}}
	if partB < 0.5 {
		x, y = y, x
	}
	return append(open, x, y)
}
