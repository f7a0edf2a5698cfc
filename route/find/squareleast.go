package find

import "math"

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
