package find

import "math"

// ruler is one axis of the lattice in whole steps, so that a price does not
// hang on how a straight is put together.
type ruler struct {
	price  [mostLines]int64 // of the way from 0 to each line, in steps of sameCost
	length [mostLines]int64 // the same in steps of sameLength
	inside uint64           // lines in the case
	steps  [4]reach         // of the steps on and of those after a bend, up and down
	jumps  [2]uint64        // lines a step after a bend leads from, up and down, into the case
}

// reach is the stretches of line that the steps from each crossing take up, in
// rising order, less sameSpot at both ends.
type reach struct{ from, to [mostLines]float64 }

// rule works out one axis of the lattice.
func (q *quest) rule(axis int) {
	s := q.search
	r, grid := &s.axes[axis], q.grid[axis]
	r.inside = 0
	for i, x := range grid {
		r.price[i] = costKey(q.weigh.Millimetre * x)
		r.length[i] = int64(math.Round(x / sameLength))
		if !q.room.boxed || x >= q.room.lo[axis]-sameLine && x <= q.room.hi[axis]+sameLine {
			r.inside |= 1 << i
		}
	}
	q.ruleJumps(axis)
	q.ruleSteps(axis)
}

// ruleJumps finds from each line the first at which a tube may bend again after
// a bend.
func (q *quest) ruleJumps(axis int) {
	s, grid := q.search, q.grid[axis]
	least := 2*q.radius + q.between - bendSlack
	f, b := 0, len(grid)-1
	for i := range grid {
		for f < len(grid) && grid[f]-grid[i] < least {
			f++
		}
		s.jump[2*axis][i] = int8(f)
		if f == len(grid) {
			s.jump[2*axis][i] = -1
		}
	}
	for i := len(grid) - 1; i >= 0; i-- {
		for b >= 0 && grid[i]-grid[b] < least {
			b--
		}
		s.jump[2*axis+1][i] = int8(b)
	}
	for sense := range 2 {
		s.axes[axis].jumps[sense] = jumpsInto(s.jump[2*axis+sense][:len(grid)], s.axes[axis].inside)
	}
}

// jumpsInto is the lines from which a jump leads to some lines.
func jumpsInto(jump []int8, inside uint64) (from uint64) {
	for i, next := range jump {
		if next >= 0 && inside>>next&1 == 1 {
			from |= 1 << i
		}
	}
	return from
}

// ruleSteps works out what each step takes up of its line; a step that leads
// nowhere takes up nothing, beyond the end where it would.
func (q *quest) ruleSteps(axis int) {
	s, grid := q.search, q.grid[axis]
	last := len(grid) - 1
	for sense := range 2 {
		on, jump := &s.axes[axis].steps[sense], &s.axes[axis].steps[2+sense]
		side := float64(1 - 2*sense)
		for i := range grid {
			beyond := math.Inf(1 - 2*sense)
			on.from[i], on.to[i], jump.from[i], jump.to[i] = beyond, beyond, beyond, beyond
			if next := i + 1 - 2*sense; next >= 0 && next <= last {
				on.set(i, grid[i]-side*q.radius, grid[next]-side*q.radius)
			}
			if next := s.jump[2*axis+sense][i]; next >= 0 {
				jump.set(i, grid[i]+side*q.radius, grid[next]-side*q.radius)
			}
		}
	}
}

func (r *reach) set(i int, from, to float64) {
	r.from[i], r.to[i] = min(from, to)+sameSpot, max(from, to)-sameSpot
}

// in is the steps that a span of the line is in the way of, among so many.
func (r *reach) in(s *span, lines int) uint64 {
	first, last := firstBeyond(r.to[:lines], s.lo), firstNotBelow(r.from[:lines], s.hi)
	if first >= last {
		return 0
	}
	return (1<<last - 1) &^ (1<<first - 1)
}
