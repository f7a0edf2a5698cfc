package nest

import (
	"math"
	"slices"
	"sort"
)

// search looks for the cheapest plan of a task and a bound that proves it.
type search struct {
	task
	meter   *meter
	pool    pool
	ladder  ladder
	best    []load // nil: none yet
	limit   int    // cost of the best plan: only cheaper ones are wanted
	cutoff  int    // a bound above it cannot lead to a cheaper plan
	floor   int    // proven: no plan costs less
	reached int    // what tree proves
	filters []Dual // that tree needs
	tree    *Proof // nil: nothing, or by exhaustion
	told    func(floor, limit int)
}

// noPlan is a limit above every cost.
const noPlan = math.MaxInt / 4

// pick is a pattern cut some times, after others: states that branch share
// what they have in common.
type pick struct {
	pattern
	times  int
	before *pick
}

// state is a plan in the making.
type state struct {
	rest
	picks *pick // nil: nothing cut yet
	spent int
	near  []int // patterns of the pool to start the relaxation from
}

func newSearch(t task, m *meter) *search {
	s := &search{task: t, meter: m}
	dear := 0
	for _, b := range t.bars {
		dear = max(dear, b.cost)
	}
	s.ladder = newLadder(t, dear*t.pieces())
	s.setLimit(noPlan)
	return s
}

func (s *search) start() state {
	return state{rest: rest{slices.Clone(s.want), s.left(nil)}}
}

func (s *search) with(st state, p pattern, n int) state {
	st.rest = st.clone()
	st.picks = &pick{p, n, st.picks}
	s.meter.spend(10 * len(st.want))
	st.spent += n * s.bars[p.bar].cost
	st.cut(p, n)
	return st
}

// setLimit says that only plans cheaper than this are wanted.
func (s *search) setLimit(limit int) {
	s.limit = limit
	s.cutoff = sort.Search(limit, func(bound int) bool { return s.ladder.up(bound) >= limit }) - 1
}

// raise takes over a better proven bound.
func (s *search) raise(bound int) {
	if bound = min(s.ladder.up(bound), s.limit); bound > s.floor {
		s.floor = bound
		s.tell()
	}
}

func (s *search) tell() {
	if s.told != nil && s.limit < noPlan {
		s.told(s.floor, s.limit)
	}
}

func (s *search) closed() bool { return s.floor >= s.limit }

// offer takes a whole plan if it is cheaper than the best.
func (s *search) offer(plan []load) {
	if cost := s.cost(plan); cost < s.limit {
		s.best = plan
		s.setLimit(cost)
		s.tell()
	}
}

func (s *search) loads(picks *pick) []load {
	var plan []load
	for k := picks; k != nil; k = k.before {
		plan = append(plan, slices.Repeat([]load{k.load()}, k.times)...)
	}
	return plan
}

// load lists the pieces of a pattern one by one.
func (p pattern) load() load {
	l := load{bar: p.bar}
	for i, piece := range p.pieces {
		l.pieces = append(l.pieces, slices.Repeat([]int{int(piece)}, int(p.counts[i]))...)
	}
	return l
}

// of is the task of what is left.
func (t task) of(r rest) task {
	t.want, t.bars = r.want, slices.Clone(t.bars)
	for b := range t.bars {
		t.bars[b].most = r.left[b]
	}
	return t
}

// finish completes a plan by first and best fit and offers it.
func (s *search) finish(st state) {
	if st.done() {
		s.offer(s.loads(st.picks))
		return
	}
	tail, ok := s.greedyOf(st.rest)
	if !ok {
		return
	}
	if st.spent+s.cost(tail) < s.limit {
		s.offer(s.cheaper(append(s.loads(st.picks), tail...)))
	}
}

// greedyOf packs what is left, unless it is much: then it is only work.
func (s *search) greedyOf(r rest) ([]load, bool) {
	t := s.of(r)
	n := t.pieces()
	if n > mostGreedy || !s.meter.spend(stepsOfGreedy*n*n) {
		return nil, false
	}
	return t.greedy()
}

const (
	// mostGreedy pieces are packed greedily to complete a plan.
	mostGreedy = 120
	// stepsOfGreedy for each piece and open bar: the orders and the two fits.
	stepsOfGreedy = 8
)

// nearly keeps rounding of the relaxation's cost from counting as more.
const nearly = 1 - 1e-9

func (s *search) relax(st state) relaxed {
	return relax(s.task, st.rest, &s.pool, st.near, s.meter, func(bound int, cost float64) bool {
		return st.spent+bound > s.cutoff || s.ladder.up(st.spent+bound) >= s.ladder.up(st.spent+int(cost*nearly))
	})
}

// pack offers what simple rules find.
func (s *search) pack() {
	for _, rule := range []func() ([]load, bool){s.greedy, s.fullest} {
		if plan, ok := rule(); ok && !s.closed() {
			s.offer(plan)
		}
	}
}

// run closes the gap as far as the meter allows.
func (s *search) run() {
	s.quickBound()
	if s.pack(); s.closed() {
		return
	}
	if len(s.bars) == 1 && !s.bars[0].limited {
		s.branchAndPrice()
		return
	}
	st := s.start()
	root := s.relax(st)
	s.prove(root.bound, s.leaf(root.duals))
	st.near = root.near
	for other := 0; other <= mostOther && !s.closed() && !s.meter.over; other++ {
		s.dive(st, other)
	}
	if !s.closed() && !s.meter.over {
		s.exhaust(st)
	}
}

// mostOther is how many other choices dives try before all are tried in turn.
const mostOther = 4

// dive follows the relaxation down: patterns it cuts a whole number of times
// stay, then the one nearest to being cut once more is (a diving heuristic with
// limited discrepancy: Harvey & Ginsberg 1995; Sadykov et al. 2019). Other
// choices than the nearest are tried other times in all, near the top first.
func (s *search) dive(st state, other int) {
	for !st.done() {
		x := s.relax(st)
		st.near = x.near
		if st.spent+x.bound > s.cutoff || len(x.patterns) == 0 || s.meter.over {
			return
		}
		next, fixed := s.fixWhole(st, x)
		s.finish(next)
		if s.closed() {
			return
		}
		if fixed {
			st = next
			continue
		}
		order := nearest(x, s.pool)
		for k := 1; k <= other && k < len(order) && k <= 2; k++ {
			s.dive(s.with(st, s.pool.list[order[k]], 1), other-k)
			if s.closed() || s.meter.over {
				return
			}
		}
		st, other = s.with(st, s.pool.list[order[0]], 1), max(0, other-1)
	}
	s.finish(st)
}

// fixWhole cuts every pattern as many whole times as the relaxation does.
func (s *search) fixWhole(st state, x relaxed) (state, bool) {
	fixed := false
	for i, p := range x.patterns {
		n := int(x.times[i] + roundUp)
		for n > 0 && !st.takes(s.pool.list[p], n) {
			n--
		}
		if n > 0 {
			st, fixed = s.with(st, s.pool.list[p], n), true
		}
	}
	return st, fixed
}

// roundUp is how near below a whole number counts as that number: far more than
// what the nudged right sides move, far less than what a choice hangs on.
const roundUp = 1e-3

// nearest lists the patterns of a relaxation, the most used first; those that
// tie in the order in which they were found.
func nearest(x relaxed, p pool) []int {
	at := make([]int, len(x.patterns))
	for i := range at {
		at[i] = i
	}
	slices.SortStableFunc(at, func(a, b int) int {
		if d := x.times[b] - x.times[a]; math.Abs(d) > roundUp {
			return int(math.Copysign(1, d))
		}
		return x.patterns[a] - x.patterns[b]
	})
	for i, a := range at {
		at[i] = x.patterns[a]
	}
	return at
}
