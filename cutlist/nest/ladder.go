package nest

// ladder holds the costs a plan can have at all, so that a bound between two of
// them may be lifted to the upper one. A cost counts when bars of that price in
// all, with every offcut, could hold the material.
type ladder struct {
	scale, pieces int
	least         int   // number of bars: none where a bar costs nothing at all
	step          int   // what divides all prices
	holds         []int // most that stock of step·i in all holds; below 0: there is no such sum; nil: too many to list
	only          int   // cost of the only kind of bar there is; 0: there are several
	need          int   // material that the stock must hold
}

// maxRungs bounds the list of sums: a megabyte or so.
const maxRungs = 1 << 17

// newLadder lists the costs up to a known plan's.
func newLadder(t task, most int) ladder {
	l := ladder{scale: t.scale, pieces: t.pieces(), least: 1}
	for i, s := range t.sizes {
		l.need += s * t.want[i]
	}
	for _, b := range t.bars {
		if b.cost < t.scale {
			l.need -= b.size * min(b.most, l.pieces)
		}
		if b.cost == 0 {
			l.least = 0
		}
		l.step = gcd(l.step, b.cost/t.scale)
	}
	if len(t.bars) == 1 {
		l.only = t.bars[0].cost
	}
	if l.step > 0 && most/t.scale/l.step < maxRungs {
		l.list(t, most/t.scale/l.step)
	}
	return l
}

func (l *ladder) list(t task, rungs int) {
	l.holds = make([]int, rungs+1)
	for i := range l.holds {
		if l.holds[i] = -1; i == 0 {
			l.holds[i] = 0
		}
		for _, b := range t.bars {
			price := b.cost / t.scale / l.step
			if price > 0 && price <= i && l.holds[i-price] >= 0 {
				l.holds[i] = max(l.holds[i], l.holds[i-price]+b.size)
			}
		}
	}
}

// up lifts a lower bound on a plan's cost to the next cost a plan can have.
func (l ladder) up(bound int) int {
	if l.only > 0 {
		return max(1, ceilDiv(bound, l.only)) * l.only
	}
	price, bars := bound/l.scale, bound%l.scale
	if bars > l.pieces {
		price, bars = price+1, 0
	}
	next := l.next(price)
	if next > price {
		bars = 0
	}
	return next*l.scale + max(l.least, bars)
}

// next gives the least price of a plan that is no less than this one.
func (l ladder) next(price int) int {
	if l.step == 0 {
		return price
	}
	rung := (price + l.step - 1) / l.step
	for rung < len(l.holds) && (l.holds[rung] < 0 || l.holds[rung] < l.need) {
		rung++
	}
	return rung * l.step
}
