package nest_test

import (
	"math/bits"
	"slices"
)

// loader looks for a load of one bar that is worth more than a limit and that no
// filter rules out: kind by kind, most of each first, leaving off where even the
// best that could follow is worth too little.
type loader struct {
	k       *certChecker
	kinds   []certKind
	prices  []int
	filters []filter
	bar     int
	limit   int
	order   []int // kinds, dearest for their room first
	taken   map[int]int
	worth   []int // of the load so far, along filters
	best    []rate
	bests   [][]rate // along filters
	ahead   ahead
	step    int
}

// rate is the most worth for its room among kinds from one on.
type rate struct{ price, room int }

// dearer reports whether a pays more for its room than b.
func (a rate) dearer(b rate) bool {
	if a.price <= 0 || b.price <= 0 {
		return a.price > 0 || a.price > b.price
	}
	ahi, alo := bits.Mul64(uint64(a.price), uint64(b.room))
	bhi, blo := bits.Mul64(uint64(b.price), uint64(a.room))
	return ahi > bhi || ahi == bhi && alo > blo
}

// of is the most that pieces of no better rate in so much room are worth.
func (a rate) of(room int) int {
	if a.price <= 0 || room <= 0 {
		return 0
	}
	hi, lo := bits.Mul64(uint64(a.price), uint64(room))
	if hi >= uint64(a.room) {
		return 1 << 62
	}
	worth, _ := bits.Div64(hi, lo, uint64(a.room))
	return int(min(worth, 1<<62))
}

func newLoader(k *certChecker, kinds []certKind, prices []int, filters []filter, bar, limit int) *loader {
	l := &loader{k: k, kinds: kinds, prices: prices, filters: filters, bar: bar, limit: limit, taken: map[int]int{}, worth: make([]int, len(filters))}
	for i, c := range kinds {
		if c.count > 0 && c.room <= k.bars[bar].room && (prices[i] > 0 || len(filters) > 0) {
			l.order = append(l.order, i)
		}
	}
	slices.SortStableFunc(l.order, func(a, b int) int {
		switch ra, rb := (rate{prices[a], kinds[a].room}), (rate{prices[b], kinds[b].room}); {
		case ra.dearer(rb):
			return -1
		case rb.dearer(ra):
			return 1
		}
		return 0
	})
	l.best = l.rates(func(i int) int { return prices[i] })
	for f := range filters {
		l.bests = append(l.bests, l.rates(func(i int) int { return kinds[i].worth[f] }))
	}
	l.ahead = l.tableAhead()
	return l
}

func (l *loader) rates(price func(kind int) int) []rate {
	list := make([]rate, len(l.order)+1)
	for at := len(l.order) - 1; at >= 0; at-- {
		list[at] = list[at+1]
		if r := (rate{price(l.order[at]), l.kinds[l.order[at]].room}); list[at].room == 0 || r.dearer(list[at]) {
			list[at] = r
		}
	}
	return list
}

// some reports whether there is such a load from the kind at on.
func (l *loader) some(at, room, worth int) bool {
	if l.k.work -= 1 + len(l.filters); l.k.work < 0 || worth+l.best[at].of(room) <= l.limit || l.ruledOut(at, room) {
		return false
	}
	if l.ahead != nil && worth+l.ahead[at][room/l.step] <= l.limit {
		return false
	}
	if at == len(l.order) {
		return true
	}
	i := l.order[at]
	c := &l.kinds[i]
	most := min(c.count, room/c.room)
	if c.apart[i] {
		most = min(most, 1)
	}
	if l.clash(c) {
		most = 0
	}
	for n := most; n >= 0; n-- {
		l.take(i, n)
		found := l.some(at+1, room-n*c.room, worth+n*l.prices[i])
		l.take(i, -n)
		if found {
			return true
		}
	}
	return false
}

// ruledOut reports whether a filter rules out this load and all that add to it.
func (l *loader) ruledOut(at, room int) bool {
	for f := range l.filters {
		if l.worth[f]+l.bests[f][at].of(room) <= l.filters[f].most[l.bar] {
			return true
		}
	}
	return false
}

func (l *loader) clash(c *certKind) bool {
	for f := range c.apart {
		if l.taken[f] > 0 {
			return true
		}
	}
	return false
}

func (l *loader) take(kind, n int) {
	l.taken[kind] += n
	for f := range l.filters {
		l.worth[f] += n * l.kinds[kind].worth[f]
	}
}
