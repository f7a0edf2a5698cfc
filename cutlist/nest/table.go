package nest

import "slices"

// orderTable finds the best plan of a small job from a table over all parts of the
// order (dynamic programming: Bellman 1957). A row is how many of each size are to be cut; its number
// counts them as digits, the shortest size lowest, each in its own base.
//
// First come the bars without limit. A row's longest piece lies on some bar, so
// a row is made from one that lacks a load with that piece. Then each bar there
// are few of is a stage of its own: a row has it empty, or with any one load.
// Every stage keeps its rows, so the plan can be read backwards.
type orderTable struct {
	task
	step  []int       // of a row for one piece of a size
	low   int         // sizes from here on are the digits taken as one block
	rows  int         // in all
	block [][]int     // by the row of a load's low digits: the rows with at least those
	free  []tableLoad // of bars without limit, the longest piece falling
	few   []stage     // the longest bars last
	costs [][]int     // of the free bars, then after each stage
}

// tableLoad is what is sawn from one bar, as counts along the sizes.
type tableLoad struct {
	bar, first int // kind of bar; the longest piece
	counts     []int
	step, used int // rows it takes off; length it fills
}

// stage is one bar of a kind of which there are few.
type stage struct {
	bar   int
	loads []tableLoad
}

const (
	// mostTableRows bounds the rows of a stage: a megabyte of costs.
	mostTableRows = 1 << 17
	// mostTableWork bounds the looks at rows, each about a nanosecond.
	mostTableWork = 40_000_000
	// lowRows is how many rows a block of the low digits holds at most.
	lowRows = 256
)

// newOrderTable sets up the table of a task; false: it would be too large.
func newOrderTable(t task) (*orderTable, bool) {
	a := &orderTable{task: t, rows: 1, step: make([]int, len(t.sizes)), low: len(t.sizes)}
	for i := len(t.sizes) - 1; i >= 0; i-- {
		a.step[i] = a.rows
		if a.rows *= t.want[i] + 1; a.rows > mostTableRows {
			return nil, false
		}
		if a.rows <= lowRows {
			a.low = i
		}
	}
	a.block = make([][]int, a.blockRows())
	return a, a.setStages()
}

func (a *orderTable) blockRows() int {
	if a.low == 0 {
		return a.rows
	}
	return a.step[a.low-1]
}

func (a *orderTable) setStages() bool {
	work := 0
	order := a.byLength()
	slices.Reverse(order)
	for _, b := range order {
		loads, ok := a.tableLoads(b)
		if !ok {
			return false
		}
		if !a.bars[b].limited {
			a.free = append(a.free, loads...)
			work += a.work(loads, true)
			continue
		}
		if work += a.bars[b].most * (a.rows + a.work(loads, false)); work > mostTableWork {
			return false
		}
		a.few = append(a.few, slices.Repeat([]stage{{b, loads}}, a.bars[b].most)...)
	}
	slices.SortStableFunc(a.free, func(l, m tableLoad) int { return m.first - l.first })
	return work <= mostTableWork
}

// work is how many rows hold each of the loads, with no longer piece where
// first is set.
func (a *orderTable) work(loads []tableLoad, first bool) int {
	sum := 0
	for _, l := range loads {
		n, from := 1, 0
		if first {
			from = l.first
		}
		for i := from; i < len(l.counts); i++ {
			n *= a.want[i] + 1 - l.counts[i]
		}
		sum += n
	}
	return sum
}

// tableLoads lists every load of a kind of bar without limit that no cheaper one
// of these holds, or every load of one with a limit. A load may leave room for
// pieces: those may be cut already. False: there are too many.
func (a *orderTable) tableLoads(b int) (list []tableLoad, ok bool) {
	least := 0
	for _, c := range a.bars {
		if !a.bars[b].limited && !c.limited && c.cost < a.bars[b].cost {
			least = max(least, c.size+1)
		}
	}
	counts := make([]int, len(a.sizes))
	var add func(i, step, used int)
	add = func(i, step, used int) {
		if len(list) >= mostLoads {
			return
		}
		if i == len(counts) {
			if used >= max(1, least) {
				first := slices.IndexFunc(counts, func(n int) bool { return n > 0 })
				list = append(list, tableLoad{b, first, slices.Clone(counts), step, used})
			}
			return
		}
		for n := 0; n <= a.want[i] && used <= a.bars[b].size; n++ {
			counts[i] = n
			add(i+1, step+n*a.step[i], used)
			used += a.sizes[i]
		}
		counts[i] = 0
	}
	add(0, 0, 0)
	return list, len(list) < mostLoads
}

// solve fills the table and reports the least cost; noPlan: not all can be cut.
func (a *orderTable) solve() int {
	costs := make([]int, a.rows)
	for s := 1; s < a.rows; s++ {
		costs[s] = noPlan
	}
	for _, l := range a.free {
		a.cheapen(costs, costs, l, l.first)
	}
	a.costs = [][]int{costs}
	for _, st := range a.few {
		a.costs = append(a.costs, a.after(a.costs[len(a.costs)-1], st))
	}
	return a.least()
}

func (a *orderTable) least() int { return a.costs[len(a.few)][a.rows-1] }

// after gives the costs of all rows with one more bar to cut from.
func (a *orderTable) after(costs []int, st stage) []int {
	next := slices.Clone(costs)
	for _, l := range st.loads {
		a.cheapen(next, costs, l, 0)
	}
	return next
}

// cheapen tries a load on every row that holds it and no piece longer than the
// size from, lowest rows first.
func (a *orderTable) cheapen(to, costs []int, l tableLoad, from int) {
	blocks := a.blocks(l, from)
	cost := a.bars[l.bar].cost
	var high func(i, base int)
	high = func(i, base int) {
		if i < a.low {
			for n := l.counts[i]; n <= a.want[i]; n++ {
				high(i+1, base+n*a.step[i])
			}
			return
		}
		for _, at := range blocks {
			at += base
			if c := costs[at-l.step] + cost; c < to[at] {
				to[at] = c
			}
		}
	}
	high(from, 0)
}

// blocks lists the rows of the low digits that hold a load's, lowest first; none
// with a piece longer than the size from.
func (a *orderTable) blocks(l tableLoad, from int) []int {
	if from > a.low {
		return a.digits(nil, l, from, 0)
	}
	low := l.step % len(a.block)
	if a.block[low] == nil {
		a.block[low] = a.digits(nil, l, a.low, 0)
	}
	return a.block[low]
}

// digits lists the rows with at least a load's counts of the sizes from i on,
// and none of others, lowest first.
func (a *orderTable) digits(list []int, l tableLoad, i, base int) []int {
	if i == len(l.counts) {
		return append(list, base)
	}
	for n := l.counts[i]; n <= a.want[i]; n++ {
		list = a.digits(list, l, i+1, base+n*a.step[i])
	}
	return list
}
