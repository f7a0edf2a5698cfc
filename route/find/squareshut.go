package find

import (
	"context"
	"math"
)

const (
	// soonBackward is after how many states without a route a search looks from
	// the other end whether that is shut in: most routes are found sooner.
	soonBackward = 64
	// lateBackward is the same of a search for something cheaper than what the run
	// has: it mostly ends by itself, and seldom because an end is shut in.
	lateBackward = 512
	// nextBackward is how many times as many states pass until it looks again, each
	// time as far as it has come itself: looking back costs less than it may save.
	nextBackward = 8
)

// firstBackward is when this search first looks from the other end.
func (q *quest) firstBackward() int {
	if q.search.bound < math.MaxInt64 && q.effort.harder == 0 && !q.effort.brief {
		return lateBackward
	}
	return soonBackward
}

// shutIn reports whether no route as cheap as is looked for can come to the end on
// the lattice as it stands: a search that sets out from there has nowhere left to
// go within so many states. A route costs the same from either end, and to leave
// out the via points only makes it easier. The walls that stop this search take
// all the blame, for they are the ones to line up with.
func (q *quest) shutIn(ctx context.Context, most int) (bool, error) {
	mine, via := q.search, q.via
	blame := q.search.takeBlame(q.walls)
	q.search, q.via = searches.Get().(*search), nil
	q.search.bound, q.search.limited = mine.bound, false
	q.turnRound()
	q.prepareBack(mine.ground)
	dry, err := q.runsDry(ctx, most)
	q.turnRound()
	q.search.ground = &q.search.own
	searches.Put(q.search)
	q.search, q.via = mine, via
	if !dry {
		for i := range blame {
			q.walls[i].blocked = blame[i]
		}
	}
	return dry, err
}

// takeBlame notes how often each wall stopped the search, and takes it off them.
func (s *search) takeBlame(walls []wall) []int {
	s.blame = sized(s.blame, len(walls))
	for i := range walls {
		s.blame[i], walls[i].blocked = walls[i].blocked, 0
	}
	return s.blame
}

// turnRound makes the end the start. The walls keep their order.
func (q *quest) turnRound() {
	q.start, q.end = q.end, q.start
	for i := range q.walls {
		w := &q.walls[i]
		w.fromStart, w.fromEnd = w.fromEnd, w.fromStart
	}
}

// runsDry reports whether the search ends within so many states without a route.
func (q *quest) runsDry(ctx context.Context, most int) (bool, error) {
	q.begin()
	s := q.search
	for range min(most, q.effort.left()) {
		if s.open.len() == 0 {
			return true, nil
		}
		if q.halt.halted() {
			return false, ctx.Err()
		}
		e := s.open.pop()
		if e.label < 0 {
			return false, nil
		}
		q.effort.spent++
		q.goOn(e)
	}
	return s.open.len() == 0, nil
}
