package nest

import (
	"cmp"
	"slices"
)

// packer fills bars piece by piece.
type packer struct {
	task
	order []int // kinds of bar in the order in which new ones are opened
	best  bool  // best fit instead of first fit
	open  []load
	room  []int // left in each open bar
	left  []int // of each kind of bar
}

// greedy gives the cheapest plan of first-fit and best-fit decreasing over
// several orders of opening bars (Johnson 1974 for the rules; the orders for
// several lengths are ours), and whether there is one: limits may defeat all.
func (t task) greedy() ([]load, bool) {
	var best []load
	found := false
	for _, order := range t.orders() {
		for _, fit := range []bool{false, true} {
			plan, ok := t.pack(order, fit)
			if ok && (!found || t.cost(plan) < t.cost(best)) {
				best, found = plan, true
			}
		}
	}
	return best, found
}

// orders lists ways to prefer bars: offcuts first, short before long, then each
// kind of stock in turn before the others; and the same with stock alone first.
func (t task) orders() [][]int {
	var offcuts, stock []int
	for i, b := range t.bars {
		if b.offcut {
			offcuts = append(offcuts, i)
		} else {
			stock = append(stock, i)
		}
	}
	short := func(a, b int) int { return cmp.Or(t.bars[a].size-t.bars[b].size, a-b) }
	slices.SortFunc(offcuts, short)
	slices.SortFunc(stock, func(a, b int) int { return -short(a, b) })
	orders := [][]int{slices.Concat(offcuts, stock), slices.Concat(stock, offcuts)}
	for _, first := range stock {
		rest := slices.DeleteFunc(slices.Clone(stock), func(s int) bool { return s == first })
		orders = append(orders, slices.Concat(offcuts, []int{first}, rest))
	}
	return orders
}

func (t task) pack(order []int, best bool) ([]load, bool) {
	p := packer{task: t, order: order, best: best, left: t.left(nil)}
	for i, n := range t.want {
		for range n {
			if !p.place(i) {
				return nil, false
			}
		}
	}
	return t.cheaper(p.open), true
}

// place puts a piece of size i into an open bar, else into a new one.
func (p *packer) place(i int) bool {
	at := -1
	for k, room := range p.room {
		if room >= p.sizes[i] && (at < 0 || p.best && room < p.room[at]) {
			if at = k; !p.best {
				break
			}
		}
	}
	if at < 0 {
		if at = p.openFor(i); at < 0 {
			return false
		}
	}
	p.open[at].pieces = append(p.open[at].pieces, i)
	p.room[at] -= p.sizes[i]
	return true
}

func (p *packer) openFor(i int) int {
	for _, b := range p.order {
		if p.left[b] > 0 && p.bars[b].size >= p.sizes[i] {
			p.left[b]--
			p.open, p.room = append(p.open, load{bar: b}), append(p.room, p.bars[b].size)
			return len(p.open) - 1
		}
	}
	return -1
}

// cheaper moves each load to the cheapest bar that is left and holds it, the
// fullest loads first, until nothing moves.
func (t task) cheaper(plan []load) []load {
	left := t.left(plan)
	for moved := true; moved; {
		moved = false
		for i, l := range plan {
			if b := t.cheapest(t.used(l), left, l.bar); b != l.bar {
				left[l.bar]++
				left[b]--
				plan[i].bar, moved = b, true
			}
		}
	}
	return plan
}

// cheapest gives the cheapest kind of bar that is left and holds so much.
func (t task) cheapest(used int, left []int, have int) int {
	for b, kind := range t.bars {
		if left[b] > 0 && kind.size >= used && kind.cost < t.bars[have].cost {
			have = b
		}
	}
	return have
}
