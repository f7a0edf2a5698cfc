package find

import (
	"container/heap"
	"context"
	"math"
	"sync"

	"tubewright/bends"
)

// search is the working room of one shortest path. Its tables are used again
// from search to search: what they hold counts only when its stamp is this
// search's.
type search struct {
	size   [3]int
	vias   int
	stamp  uint32
	states []met
	bends  []uint32 // memory of bendClear: 4·stamp + 1 clear, + 2 not
	open   frontier
	bound  int64 // only routes that cost less are looked for
	seq    int
	firsts []leave
	goals  []odds // where the end's own bend may stand, when it faces along no axis
}

// met is what is known of a state.
type met struct {
	cost   int64 // least known, in steps of sameCost
	parent int32 // state before; below 0: one of the first leaves
	stamp  uint32
}

// searches keeps working rooms for use again.
var searches = sync.Pool{New: func() any { return new(search) }}

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

// entry is one place in the queue; state −1 is a goal reached from before.
type entry struct {
	total  int64 // cost so far and least cost to come
	cost   int64
	seq    int
	state  int32
	before int32
	last   *odds // the end's own bend, for a goal
	goal   bool
}

type frontier []entry

func (f frontier) Len() int { return len(f) }

// Less orders by total, then by the most already spent, then by age: all in
// whole steps, so that no order hangs on a last bit.
func (f frontier) Less(i, j int) bool {
	a, b := &f[i], &f[j]
	if a.total != b.total {
		return a.total < b.total
	}
	if a.cost != b.cost {
		return a.cost > b.cost
	}
	return a.seq < b.seq
}
func (f frontier) Swap(i, j int) { f[i], f[j] = f[j], f[i] }
func (f *frontier) Push(x any)   { *f = append(*f, x.(entry)) }
func (f *frontier) Pop() any {
	old := *f
	x := old[len(old)-1]
	*f = old[:len(old)-1]
	return x
}

const (
	// mostGoals is how many routes the first search gives: the best and others.
	mostGoals = 3
	// moreSteps bounds the states looked at for the others.
	moreSteps = 400
	// mostSteps bounds the states of one search; a search that long has met a
	// maze no tube goes through.
	mostSteps = 30000
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
	for step, last := 0, mostSteps; q.search.open.Len() > 0 && step < last; step++ {
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

// prepare sizes the working room for the lattice.
func (q *quest) prepare() {
	s := q.search
	s.size = [3]int{len(q.grid[0]), len(q.grid[1]), len(q.grid[2])}
	s.vias = len(q.via) + 1
	nodes := s.size[0] * s.size[1] * s.size[2]
	if s.stamp++; s.stamp >= lastStamp || cap(s.states) < nodes*6*s.vias || cap(s.bends) < nodes*12 {
		s.states, s.bends, s.stamp = make([]met, nodes*6*s.vias), make([]uint32, nodes*12), 1
	}
	s.states, s.bends = s.states[:nodes*6*s.vias], s.bends[:nodes*12]
	s.open, s.firsts, s.seq, s.goals = s.open[:0], s.firsts[:0], 0, s.goals[:0]
}

// lastStamp is where stamps begin again: four times it still fits a uint32.
const lastStamp = 1 << 29

// known is the least cost of a state so far; false when it was not met.
func (s *search) known(state int32) (int64, bool) {
	m := &s.states[state]
	return m.cost, m.stamp == s.stamp
}

// state numbers a corner, the heading out of it and the via points behind it.
func (s *search) state(n node, heading, vias int) int32 {
	return int32((((n[0]*s.size[1]+n[1])*s.size[2]+n[2])*6+heading)*s.vias + vias)
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
	open, by := q.clearRun(l.at.Add(heading(l.heading).Mul(l.setback)), l.heading, far, l.exempt)
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
		if q.bendClear(corner, in, out) {
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

// home reaches the end from a corner whose straight leads to it.
func (q *quest) home(l leave) {
	if l.vias < len(q.via) || !l.corner {
		return
	}
	if q.end.axis >= 0 {
		q.homeStraight(l)
		return
	}
	for i := range q.search.goals {
		q.homeOdd(l, &q.search.goals[i])
	}
}

// aheadOf is how far a point lies ahead in a heading; false when it is not on the line.
func aheadOf(from vec, d int, p vec) (float64, bool) {
	for i := range 3 {
		if i != d/2 && math.Abs(p[i]-from[i]) > sameLine {
			return 0, false
		}
	}
	run := (p[d/2] - from[d/2]) * sign(d)
	return run, run > 0
}

// homeStraight reaches an end that faces along an axis.
func (q *quest) homeStraight(l leave) {
	leg, ok := aheadOf(l.at, l.heading, q.end.ray.at)
	run := leg - l.setback
	if !ok || l.heading != q.end.axis^1 || run < q.leastEnd-bendSlack || !q.lastClear(l, run) {
		return
	}
	cost := l.cost + costKey(q.weigh.Millimetre*run)
	q.push(entry{total: cost, cost: cost, before: l.state, goal: true})
}

// lastClear checks the last straight, looking back from the end.
func (q *quest) lastClear(l leave, run float64) bool {
	open, by := q.clearRun(q.end.ray.at, q.end.axis, run, func(w *wall) float64 { return w.fromEnd })
	if by != nil {
		by.blocked++
	}
	return open >= run-sameSpot
}

// homeOdd reaches an end by its own bend.
func (q *quest) homeOdd(l leave, o *odds) {
	leg, ok := aheadOf(l.at, l.heading, o.at)
	run := leg - l.setback - o.setback
	if !ok || l.heading != o.heading || run < q.between-bendSlack {
		return
	}
	open, by := q.clearRun(l.at.Add(heading(l.heading).Mul(l.setback)), l.heading, run, l.exempt)
	if by != nil {
		by.blocked++
	}
	if open >= run-sameSpot {
		cost := l.cost + costKey(q.weigh.Millimetre*run) + o.cost
		q.push(entry{total: cost, cost: cost, before: l.state, goal: true, last: o})
	}
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

// least is the least that can still come after a corner, in steps of sameCost,
// rounded down.
func (q *quest) least(at vec, out, vias int) int64 {
	perBend := q.squareCost - 2*q.radius*q.weigh.Millimetre
	if perBend < 0 {
		gone := at.Add(heading(out).Mul(q.radius))
		return downKey(q.weigh.Millimetre * q.end.ray.at.Sub(gone).Len())
	}
	if q.end.axis < 0 {
		return q.leastOdd(at, out, vias, perBend)
	}
	way, bends := 0.0, q.leastBends(at, out)
	if vias < len(q.via) {
		bends = 0
	}
	for _, v := range q.via[vias:] {
		way += blocks(at, v)
		at, bends = v, bends+1
	}
	way += blocks(at, q.end.ray.at)
	return downKey(q.weigh.Millimetre*(way-q.radius) + perBend*float64(bends))
}

// leastOdd is least for an end that has its own bend: the least over the places
// where that bend may stand.
func (q *quest) leastOdd(at vec, out, vias int, perBend float64) int64 {
	before := 0.0
	for _, v := range q.via[vias:] {
		before += blocks(at, v)
		at, out = v, -1
	}
	best := int64(math.MaxInt64 / 2)
	for i := range q.search.goals {
		o := &q.search.goals[i]
		rest := q.weigh.Millimetre * (before + blocks(at, o.at) - q.radius - o.setback)
		if out >= 0 && out != o.heading {
			rest += perBend
		}
		best = min(best, downKey(rest)+o.cost)
	}
	return best
}

// downKey is costKey rounded down, less what rounding each of a few steps may
// have taken off; never below 0.
func downKey(cost float64) int64 { return max(0, int64(math.Floor(cost/sameCost))-64) }

// blocks is the distance between two points along the axes.
func blocks(a, b vec) float64 {
	return math.Abs(a[0]-b[0]) + math.Abs(a[1]-b[1]) + math.Abs(a[2]-b[2])
}

// leastBends is the fewest right angles from a corner home.
func (q *quest) leastBends(at vec, out int) int {
	goal := q.end.axis ^ 1
	_, ahead := aheadOf(at, out, q.end.ray.at)
	switch {
	case out == goal && ahead:
		return 0
	case out/2 == goal/2:
		return 2
	}
	third := 3 - out/2 - goal/2
	if math.Abs(at[third]-q.end.ray.at[third]) <= sameLine {
		return 1
	}
	return 2
}

// oddEnds lists the corners on a ray that faces along no axis at which it may
// bend to or from a heading, clear of everything. For the end the heading is
// that of the tube coming in.
func (q *quest) oddEnds(e *rayEnd, end bool, list []odds) []odds {
	if e.axis >= 0 {
		return list
	}
	for _, s := range q.stands(e) {
		for d := range 6 {
			turn := degreesBetween(e.ray.dir, heading(d))
			setback := bends.Setback(q.radius, min(turn, foldedTurn))
			if turn < 1 || turn >= foldedTurn || s-setback < q.leastEnd-bendSlack {
				continue
			}
			if !q.room.holds(e.ray.ahead(s)) || !q.oddClear(e, end, s, d, turn, setback) {
				continue
			}
			o := odds{e.ray.ahead(s), d, setback, costKey(q.bendCost(turn) + q.weigh.Millimetre*(s-setback))}
			if end {
				o.heading = d ^ 1
			}
			list = append(list, o)
		}
	}
	return list
}
