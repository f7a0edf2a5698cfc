package find

import (
	"container/heap"
	"context"
	"math"
)

// leave is a place from which a straight goes: a corner, or the first stop.
type leave struct {
	at      vec
	node    node
	heading int
	setback float64 // of the bend at its start, mm
	need    float64 // straight that must follow, mm
	cost    int64
	vias    int
	state   int32               // in search.cost; below 0: −1 − its place in firsts
	corner  bool                // at is a corner of the path
	exempt  func(*wall) float64 // how far along each wall does not count; nil: none
}

// odds is a corner on the end's ray reached in a heading, with its bend.
type odds struct {
	at      vec
	heading int
	setback float64
	cost    int64
}

const (
	// mostGoals is how many routes the first search gives: the best and others.
	mostGoals = 3
	// moreSteps bounds the states looked at for the others.
	moreSteps = 400
	// checkEvery is how many states pass between two looks at the context.
	checkEvery = 256
)

// shortest finds the best route over the lattice as it stands that costs less
// than the bound, and on request some others (A*: Hart, Nilsson and Raphael 1968; the estimate never says
// too much, and a state met again at less cost is opened again).
func (q *quest) shortest(ctx context.Context, others bool) ([]found, error) {
	q.prepare()
	q.begin()
	var got []found
	last := q.effort.steps(q.search.bound < math.MaxInt64)
	for step := 0; q.search.open.Len() > 0 && step < last; step++ {
		q.effort.spent++
		if step%checkEvery == 0 && ctx.Err() != nil {
			return nil, ctx.Err()
		}
		e := heap.Pop(&q.search.open).(entry)
		switch {
		case e.goal:
			got = append(got, found{q.trace(e), e.cost})
			if len(got) == mostGoals || !others {
				return got, nil
			}
			last = min(last, step+moreSteps)
		case e.cost == q.search.states[e.state].cost:
			q.follow(q.leaveOf(e.state))
		}
	}
	return got, nil
}

// leaveOf is the state as a place to go on from.
func (q *quest) leaveOf(state int32) leave {
	s := q.search
	rest := int(state)
	l := leave{state: state, setback: q.radius, need: q.between, cost: s.states[state].cost, corner: true}
	l.vias, rest = rest%s.vias, rest/s.vias
	l.heading, rest = rest%6, rest/6
	l.node[2], rest = rest%s.size[2], rest/s.size[2]
	l.node[1], l.node[0] = rest%s.size[1], rest/s.size[1]
	l.at = q.grid.at(l.node)
	return l
}

// begin opens the search: from the stop along its axis, or from each place
// where the ray's own bend may stand.
func (q *quest) begin() {
	q.search.goals = q.oddEnds(&q.end, true, q.search.goals)
	n, ok := q.grid.find(q.start.ray.at)
	if q.start.axis >= 0 {
		if ok {
			q.first(leave{at: q.start.ray.at, node: n, heading: q.start.axis, need: q.leastEnd, exempt: func(w *wall) float64 { return w.fromStart }})
		}
		return
	}
	for _, o := range q.oddEnds(&q.start, false, nil) {
		if n, ok := q.grid.find(o.at); ok {
			q.first(leave{at: o.at, node: n, heading: o.heading, setback: o.setback, need: q.between, cost: o.cost, corner: true})
		}
	}
}

func (q *quest) first(l leave) {
	l.state = int32(-1 - len(q.search.firsts))
	q.search.firsts = append(q.search.firsts, l)
	q.follow(l)
}

// follow goes along one straight: to every corner it may end in, and home when
// the end lies on it.
func (q *quest) follow(l leave) {
	q.home(l)
	axis, step := l.heading/2, 1-2*(l.heading%2)
	last := 0
	if step > 0 {
		last = q.search.size[axis] - 1
	}
	far := math.Abs(q.grid[axis][last]-l.at[axis]) - l.setback - q.radius
	if far < l.need-bendSlack {
		return
	}
	open, by := q.clearAmong(q.nearLine(l.node, axis), l.at.Add(heading(l.heading).Mul(l.setback)), l.heading, far, l.exempt)
	if by != nil {
		by.blocked++
	}
	n := l.node
	for n[axis] != last {
		n[axis] += step
		run := math.Abs(q.grid[axis][n[axis]]-l.at[axis]) - l.setback - q.radius
		if run < l.need-bendSlack {
			continue
		}
		if run > open+sameSpot {
			return
		}
		if !q.turns(l, n, run) {
			return
		}
	}
}

// turns opens the four ways on from a corner at a node; false when the corner
// is outside the case and so are all beyond it.
func (q *quest) turns(l leave, n node, run float64) bool {
	corner := q.grid.at(n)
	if !q.room.holds(corner) {
		return q.room.skew // a skew room may be entered again only from outside it
	}
	vias := l.vias
	if vias < len(q.via) && corner.Sub(q.via[vias]).Len() <= sameLine {
		vias++
	}
	cost := l.cost + q.step(run)
	for out := range 6 {
		if out/2 != l.heading/2 {
			q.relax(l, cost, n, corner, out, vias)
		}
	}
	return true
}

// step is what a straight and the right angle after it cost.
func (q *quest) step(run float64) int64 {
	return costKey(q.weigh.Millimetre*run + q.squareCost)
}

// bendsAt is bendClear with a memory.
func (q *quest) bendsAt(n node, corner vec, in, out int) bool {
	s := q.search
	at := &s.bends[((n[0]*s.size[1]+n[1])*s.size[2]+n[2])*12+bendIndex(in^1, out)]
	if *at>>2 != s.stamp {
		*at = s.stamp<<2 | 2
		if q.bendClear(n, corner, in, out) {
			*at = s.stamp<<2 | 1
		}
	}
	return *at&3 == 1
}

// bendIndex numbers the twelve bends at a corner by the headings of their two
// legs away from it, whichever comes first.
func bendIndex(a, b int) int {
	if a > b {
		a, b = b, a
	}
	return [3]int{0, 4, 8}[a/2+b/2-1] + a%2*2 + b%2
}

// relax opens a state when it is reached cheaper than before, can still beat
// the bound, and the bend into it is clear: the cheap questions first.
func (q *quest) relax(l leave, cost int64, n node, corner vec, out, vias int) {
	state := q.search.state(n, out, vias)
	if have, ok := q.search.known(state); ok && have <= cost {
		return
	}
	total := cost + q.least(corner, out, vias)
	if total >= q.search.bound || !q.bendsAt(n, corner, l.heading, out) {
		return
	}
	q.search.states[state] = met{cost, l.state, q.search.stamp}
	q.push(entry{total: total, cost: cost, state: state})
}

func (q *quest) push(e entry) {
	if e.total >= q.search.bound {
		return
	}
	e.seq = q.search.seq
	q.search.seq++
	heap.Push(&q.search.open, e)
}

// trace gives the corners of a route.
func (q *quest) trace(e entry) []vec {
	var back []vec
	if e.last != nil {
		back = append(back, e.last.at)
	}
	state := e.before
	for state >= 0 {
		back = append(back, q.leaveOf(state).at)
		state = q.search.states[state].parent
	}
	if first := q.search.firsts[-1-state]; first.corner {
		back = append(back, first.at)
	}
	for i, j := 0, len(back)-1; i < j; i, j = i+1, j-1 {
		back[i], back[j] = back[j], back[i]
	}
	return back
}
