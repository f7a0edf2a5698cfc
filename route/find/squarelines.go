package find

import "math"

// line is what is known of one line of the lattice: where walls take it up, and
// which of the steps along it are free. Bit i of a step stands for the step
// that leaves crossing i; the two numbers are for the two senses.
type line struct {
	stamp    uint32
	from, to int32     // its spans
	on       [2]uint64 // from where a tube may bend at i to where it may bend at the next
	jump     [2]uint64 // from the end of a bend at i to where the next bend may begin
	// lookedOn and lookedJump are the steps that were asked about.
	lookedOn, lookedJump [2]uint64
}

// span is a stretch of a line on which a centreline comes too near to a wall.
type span struct {
	lo, hi float64
	wall   int32
}

// line gives the line through a crossing along an axis.
func (q *quest) line(n *node, axis int) *line {
	l := q.search.lineAt(n, axis)
	if l.stamp != q.search.stamp {
		q.survey(l, *n, axis)
	}
	return l
}

// lineAt is the place of a line in the tables.
func (g *ground) lineAt(n *node, axis int) *line {
	a := &g.across[axis]
	return &g.lines[axis][n[0]*a[0]+n[1]*a[1]+n[2]*a[2]]
}

// survey finds the spans and the free steps of a line.
func (q *quest) survey(l *line, n node, axis int) {
	s := q.search
	*l = line{stamp: s.stamp, from: int32(len(s.spans))}
	at := q.grid.at(n)
	for w, word := range s.near.along(n, axis) {
		for word != 0 {
			i := 64*w + nextBit(&word)
			q.halt.did(q.walls[i].work())
			s.spans = q.walls[i].spans(s.spans, at, axis, int32(i))
		}
	}
	l.to = int32(len(s.spans))
	sortSpans(s.spans[l.from:l.to])
	q.freeSteps(l, n, axis)
}

// sortSpans puts spans in order of where they begin, then of their walls.
func sortSpans(list []span) {
	for i := 1; i < len(list); i++ {
		for j := i; j > 0 && (list[j].lo < list[j-1].lo || list[j].lo == list[j-1].lo && list[j].wall < list[j-1].wall); j-- {
			list[j], list[j-1] = list[j-1], list[j]
		}
	}
}

// freeSteps works out which steps along a line are free and end in the case.
func (q *quest) freeSteps(l *line, n node, axis int) {
	inside := q.insideOf(n, axis)
	if inside == 0 {
		return
	}
	r, lines := &q.search.axes[axis], len(q.grid[axis])
	l.on = [2]uint64{inside >> 1, inside << 1 & (1<<lines - 1)}
	for sense := range 2 {
		if l.jump[sense] = r.jumps[sense]; inside != r.inside {
			l.jump[sense] = jumpsInto(q.search.jump[2*axis+sense][:lines], inside)
		}
		for i := range q.search.spans[l.from:l.to] {
			s := &q.search.spans[int(l.from)+i]
			l.on[sense] &^= r.steps[sense].in(s, lines)
			l.jump[sense] &^= r.steps[2+sense].in(s, lines)
		}
	}
}

// insideOf says which crossings of a line are in the case.
func (q *quest) insideOf(n node, axis int) uint64 {
	s := q.search
	if q.room.skew {
		in := uint64(0)
		for i := range q.grid[axis] {
			n[axis] = i
			if q.room.holds(q.grid.at(n)) {
				in |= 1 << i
			}
		}
		return in
	}
	u, v := (axis+1)%3, (axis+2)%3
	if s.axes[u].inside>>n[u]&1 == 0 || s.axes[v].inside>>n[v]&1 == 0 {
		return 0
	}
	return s.axes[axis].inside
}

// stopper is the wall that a stretch of a line comes too near to first; nil
// when it is free.
func (q *quest) stopper(l *line, from, to float64) *wall {
	list := q.search.spans[l.from:l.to]
	if from <= to {
		for i := range list {
			if list[i].lo < to-sameSpot && list[i].hi > from+sameSpot {
				return &q.walls[list[i].wall]
			}
		}
		return nil
	}
	var last *span
	for i := range list {
		if list[i].lo < from-sameSpot && list[i].hi > to+sameSpot && (last == nil || list[i].hi > last.hi) {
			last = &list[i]
		}
	}
	if last == nil {
		return nil
	}
	return &q.walls[last.wall]
}

// blame counts the wall that stopped a step.
func (q *quest) blame(l *line, from, to float64) {
	if w := q.stopper(l, from, to); w != nil {
		w.blocked++
	}
}

// spans adds the stretches of the line through a point along an axis on which a
// centreline comes too near to the wall.
func (w *wall) spans(list []span, at vec, axis int, number int32) []span {
	side := 0.0
	for i := range 3 {
		if i != axis {
			if g := max(w.lo[i]-at[i], at[i]-w.hi[i]); g > 0 {
				side += g * g
			}
		}
	}
	if math.Sqrt(side) >= w.keep-sameSpot {
		return list
	}
	reach := math.Sqrt(w.keep*w.keep - side)
	lo, hi := w.lo[axis]-reach, w.hi[axis]+reach
	if w.upright {
		return append(list, span{lo, hi, number})
	}
	return w.roundSpans(list, at, axis, lo, hi, number)
}
