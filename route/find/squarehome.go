package find

import "math"

// leadsHome reports whether the end may lie ahead of a bend at a crossing.
func (q *quest) leadsHome(n *node, out int) bool {
	if q.end.axis < 0 {
		return true
	}
	if out != q.end.axis^1 {
		return false
	}
	axis := out >> 1
	end := &q.search.end
	u, v := (axis+1)%3, (axis+2)%3
	return n[u] == end[u] && n[v] == end[v]
}

// home reaches the end from a bend whose second leg leads to it.
func (q *quest) home(at int32, from *label, n node, out, via int) {
	bent := *from
	bent.cost += q.cornerKey
	bent.length -= q.cornerSaves
	bent.bends++
	if !q.mayEnd(&bent, n, out) || !q.bendsAt(int(from.crossing), &n, int(from.heading), out) {
		return
	}
	bent.cost += q.tollBend(n, int(from.heading), out)
	q.homeFrom(at, &bent, n, out, via, q.radius, true)
}

// mayEnd asks the cheap question before the dear one.
func (q *quest) mayEnd(bent *label, n node, out int) bool {
	if q.end.axis < 0 {
		return true
	}
	axis := out >> 1
	run := (q.end.ray.at[axis]-q.grid[axis][n[axis]])*sign(out) - q.radius
	return run >= q.leastEnd-bendSlack && bent.cost+q.search.axes[axis].far(uint8(n[axis]), q.search.end[axis]) < q.search.bound
}

// homeFrom reaches the end from a corner with this setback.
func (q *quest) homeFrom(at int32, bent *label, n node, out, via int, setback float64, turns bool) {
	if q.end.axis >= 0 {
		q.homeStraight(at, bent, n, out, via, setback, turns)
		return
	}
	for i := range q.search.goals {
		if o := &q.search.goals[i]; o.heading == out {
			q.homeOdd(at, bent, n, o, via, setback, turns)
		}
	}
}

// homeStraight reaches an end that faces along an axis.
func (q *quest) homeStraight(at int32, bent *label, n node, out, via int, setback float64, turns bool) {
	s := q.search
	axis := out >> 1
	begin, end := q.grid[axis][n[axis]]+sign(out)*setback, q.end.ray.at[axis]
	run := (end - begin) * sign(out)
	if run < q.leastEnd-bendSlack || q.passed(n, out, via, begin, end) < len(q.via) {
		return
	}
	if end := s.to(); run > end.far+sameSpot {
		end.by.blocked++
		return
	}
	r := &s.axes[axis]
	q.arrive(home{
		cost:   bent.cost + r.far(uint8(n[axis]), s.end[axis]) + q.tollAlong(n, axis, begin, end),
		length: bent.length + abs(r.length[s.end[axis]]-r.length[n[axis]]),
		from:   at, turns: turns, bends: bent.bends,
	})
}

// homeOdd reaches an end by its own bend.
func (q *quest) homeOdd(at int32, bent *label, n node, o *odds, via int, setback float64, turns bool) {
	s := q.search
	axis, d := o.heading>>1, o.heading
	u, v := (axis+1)%3, (axis+2)%3
	if n[u] != o.node[u] || n[v] != o.node[v] {
		return
	}
	begin, end := q.grid[axis][n[axis]]+sign(d)*setback, o.at[axis]-sign(d)*o.setback
	if (end-begin)*sign(d) < q.between-bendSlack {
		return
	}
	if via = q.passed(n, d, via, begin, end); via < len(q.via) && o.at.Sub(q.via[via]).Len() <= sameLine {
		via++
	}
	if via < len(q.via) {
		return
	}
	q.lookAlong(n, axis, begin, end)
	if w := q.stopper(q.line(&n, axis), begin, end); w != nil {
		w.blocked++
		return
	}
	r := &s.axes[axis]
	q.arrive(home{
		cost:   bent.cost + r.far(uint8(n[axis]), o.node[axis]) + o.price + q.tollAlong(n, axis, begin, end),
		length: bent.length + abs(r.length[o.node[axis]]-r.length[n[axis]]) + o.length,
		from:   at, turns: turns, last: o, bends: bent.bends + 1,
	})
}

// arrive puts a way home in the queue.
func (q *quest) arrive(h home) {
	s := q.search
	if h.cost >= s.bound || s.limited && !q.within(&h) {
		return
	}
	s.homes = append(s.homes, h)
	s.push(h.cost, h.cost, int32(-len(s.homes)))
}

// within reports whether a way home keeps the limits.
func (q *quest) within(h *home) bool {
	return h.bends <= mostBends && (q.most == 0 || h.length <= q.mostLength())
}

// foundAt gives a way home as a route.
func (q *quest) foundAt(h *home) found {
	return found{corners: q.trace(h), cost: h.cost, within: q.within(h)}
}

// trace gives the corners of a route.
func (q *quest) trace(h *home) []vec {
	s := q.search
	var back []vec
	if h.last != nil {
		back = append(back, h.last.at)
	}
	at, heading := h.from, 6
	if !h.turns && at >= 0 {
		heading = int(s.labels[at].heading)
	}
	for ; at >= 0; at = s.labels[at].parent {
		l := &s.labels[at]
		if int(l.heading) != heading {
			back = append(back, q.grid.at(l.node()))
		}
		heading = int(l.heading)
	}
	if at != noFirst {
		back = append(back, s.firsts[-1-at].at)
	}
	for i, j := 0, len(back)-1; i < j; i, j = i+1, j-1 {
		back[i], back[j] = back[j], back[i]
	}
	return back
}

// passed counts the via points that a straight along a line passes, in order,
// beginning with one; from and to are where the straight does.
func (q *quest) passed(n node, d, via int, from, to float64) int {
	if via == len(q.via) {
		return via
	}
	return q.passes(n, d, via, from, to)
}

func (q *quest) passes(n node, d, via int, from, to float64) int {
	axis := d >> 1
	u, v := (axis+1)%3, (axis+2)%3
	side := sign(d)
	for ; via < len(q.via); via++ {
		p := q.via[via]
		if math.Abs(p[u]-q.grid[u][n[u]]) > sameLine || math.Abs(p[v]-q.grid[v][n[v]]) > sameLine {
			break
		}
		if (p[axis]-from)*side < -sameLine || (p[axis]-to)*side > sameLine {
			break
		}
		from = p[axis]
	}
	return via
}
