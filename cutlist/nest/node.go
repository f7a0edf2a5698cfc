package nest

import (
	"math"
	"slices"
)

const (
	// barred is what a column costs more that a node forbids, in dearest bars, at
	// first: much, and the prices of all it holds would leap.
	barred = 0.1
	// pivotsAtOnce is how often the program pivots before new loads are looked for.
	pivotsAtOnce = 1000
	// nearlyWorth is the most a column may fall short, in dearest bars, to be
	// kept when there are more than mostKnown for each row and fewColumns.
	nearlyWorth = 0.1
	mostKnown   = 6
	fewColumns  = 200
	// slight is how far above the aim, as a share, the relaxation's cost counts as
	// no more: rounding. A node that is then not closed is branched on.
	slight = 1e-7
)

// recost forbids and allows columns as the node does.
func (t *tree) recost() {
	t.mark = slices.Grow(t.mark[:0], len(t.kinds))[:len(t.kinds)]
	clear(t.mark)
	for _, c := range t.columns() {
		if c.cost = c.full; c.dead || !t.allows(c) {
			c.cost = c.full + barred
		}
	}
	for _, c := range t.lack {
		if c != nil {
			c.cost = c.full
		}
	}
	t.lp.reprice()
	t.centreSum = math.MinInt
}

func (t *tree) allows(c *column) bool {
	ok := true
	for i, k := range c.kinds {
		t.mark[k] = c.counts[i]
		ok = ok && int(c.counts[i]) <= t.kinds[k].count
	}
	for _, k := range c.kinds {
		for _, f := range t.kinds[k].apart {
			if t.mark[f] > 1 || t.mark[f] > 0 && f != k {
				ok = false
			}
		}
	}
	for _, k := range c.kinds {
		t.mark[k] = 0
	}
	return ok
}

// outcome of a node's relaxation.
type outcome int

const (
	open outcome = iota
	closed
	stopped
)

// solve solves the relaxation of the present node as far as needed: until no
// plan of this node can be as light as aim, or it is shown that this way of
// bounding cannot tell. The dual values are those of the bound.
func (t *tree) solve() (outcome, *Dual) {
	for {
		if t.search.closed() {
			return stopped, nil
		}
		t.aim = min(t.aim, t.cutoff)
		settled, ok := t.pivots()
		if !ok {
			return stopped, nil
		}
		if settled && t.total() <= float64(t.aim)/t.dear*(1+slight) && t.whole() {
			return open, nil
		}
		better, reached, dual := t.price()
		if t.meter.over {
			return stopped, nil
		}
		if reached > t.aim {
			return closed, dual
		}
		t.forget()
		if !better && settled && !t.dearer() {
			return open, nil
		}
	}
}

// optimise solves the relaxation of the present node to the end.
func (t *tree) optimise() {
	t.aim, t.limit = -1, noPlan
	t.cutoff = -1
	for {
		settled, ok := t.pivots()
		if better, _, _ := t.price(); !ok || !better && settled && !t.dearer() {
			return
		}
	}
}

// whole reports that nothing is missing or forbidden in the present solution.
func (t *tree) whole() bool {
	for i, c := range t.lp.basis {
		if t.lp.value[i] > 10*nudge && (c.cost > c.full || c.bar < 0 && c.cost > 0) {
			return false
		}
	}
	return true
}

// total is what the relaxation costs: the present prices for what is truly wanted.
func (t *tree) total() float64 {
	sum := 0.0
	for r, p := range t.lp.price {
		sum += float64(p * t.right[r])
	}
	return sum
}

// count computes how often the solution uses each basic column.
func (t *tree) count() {
	t.times = t.times[:0]
	for i := range t.lp.basis {
		sum := 0.0
		for j, v := range t.lp.line(i) {
			sum += float64(v * t.right[j])
		}
		t.times = append(t.times, sum)
	}
}

// dearer raises the price of what the relaxation misses.
func (t *tree) dearer() bool {
	some := false
	for i, c := range t.lp.basis {
		if t.lp.value[i] > 10*nudge && c.cost < mostLacking && (c.cost > c.full || c.bar < 0 && c.cost > 0) {
			c.cost = min(mostLacking, 4*c.cost)
			if c.bar < 0 {
				c.full = max(c.full, min(c.cost, lackCost))
			}
			some = true
		}
	}
	if some {
		t.lp.reprice()
	}
	return some
}

// pivots brings in known columns until none gains, or a few times. All are looked
// at now and then; in between only those that gained when last looked at (multiple
// pricing: Orchard-Hays, Advanced linear-programming computing techniques, 1968).
func (t *tree) pivots() (settled, ok bool) {
	t.gainers = t.gainers[:0]
	for range pivotsAtOnce {
		in := t.gainer(t.gainers)
		if in == nil {
			t.listGainers()
			in = t.gainer(t.gainers)
		}
		if !t.meter.spend(8*len(t.gainers) + t.lp.rows*t.lp.rows) {
			return false, false
		}
		if in == nil || !t.lp.enter(in) {
			return true, true
		}
	}
	return false, true
}

func (t *tree) listGainers() {
	t.meter.spend(8 * len(t.known))
	t.gainers = t.gainers[:0]
	for _, c := range t.known {
		if !c.basic && c.cost <= c.full && t.lp.reduced(c) < -t.lp.gain {
			t.gainers = append(t.gainers, c)
		}
	}
}

// gainer is the column that gains most.
func (t *tree) gainer(list []*column) (in *column) {
	best := -t.lp.gain
	for _, c := range list {
		if c.basic {
			continue
		}
		if rc := t.lp.reduced(c); rc < best {
			best, in = rc, c
		}
	}
	return in
}

// forget drops known columns that are far from gaining, once there are many.
func (t *tree) forget() {
	if len(t.known) <= mostKnown*t.lp.rows+fewColumns {
		return
	}
	t.known = slices.DeleteFunc(t.known, func(c *column) bool {
		return c.bar >= 0 && !c.basic && (c.cost > c.full || t.lp.reduced(c) > nearlyWorth)
	})
}
