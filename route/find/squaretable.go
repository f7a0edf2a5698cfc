package find

import (
	"math"
	"sync"
)

// search is the working room of one shortest path. Its tables are used again
// from search to search: what they hold counts only when its stamp is this
// search's.
type search struct {
	size    [3]int
	stride  [3]int // from a crossing to the next along each axis
	vias    int    // via indices a state may have: one more than the run's via points
	stamp   uint32
	heads   []head   // of each state
	corners []corner // of each crossing
	lines   [3][]line
	spans   []span
	labels  []label
	open    frontier
	seq     int32
	bound   int64 // only routes that cost less are looked for
	firsts  []odds
	goals   []odds // where the end's own bend may stand, when it faces along no axis
	homes   []home
	axes    [3]ruler
	jump    [6][mostLines]int8 // the first crossing at which a tube may bend again after a bend; −1: none
	near    nearBits
	end     node
	rest    []int64 // least price from each via point on
	limited bool    // lengths and bends are bounded: labels are kept that are dearer but shorter
	back    float64 // how far the end's last straight may reach back, mm
	backBy  *wall   // what stops it there
	cut     bool    // it gave up with states still to look at
	blame   []int   // of each wall, while the search looks from the other end
}

// ruler is one axis of the lattice in whole steps, so that a price does not
// hang on how a straight is put together.
type ruler struct {
	price  [mostLines]int64 // of the way from 0 to each line, in steps of sameCost
	length [mostLines]int64 // the same in steps of sameLength
	inside uint64           // lines in the case
}

// sameLength is one step of a label's length, mm.
const sameLength = 1e-6

// head leads to the labels of a state.
type head struct {
	stamp uint32
	label int32
}

// label is one way to come to a state: to a crossing in a heading, with the
// straight so long that the tube may bend there. Where lengths are bounded a
// state keeps every label that none other betters in all of cost, length and
// bends.
type label struct {
	cost, length int64 // up to the crossing, every bend so far counted
	state        int32
	parent       int32 // label before; below 0: −1 − its place in firsts
	next         int32 // another label of the state; −1: none
	at           [3]uint8
	heading      uint8
	via          uint8
	bends        uint8
	done         bool // gone on from
}

// corner remembers which of the twelve bends at a crossing are clear.
type corner struct {
	stamp        uint32
	known, clear uint16
}

// home is a way found to the end.
type home struct {
	cost, length int64
	from         int32 // the last label, or a first, as in label.parent
	turns        bool  // there is a corner at the last label
	last         *odds // the end's own bend
	bends        uint8
}

// searches keeps working rooms for use again.
var searches = sync.Pool{New: func() any { return new(search) }}

// prepare sizes the working room for the lattice.
func (q *quest) prepare() {
	if q.effort == nil { // a search on its own
		q.effort = &effort{}
	}
	s := q.search
	s.size = [3]int{len(q.grid[0]), len(q.grid[1]), len(q.grid[2])}
	s.stride = [3]int{s.size[1] * s.size[2], s.size[2], 1}
	s.vias = len(q.via) + 1
	s.wipe()
	q.priceBends()
	for axis := range s.axes {
		q.rule(axis)
	}
	s.near.build(q)
	q.openTolls()
	s.end, _ = q.grid.find(q.end.ray.at)
	q.sumVias()
}

// wipe makes all tables empty and large enough.
func (s *search) wipe() {
	nodes := s.size[0] * s.size[1] * s.size[2]
	s.stamp++
	if s.stamp == math.MaxUint32 {
		*s = search{size: s.size, stride: s.stride, vias: s.vias, stamp: 1, bound: s.bound}
	}
	s.heads = sized(s.heads, nodes*6*s.vias)
	s.corners = sized(s.corners, nodes)
	for axis := range s.lines {
		s.lines[axis] = sized(s.lines[axis], s.size[(axis+1)%3]*s.size[(axis+2)%3])
	}
	s.spans, s.labels, s.open, s.homes = s.spans[:0], s.labels[:0], s.open[:0], s.homes[:0]
	s.firsts, s.goals = s.firsts[:0], s.goals[:0]
}

// sized gives a table of a length, the old one where it is large enough.
func sized[T any](table []T, length int) []T {
	if cap(table) < length {
		return make([]T, length, length+length/2)
	}
	return table[:length]
}

// again empties what a search has found out and keeps what it knows of the walls.
func (s *search) again() {
	stamp := s.stamp
	for i := range s.heads {
		if s.heads[i].stamp == stamp {
			s.heads[i].stamp = 0
		}
	}
	s.labels, s.open, s.homes = s.labels[:0], s.open[:0], s.homes[:0]
	s.firsts, s.goals = s.firsts[:0], s.goals[:0]
}

// rule works out one axis of the lattice.
func (q *quest) rule(axis int) {
	s := q.search
	r, grid := &s.axes[axis], q.grid[axis]
	r.inside = 0
	for i, x := range grid {
		r.price[i] = costKey(q.weigh.Millimetre * x)
		r.length[i] = int64(math.Round(x / sameLength))
		if !q.room.boxed || x >= q.room.lo[axis]-sameLine && x <= q.room.hi[axis]+sameLine {
			r.inside |= 1 << i
		}
	}
	least := 2*q.radius + q.between - bendSlack
	f, b := 0, len(grid)-1
	for i := range grid {
		for f < len(grid) && grid[f]-grid[i] < least {
			f++
		}
		s.jump[2*axis][i] = int8(f)
		if f == len(grid) {
			s.jump[2*axis][i] = -1
		}
	}
	for i := len(grid) - 1; i >= 0; i-- {
		for b >= 0 && grid[i]-grid[b] < least {
			b--
		}
		s.jump[2*axis+1][i] = int8(b)
	}
}

// crossing numbers a crossing.
func (s *search) crossing(n node) int { return (n[0]*s.size[1]+n[1])*s.size[2] + n[2] }

// state numbers a crossing, the heading into it and the via points behind it.
func (s *search) state(n node, heading, via int) int32 {
	return int32((s.crossing(n)*6+heading)*s.vias + via)
}

// node is where a label stands.
func (l *label) node() node { return node{int(l.at[0]), int(l.at[1]), int(l.at[2])} }
