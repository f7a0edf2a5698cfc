package find

import (
	"math"
	"sync"
)

// search is the working room of one shortest path. Its tables are used again
// from search to search: what they hold counts only when its stamp is this
// search's.
type search struct {
	*ground         // what it stands on: its own, or that of the search it serves
	own     ground  // room for one
	back    int     // 1 when it sets out from the end and stands on another's ground
	vias    int     // via indices a state may have: one more than the run's via points
	pass    uint32  // the stamp of heads
	heads   []head  // of each state
	labels  []label // as they were opened
	open    frontier
	seq     int32
	bound   int64 // only routes that cost less are looked for
	firsts  []odds
	goals   []odds // where the end's own bend may stand, when it faces along no axis
	homes   []home
	end     node
	toEnd   [3]homeward
	rest    []int64 // least price from each via point on
	limited bool    // lengths and bends are bounded: labels are kept that are dearer but shorter
	cut     bool    // it gave up with states still to look at
	blame   []int   // of each wall, while the search looks from the other end
	rooms   []wall  // room for those of other runs, and for the run of each
	of      []int
}

// ground is a lattice with what has been found out of the walls on it. It is the
// same from whichever end one looks.
type ground struct {
	size    [3]int
	stride  [3]int    // from a crossing to the next along each axis
	across  [3][3]int // of the lines along each axis, from one to the next along each other
	stamp   uint32
	looks   uint32   // how often it was looked over from the other end
	corners []corner // of each crossing
	lines   [3][]line
	spans   []span
	axes    [3]ruler
	jump    [6][mostLines]int8 // the first crossing at which a tube may bend again after a bend; −1: none
	near    nearBits
	ends    [2]endRoom
}

// endRoom is what is known of the walls before an end.
type endRoom struct {
	stamp  uint32
	far    float64 // how far its first straight may reach, mm
	by     *wall   // what stops it there
	odds   []odds  // where its own bend may stand, when it faces along no axis
	blamed []*wall // what kept its bend from other places
}

// homeward is what it costs from each line of an axis to the end's, and on which
// side of it that lies, as fewest counts sides.
type homeward struct {
	cost [mostLines]int64
	side [mostLines]uint8
}

// sameLength is one step of a label's length, mm.
const sameLength = 1e-6

// head leads to the labels of a state: the latest, and what it costs to come to.
type head struct {
	cost  int64
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
	crossing     int32
	parent       int32 // label before; below 0: −1 − its place in firsts
	next         int32 // another label of the state; −1: none
	at           [3]uint8
	heading      uint8
	via          uint8
	bends        uint8
}

// corner remembers which of the twelve bends at a crossing are clear, and which
// refusals have been laid to a wall: by the search from the start and by that from
// the end, for each counts its own.
type corner struct {
	stamp, looks uint32 // of the ground; of the last look back over it
	known, clear uint16
	blamed       [2]uint16
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
var searches = sync.Pool{New: func() any { return newSearch() }}

func newSearch() *search {
	s := new(search)
	s.ground = &s.own
	return s
}

// prepare sizes the working room for the lattice.
func (q *quest) prepare() {
	if q.effort == nil { // a search on its own
		q.effort = &effort{}
	}
	s := q.search
	s.ground, s.back = &s.own, 0
	s.size = [3]int{len(q.grid[0]), len(q.grid[1]), len(q.grid[2])}
	s.stride = [3]int{s.size[1] * s.size[2], s.size[2], 1}
	s.ground.wipe()
	for axis := range s.axes {
		q.rule(axis)
	}
	s.near.build(q)
	q.openTolls()
	q.setOut()
}

// prepareBack makes a search ready that looks from the other end over the ground
// of another.
func (q *quest) prepareBack(g *ground) {
	g.looks++
	q.search.ground, q.search.back = g, 1
	q.setOut()
}

// setOut makes ready what hangs on the end that is looked for.
func (q *quest) setOut() {
	s := q.search
	s.vias = len(q.via) + 1
	s.heads = sized(s.heads, s.size[0]*s.size[1]*s.size[2]*6*s.vias)
	s.again()
	q.priceBends()
	var found bool
	if s.end, found = q.grid.find(q.end.ray.at); found {
		s.faceHome()
	}
	q.sumVias()
}

// wipe makes all tables empty and large enough.
func (g *ground) wipe() {
	if g.stamp++; g.stamp == math.MaxUint32 {
		*g = ground{size: g.size, stride: g.stride, stamp: 1}
	}
	x, y, z := g.size[0], g.size[1], g.size[2]
	g.across = [3][3]int{{0, z, 1}, {1, 0, x}, {y, 1, 0}}
	g.corners = sized(g.corners, g.size[0]*g.size[1]*g.size[2])
	for axis := range g.lines {
		g.lines[axis] = sized(g.lines[axis], g.size[(axis+1)%3]*g.size[(axis+2)%3])
	}
	g.spans = g.spans[:0]
}

// again empties what a search has found out and keeps what it knows of the walls.
func (s *search) again() {
	if s.pass++; s.pass == math.MaxUint32 {
		clear(s.heads[:cap(s.heads)])
		s.pass = 1
	}
	s.labels, s.homes = s.labels[:0], s.homes[:0]
	s.open.clear()
	s.firsts, s.goals = s.firsts[:0], s.goals[:0]
}

// sized gives a table of a length, the old one where it is large enough.
func sized[T any](table []T, length int) []T {
	if cap(table) < length {
		return make([]T, length, length+length/2)
	}
	return table[:length]
}

// crossing numbers a crossing.
func (s *search) crossing(n node) int { return (n[0]*s.size[1]+n[1])*s.size[2] + n[2] }

// state numbers a crossing, the heading into it and the via points behind it.
func (s *search) state(n node, heading, via int) int32 {
	return int32((s.crossing(n)*6+heading)*s.vias + via)
}

// labelAt is a label at a crossing, with nothing behind it.
func (s *search) labelAt(n node) label {
	return label{crossing: int32(s.crossing(n)), at: [3]uint8{uint8(n[0]), uint8(n[1]), uint8(n[2])}}
}

// node is where a label stands.
func (l *label) node() node { return node{int(l.at[0]), int(l.at[1]), int(l.at[2])} }
