package find

import (
	"context"
	"errors"
	"slices"
)

// settle chooses one way for each run. First the cheapest set of listed ways
// of which no two come too near to each other; where there is none, run after
// run takes its best, searching anew among what is already chosen, and tearing
// up the one run in its way when nothing else helps.
func (t *table) settle(ctx context.Context) error {
	if !t.cheapestSet() {
		for _, i := range t.order {
			if err := t.seat(ctx, i); err != nil {
				return err
			}
		}
	}
	for _, i := range t.order {
		if err := t.better(ctx, i); err != nil {
			return err
		}
	}
	t.trim()
	return nil
}

// mostSets bounds the sets of ways that are looked at.
const mostSets = 20000

// cheapestSet tries every set of listed ways, cheapest first in each run,
// leaving a branch as soon as it costs more than the best set known. It
// reports whether there is a set without a clash.
func (t *table) cheapestSet() bool {
	s := &sets{table: t, left: mostSets, best: make([]int, len(t.rows)), now: make([]int, len(t.rows)), rest: make([]int64, len(t.order)+1)}
	for k := len(t.order) - 1; k >= 0; k-- {
		s.rest[k] = s.rest[k+1] + s.cheapest(t.order[k])
	}
	s.try(0, 0)
	if !s.found {
		return false
	}
	for i := range t.rows {
		if len(t.rows[i].ways) > 0 {
			t.rows[i].chosen = s.best[i]
		}
	}
	return true
}

// sets is the search for the cheapest set.
type sets struct {
	*table
	left  int
	now   []int
	best  []int
	rest  []int64 // least cost of the runs from here on
	cost  int64
	found bool
}

func (s *sets) cheapest(i int) int64 {
	r := &s.rows[i]
	switch {
	case len(r.ways) == 0:
		return 0
	case r.fixed:
		return costKey(r.ways[r.chosen].Cost)
	}
	return costKey(r.ways[0].Cost)
}

func (s *sets) try(k int, cost int64) {
	if s.left--; s.left < 0 || s.found && cost+s.rest[k] >= s.cost {
		return
	}
	if k == len(s.order) {
		s.found, s.cost = true, cost
		copy(s.best, s.now)
		return
	}
	i := s.order[k]
	r := &s.rows[i]
	if len(r.ways) == 0 {
		s.try(k+1, cost)
		return
	}
	for n := range r.ways {
		if r.fixed && n != r.chosen || !s.free(k, i, n) {
			continue
		}
		s.now[i] = n
		s.try(k+1, cost+costKey(r.ways[n].Cost))
	}
}

// free reports whether a way is clear of all runs chosen so far; two fixed runs
// are not asked, they stay whatever they hit.
func (s *sets) free(k, i, n int) bool {
	for _, j := range s.order[:k] {
		if len(s.rows[j].ways) == 0 || s.rows[i].fixed && s.rows[j].fixed {
			continue
		}
		if s.near(i, n, j, s.now[j]) {
			return false
		}
	}
	return true
}

// seat chooses a way for one run among those already seated.
func (t *table) seat(ctx context.Context, i int) error {
	r := &t.rows[i]
	if len(r.ways) == 0 || r.fixed {
		return nil
	}
	for n := range r.ways {
		if t.blocker(i, n, nil) < 0 {
			r.chosen = n
			return nil
		}
	}
	if done, err := t.anew(ctx, i); done || err != nil {
		return err
	}
	if done, err := t.tear(ctx, i); done || err != nil {
		return err
	}
	t.keep(i)
	return nil
}

// blocker is the first run in order that a way comes too near to, leaving one
// out; −1 when there is none.
func (t *table) blocker(i, n int, except *int) int {
	for _, j := range t.order {
		if j == i || t.rows[j].chosen < 0 || except != nil && *except == j {
			continue
		}
		if t.near(i, n, j, t.rows[j].chosen) {
			return j
		}
	}
	return -1
}

// around is what all other runs take up: their chosen ways, and for those
// without one what their ports need.
func (t *table) around(i int) []solid {
	var list []solid
	for j := range t.rows {
		if r := &t.rows[j]; j != i && r.chosen >= 0 {
			list = append(list, solidsOf(r.ways[r.chosen])...)
		}
	}
	for _, s := range t.reserved(i) {
		if j := t.runNamed(s.name); t.rows[j].chosen < 0 {
			list = append(list, s)
		}
	}
	return list
}

func (t *table) runNamed(name string) int {
	for i, r := range t.plan.Runs {
		if r.Name == name {
			return i
		}
	}
	panic("find: a solid of no run")
}

// again searches a run among what the others have chosen. Finding none is no
// error here: the listed ways stand, and a clash that is left is told.
func (t *table) again(ctx context.Context, i int) ([]Way, error) {
	ways, err := t.ask(ctx, i, t.around(i))
	if none := (*NoWayError)(nil); errors.As(err, &none) {
		err = nil
	}
	return ways, err
}

// anew searches a run again and takes the best way; false when there is none.
func (t *table) anew(ctx context.Context, i int) (bool, error) {
	ways, err := t.again(ctx, i)
	if err != nil || len(ways) == 0 {
		return false, err
	}
	t.take(i, ways[0])
	return true, nil
}

// take adds a way to a run's list and chooses it.
func (t *table) take(i int, w Way) {
	r := &t.rows[i]
	w.Name = fresh(w.Name, r.ways)
	n, _ := slices.BinarySearchFunc(r.ways, w, compareWays)
	r.ways = slices.Insert(r.ways, n, w)
	r.limbs = slices.Insert(r.limbs, n, limbsOfWay(w))
	r.chosen = n
	clear(t.nearMemo) // the ways after it have moved on by one
}

// fresh gives a name that the list does not have yet.
func fresh(name string, ways []Way) string {
	for slices.ContainsFunc(ways, func(w Way) bool { return w.Name == name }) {
		name += ", round another run"
	}
	return name
}

// tear takes the run's best way that only one other run stands in, and finds
// that one another way.
func (t *table) tear(ctx context.Context, i int) (bool, error) {
	r := &t.rows[i]
	for n := range r.ways {
		j := t.blocker(i, n, nil)
		if t.rows[j].fixed || t.blocker(i, n, &j) >= 0 {
			continue
		}
		was := t.rows[j].chosen
		r.chosen, t.rows[j].chosen = n, -1
		for m := range t.rows[j].ways {
			if t.blocker(j, m, nil) < 0 {
				t.rows[j].chosen = m
				return true, nil
			}
		}
		if done, err := t.anew(ctx, j); done || err != nil {
			return done, err
		}
		r.chosen, t.rows[j].chosen = -1, was
	}
	return false, nil
}

// keep chooses the way that lacks least to another run, and tells the clash.
func (t *table) keep(i int) {
	r := &t.rows[i]
	e := &ConflictError{Run: t.plan.Runs[i].Name, Units: t.plan.Units}
	for n := range r.ways {
		with, short := t.worstClash(i, n)
		if n == 0 || microns(short) < microns(e.Short) {
			r.chosen = n
			e.With, e.Short, e.Name = t.plan.Runs[with].Name, short, r.ways[n].Name
		}
	}
	r.problem = e
}

// worstClash is the run a way comes nearest to and what it lacks there, mm.
func (t *table) worstClash(i, n int) (with int, short float64) {
	with = -1
	for _, j := range t.order {
		if c := t.rows[j].chosen; j != i && c >= 0 {
			if s := t.apart(i, n, j, c); s > short {
				with, short = j, s
			}
		}
	}
	return with, short
}

// better searches a run again when the others keep it from its cheapest way:
// round them there may be a cheaper one than the next on its list.
func (t *table) better(ctx context.Context, i int) error {
	r := &t.rows[i]
	if r.chosen <= 0 || r.fixed || r.troubled() {
		return nil
	}
	ways, err := t.again(ctx, i)
	if err != nil {
		return err
	}
	if len(ways) > 0 && costKey(ways[0].Cost) < costKey(r.ways[r.chosen].Cost) {
		t.take(i, ways[0])
	}
	return nil
}

// trim shortens the lists to what is shown; the chosen way stays.
func (t *table) trim() {
	clear(t.nearMemo)
	for i := range t.rows {
		r := &t.rows[i]
		for len(r.ways) > mostWays {
			n := len(r.ways) - 1
			if r.chosen == n {
				n--
			}
			r.ways, r.limbs = slices.Delete(r.ways, n, n+1), slices.Delete(r.limbs, n, n+1)
			if r.chosen > n {
				r.chosen--
			}
		}
	}
}
