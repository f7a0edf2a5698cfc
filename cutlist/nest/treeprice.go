package nest

import (
	"math"
	"slices"
)

const (
	// coarse is how much more than its bar a load must be worth to be taken in,
	// as a share of the dearest bar (a power of two): finer gains move no bound.
	coarse = 34
	// newColumns at most are taken from one look at a bar, which may take so many
	// wanderings.
	newColumns = 50
	wanderings = 2_000_000
	// smoothing is the share of the best bound's prices in those that loads are
	// looked for at.
	smoothing = 0.7
)

// price looks for loads worth more than their bar at prices between the present
// ones and those of the best bound (smoothing: Wentges, Weighted Dantzig-Wolfe
// decomposition, International Transactions in Operational Research 4 (1997);
// from memory), then, if there are none, at the present ones. Either proves a
// bound.
func (t *tree) price() (better bool, reached int, dual *Dual) {
	for len(t.centre) < t.lp.rows {
		t.centre = append(t.centre, 0)
	}
	t.prices = t.prices[:0]
	for r, p := range t.lp.price {
		if c := t.centre[r]; t.smooth {
			p = float64(smoothing*c) + float64((1-smoothing)*p)
		}
		t.prices = append(t.prices, t.clamped(r, p))
	}
	better, reached, dual = t.priceAt()
	if better || !t.smooth || t.meter.over {
		return better, reached, dual
	}
	for r, p := range t.lp.price {
		t.prices[r] = t.clamped(r, p)
	}
	again, reached2, dual2 := t.priceAt()
	if reached2 > reached {
		reached, dual = reached2, dual2
	}
	return again, reached, dual
}

func (t *tree) clamped(r int, p float64) float64 {
	if t.exact[r] {
		return min(mostLacking, max(-mostLacking, p))
	}
	return min(mostLacking, max(0, p))
}

func (t *tree) priceAt() (better bool, reached int, dual *Dual) {
	values := t.values()
	t.goods(values)
	worth := make([]int, len(t.bars))
	t.pricer.set(t.longestBar(), t.waste)
	for b, kind := range t.bars {
		if kind.most < 1 {
			continue
		}
		over := t.charge(b) + int(t.dear)*t.unit>>coarse
		worth[b] = t.pricer.loads(kind.size, over, newColumns, wanderings, func(int) {
			if c := t.foundLoad(b); t.lp.reduced(c) < -t.lp.gain {
				better = true
				t.known = append(t.known, c)
			}
		})
		t.meter.spend(wanderings - t.pricer.steps)
	}
	d, scale := t.shrink(values, worth)
	r := rest{make([]int, len(values)), t.left(nil)}
	for k := range values {
		r.want[k] = t.kinds[k].count
	}
	if sum, ok := d.sum(r); ok && sum > t.centreSum || !t.smooth {
		t.centreSum, t.smooth = sum, true
		for r, p := range t.prices {
			t.centre[r] = float64(p * scale)
		}
	}
	reached = d.bound(r)
	leaf := t.leaf(d)
	if proven := min(reached, t.aim+1); t.atRoot() && proven > t.reached { // with filters for no more than the aim
		t.filters = t.filter()
		t.prove(proven, leaf)
	}
	return better, reached, leaf.Leaf
}

// atRoot reports that nothing is joined or kept apart.
func (t *tree) atRoot() bool { return len(t.kinds) == len(t.sizes) && t.parted == 0 }

func (t *tree) charge(b int) int {
	c := t.bars[b].cost * t.unit
	if r := t.limits[b]; r >= 0 {
		c += int(max(0, -t.prices[r]) * t.dear * float64(t.unit))
	}
	return c
}

func (t *tree) foundLoad(b int) *column {
	var kinds, counts []int32
	p := &t.pricer
	for i, g := range p.best {
		if k := p.goods[g].kind; i > 0 && kinds[len(kinds)-1] == k {
			counts[len(counts)-1]++
		} else {
			kinds, counts = append(kinds, k), append(counts, 1)
		}
	}
	return t.load(b, kinds, counts)
}

// values are the prices of the kinds of piece as whole numbers.
func (t *tree) values() []int {
	values := make([]int, len(t.kinds))
	for k, kind := range t.kinds {
		if kind.count > 0 {
			for _, r := range kind.rows {
				values[k] += int(t.prices[r] * t.dear * float64(t.unit))
			}
		}
	}
	return values
}

// goods lists the kinds that are left, longest first.
func (t *tree) goods(values []int) {
	p := &t.pricer
	p.goods = p.goods[:0]
	for k, e := range t.kinds {
		if e.count > 0 && (values[k] > 0 || t.waste < math.MaxInt) {
			p.goods = append(p.goods, ware{kind: int32(k), size: e.size, value: values[k], most: e.count})
		}
	}
	slices.SortStableFunc(p.goods, func(a, b ware) int { return b.size - a.size })
	t.mark = slices.Grow(t.mark[:0], len(t.kinds))[:len(t.kinds)]
	for i, g := range p.goods {
		t.mark[g.kind] = int32(i) + 1
	}
	for i := range p.goods {
		g := &p.goods[i]
		for _, f := range t.kinds[g.kind].apart {
			if f == g.kind {
				g.most = min(g.most, 1)
			} else if at := t.mark[f]; at > 0 {
				g.apart = append(g.apart, at-1)
			}
		}
	}
	clear(t.mark)
}

// shrink makes dual values of the prices, where no load of a bar is worth more
// than worth (Farley 1990), and says by how much they were shrunk.
func (t *tree) shrink(values, worth []int) (duals, float64) {
	num, den := 1, 1
	for b, kind := range t.bars {
		if cost := kind.cost * t.unit; !kind.limited && worth[b] > cost && mulLess(cost, den, num, worth[b]) {
			num, den = cost, worth[b]
		}
	}
	d := duals{unit: t.unit, values: make([]int, len(values)), over: make([]int, len(t.bars))}
	for k, v := range values {
		if d.values[k] = mulDiv(max(0, v), num, den, false); v < 0 {
			d.values[k] = -mulDiv(-v, num, den, true)
		}
	}
	for b, kind := range t.bars {
		if kind.limited {
			d.over[b] = max(0, mulDiv(worth[b], num, den, true)-kind.cost*t.unit)
		}
	}
	return d, float64(num) / float64(den)
}
