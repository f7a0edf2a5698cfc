package nest

import (
	"cmp"
	"slices"
)

// knapsack asks for the most valuable load of one bar: a bounded knapsack
// problem in whole numbers, so that its answer is exact (Martello & Toth 1990,
// chapter 3).
type knapsack struct {
	items []good // best value for its size first
	meter *meter
	table *table
}

// good is one size of piece with its value.
type good struct {
	piece, size, value, most int
	rate                     float64 // value per size
}

// newKnapsack takes the pieces that are wanted and worth something.
func newKnapsack(t task, want, values []int, m *meter, scratch *table) *knapsack {
	k := &knapsack{meter: m, table: scratch}
	for i, n := range want {
		if n > 0 && values[i] > 0 {
			k.items = append(k.items, good{i, t.sizes[i], values[i], n, float64(values[i]) / float64(t.sizes[i])})
		}
	}
	slices.SortFunc(k.items, func(a, b good) int {
		return cmp.Or(cmp.Compare(b.rate, a.rate), cmp.Compare(a.piece, b.piece))
	})
	return k
}

// filling is a load with its value. Most is a proven bound on the value of any
// load: Value itself, or the threshold below which nobody looked.
type filling struct {
	most  int
	finds [][]int // loads worth more than the threshold, the best last: counts along knapsack.items
	exact bool    // most holds; false: the search was cut short
}

const (
	// largeTable is how many cells a table by length may have. The depth-first
	// search always goes first: it is quick where few pieces fit a bar.
	largeTable = 60_000_000
	// depthShare of the table's cells is how many steps the depth-first search
	// may take before the table is made; once it has found a load it stops after
	// eagerSteps.
	depthShare = 4
	eagerSteps = 20_000
	// mostFinds is how many loads one search hands over.
	mostFinds = 3
)

// fill looks for the most valuable load of a bar that is worth more than over.
func (k *knapsack) fill(size, over int) filling {
	cells := k.cells(size)
	steps := cells / depthShare
	if cells > largeTable {
		steps = largeTable
	}
	f := k.byDepth(size, over, steps+eagerSteps, noPlan)
	if f.exact || len(f.finds) > 0 || cells > largeTable {
		return f
	}
	return k.byTable(size, over)
}

func (k *knapsack) cells(size int) int {
	rows := 0
	for _, g := range k.items {
		for n := min(g.most, size/g.size); n > 0; n /= 2 {
			rows++
		}
	}
	return rows * (size + 1)
}

// depth is a depth-first search in the order of value per size.
type depth struct {
	k        *knapsack
	counts   []int
	best     int // value of the best load so far
	finds    [][]int
	steps    int // left
	all      int // at first
	eager    int // how many to take once there is a find
	enough   int // where to stop
	cut      bool
	full     int   // a value that cannot be passed: where it is known
	smallest []int // of the sizes from an item on
}

// byDepth is exact unless it runs out of steps.
func (k *knapsack) byDepth(size, over, steps, full int) filling {
	d := &depth{k: k, counts: make([]int, len(k.items)), steps: steps, all: steps, best: over, full: full, eager: eagerSteps}
	d.smallest = make([]int, len(k.items)+1)
	d.smallest[len(k.items)] = size + 1
	for i := len(k.items) - 1; i >= 0; i-- {
		d.smallest[i] = min(d.smallest[i+1], k.items[i].size)
	}
	d.search(0, size, 0)
	return filling{most: d.best, finds: d.finds, exact: k.meter.spend(steps-d.steps) && !d.cut}
}

// safely widens a bound computed with fractions by far more than its rounding.
const safely = 1 + 1e-12

// search fills the room left with items from i on.
func (d *depth) search(i, room, value int) {
	for ; i < len(d.k.items) && d.k.items[i].size > room; i++ {
		d.steps--
	}
	if d.steps -= 8; d.steps <= d.enough {
		d.cut = true
		return
	}
	if value > d.best {
		d.best, d.finds = value, append(d.finds, slices.Clone(d.counts))
		d.finds = d.finds[max(0, len(d.finds)-mostFinds):]
		d.enough = d.all - d.eager
	}
	if room < d.smallest[i] || d.best >= d.full {
		return
	}
	g := d.k.items[i]
	n := min(g.most, room/g.size)
	for ; n >= 0; n-- {
		if bound := float64(value+n*g.value) + d.rest(i+1, room-n*g.size); bound*safely < float64(d.best+1) {
			if d.nextWorse(i, g) {
				break
			}
			continue
		}
		d.counts[i] = n
		d.search(i+1, room-n*g.size, value+n*g.value)
	}
	d.counts[i] = 0
}

// nextWorse reports that fewer of an item can only lower the bound: the items
// after it are worth no more for their size.
func (d *depth) nextWorse(i int, g good) bool {
	return i+1 >= len(d.k.items) || d.k.items[i+1].rate <= g.rate
}

// rest bounds what the items from i on can add in the room left: the first that
// do not fit whole are taken in part (Dantzig 1957).
func (d *depth) rest(i, room int) float64 {
	sum := 0.0
	for ; i < len(d.k.items) && room > 0; i++ {
		g := d.k.items[i]
		d.steps--
		if full := g.most * g.size; full <= room {
			sum += float64(g.most * g.value)
			room -= full
			continue
		}
		return sum + float64(float64(room)*g.rate)
	}
	return sum
}
