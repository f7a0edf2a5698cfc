package nest

import "slices"

// remnantSteps are spent on the remnant: it saves no money, so it must not cost
// much time.
const remnantSteps = 60_000_000

// mostForRemnant pieces: in a larger job one remnant matters little.
const mostForRemnant = 60

// lengthenRemnant looks among the plans of the best one's cost for the one with
// the longest remnant that is worth keeping.
func (s *search) lengthenRemnant(keepOver int) {
	if s.pieces() > mostForRemnant {
		return
	}
	m := s.meter.within(remnantSteps)
	for _, b := range s.byLength() {
		s.lengthenOn(b, keepOver, m)
	}
	s.meter.after(m)
}

// byLength lists the kinds of bar, longest first.
func (t task) byLength() []int {
	order := make([]int, len(t.bars))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return t.bars[b].length - t.bars[a].length })
	return order
}

// remnant is what a load leaves.
func (t task) remnant(l load) int { return max(0, t.bars[l.bar].length-t.unit*t.used(l)) }

func (t task) longestRemnant(plan []load) int {
	longest := 0
	for _, l := range plan {
		longest = max(longest, t.remnant(l))
	}
	return longest
}

// lengthenOn looks for a longer remnant on one kind of bar: it halves the room
// that pieces may take on one such bar until no plan of the same cost fits.
func (s *search) lengthenOn(b, keepOver int, m *meter) {
	most := func() int { return (s.bars[b].length - max(keepOver, s.longestRemnant(s.best)+1)) / s.unit }
	least := s.sizes[len(s.sizes)-1] // what an opened bar holds at least
	for try := most(); least <= try && try <= most() && !m.over; try = (least + most()) / 2 {
		if plan := s.planWithin(b, try, m); plan != nil {
			s.best = plan
		} else {
			least = try + 1
		}
	}
}

// planWithin looks for a plan of the best one's cost in which one bar of a kind
// is filled no further than room; nil: there is none, or none was found.
func (s *search) planWithin(b, room int, m *meter) []load {
	t := s.task
	t.bars = slices.Clone(t.bars)
	short := t.bars[b]
	short.size, short.cost, short.most, short.limited = room, 0, 1, true
	t.bars[b].most--
	t.bars = append(t.bars, short)
	part := newSearch(t, m)
	part.setLimit(s.limit - s.bars[b].cost + 1)
	part.floor = max(0, s.floor-s.bars[b].cost)
	part.run()
	for i, l := range part.best {
		if l.bar == len(s.bars) {
			part.best[i].bar = b
		}
	}
	return part.best
}
