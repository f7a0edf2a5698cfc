package find

import "context"

// mostSets bounds the sets of ways that are looked at for runs that stand in
// each other's way.
const mostSets = 20000

// cheapestSets gives each group of runs that may clash its cheapest set of ways
// without a clash; where none is found, each run's cheapest way.
func (t *table) cheapestSets(ctx context.Context) error {
	for _, group := range t.groups(ctx) {
		s := newSets(t, group, anyCost)
		s.try(0, 0)
		s.apply()
	}
	return ctx.Err()
}

// groups parts the runs that have ways into those that may clash, directly or
// through others; groups and runs are in order. Once the context is done what it
// gives is of no use.
func (t *table) groups(ctx context.Context) [][]int {
	var groups [][]int
	in := make([]bool, len(t.rows))
	for _, i := range t.order {
		if in[i] || len(t.rows[i].options) == 0 {
			continue
		}
		in[i] = true
		open := []int{i}
		for n := 0; n < len(open) && ctx.Err() == nil; n++ {
			for _, j := range t.order {
				if !in[j] && t.mayClash(open[n], j) {
					in[j] = true
					open = append(open, j)
				}
			}
		}
		groups = append(groups, t.ordered(open))
	}
	return groups
}

// ordered gives runs in order.
func (t *table) ordered(runs []int) []int {
	in := make([]bool, len(t.rows))
	for _, i := range runs {
		in[i] = true
	}
	list := runs[:0]
	for _, i := range t.order {
		if in[i] {
			list = append(list, i)
		}
	}
	return list
}

// mayClash reports whether some options of two runs clash.
func (t *table) mayClash(i, j int) bool {
	for a := range t.rows[i].options {
		for b := range t.rows[j].options {
			if t.halt.halted() {
				return false
			}
			if t.may(i, a) && t.may(j, b) && t.near(i, a, j, b) {
				return true
			}
		}
	}
	return false
}

// may reports whether a run may take an option: a fixed one keeps its own.
func (t *table) may(i, n int) bool { return !t.rows[i].fixed || t.rows[i].chosen == n }

// sets is the search for the cheapest set of ways of a group.
type sets struct {
	*table
	group []int
	byKey [][]int // of each run of the group, its options from the cheapest on
	now   []int
	best  []int
	rest  []int64 // least cost of the runs from here on
	cost  int64   // of the best set, or what it must stay below
	left  int
	found bool
}

func newSets(t *table, group []int, below int64) *sets {
	s := &sets{table: t, group: group, cost: below, left: mostSets}
	s.now, s.best, s.rest = make([]int, len(group)), make([]int, len(group)), make([]int64, len(group)+1)
	for _, i := range group {
		s.byKey = append(s.byKey, t.rows[i].byKey())
	}
	for k := len(group) - 1; k >= 0; k-- {
		s.rest[k] = s.rest[k+1] + s.cheapest(k)
	}
	return s
}

func (s *sets) cheapest(k int) int64 {
	r := &s.rows[s.group[k]]
	if r.fixed {
		return r.cost()
	}
	return r.options[s.byKey[k][0]].key
}

// try tries every set, cheapest first in each run, leaving a branch as soon as
// it costs as much as the best set known.
func (s *sets) try(k int, cost int64) {
	if s.left--; s.left < 0 || s.halt.halted() || cost+s.rest[k] >= s.cost {
		return
	}
	if k == len(s.group) {
		s.found, s.cost = true, cost
		copy(s.best, s.now)
		return
	}
	for _, n := range s.byKey[k] {
		if s.may(s.group[k], n) && s.clear(k, n) {
			s.now[k] = n
			s.try(k+1, cost+s.rows[s.group[k]].options[n].key)
		}
	}
}

// clear reports whether an option is clear of all runs chosen so far; two fixed
// runs are not asked, they stay whatever they hit.
func (s *sets) clear(k, n int) bool {
	i := s.group[k]
	for m, j := range s.group[:k] {
		if !(s.rows[i].fixed && s.rows[j].fixed) && s.near(i, n, j, s.now[m]) {
			return false
		}
	}
	return true
}

// apply chooses the best set; each run without a way its cheapest when there is none.
func (s *sets) apply() {
	for k, i := range s.group {
		switch r := &s.rows[i]; {
		case s.found:
			r.chosen = s.best[k]
		case r.chosen < 0:
			r.chosen = s.byKey[k][0]
		}
	}
}
