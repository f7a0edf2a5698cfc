package find

import (
	"context"
	"math"
	"slices"
)

// settle chooses one way for each run: the cheapest set of listed ways of which
// no two come too near to each other. Where runs have no such set they bargain
// for room. What then can be had cheaper among the others is taken, and what
// clashes still is told.
func (t *table) settle(ctx context.Context) error {
	t.nearMemo = make([][]int8, len(t.rows)*len(t.rows))
	if err := t.cheapestSets(ctx); err != nil {
		return err
	}
	if err := t.bargain(ctx); err != nil {
		return err
	}
	for _, i := range t.order {
		if err := t.better(ctx, i); err != nil {
			return err
		}
	}
	if err := t.tidyUp(ctx); err != nil {
		return err
	}
	t.tellClashes()
	return nil
}

// better searches a run again when the others keep it from its cheapest way:
// round them there may be a cheaper one than it has.
func (t *table) better(ctx context.Context, i int) error {
	r := &t.rows[i]
	if !r.free() || t.clashing(i) || r.chosen == r.byKey()[0] {
		return nil
	}
	if err := t.search(ctx, i, request{others: t.around(i, everyRun), below: r.cost(), brief: true}); err != nil {
		return err
	}
	for _, n := range r.byKey() {
		if r.options[n].key < r.cost() && t.blocker(i, n) < 0 {
			r.chosen = n
			break
		}
	}
	return nil
}

func everyRun(int) bool { return true }

// blocker is the first run in order whose chosen way an option comes too near
// to; −1 when there is none.
func (t *table) blocker(i, n int) int {
	for _, j := range t.order {
		if c := t.rows[j].chosen; j != i && c >= 0 && t.near(i, n, j, c) {
			return j
		}
	}
	return -1
}

// tellClashes names for each clash that is left one run that gives way in vain:
// the fewest runs, then those later in order. Each keeps the way that lacks
// least.
func (t *table) tellClashes() {
	for {
		worst, most := -1, 0
		for _, i := range t.order {
			if n := t.clashesOf(i); t.rows[i].free() && t.rows[i].problem == nil && n > 0 && n >= most {
				worst, most = i, n
			}
		}
		if worst < 0 || t.halt.stopped() {
			return
		}
		t.rows[worst].problem = &ConflictError{}
		t.keep(worst)
	}
}

// clashesOf counts the runs whose clash with a run is not told yet.
func (t *table) clashesOf(i int) int {
	n := 0
	for _, j := range t.order {
		if t.rows[j].problem == nil && t.collide(i, j) {
			n++
		}
	}
	return n
}

// keep chooses the way that lacks least to another run, and tells the clash.
func (t *table) keep(i int) {
	r := &t.rows[i]
	e := &ConflictError{Run: t.plan.Runs[i].Name, Units: t.plan.Units}
	for at, n := range r.byKey() {
		enough := math.Inf(1)
		if at > 0 {
			enough = e.Short
		}
		with, short := t.worstClash(i, r.options[n], enough)
		if t.halt.stopped() {
			return
		}
		if at == 0 || microns(short) < microns(e.Short) {
			r.chosen = n
			e.With, e.Short, e.Name = t.nameOf(with), short, r.nameAt(n)
		}
	}
	r.problem = e
	if e.Short == 0 {
		r.problem = nil // another has moved out of the way meanwhile
	}
}

// nameOf is a run's name; "" of none.
func (t *table) nameOf(i int) string {
	if i < 0 {
		return ""
	}
	return t.plan.Runs[i].Name
}

// worstClash is the run an option comes nearest to and what it lacks there, mm. It
// looks no further once that is enough.
func (t *table) worstClash(i int, o *option, enough float64) (with int, short float64) {
	with = -1
	for _, j := range t.order {
		if c := t.rows[j].chosen; j != i && c >= 0 && short < enough {
			if s := t.apart(o, t.rows[j].options[c], enough); s > short {
				with, short = j, s
			}
		}
	}
	return with, short
}

// hits reports whether an option comes too near to another run's chosen way.
func (t *table) hits(i int, o *option) bool {
	return slices.ContainsFunc(t.order, func(j int) bool {
		c := t.rows[j].chosen
		return j != i && c >= 0 && !o.beyond(t.rows[j].options[c], t.plan.Clear+margin) && clashes(o.limbs, t.rows[j].options[c].limbs, t.plan.Clear)
	})
}

// list gives a run's ways as they are shown: its own list and the chosen way,
// the best first, and the place of the chosen one.
func (r *row) list() (ways []*option, chosen int) {
	order := r.byKey()
	order = slices.DeleteFunc(order, func(n int) bool { return n >= r.listed && n != r.chosen })
	for len(order) > mostWays {
		last := len(order) - 1
		if order[last] == r.chosen {
			last--
		}
		order = slices.Delete(order, last, last+1)
	}
	for _, n := range order {
		o := *r.options[n]
		o.way.Name = r.nameAt(n)
		ways = append(ways, &o)
	}
	return ways, slices.Index(order, r.chosen)
}
