package find

import (
	"context"
	"math"
	"slices"

	"tubewright/bends"
	"tubewright/route"
)

// quest looks for square routes between two rays in one frame: straights along
// the frame's axes from lattice line to lattice line, right angles where they
// meet, and at an end that faces along no axis one odd bend. It is a shortest
// path over states (corner, heading out of it); one step is one whole straight,
// which must hold the setbacks at its ends and the straight the former needs
// between them, so whatever is found can be formed.
type quest struct {
	radius, between, leastEnd float64 // mm, of the tube
	weigh                     route.Weigh
	start, end                rayEnd
	via                       []vec
	walls                     []wall
	room                      room
	grid                      lattice
	squareCost                float64 // of a right angle besides its straights
	cornerKey                 int64   // price of a right angle besides its two legs, in steps of sameCost
	cornerSaves               int64   // what it saves of their length, in steps of sameLength
	most                      float64 // longest developed length a bar allows, mm; 0: open
	search                    *search
	effort                    *effort // of the whole run
	looked                    *looked // of the whole run
	frame                     axes
	keep                      float64 // the farthest from a wall that matters, mm
	halt                      *halt   // of the solve
	listing                   int64   // how many times the best cost a route for the list may have
	tolls                     *tolls  // of other runs that may be crossed; nil: none
}

// rayEnd is one end of a quest, in its frame.
type rayEnd struct {
	ray   ray
	axis  int     // heading of the way out; −1 when along no axis
	mouth float64 // how far the collar reaches, mm
}

// found is a route of a quest: its corners in the frame, and its cost without fittings.
type found struct {
	corners []vec
	cost    int64 // in steps of sameCost
	within  bool  // it keeps the limits of length and bends
}

const (
	// mostRounds is how often the lattice is refined by what stood in the way.
	mostRounds = 6
	// perRound is how many solids are lined up with in one round: those that
	// stopped the search most often.
	perRound = 4
	// enoughRounds is how many refinements in a row may fail to better a route.
	enoughRounds = 2
)

// routes searches, adds the lines of the solids that stood in the way, and
// searches again for something cheaper than the best known, until nothing new
// stands in the way or more lines do not help. The first search also gives
// dearer routes for the list, up to what is worth listing beside the best.
func (q *quest) routes(ctx context.Context, best int64) ([]found, error) {
	q.search = searches.Get().(*search)
	defer searches.Put(q.search)
	if !q.opens(&q.start, false) || !q.opens(&q.end, true) {
		return nil, nil
	}
	q.lines()
	q.search.bound = math.MaxInt64
	if best < math.MaxInt64 {
		q.search.bound = best * q.listing
	}
	first := q.search.bound
	var all []found
	idle := 0
	for round := range mostRounds {
		if err := ctx.Err(); err != nil {
			return nil, err // a search that is shut in at once looks at no state
		}
		got, err := q.shortest(ctx, q.search.bound == first)
		if err != nil {
			return nil, err
		}
		all = append(all, got...)
		if len(got) > 0 && got[0].within {
			best, idle = min(best, got[0].cost), 0
		} else if best < math.MaxInt64 {
			idle++
		}
		q.search.bound = best
		if idle == enoughRounds || q.givesUp(round+1, best, len(all)) || !q.refine() {
			break
		}
	}
	return all, nil
}

// givesUp reports whether after so many rounds more lines are not worth their
// while: a search for something better was cut off, or there is no route yet from
// chains of which many pairs are tried.
func (q *quest) givesUp(rounds int, best int64, routes int) bool {
	return q.effort.over() || q.search.cut && best < math.MaxInt64 || routes == 0 && rounds >= q.effort.rounds()
}

// opens reports whether the tube can leave an end at all: the least straight is
// clear, and the first corner after it lies in the case. An end that faces along
// no axis must have a place for its own bend.
func (q *quest) opens(e *rayEnd, end bool) bool {
	exempt := fromStart
	if end {
		exempt = fromEnd
	}
	if e.axis < 0 {
		var r endRoom
		q.oddEnds(e, exempt, &r)
		return len(r.odds) > 0
	}
	open, _ := q.clearRun(e.ray.at, e.axis, q.leastEnd, exempt)
	return open >= q.leastEnd-sameSpot && q.room.holds(e.ray.ahead(q.leastEnd+q.radius))
}

// refine lines up with the solids that stopped the search most; false when
// there is none that is new.
func (q *quest) refine() bool {
	var order []int
	for i := range q.walls {
		if q.walls[i].blocked > 0 && !q.walls[i].lined {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(i, j int) int { return q.walls[j].blocked - q.walls[i].blocked })
	for _, i := range order[:min(len(order), perRound)] {
		q.walls[i].lined = true
		q.lineUp(&q.walls[i])
	}
	return q.tolls != nil && q.tolls.refine(q) || len(order) > 0
}

// bendCost is what one bend of a turn costs besides the straights beside it.
func (q *quest) bendCost(turn float64) float64 {
	cost := q.weigh.Bend + q.weigh.Millimetre*bends.ArcLength(q.radius, turn)
	if !isTurn(turn, 45) && !isTurn(turn, 90) {
		cost += q.weigh.OddBend
	}
	return cost
}

// stands lists where on a ray that faces along no axis its bend may stand: as
// near as the turn to each heading allows, and where the ray crosses the
// lattice lines of the other end.
func (q *quest) stands(e *rayEnd) []float64 {
	var list []float64
	least := math.Inf(1)
	for d := range 6 {
		if turn := degreesBetween(e.ray.dir, heading(d)); turn < foldedTurn {
			s := q.leastEnd + bends.Setback(q.radius, turn)
			least = min(least, s)
			list = append(list, s)
		}
	}
	other := &q.end
	if e == &q.end {
		other = &q.start
	}
	for i := range 3 {
		if math.Abs(e.ray.dir[i]) > nearParallel {
			if s := (other.ray.at[i] - e.ray.at[i]) / e.ray.dir[i]; s >= least {
				list = append(list, s)
			}
		}
	}
	slices.Sort(list)
	return slices.CompactFunc(list, func(a, b float64) bool { return math.Abs(a-b) < sameLine })
}

// roomOf is the space for corners, in a frame.
func (h *hunt) roomOf(m axes) room {
	if h.plan.Case == (vec{}) {
		return room{}
	}
	half := h.tube.OD/2 + margin + questSpare
	lo, hi := vec{half, half, half}, h.plan.Case.Sub(vec{half, half, half})
	if !m.same(worldAxes()) {
		return room{lo: lo, hi: hi, axes: m, skew: true}
	}
	p, q := m.in(lo), m.in(hi)
	for i := range 3 {
		p[i], q[i] = min(p[i], q[i]), max(p[i], q[i])
	}
	return room{boxed: true, lo: p, hi: q}
}

// squares offers the square routes between two chains, in each frame that the
// ports suggest. Beyond a first look only routes are searched that cost less
// than the best known.
func (h *hunt) squares(ctx context.Context, start, end *build, best int64) error {
	if best < math.MaxInt64 {
		best -= costKey(chainCost(h.plan.Weigh, start) + chainCost(h.plan.Weigh, end))
	}
	for _, m := range h.frames(start, end) {
		got, err := h.inquire(ctx, m, start, end, best)
		if err != nil {
			return err
		}
		for _, f := range got {
			for i := range f.corners {
				f.corners[i] = m.out(f.corners[i])
			}
			h.offer(start, end, Miss{}, f.corners)
		}
		h.slantsOf(start, end, got)
	}
	return nil
}

// inquire searches square routes in one frame.
func (h *hunt) inquire(ctx context.Context, m axes, start, end *build, best int64) ([]found, error) {
	h.minded = h.minded || len(h.others) > 0
	q := h.quest(m, start, end)
	defer q.free()
	if h.looked == nil {
		return q.routes(ctx, best)
	}
	i := inquiry{asker: h.asker(), frame: m, start: start, end: end, best: best, before: h.effort}
	q.looked = &i.looked
	got, err := q.routes(ctx, best)
	for _, f := range got {
		f.corners = slices.Clone(f.corners)
		i.got = append(i.got, f)
	}
	i.after = h.effort
	h.looked.inquired(&i)
	return got, err
}

// asker is the hunt without what hangs on its surroundings.
func (h *hunt) asker() *hunt {
	bare := &hunt{run: h.run, tube: h.tube, a: h.a, b: h.b, request: h.request, longest: h.longest}
	bare.others = nil
	return bare
}

// quest makes a quest ready.
func (h *hunt) quest(m axes, start, end *build) *quest {
	q := &quest{
		radius: h.tube.Radius, between: h.tube.StraightBetween, leastEnd: h.tube.StraightEnd,
		weigh: h.plan.Weigh, effort: &h.effort, walls: h.wallsOf(m, start, end), room: h.roomOf(m),
		start: newRayEnd(m, start), end: newRayEnd(m, end), listing: muchDearer,
		halt: h.halt, frame: m, keep: h.tube.OD/2 + margin + questSpare + h.plan.Clear,
	}
	if h.below < anyCost {
		q.listing = 1
	}
	q.squareCost, q.most = q.bendCost(90), h.mostDeveloped(start, end)
	for _, v := range h.run.Via {
		q.via = append(q.via, m.in(v))
	}
	return q
}

func newRayEnd(m axes, b *build) rayEnd {
	dir := m.in(b.frame.Dir)
	axis := axisOf(dir)
	if axis >= 0 {
		dir = heading(axis)
	}
	return rayEnd{ray{m.in(b.frame.At), dir}, axis, b.mouth()}
}

// frames lists the frames to search in: the case's when a chain faces along
// it, and each chain's own.
func (h *hunt) frames(start, end *build) []axes {
	list := []axes{}
	world := worldAxes()
	if axisOf(start.frame.Dir) >= 0 || axisOf(end.frame.Dir) >= 0 {
		list = append(list, world)
	}
	for _, b := range []*build{start, end} {
		if m := portAxes(b.frame); !slices.ContainsFunc(list, m.same) {
			list = append(list, m)
		}
	}
	return list
}
