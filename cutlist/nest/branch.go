package nest

import (
	"cmp"
	"math"
	"slices"
)

// explore searches the whole tree under a node and reports whether it came to the
// end: then the proof is complete. It stops early when a plan meets the floor.
func (t *tree) explore() (*Proof, bool) {
	t.recost()
	for {
		how, dual := t.solve()
		if how == stopped {
			return nil, false
		}
		if how == closed {
			return &Proof{Leaf: dual}, true
		}
		if a, b, ok := t.choose(); ok {
			return t.branch(a, b)
		}
		if !t.offerWhole() {
			return nil, false
		}
	}
}

func (t *tree) branch(a, b int) (*Proof, bool) {
	node, ok := &Proof{A: a, B: b}, true
	if t.mayJoin(a, b) {
		t.join(a, b)
		node.Together, ok = t.explore()
		t.part()
		if !ok {
			return nil, false
		}
	}
	t.keepApart(a, b)
	node.Apart, ok = t.explore()
	t.letTogether(a, b)
	return node, ok
}

// choose picks two kinds to branch on: of those that the solution puts together
// a broken number of times the longest, for what they leave decides most. If it
// breaks no pair, any two in a load used a broken number of times serve: with
// them together, the loads are fewer. false: the solution is whole.
func (t *tree) choose() (a, b int, ok bool) {
	t.count()
	best := 0
	for _, p := range t.pairs() {
		if size := t.kinds[p.a].size + t.kinds[p.b].size; broken(p.times) && size > best {
			best, a, b, ok = size, int(p.a), int(p.b), true
		}
	}
	if ok {
		return a, b, true
	}
	for i, c := range t.lp.basis {
		if c.bar >= 0 && broken(t.times[i]) {
			if a, b, ok = t.pairIn(c); ok {
				return a, b, true
			}
		}
	}
	return 0, 0, false
}

func broken(x float64) bool {
	f := x - math.Floor(x)
	return roundUp <= f && f <= 1-roundUp
}

// pair is how many bars of the solution hold an a and a b.
type pair struct {
	a, b  int32
	times float64
}

// pairs lists them in a fixed order.
func (t *tree) pairs() []pair {
	var list []pair
	for i, c := range t.lp.basis {
		if x := t.times[i]; c.bar >= 0 && x >= roundUp/10 {
			c.eachPair(func(a, b int32) { list = append(list, pair{min(a, b), max(a, b), x}) })
		}
	}
	slices.SortStableFunc(list, func(p, q pair) int { return cmp.Or(cmp.Compare(p.a, q.a), cmp.Compare(p.b, q.b)) })
	merged := list[:0]
	for _, p := range list {
		if n := len(merged); n > 0 && merged[n-1].a == p.a && merged[n-1].b == p.b {
			merged[n-1].times += p.times
		} else {
			merged = append(merged, p)
		}
	}
	return merged
}

// eachPair calls for each two kinds in the load, and for each kind in it twice.
func (c *column) eachPair(f func(a, b int32)) {
	for i, a := range c.kinds {
		if c.counts[i] > 1 {
			f(a, a)
		}
		for _, b := range c.kinds[i+1:] {
			f(a, b)
		}
	}
}

func (t *tree) pairIn(c *column) (a, b int, ok bool) {
	c.eachPair(func(x, y int32) {
		if !ok && t.mayJoin(int(x), int(y)) {
			a, b, ok = int(x), int(y), true
		}
	})
	return a, b, ok
}

// offerWhole takes a solution in whole numbers as a plan, and reports whether it
// is better than the best.
func (t *tree) offerWhole() bool {
	var plan []load
	for i, c := range t.lp.basis {
		if n := int(math.Round(t.times[i])); c.bar >= 0 && n > 0 {
			plan = append(plan, slices.Repeat([]load{t.loadOf(c)}, n)...)
		}
	}
	plan, ok := t.trimmed(plan)
	before := t.limit
	if ok {
		t.offer(plan)
	}
	return t.limit < before
}

// loadOf lists the pieces of a load one by one, unions taken apart.
func (t *tree) loadOf(c *column) load {
	l := load{bar: c.bar}
	for i, k := range c.kinds {
		for range c.counts[i] {
			l.pieces = t.unfold(l.pieces, k)
		}
	}
	slices.Sort(l.pieces)
	return l
}

func (t *tree) unfold(pieces []int, k int32) []int {
	if int(k) < len(t.sizes) {
		return append(pieces, int(k))
	}
	return t.unfold(t.unfold(pieces, t.kinds[k].a), t.kinds[k].b)
}

// trimmed takes pieces away that are cut more often than wanted.
func (t *tree) trimmed(plan []load) ([]load, bool) {
	want := slices.Clone(t.want)
	var out []load
	for _, l := range plan {
		var kept []int
		for _, i := range l.pieces {
			if want[i] > 0 {
				want[i]--
				kept = append(kept, i)
			}
		}
		if len(kept) > 0 {
			out = append(out, load{l.bar, kept})
		}
	}
	ok := !slices.ContainsFunc(want, func(n int) bool { return n > 0 })
	left := t.left(out)
	return out, ok && !slices.ContainsFunc(left, func(n int) bool { return n < 0 })
}

// branchAndPrice aims at the lightest plan there could be, then at the next,
// until a plan is found.
func (s *search) branchAndPrice() {
	for !s.closed() && !s.meter.over {
		t := s.newTree()
		t.setAim()
		if !t.first() {
			return
		}
	}
}

// first bounds at the root, tries to round, then searches the tree. It reports
// whether there is more to do: a higher aim.
func (t *tree) first() bool {
	t.recost()
	how, dual := t.solve()
	switch how {
	case stopped:
		return false
	case closed:
		t.proveBy(&Proof{Leaf: dual})
		return true
	}
	t.dives()
	proof, whole := t.explore()
	if whole {
		t.proveBy(proof)
	}
	return whole
}

// proveBy takes over that no plan weighs aim or less.
func (t *tree) proveBy(proof *Proof) {
	if t.aim+1 > t.reached {
		t.filters = t.filter()
	}
	t.prove(t.aim+1, proof)
}

// setAim aims at the floor where one kind of bar makes the steps wide: then a
// load may leave no more than all bars together. Else at any cheaper plan, then
// at one of fewer bars.
func (t *tree) setAim() {
	if len(t.bars) > 1 || t.bars[0].limited {
		if t.aim = t.cutoff; t.limit < noPlan {
			if cheaper := t.limit/t.scale*t.scale - 1; t.search.floor <= cheaper {
				t.aim = cheaper
			}
		}
		return
	}
	bars := max(1, t.search.floor/t.bars[0].cost)
	t.aim = bars * t.bars[0].cost
	if t.bars[0].size < mostFilter/t.bars[0].cost {
		t.waste = max(0, bars*t.bars[0].size-t.material())
	}
}

// mostFilter is the highest price of a piece in a filter: sums keep well inside 64 bits.
const mostFilter = 1 << 47

func (t task) material() int {
	sum := 0
	for i, size := range t.sizes {
		sum += size * t.want[i]
	}
	return sum
}

// filter is the material bound as a certificate has it; nothing where loads are
// not filtered.
func (t *tree) filter() []Dual {
	if t.waste == math.MaxInt {
		return nil
	}
	f := Dual{Scale: t.bars[0].size, Over: make([]int, t.sources)}
	for _, size := range t.sizes {
		f.Prices = append(f.Prices, size*t.bars[0].cost)
	}
	return []Dual{f}
}
