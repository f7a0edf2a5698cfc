package nest

import "slices"

// byTable solves a small task from a table, down to the longest remnant; false:
// it is too large for that.
func (s *search) byTable(keepOver int) bool {
	a, ok := newOrderTable(s.task)
	if !ok {
		return false
	}
	least := a.solve()
	if least >= noPlan {
		s.raise(noPlan)
		return true
	}
	s.pack()
	if s.limit > least {
		s.offer(a.plan(a.costs, a.few, a.rows-1))
	}
	s.best = a.bestPlan(s.best, keepOver)
	s.proveLeast()
	return true
}

// proveLeast looks for a bound that shows what the table knows: the quick ones,
// then the relaxation. Without one there is nothing to show but the table.
func (s *search) proveLeast() {
	if s.quickBound(); s.closed() {
		return
	}
	st := s.start()
	x := s.relax(st)
	if s.prove(x.bound, s.leaf(x.duals)); !s.closed() {
		s.tried()
	}
}

// bestPlan finds the plan with the longest remnant among those of least cost, of
// which one is given: one bar leaves it, holding what a plan without that bar
// leaves uncut.
func (a *orderTable) bestPlan(plan []load, keepOver int) []load {
	used := a.lengths()
	over := max(keepOver, a.longestRemnant(plan)+1)
	for _, b := range a.byLength() {
		over = a.lengthen(&plan, b, over, used)
	}
	return plan
}

// lengthen looks for a plan with a bar of a kind that leaves at least so much,
// and gives what a still longer remnant must leave.
func (a *orderTable) lengthen(plan *[]load, b, over int, used []int) int {
	rest, ok := a.fullest(a.costs[len(a.few)], b, over, used, true)
	if !ok {
		return over
	}
	costs, few := a.costs, a.few
	if a.bars[b].limited {
		costs, few = a.without(b)
		if rest, ok = a.fullest(costs[len(few)], b, over, used, false); !ok {
			return over
		}
	}
	*plan = append(a.plan(costs, few, rest), a.loadTo(b, rest))
	return a.remnant((*plan)[len(*plan)-1]) + 1
}

// fullest finds the row with the most cut elsewhere that leaves the rest of the
// order to one bar of a kind, at the least cost in all. Where perhaps is set the
// costs may be too low.
func (a *orderTable) fullest(costs []int, b, over int, used []int, perhaps bool) (row int, ok bool) {
	all, cost := used[a.rows-1], a.least()-a.bars[b].cost
	most := all - 1 // uncut elsewhere: at least one piece
	least := all - (a.bars[b].length-over)/a.unit
	if over > a.bars[b].length {
		return 0, false
	}
	for s, c := range costs {
		if (c == cost || perhaps && c < cost) && least <= used[s] && used[s] <= most {
			row, ok, least = s, true, used[s]+1
		}
	}
	return row, ok
}

// without gives the table with one bar less of a kind of which there are few.
func (a *orderTable) without(b int) ([][]int, []stage) {
	at := slices.IndexFunc(a.few, func(st stage) bool { return st.bar == b })
	few := slices.Delete(slices.Clone(a.few), at, at+1)
	costs := slices.Clone(a.costs[:at+1])
	for _, st := range few[at:] {
		costs = append(costs, a.after(costs[len(costs)-1], st))
	}
	return costs, few
}

// lengths gives the length of all pieces of each row.
func (a *orderTable) lengths() []int {
	used := make([]int, a.rows)
	for i, step := range slices.Backward(a.step) {
		for s := step; s < step*(a.want[i]+1); s++ {
			used[s] = used[s-step] + a.sizes[i]
		}
	}
	return used
}

// plan reads backwards which loads a row's cost is made of.
func (a *orderTable) plan(costs [][]int, few []stage, row int) (plan []load) {
	for i := len(few) - 1; i >= 0; i-- {
		if costs[i+1][row] == costs[i][row] {
			continue
		}
		l := a.made(costs[i+1][row], costs[i], few[i].loads, row)
		plan, row = append(plan, l.load()), row-l.step
	}
	for row > 0 {
		l := a.made(costs[0][row], costs[0], a.free, row)
		plan, row = append(plan, l.load()), row-l.step
	}
	return plan
}

// made finds the load by which a row came to its cost.
func (a *orderTable) made(cost int, costs []int, loads []tableLoad, row int) tableLoad {
	for _, l := range loads {
		if a.holds(row, l) && costs[row-l.step]+a.bars[l.bar].cost == cost {
			return l
		}
	}
	panic("nest: a row of the table came from nowhere")
}

func (a *orderTable) holds(row int, l tableLoad) bool {
	for i, n := range l.counts {
		if n > 0 && row/a.step[i]%(a.want[i]+1) < n {
			return false
		}
	}
	return true
}

// loadTo is what a row lacks of the whole order, on one bar.
func (a *orderTable) loadTo(b, row int) load {
	l := tableLoad{bar: b, counts: make([]int, len(a.sizes))}
	for i, step := range a.step {
		l.counts[i] = a.want[i] - row/step%(a.want[i]+1)
	}
	return l.load()
}

func (l tableLoad) load() load {
	out := load{bar: l.bar}
	for i, n := range l.counts {
		out.pieces = append(out.pieces, slices.Repeat([]int{i}, n)...)
	}
	return out
}
