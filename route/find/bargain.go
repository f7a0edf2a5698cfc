package find

import (
	"context"
	"math"
)

const (
	// mostBargains bounds the rounds of a bargain: by then a price has grown past
	// any detour.
	mostBargains = 48
	// firstPrice is what coming too near to another run costs at first, mm of
	// tube: less than going round it, so that each run shows where it would be best.
	firstPrice = 150.0
	// dearer is by how much the price of a clash grows with each round it stays.
	dearer = 1.5
	// mostPrice bounds a price, mm: far beyond any way's cost, so that sums of
	// prices in steps of sameCost stay exact.
	mostPrice = 1e6
)

// bargain is how runs that stand in each other's way make room: each round every
// run that clashes is torn up and takes what is cheapest for it, the price of
// each clash included, and is searched anew for something cheaper still round
// what the others have taken. Whatever clash is left gets dearer, for good, so
// that in the end those runs give way to which it costs least (negotiated
// congestion: McMurchie and Ebeling 1995).
type bargain struct {
	*table
	price []int64 // of each pair of runs
	best  []int   // the choice with the fewest clashes so far
	least standing
}

// standing is how well a choice does: the fewer clashes the better, then the cheaper.
type standing struct {
	clashes int
	cost    int64
}

func (s standing) betters(t standing) bool {
	return s.clashes < t.clashes || s.clashes == t.clashes && s.cost < t.cost
}

// bargain settles the runs that clash.
func (t *table) bargain(ctx context.Context) error {
	b := &bargain{table: t, least: standing{clashes: math.MaxInt}, price: make([]int64, len(t.rows)*len(t.rows))}
	for p := range b.price {
		b.price[p] = costKey(firstPrice)
	}
	b.note()
	for round := 0; round < mostBargains && b.least.clashes > 0; round++ {
		for _, i := range t.order {
			if !t.rows[i].free() || !t.clashing(i) {
				continue
			}
			if err := b.reseat(ctx, i); err != nil {
				return err
			}
		}
		b.raise()
		b.note()
	}
	for i := range t.rows {
		t.rows[i].chosen = b.best[i]
	}
	return b.cheaper()
}

// note keeps the present choice when it is the best so far.
func (b *bargain) note() {
	now := standing{}
	for k, i := range b.order {
		now.cost += b.rows[i].cost()
		for _, j := range b.order[:k] {
			if b.collide(i, j) {
				now.clashes++
			}
		}
	}
	if now.betters(b.least) {
		b.least, b.best = now, b.choice()
	}
}

func (b *bargain) choice() []int {
	list := make([]int, len(b.rows))
	for i := range b.rows {
		list[i] = b.rows[i].chosen
	}
	return list
}

// raise makes every clash that is left dearer.
func (b *bargain) raise() {
	for _, i := range b.order {
		for _, j := range b.order {
			if p := &b.price[i*len(b.rows)+j]; b.collide(i, j) {
				*p = min(int64(float64(*p)*dearer), costKey(mostPrice))
			}
		}
	}
}

// reseat gives a run what is cheapest for it as things stand. When that clashes
// it is searched anew: round all others, and where they leave no room at all,
// round those only that it has long been quarrelling with.
func (b *bargain) reseat(ctx context.Context, i int) error {
	n, cost := b.cheapestOf(i)
	if b.blocker(i, n) >= 0 {
		before := len(b.rows[i].options)
		if err := b.search(ctx, i, request{b.around(i, everyRun), cost, true}); err != nil {
			return err
		}
		if len(b.rows[i].options) == before {
			q := request{b.around(i, func(j int) bool { return b.quarrels(i, j) }), cost, true}
			if err := b.search(ctx, i, q); err != nil {
				return err
			}
		}
		n, _ = b.cheapestOf(i)
	}
	b.rows[i].chosen = n
	return nil
}

// quarrels reports whether two runs have clashed for more than a round.
func (b *bargain) quarrels(i, j int) bool {
	return b.price[i*len(b.rows)+j] > costKey(firstPrice) || b.rows[j].fixed
}

// cheapestOf is the option of a run that costs least with the price of what it
// clashes with, and that cost.
func (b *bargain) cheapestOf(i int) (best int, least int64) {
	least = anyCost
	r := &b.rows[i]
	for n, o := range r.options {
		if cost := o.key + b.priceOf(i, n, least-o.key); cost < least || cost == least && compareWays(o.way, r.options[best].way) < 0 {
			best, least = n, cost
		}
	}
	return best, least
}

// priceOf is what the clashes of an option cost; enough once it is beyond enough.
func (b *bargain) priceOf(i, n int, enough int64) int64 {
	sum := int64(0)
	for _, j := range b.order {
		if c := b.rows[j].chosen; j != i && c >= 0 && sum <= enough && b.near(i, n, j, c) {
			if sum += b.price[i*len(b.rows)+j]; b.rows[j].fixed {
				sum += costKey(mostPrice)
			}
		}
	}
	return sum
}

// cheaper looks among all that was found for a cheaper set than the bargain's.
func (b *bargain) cheaper() error {
	if b.least.clashes > 0 {
		return nil
	}
	for _, group := range b.groups() {
		cost := int64(0)
		for _, i := range group {
			cost += b.rows[i].cost()
		}
		s := newSets(b.table, group, cost)
		if s.try(0, 0); s.found {
			s.apply()
		}
	}
	return nil
}
