package nest

import (
	"math"
	"slices"
)

// dives try to round the relaxation of the root (a diving heuristic: Sadykov et
// al., Primal heuristics for branch and price: the assets of diving methods,
// INFORMS Journal on Computing 31 (2019); from memory).
func (t *tree) dives() {
	if t.residue(0) || t.residue(1) {
		return
	}
	if t.pieces() <= mostCopies*len(t.sizes) {
		t.dive()
	}
}

// residue cuts every load as many whole times as the relaxation does, less so
// many, and looks for the best way to cut the rest. It reports success.
func (t *tree) residue(less int) bool {
	st := t.start()
	t.count()
	for i, c := range t.lp.basis {
		n := int(t.times[i]+roundUp) - less
		if c.bar < 0 || n < 1 {
			continue
		}
		p := pattern{bar: c.bar, pieces: c.kinds, counts: c.counts}
		for n > 0 && !st.takes(p, n) {
			n--
		}
		if n > 0 {
			st = t.with(st, p, n)
		}
	}
	if st.done() {
		t.offer(t.loads(st.picks))
		return t.search.closed()
	}
	if st.picks == nil {
		return false
	}
	t.finish(st)
	if t.search.closed() || 2*st.pieces() > t.pieces() {
		return t.search.closed()
	}
	return t.solveRest(st)
}

// mostCopies of a size on average: with more, unions piece by piece lead nowhere.
const mostCopies = 8

func (r rest) pieces() int {
	n := 0
	for _, w := range r.want {
		n += w
	}
	return n
}

// solveRest searches the rest for a plan that makes a whole one within the aim.
func (t *tree) solveRest(st state) bool {
	task := t.of(st.rest).compact()
	part := newSearch(task, t.meter.within(residueShare*(t.meter.steps-t.begun)+residueSteps))
	part.told = func(int, int) {}
	part.setLimit(t.aim - st.spent + 1)
	part.run()
	t.meter.after(part.meter)
	if part.best == nil {
		return false
	}
	plan := t.loads(st.picks)
	at := t.kept(st.rest)
	for _, l := range part.best {
		whole := load{bar: l.bar}
		for _, i := range l.pieces {
			whole.pieces = append(whole.pieces, at[i])
		}
		plan = append(plan, whole)
	}
	t.offer(plan)
	return t.search.closed()
}

// A rest may take so many times the steps that the tree has taken so far, and
// some: it is seldom the way to a plan.
const (
	residueShare = 4
	residueSteps = 500_000
)

// kept lists the sizes that a rest still wants.
func (t task) kept(r rest) []int {
	var at []int
	for i, n := range r.want {
		if n > 0 {
			at = append(at, i)
		}
	}
	return at
}

// compact leaves out sizes that are not wanted.
func (t task) compact() task {
	var sizes, want []int
	for i, n := range t.want {
		if n > 0 {
			sizes, want = append(sizes, t.sizes[i]), append(want, n)
		}
	}
	t.sizes, t.want = sizes, want
	return t
}

// dive makes unions of whole loads, the most used first, as long as the bound
// lets it, then undoes them.
func (t *tree) dive() {
	joined := 0
	for !t.meter.over {
		if how, _ := t.solve(); how != open {
			break
		}
		c := t.mostUsed()
		if c == nil {
			t.offerWhole()
			break
		}
		joined += t.joinAll(c)
		t.recost()
	}
	for range joined {
		t.part()
	}
	t.recost()
}

// mostUsed gives the load of several pieces that is nearest to being cut once more.
func (t *tree) mostUsed() *column {
	t.count()
	var best *column
	most := 0.0
	for i, c := range t.lp.basis {
		x := t.times[i]
		if c.bar < 0 || c.cost > c.full || len(c.kinds) == 1 && c.counts[0] == 1 {
			continue
		}
		if x > 1 {
			x = 1 + (x-math.Floor(x))/2
		}
		if x > most+roundUp {
			most, best = x, c
		}
	}
	return best
}

// joinAll makes one union of a load and says of how many steps.
func (t *tree) joinAll(c *column) int {
	kinds, counts := slices.Clone(c.kinds), slices.Clone(c.counts)
	steps, have := 0, -1
	for i, k := range kinds {
		for range counts[i] {
			if have < 0 {
				have = int(k)
				continue
			}
			if !t.mayJoin(have, int(k)) {
				return steps
			}
			t.join(have, int(k))
			have = len(t.kinds) - 1
			steps++
		}
	}
	return steps
}
