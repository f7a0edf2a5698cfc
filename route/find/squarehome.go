package find

import "math"

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
