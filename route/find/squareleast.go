package find

import "math"

// priceBends works out what a right angle costs besides its two legs, counted to
// the corner (below 0 where bends cost little: they cut corners), and by how much
// it is shorter than they.
func (q *quest) priceBends() {
	q.cornerKey = costKey(q.squareCost - 2*q.radius*q.weigh.Millimetre)
	q.cornerSaves = int64(math.Floor((2 - math.Pi/2) * q.radius / sameLength))
}

// mostLength is the longest a route may be, in steps of sameLength: half a
// thousandth of a millimetre may be lost in counting.
func (q *quest) mostLength() int64 { return int64(math.Floor(q.most/sameLength)) + 64 }

// least is the least that can still come after a label, in steps of sameCost:
// the legs along the axes, and the bends that the headings ask for.
func (q *quest) least(l *label) int64 {
	if q.cornerKey < 0 {
		return q.leastStraight(l)
	}
	if int(l.via) < len(q.via) {
		return q.leastByVia(l)
	}
	if q.end.axis < 0 {
		return q.leastOdd(l)
	}
	return q.search.toEndFrom(l, q.end.axis^1, q.cornerKey)
}

// toEndFrom is the price of the legs to an end along an axis and of the bends that
// the headings ask for.
func (s *search) toEndFrom(l *label, heading int, corner int64) int64 {
	x, y, z := &s.toEnd[0], &s.toEnd[1], &s.toEnd[2]
	where := x.side[l.at[0]] + y.side[l.at[1]] + z.side[l.at[2]]
	return x.cost[l.at[0]] + y.cost[l.at[1]] + z.cost[l.at[2]] + int64(fewest[heading][where][l.heading])*corner
}

// faceHome works out how far from each line the end lies, and on which side.
func (s *search) faceHome() {
	for axis := range s.toEnd {
		r, h, to := &s.axes[axis], &s.toEnd[axis], s.end[axis]
		digit := [3]uint8{9, 3, 1}[axis]
		for i := range s.size[axis] {
			h.cost[i] = abs(r.price[to] - r.price[i])
			h.side[i] = digit * uint8(1+compare(to, i))
		}
	}
}

// toward is the price of the legs to a crossing and the fewest bends to reach it
// in a heading.
func (s *search) toward(l *label, to *node, heading int) (legs, bends int64) {
	where := 0
	for axis := range 3 {
		r := &s.axes[axis]
		d := r.price[to[axis]] - r.price[l.at[axis]]
		legs += abs(d)
		where = where*3 + 1 + compare(to[axis], int(l.at[axis]))
	}
	return legs, int64(fewest[heading][where][l.heading])
}

func compare(a, b int) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// leastByVia is least with via points still to come.
func (q *quest) leastByVia(l *label) int64 {
	at, via := q.grid.at(l.node()), q.via[l.via]
	legs := downKey(q.weigh.Millimetre * blocks(at, via))
	bends := int64(0)
	if q.end.axis >= 0 {
		bends = apart(int(l.heading), q.end.axis^1)
	}
	return max(0, legs+q.search.rest[l.via]+bends*q.cornerKey)
}

// sumVias works out the least price from each via point home.
func (q *quest) sumVias() {
	s := q.search
	s.rest = sized(s.rest, len(q.via))
	for i := len(q.via) - 1; i >= 0; i-- {
		if i == len(q.via)-1 {
			s.rest[i] = q.lastRest()
			continue
		}
		s.rest[i] = s.rest[i+1] + downKey(q.weigh.Millimetre*blocks(q.via[i], q.via[i+1]))
	}
}

// lastRest is the least price from the last via point home: nothing where the
// end has its own bend, which may stand anywhere.
func (q *quest) lastRest() int64 {
	if q.end.axis < 0 {
		return 0
	}
	return downKey(q.weigh.Millimetre * blocks(q.via[len(q.via)-1], q.end.ray.at))
}

// apart is the fewest right angles from one heading to another.
func apart(a, b int) int64 {
	switch {
	case a == b:
		return 0
	case a == b^1:
		return 2
	}
	return 1
}

// leastOdd is least for an end that has its own bend: the least over the places
// where that bend may stand.
func (q *quest) leastOdd(l *label) int64 {
	best := int64(math.MaxInt64 / 2)
	for i := range q.search.goals {
		o := &q.search.goals[i]
		legs, bends := q.search.toward(l, &o.node, o.heading)
		best = min(best, legs+bends*q.cornerKey+o.price)
	}
	return best
}

// leastStraight is least where bends cost so little that they save: no tube is
// shorter than the straight line from where the label's straight is sure to reach.
func (q *quest) leastStraight(l *label) int64 {
	sure := q.grid.at(l.node()).Sub(heading(int(l.heading)).Mul(q.radius))
	return downKey(q.weigh.Millimetre*q.end.ray.at.Sub(sure).Len()) - costKey(q.weigh.Millimetre*q.radius)
}

// mayFit reports whether a label can still come home within the limits: no tube
// is shorter than the straight line, and none has bends beyond the most.
func (q *quest) mayFit(l *label) bool {
	if l.bends > mostBends {
		return false
	}
	if q.most == 0 {
		return true
	}
	sure := q.grid.at(l.node()).Sub(heading(int(l.heading)).Mul(q.radius))
	left := q.end.ray.at.Sub(sure).Len() - q.radius
	return l.length+int64(math.Floor(left/sameLength)) <= q.mostLength()
}

// downKey is costKey rounded down, less what rounding each of a few steps may
// have taken off.
func downKey(cost float64) int64 { return int64(math.Floor(cost/sameCost)) - 64 }

// blocks is the distance between two points along the axes.
func blocks(a, b vec) float64 {
	return math.Abs(a[0]-b[0]) + math.Abs(a[1]-b[1]) + math.Abs(a[2]-b[2])
}

// fewest is the fewest right angles that lead home where nothing stands in the
// way: by the heading home, by on which side home lies along each axis (three
// ways each, x first), and by the heading one comes in.
var fewest = fewestBends()

func fewestBends() (table [6][27][6]uint8) {
	for goal := range table {
		table[goal] = bendsHome(goal)
	}
	return table
}

// bendsHome works back from home: a place is so many bends away as the least of
// the places that one straight leads to, one bend more for each turn.
func bendsHome(goal int) (bends [27][6]uint8) {
	const none = 100
	for w := range bends {
		for d := range bends[w] {
			bends[w][d] = none
		}
	}
	for changed := true; changed; {
		changed = false
		for w := range bends {
			for d := range bends[w] {
				best := bends[w][d]
				for out := range 6 {
					if out == d^1 {
						continue
					}
					turn := uint8(1)
					if out == d {
						turn = 0
					}
					best = min(best, turn+straightHome(&bends, w, out, goal))
				}
				if best < bends[w][d] {
					bends[w][d], changed = best, true
				}
			}
		}
	}
	return bends
}

// straightHome is the fewest bends after a straight in a heading: it comes no
// nearer, level, or past, and is home where it ends there.
func straightHome(bends *[27][6]uint8, where, d, goal int) uint8 {
	weight := [3]int{9, 3, 1}[d/2]
	side := where/weight%3 - 1 // where home lies along the axis
	ahead := side
	if d%2 == 1 {
		ahead = -side
	}
	best := uint8(100)
	for to := -1; to <= ahead; to++ {
		if to == ahead && ahead == 0 {
			continue // it has moved
		}
		now := to
		if d%2 == 1 {
			now = -to
		}
		there := where + (now-side)*weight
		if there == 13 && d == goal {
			return 0
		}
		best = min(best, bends[there][d])
	}
	return best
}
