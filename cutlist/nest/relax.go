package nest

import "slices"

// relaxed is the linear relaxation of a rest: every pattern may be cut a
// fraction of times (Gilmore & Gomory 1961, 1963).
type relaxed struct {
	bound    int       // proven: no plan for the rest costs less
	patterns []int     // of the pool, in use
	times    []float64 // along patterns
	near     []int     // of the pool, in use or nearly worth it: where a smaller rest starts from
	duals    duals     // that prove it
}

// master runs the column generation of one rest.
type master struct {
	task
	r         rest
	pool      *pool
	meter     *meter
	unbounded bool // patterns may hold more of a size than is wanted
	dear      int  // cost of the dearest bar
	unit      int  // fixed point: one unit of cost in dual values
	row       []int
	items     []int // row → size
	limits    []int // row − len(items) → kind of bar
	lp        *program
	settled   bool      // no known column gains
	known     []*column // patterns of the pool that fit, and what rows may leave over
	result    relaxed
}

const (
	// missing is the price of a piece left uncut, in dearest bars. It only steers
	// the relaxation; no bound rests on it.
	missing = 8
	// coarseLoads is how much more than its bar a load must be worth to be taken in,
	// as a share of the dearest bar (a power of two): finer gains move no bound.
	coarseLoads = 30
	// nearRows patterns for each row are handed on to smaller rests.
	nearRows = 4
	// fewPivots is how often the program pivots before new loads are looked for.
	fewPivots = 15
)

// relax solves the relaxation. enough stops it early once the bound so far, or
// the bound and the relaxation's present cost, leave the caller no use for more.
// It starts from the patterns given.
func relax(t task, r rest, p *pool, from []int, m *meter, enough func(bound int, cost float64) bool) relaxed {
	g := master{task: t, r: r, pool: p, meter: m}
	g.setUp(from)
	return g.run(enough)
}

func (g *master) run(enough func(bound int, cost float64) bool) relaxed {
	for g.pricePool() {
		better, ok := g.priceNew()
		g.forget()
		if ok && !better && (!g.settled || g.dearer()) {
			continue
		}
		if !ok || !better {
			break
		}
		if enough(g.result.bound, g.cost()) {
			break
		}
	}
	g.read()
	return g.result
}

func (g *master) setUp(from []int) {
	for _, b := range g.bars {
		g.dear = max(g.dear, b.cost)
	}
	g.dear = max(g.dear, 1)
	g.result.duals = newDuals(g.task)
	g.unit = g.result.duals.unit
	g.row = make([]int, len(g.sizes))
	var right []float64
	for i, n := range g.r.want {
		if n > 0 {
			g.row[i] = len(g.items)
			g.items = append(g.items, i)
			right = append(right, float64(n)*(1+float64(nudge*(0.5+float64((len(g.items)*2654435761)%1024)/1024))))
		}
	}
	for b, kind := range g.bars {
		if kind.limited && g.r.left[b] > 0 {
			g.limits = append(g.limits, b)
			right = append(right, float64(g.r.left[b]))
		}
	}
	g.lp = &program{gain: gain}
	g.lp.widen(len(right))
	for row, c := range g.startBasis() {
		g.lp.addRow(right[row], c)
	}
	g.setKnown(from)
}

func (g *master) setKnown(from []int) {
	for row := range g.lp.rows {
		val := -1.0 // more of a size than wanted
		if row >= len(g.items) {
			val = 1 // bars not used
		}
		g.known = append(g.known, &column{row: []int32{int32(row)}, val: []float64{val}, pattern: -1})
	}
	for _, i := range from {
		if g.usable(g.pool.list[i]) {
			g.known = append(g.known, g.column(i))
		}
	}
}

// cost is what the relaxation costs at present, in costs of the task; without
// an end while it is not settled or leaves pieces out.
func (g *master) cost() float64 {
	if !g.settled || slices.ContainsFunc(g.lp.basis, isMissing) {
		return noPlan
	}
	return g.lp.total() * float64(g.dear)
}

func isMissing(c *column) bool { return c.pattern < 0 && c.cost > 0 }

// startBasis takes every size as missing, at little more than its share of the
// material at first: so the values start near where they end, and only what is
// worth more pulls them away (du Merle et al. 1999, stabilised column
// generation). dearer raises the price later.
func (g *master) startBasis() []*column {
	var start []*column
	for row, i := range g.items {
		share := float64(missing)
		for b, kind := range g.bars {
			if g.r.left[b] > 0 && kind.cost > 0 && kind.size >= g.sizes[i] {
				share = min(share, g.cost01(b)*float64(g.sizes[i])/float64(kind.size))
			}
		}
		start = append(start, &column{cost: min(missing, share*aboveShare), row: []int32{int32(row)}, val: []float64{1}, pattern: -1})
	}
	for k := range g.limits {
		start = append(start, &column{row: []int32{int32(len(g.items) + k)}, val: []float64{1}, pattern: -1})
	}
	return start
}

// dearer raises the price of missing pieces that the relaxation still uses, and
// reports whether there are any.
func (g *master) dearer() bool {
	some := false
	for _, c := range g.lp.basis {
		if isMissing(c) && c.cost < missing {
			c.cost = min(missing, 4*c.cost)
			some = true
		}
	}
	g.lp.refresh()
	return some
}

func (g *master) cost01(b int) float64 { return float64(g.bars[b].cost) / float64(g.dear) }

// column writes a pattern of the pool as a column.
func (g *master) column(index int) *column {
	p := g.pool.list[index]
	c := &column{cost: g.cost01(p.bar), pattern: index}
	for k, piece := range p.pieces {
		c.row = append(c.row, int32(g.row[piece]))
		c.val = append(c.val, float64(p.counts[k]))
	}
	if at := slices.Index(g.limits, p.bar); at >= 0 {
		c.row, c.val = append(c.row, int32(len(g.items)+at)), append(c.val, 1)
	}
	return c
}

// usable reports whether a pattern of the pool fits the rest.
func (g *master) usable(p pattern) bool {
	if g.r.left[p.bar] < 1 {
		return false
	}
	for k, piece := range p.pieces {
		if g.r.want[piece] == 0 || !g.unbounded && int(p.counts[k]) > g.r.want[piece] {
			return false
		}
	}
	return true
}

// read takes the fractions from the basis.
func (g *master) read() {
	for i, c := range g.lp.basis {
		if v := g.lp.value[i]; v > 10*nudge && c.pattern >= 0 {
			g.result.patterns, g.result.times = append(g.result.patterns, c.pattern), append(g.result.times, v)
		}
	}
	for _, c := range g.known {
		if c.pattern >= 0 && len(g.result.near) < nearRows*g.lp.rows && g.lp.reduced(c) < nearlyWorth {
			g.result.near = append(g.result.near, c.pattern)
		}
	}
}
