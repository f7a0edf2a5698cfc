package find

import "math"

// begin opens the search: from the stop along its axis, or from each place
// where the ray's own bend may stand.
func (q *quest) begin() {
	s := q.search
	q.ends()
	s.goals = append(s.goals, s.to().odds...)
	for i := range s.goals {
		s.goals[i].heading ^= 1
	}
	if q.start.axis >= 0 {
		q.beginStraight()
		return
	}
	s.firsts = append(s.firsts, s.from().odds...)
	for i := range s.firsts {
		if q.halt.halted() {
			return
		}
		q.beginOdd(i)
	}
}

// from and to are the two ends as this search goes.
func (s *search) from() *endRoom { return &s.ground.ends[s.back] }
func (s *search) to() *endRoom   { return &s.ground.ends[1-s.back] }

// ends finds out about the walls before both ends.
func (q *quest) ends() {
	s := q.search
	q.endRoom(s.to(), &q.end, fromEnd)
	q.endRoom(s.from(), &q.start, fromStart)
}

func fromStart(w *wall) float64 { return w.fromStart }
func fromEnd(w *wall) float64   { return w.fromEnd }

func (q *quest) endRoom(r *endRoom, e *rayEnd, exempt func(*wall) float64) {
	if r.stamp == q.search.stamp {
		for _, w := range r.blamed {
			w.blocked++
		}
		return
	}
	r.stamp, r.odds, r.blamed = q.search.stamp, r.odds[:0], r.blamed[:0]
	if e.axis >= 0 {
		r.far, r.by = q.clearRun(e.ray.at, e.axis, q.extent(e), exempt)
		return
	}
	q.oddEnds(e, exempt, r)
}

// beginStraight opens every crossing on the first straight at which it may bend.
func (q *quest) beginStraight() {
	d := q.start.axis
	axis := d >> 1
	n, ok := q.grid.find(q.start.ray.at)
	if !ok {
		return
	}
	from, room := q.search.labelAt(n), q.search.from()
	from.heading = uint8(d)
	for to := n; ; {
		to[axis] += 1 - 2*(d&1)
		if to[axis] < 0 || to[axis] >= q.search.size[axis] {
			return
		}
		run := math.Abs(q.grid[axis][to[axis]]-q.start.ray.at[axis]) - q.radius
		if run > room.far+sameSpot {
			room.by.blocked++
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
		toll := q.tollAlong(n, axis, q.start.ray.at[axis], q.grid[axis][to[axis]]-sign(d)*q.radius)
		q.reach(noFirst, &from, q.search.state(to, d, via), to[axis], d, via, toll)
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
	from := q.search.labelAt(n)
	from.cost, from.length, from.bends, from.heading = o.price, o.length, 1, uint8(d)
	via := 0
	if len(q.via) > 0 && o.at.Sub(q.via[0]).Len() <= sameLine {
		via = 1
	}
	if q.leadsHome(&n, d) {
		q.homeFrom(at, &from, n, d, via, o.setback, false)
	}
	x, side := q.grid[axis], sign(d)
	l := q.line(&n, axis)
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
		via := q.passed(n, d, via, begin, end)
		q.reach(at, &from, q.search.state(to, d, via), to[axis], d, via, q.tollAlong(n, axis, begin, end))
	}
}
