package find

import (
	"context"
	"math"
)

const (
	// mostBargains bounds the rounds of a bargain: by then a price has grown past
	// any detour.
	mostBargains = 48
	// mostIdle is how many rounds may pass that bring neither a new way nor a better
	// choice: by then prices have tried the ways that are known.
	mostIdle = 8
	// firstPrice is what coming too near to another run costs at first, mm of
	// tube: less than most ways round it cost, so that each run shows where it would
	// be best. At half of it, and half of dearer, 33 instead of 20 runs were left in
	// twenty halls of 16; ways among runs that go together were 1 % cheaper.
	firstPrice = 300.0
	// dearer is by how much the price of a clash grows with each round it stays, mm:
	// by a part of it runs only take turns in the same two places.
	dearer = 200.0
	// mostPrice is what a clash with a run that cannot be changed costs besides, mm:
	// far beyond any way's cost.
	mostPrice = 1e6
	// mostCrossed, and so many for each run, bounds the states of the searches of a
	// bargain, so that one without hope ends.
	mostCrossed     = 4000
	mostCrossedEach = 4000
	// lastSweeps is how often the runs choose again after the last searches.
	lastSweeps = 4
	// mostInsists bounds its searches with a fitting more.
	mostInsists = 12
)

// bargain is how runs that stand in each other's way make room: each round every
// run that clashes is torn up and takes what is cheapest for it of all it knows,
// the price of each clash included. Whatever clash is left gets dearer, for good,
// so that in the end those runs give way to which it costs least (negotiated
// congestion: McMurchie and Ebeling 1995). What it knows is not only its list: each
// round it also searches for a way that may cross what the others have taken, at
// the price of each run it crosses.
type bargain struct {
	*table
	price []int64 // of each pair of runs
	best  []int   // the choice with the fewest clashes so far
	least standing
	left  int // states that searches may still look at
	news  int // ways that were found
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
	n := len(t.rows)
	b := &bargain{table: t, least: standing{clashes: math.MaxInt}, price: make([]int64, n*n), left: mostCrossed + mostCrossedEach*n}
	for p := range b.price {
		b.price[p] = costKey(firstPrice)
	}
	b.note()
	idle := 0
	for round := 0; round < mostBargains && b.least.clashes > 0 && b.left > 0 && idle < mostIdle; round++ {
		if err := ctx.Err(); err != nil {
			return err
		}
		news, least := b.news, b.least
		if err := b.eachClashing(func(i int) error { return b.cross(ctx, i) }); err != nil {
			return err
		}
		b.raise()
		b.note()
		if idle++; b.news > news || b.least != least {
			idle = 0
		}
	}
	if err := b.insist(ctx); err != nil {
		return err
	}
	return b.cheaper(ctx)
}

// eachClashing does something with each run that clashes and can be moved.
func (b *bargain) eachClashing(do func(i int) error) error {
	for _, i := range b.order {
		if !b.halt.halted() && b.rows[i].free() && b.clashing(i) {
			if err := do(i); err != nil {
				return err
			}
		}
	}
	return nil
}

// sweep gives every run that clashes what is cheapest for it as things stand. It
// reports whether any moved.
func (b *bargain) sweep() bool {
	moved := false
	_ = b.eachClashing(func(i int) error {
		n, _ := b.cheapestOf(i)
		moved = moved || n != b.rows[i].chosen
		b.rows[i].chosen = n
		return nil
	})
	return moved
}

// insist searches the runs that still clash with pairs of chains that have a
// fitting more. What it finds may let others move. Where more runs clash than may
// insist, a fitting more would settle nothing.
func (b *bargain) insist(ctx context.Context) error {
	b.settleFor(b.best)
	left := 0
	_ = b.eachClashing(func(int) error { left++; return nil })
	if left > mostInsists {
		return nil
	}
	err := b.eachClashing(func(i int) error {
		if left--; left < 0 {
			return nil
		}
		err := b.search(ctx, i, request{b.around(i, everyRun), anyCost, true, true})
		b.rows[i].chosen, _ = b.cheapestOf(i)
		return err
	})
	for range lastSweeps {
		b.note()
		b.raise()
		b.sweep()
	}
	b.note()
	b.settleFor(b.best)
	return err
}

func (b *bargain) settleFor(choice []int) {
	for i := range b.rows {
		b.rows[i].chosen = choice[i]
	}
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
				*p += costKey(dearer)
			}
		}
	}
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
func (b *bargain) cheaper(ctx context.Context) error {
	if b.least.clashes > 0 {
		return nil
	}
	for _, group := range b.groups(ctx) {
		cost := int64(0)
		for _, i := range group {
			cost += b.rows[i].cost()
		}
		s := newSets(b.table, group, cost)
		if s.try(0, 0); s.found {
			s.apply()
		}
	}
	return ctx.Err()
}
