package find

import "math"

// begin opens the search: from the stop along its axis, or from each place
// where the ray's own bend may stand.
func (q *quest) begin() {
	s := q.search
	s.goals = q.oddEnds(&q.end, true, s.goals)
	if q.end.axis >= 0 {
		s.back, s.backBy = q.clearRun(q.end.ray.at, q.end.axis, q.extent(&q.end), func(w *wall) float64 { return w.fromEnd })
	}
	if q.start.axis >= 0 {
		q.beginStraight()
		return
	}
	s.firsts = q.oddEnds(&q.start, false, s.firsts)
	for i := range s.firsts {
		q.beginOdd(i)
	}
}

// beginStraight opens every crossing on the first straight at which it may bend.
func (q *quest) beginStraight() {
	d := q.start.axis
	axis := d >> 1
	n, ok := q.grid.find(q.start.ray.at)
	if !ok {
		return
	}
	from := label{at: [3]uint8{uint8(n[0]), uint8(n[1]), uint8(n[2])}}
	open, by := q.clearRun(q.start.ray.at, d, q.extent(&q.start), func(w *wall) float64 { return w.fromStart })
	for to := n; ; {
		to[axis] += 1 - 2*(d&1)
		if to[axis] < 0 || to[axis] >= q.search.size[axis] {
			return
		}
		run := math.Abs(q.grid[axis][to[axis]]-q.start.ray.at[axis]) - q.radius
		if run > open+sameSpot {
			by.blocked++
			return
		}
		if run < q.leastEnd-bendSlack {
			continue
		}
		if !q.room.holds(q.grid.at(to)) {
			if q.room.skew {
				continue // a stop may stand outside a skew room and lead into it
			}
			return
		}
		via := q.passed(n, d, 0, q.start.ray.at[axis], q.grid[axis][to[axis]]-sign(d)*q.radius)
		q.reach(noFirst, &from, to, d, via, 0, q.tollAlong(n, axis, q.start.ray.at[axis], q.grid[axis][to[axis]]-sign(d)*q.radius))
	}
}

// extent is how far the lattice goes on before an end that faces along an axis.
func (q *quest) extent(e *rayEnd) float64 {
	grid, at := q.grid[e.axis>>1], e.ray.at[e.axis>>1]
	return max(math.Abs(grid[0]-at), math.Abs(grid[len(grid)-1]-at))
}

// noFirst is the parent of a label on the first straight.
const noFirst = math.MinInt32

// beginOdd opens the crossings that the straight after a start's own bend leads to.
func (q *quest) beginOdd(first int) {
	o := &q.search.firsts[first]
	n, ok := q.grid.find(o.at)
	if !ok {
		return
	}
	axis, d := o.heading>>1, o.heading
	at := int32(-1 - first)
	from := label{
		at:   [3]uint8{uint8(n[0]), uint8(n[1]), uint8(n[2])},
		cost: o.price, length: o.length, bends: 1, heading: uint8(d),
	}
	via := 0
	if len(q.via) > 0 && o.at.Sub(q.via[0]).Len() <= sameLine {
		via = 1
	}
	if q.leadsHome(n, d) {
		q.homeFrom(at, &from, n, d, via, o.setback, false)
	}
	x, side := q.grid[axis], sign(d)
	l := q.line(n, axis)
	for to := n; ; {
		to[axis] += 1 - 2*(d&1)
		if to[axis] < 0 || to[axis] >= q.search.size[axis] {
			return
		}
		begin, end := x[n[axis]]+side*o.setback, x[to[axis]]-side*q.radius
		if (end-begin)*side < q.between-bendSlack {
			continue
		}
		q.lookAlong(n, axis, begin, end)
		if w := q.stopper(l, begin, end); w != nil {
			w.blocked++
			return
		}
		if !q.room.holds(q.grid.at(to)) {
			return
		}
		q.reach(at, &from, to, d, q.passed(n, d, via, begin, end), 0, q.tollAlong(n, axis, begin, end))
	}
}
