package find

import (
	"math"

	"gonum.org/v1/gonum/graph"
	"gonum.org/v1/gonum/graph/iterator"
	"gonum.org/v1/gonum/graph/path"
	"gonum.org/v1/gonum/graph/simple"

	"tubewright/bends"
	"tubewright/route/clear"
)

// rival is the square search done plainly: every state and every whole straight
// of the lattice as they are, each straight and bend measured against every
// solid by package clear, lengths carried along as part of the state, and
// gonum's Dijkstra over all of it.
type rival struct {
	*quest
	states []rivalState
	known  map[rivalState]int64
	weight map[[2]int64]float64
	freed  map[stretch]bool
	turned map[[5]int]bool // by crossing and headings
	firsts []odds          // places of the ends' own bends
	goals  []odds
	counts bool // lengths and bends
}

// rivalState is a corner and the heading out of it, what the route has passed,
// and, where a bar bounds it, how long and how often bent it is so far.
type rivalState struct {
	kind   rivalKind
	n      node
	out    int
	odd    int // which of the start's own bends
	via    int
	bends  int
	length int64 // to the corner, in hundredths of a micron
}

type rivalKind int

const (
	atStart rivalKind = iota
	atOdd
	atCorner
	atEnd
)

// stretch is a straight from a place to another.
type stretch struct{ from, to vec }

func newRival(q *quest) *rival {
	r := &rival{quest: q, known: map[rivalState]int64{}, weight: map[[2]int64]float64{}, freed: map[stretch]bool{}, turned: map[[5]int]bool{}}
	r.firsts, r.goals = oddsAt(q, &q.start, fromStart), oddsAt(q, &q.end, fromEnd)
	for i := range r.goals {
		r.goals[i].heading ^= 1
	}
	r.counts = q.most > 0
	r.number(rivalState{kind: atStart})
	r.number(rivalState{kind: atEnd})
	return r
}

func (r *rival) number(s rivalState) int64 {
	id, ok := r.known[s]
	if !ok {
		id = int64(len(r.states))
		r.known[s] = id
		r.states = append(r.states, s)
	}
	return id
}

// From lists the states that one straight leads to.
func (r *rival) From(id int64) graph.Nodes {
	var nodes []graph.Node
	r.steps(r.states[id], func(to rivalState, cost float64) {
		n := r.number(to)
		if was, ok := r.weight[[2]int64{id, n}]; !ok || cost < was {
			r.weight[[2]int64{id, n}] = cost
		}
		nodes = append(nodes, simple.Node(n))
	})
	return iterator.NewOrderedNodes(nodes)
}

func (r *rival) Edge(u, v int64) graph.Edge { return simple.Edge{F: simple.Node(u), T: simple.Node(v)} }

func (r *rival) Weight(u, v int64) (float64, bool) {
	w, ok := r.weight[[2]int64{u, v}]
	return w, ok
}

// cost is the least cost from the start to the end; infinite when there is no way.
func (r *rival) cost() float64 {
	_, cost := path.DijkstraFromTo(simple.Node(0), simple.Node(1), r)
	return cost
}

type yield func(to rivalState, cost float64)

// steps gives every step from a state.
func (r *rival) steps(s rivalState, give yield) {
	switch {
	case s.kind == atEnd:
	case s.kind == atCorner:
		at := r.grid.at(s.n)
		r.ahead(s, at, r.radius, r.between, nil, give)
		r.homeward(s, at, r.radius, nil, give)
	case s.kind == atOdd:
		o := r.firsts[s.odd]
		r.ahead(s, o.at, o.setback, r.between, nil, give)
		r.homeward(s, o.at, o.setback, nil, give)
	case r.start.axis >= 0:
		s.out = r.start.axis
		r.ahead(s, r.start.ray.at, 0, r.leastEnd, func(w *wall) float64 { return w.fromStart }, give)
	default:
		for i, o := range r.firsts {
			turn := degreesBetween(r.start.ray.dir, heading(o.heading))
			leg := r.start.ray.at.Sub(o.at).Len() - o.setback
			length := leg + bends.ArcLength(r.radius, turn) - o.setback
			to := rivalState{kind: atOdd, odd: i, out: o.heading, via: r.met(o.at, 0)}
			give(r.counted(to, 0, length, 1), r.weigh.Millimetre*leg+r.bendCost(turn))
		}
	}
}

// met counts the via point at a corner.
func (r *rival) met(p vec, via int) int {
	if via < len(r.via) && p.Sub(r.via[via]).Len() < 1e-5 {
		via++
	}
	return via
}

// counted adds to what a state has used up, where that is bounded.
func (r *rival) counted(to rivalState, before int64, length float64, bends int) rivalState {
	if r.counts {
		to.bends = bends
	}
	if r.most > 0 {
		to.length = before + int64(math.Round(length*1e5))
	}
	return to
}

// ahead tries every corner on the straight ahead, and every way on from it.
func (r *rival) ahead(s rivalState, at vec, setback, need float64, exempt func(*wall) float64, give yield) {
	axis := s.out / 2
	for i := range r.grid[axis] {
		corner := at
		corner[axis] = r.grid[axis][i]
		n, ok := r.grid.find(corner)
		leg, before := aheadOf(at, s.out, corner)
		run := leg - setback - r.radius
		if !ok || !before || run < need-1e-6 || !r.room.holds(corner) || !r.open(at, s.out, setback, setback+run, exempt) {
			continue
		}
		via := r.met(corner, r.alongVia(at, s.out, setback, setback+run, s.via))
		for out := range 6 {
			if out/2 == axis || !r.turn(n, s.out, out) {
				continue
			}
			to := r.counted(rivalState{kind: atCorner, n: n, out: out, via: via}, s.length, leg-r.radius*(2-math.Pi/2), s.bends+1)
			if r.fits(to) {
				give(to, r.weigh.Millimetre*run+r.squareCost)
			}
		}
	}
}

// fits reports whether a state keeps the limits.
func (r *rival) fits(s rivalState) bool {
	return s.bends <= mostBends && (r.most == 0 || float64(s.length)/1e5 <= r.most+r.radius)
}

// alongVia counts via points on a straight.
func (r *rival) alongVia(at vec, d int, from, to float64, via int) int {
	for via < len(r.via) {
		leg, ok := aheadOf(at, d, r.via[via])
		if !ok || leg < from-1e-6 || leg > to+1e-6 {
			break
		}
		via++
	}
	return via
}

// homeward tries the end.
func (r *rival) homeward(s rivalState, at vec, setback float64, exempt func(*wall) float64, give yield) {
	end := rivalState{kind: atEnd}
	if r.end.axis < 0 {
		for i := range r.goals {
			o := &r.goals[i]
			leg, ok := aheadOf(at, s.out, o.at)
			run := leg - setback - o.setback
			if !ok || s.out != o.heading || run < r.between-1e-6 || !r.open(at, s.out, setback, setback+run, exempt) ||
				r.met(o.at, r.alongVia(at, s.out, setback, setback+run, s.via)) < len(r.via) {
				continue
			}
			turn := degreesBetween(r.end.ray.dir, heading(o.heading).Mul(-1))
			last := r.end.ray.at.Sub(o.at).Len() - o.setback
			if used := r.counted(end, s.length, leg-o.setback+bends.ArcLength(r.radius, turn)+last, s.bends+1); r.ends(used) {
				give(end, r.weigh.Millimetre*(run+last)+r.bendCost(turn))
			}
		}
		return
	}
	leg, ok := aheadOf(at, s.out, r.end.ray.at)
	run := leg - setback
	back := func(w *wall) float64 { return w.fromEnd }
	if !ok || s.out != r.end.axis^1 || run < r.leastEnd-1e-6 || !r.open(r.end.ray.at, r.end.axis, 0, run, back) ||
		r.alongVia(at, s.out, setback, leg, s.via) < len(r.via) {
		return
	}
	if used := r.counted(end, s.length, leg, s.bends); r.ends(used) {
		give(end, r.weigh.Millimetre*run)
	}
}

func (r *rival) ends(s rivalState) bool {
	return s.bends <= mostBends && (r.most == 0 || float64(s.length)/1e5 <= r.most)
}

// open measures a straight against every wall, less what of it is exempt.
func (r *rival) open(at vec, d int, from, to float64, exempt func(*wall) float64) bool {
	ahead := heading(d)
	key := stretch{at.Add(ahead.Mul(from)), at.Add(ahead.Mul(to))}
	free, known := r.freed[key]
	if known && exempt == nil {
		return free
	}
	free = true
	for i := range r.walls {
		w := &r.walls[i]
		begin := from
		if exempt != nil {
			if begin = from + exempt(w); begin >= to {
				continue
			}
		}
		rod := clear.Rod{From: at.Add(ahead.Mul(begin)), To: at.Add(ahead.Mul(max(begin, to)))}
		if free = clear.Farther(rod, w.shape, w.keep-2*clear.ChordError); !free {
			break
		}
	}
	if exempt == nil {
		r.freed[key] = free
	}
	return free
}

// turn measures a bend against every wall; arcs are measured too short by up to
// clear.ChordError.
func (r *rival) turn(n node, in, out int) bool {
	key := [5]int{n[0], n[1], n[2], in, out}
	free, known := r.turned[key]
	if !known {
		free = true
		from := r.grid.at(n).Sub(heading(in).Mul(r.radius))
		arc := clear.Arc{Centre: from.Add(heading(out).Mul(r.radius)), U: heading(out).Mul(-1), V: heading(in), Bend: r.radius, Turn: 90}
		for i := range r.walls {
			if free = clear.Farther(arc, r.walls[i].shape, r.walls[i].keep-2*clear.ChordError); !free {
				break
			}
		}
		r.turned[key] = free
	}
	return free
}

// aheadOf is how far a point lies ahead in a heading; false when it is not on the line.
func aheadOf(from vec, d int, p vec) (float64, bool) {
	for i := range 3 {
		if i != d/2 && math.Abs(p[i]-from[i]) > sameLine {
			return 0, false
		}
	}
	run := (p[d/2] - from[d/2]) * sign(d)
	return run, run > 0
}

// oddsAt is where an end's own bend may stand; none of an end along an axis.
func oddsAt(q *quest, e *rayEnd, exempt func(*wall) float64) []odds {
	var r endRoom
	if e.axis < 0 {
		q.oddEnds(e, exempt, &r)
	}
	return r.odds
}
