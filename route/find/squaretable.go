package find

import "sync"

// search is the working room of one shortest path. Its tables are used again
// from search to search: what they hold counts only when its stamp is this
// search's.
type search struct {
	size   [3]int
	vias   int
	stamp  uint32
	states []met
	bends  []uint32 // memory of bendClear: 4·stamp + 1 clear, + 2 not
	open   frontier
	bound  int64 // only routes that cost less are looked for
	seq    int
	firsts []leave
	goals  []odds // where the end's own bend may stand, when it faces along no axis
}

// met is what is known of a state.
type met struct {
	cost   int64 // least known, in steps of sameCost
	parent int32 // state before; below 0: one of the first leaves
	stamp  uint32
}

// searches keeps working rooms for use again.
var searches = sync.Pool{New: func() any { return new(search) }}

// prepare sizes the working room for the lattice.
func (q *quest) prepare() {
	q.near.forget()
	if q.effort == nil { // a search on its own
		q.effort = &effort{}
	}
	s := q.search
	s.size = [3]int{len(q.grid[0]), len(q.grid[1]), len(q.grid[2])}
	s.vias = len(q.via) + 1
	nodes := s.size[0] * s.size[1] * s.size[2]
	if s.stamp++; s.stamp >= lastStamp || cap(s.states) < nodes*6*s.vias || cap(s.bends) < nodes*12 {
		s.states, s.bends, s.stamp = make([]met, nodes*6*s.vias), make([]uint32, nodes*12), 1
	}
	s.states, s.bends = s.states[:nodes*6*s.vias], s.bends[:nodes*12]
	s.open, s.firsts, s.seq, s.goals = s.open[:0], s.firsts[:0], 0, s.goals[:0]
}

// lastStamp is where stamps begin again: four times it still fits a uint32.
const lastStamp = 1 << 29

// known is the least cost of a state so far; false when it was not met.
func (s *search) known(state int32) (int64, bool) {
	m := &s.states[state]
	return m.cost, m.stamp == s.stamp
}

// state numbers a corner, the heading out of it and the via points behind it.
func (s *search) state(n node, heading, vias int) int32 {
	return int32((((n[0]*s.size[1]+n[1])*s.size[2]+n[2])*6+heading)*s.vias + vias)
}

// entry is one place in the queue; state −1 is a goal reached from before.
type entry struct {
	total  int64 // cost so far and least cost to come
	cost   int64
	seq    int
	state  int32
	before int32
	last   *odds // the end's own bend, for a goal
	goal   bool
}

type frontier []entry

func (f frontier) Len() int { return len(f) }

// Less orders by total, then by the most already spent, then by age: all in
// whole steps, so that no order hangs on a last bit.
func (f frontier) Less(i, j int) bool {
	a, b := &f[i], &f[j]
	if a.total != b.total {
		return a.total < b.total
	}
	if a.cost != b.cost {
		return a.cost > b.cost
	}
	return a.seq < b.seq
}
func (f frontier) Swap(i, j int) { f[i], f[j] = f[j], f[i] }
func (f *frontier) Push(x any)   { *f = append(*f, x.(entry)) }
func (f *frontier) Pop() any {
	old := *f
	x := old[len(old)-1]
	*f = old[:len(old)-1]
	return x
}
