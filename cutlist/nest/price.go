package nest

import "slices"

// pricePool pivots on the columns known until none gains, or a few times: new
// columns found at rough values lead on as well as others. It reports false when
// out of steps.
func (g *master) pricePool() bool {
	g.settled = false
	for range fewPivots {
		best, at := -gain, -1
		for i, c := range g.known {
			if rc := g.lp.reduced(c); rc < best {
				best, at = rc, i
			}
		}
		if !g.meter.spend(8*len(g.known) + g.lp.rows*g.lp.rows) {
			return false
		}
		if g.settled = at < 0 || !g.lp.enter(g.known[at]); g.settled {
			return true
		}
	}
	return true
}

// forget drops known columns that are far from gaining, once there are many.
func (g *master) forget() {
	if len(g.known) <= mostKnown*g.lp.rows {
		return
	}
	kept := g.known[:g.lp.rows]
	for _, c := range g.known[g.lp.rows:] {
		if g.lp.reduced(c) < nearlyWorth {
			kept = append(kept, c)
		}
	}
	g.known = kept
}

// priceNew looks for loads worth more than their bar and takes the bound from
// the same exact dual values. It reports whether it found any, and whether every
// kind of bar was searched to the end.
func (g *master) priceNew() (better, whole bool) {
	values := g.fixedValues()
	worth := make([]int, len(g.bars)) // no load is worth more
	sack := newKnapsack(g.task, g.mostOf(), values, g.meter, &g.pool.table)
	whole = true
	for b := range g.bars {
		if g.r.left[b] < 1 {
			continue
		}
		over := g.charge(b) + (g.dear*g.unit)>>coarseLoads
		f := sack.fill(g.bars[b].size, over)
		worth[b] = f.most
		if f.exact = f.exact && !g.meter.over; !f.exact {
			whole = false
		}
		for _, counts := range f.finds {
			if c := g.column(g.pool.add(toPattern(b, sack, counts))); g.lp.reduced(c) < -gain {
				better = true
				g.known = append(g.known, c)
			}
		}
	}
	if whole {
		g.takeBound(values, worth)
	}
	return better, whole || better && !g.meter.over
}

func (g *master) mostOf() []int {
	if !g.unbounded {
		return g.r.want
	}
	most := make([]int, len(g.r.want))
	for i, n := range g.r.want {
		if n > 0 {
			most[i] = maxPieces
		}
	}
	return most
}

func toPattern(bar int, k *knapsack, counts []int) pattern {
	p := pattern{bar: bar}
	order := make([]int, 0, len(counts))
	for i, n := range counts {
		if n > 0 {
			order = append(order, i)
		}
	}
	slices.SortFunc(order, func(a, b int) int { return k.items[a].piece - k.items[b].piece })
	for _, i := range order {
		p.pieces = append(p.pieces, int32(k.items[i].piece))
		p.counts = append(p.counts, int32(counts[i]))
	}
	return p
}

// fixedValues are the prices of the sizes as whole numbers, from 0 up.
func (g *master) fixedValues() []int {
	values := make([]int, len(g.sizes))
	for row, i := range g.items {
		v := min(missing, max(0, g.lp.price[row]))
		values[i] = int(v * float64(g.dear) * float64(g.unit))
	}
	return values
}

// charge is what a bar of a kind costs with the price of its limit, fixed point.
func (g *master) charge(b int) int {
	c := g.bars[b].cost * g.unit
	if at := slices.Index(g.limits, b); at >= 0 {
		c += int(max(0, -g.lp.price[len(g.items)+at]) * float64(g.dear) * float64(g.unit))
	}
	return c
}
