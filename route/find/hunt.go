package find

import (
	"cmp"
	"context"
	"math"
	"slices"

	"tubewright/bends"
	"tubewright/route"
)

// hunt looks for ways to make one run.
type hunt struct {
	*scene
	run  route.Run
	tube route.Tube
	a, b *side // its From and To ends
	request
	longest  float64 // bar to cut from, mm; 0: open
	families []family
	base     []family // of closed forms, from a hunt among other surroundings
	starts   []*build // the chains to bend from at both ends, the plain ones first
	ends     []*build
	// mixStarts and mixEnds are the chains that mixes stand behind, by how many
	// fittings they have besides the socket; empty until they are asked for.
	mixStarts, mixEnds [3][]*build
	effort             effort
	looked             *looked // where it has looked; nil: nobody asks
	halt               halt
	// measuring makes the guard find the worst a way lacks, not just whether it does.
	measuring bool
	doubt     *route.Doubt // of its former; nil: nobody has asked
	missed    []missed     // what was looked at and refused, best of each name
}

// family is one idea's variants: all that bear one name.
type family struct {
	name   string
	ideas  []idea
	sorted int // so many of them are in order
}

// missed is how near a named way came.
type missed struct {
	name string
	hit  hit // what is "" when it cannot be formed
}

// note remembers how near a way came; only the nearest of a name is kept.
func (h *hunt) note(name string, at hit) {
	i := slices.IndexFunc(h.missed, func(m missed) bool { return m.name == name })
	switch {
	case i < 0:
		h.missed = append(h.missed, missed{name, at})
	case nearer(missed{name, at}, h.missed[i]):
		h.missed[i].hit = at
	}
}

// offer takes an idea in when it can be formed.
func (h *hunt) offer(i idea) {
	if h.drawUp(&i) {
		h.file(i)
	}
}

// drawUp names and prices an idea; false when it cannot be formed.
func (h *hunt) drawUp(i *idea) bool {
	sh := h.shape(i)
	if len(sh.turns) > 0 && h.tube.Radius == 0 || len(sh.turns) > mostBends {
		return false
	}
	i.name = nameOf(sh, i.start, i.end)
	switch over := h.tooLong(sh, *i); {
	case sh.short > bendSlack:
		h.note(i.name, hit{short: sh.short})
		return false
	case over > sameSpot:
		h.note(i.name, hit{what: theStock, short: over})
		return false
	}
	i.cost = costOf(h.plan.Weigh, sh, i.start, i.end)
	i.key, i.bends, i.test = costKey(i.cost), len(sh.turns), new(tested)
	return true
}

// bendSlack is the rounding that package bends lets pass on a straight, mm.
const bendSlack = 1e-6

// theStock is what is in the way of a blank that no bar holds.
const theStock = "the stock"

// tooLong is how much longer the blank is than the longest bar, mm.
func (h *hunt) tooLong(sh shape, i idea) float64 {
	if h.longest == 0 {
		return 0
	}
	aim := sh.developed - i.start.socket().SeatGap - i.end.socket().SeatGap
	return h.tube.Blank(aim, h.plan.Saw.Square, len(sh.turns) > 0) - h.longest
}

// file puts an idea with others of its name.
func (h *hunt) file(i idea) {
	n := slices.IndexFunc(h.families, func(f family) bool { return f.name == i.name })
	if n < 0 {
		h.families = append(h.families, family{name: i.name})
		n = len(h.families) - 1
	}
	h.families[n].ideas = append(h.families[n].ideas, i)
}

// sort puts the ideas of each family, and the families, in order of cost.
func (h *hunt) sort() {
	for n := range h.families {
		if f := &h.families[n]; f.sorted < len(f.ideas) {
			slices.SortStableFunc(f.ideas, byCost)
			f.sorted = len(f.ideas)
		}
	}
	slices.SortStableFunc(h.families, func(f, g family) int { return byCost(f.ideas[0], g.ideas[0]) })
}

// inOrder gives the families in order, those of the base included.
func (h *hunt) inOrder() []family {
	h.sort()
	if len(h.base) == 0 {
		return h.families
	}
	list := slices.Clone(h.base)
	for _, f := range h.families {
		n := slices.IndexFunc(list, func(g family) bool { return g.name == f.name })
		if n < 0 {
			list = append(list, f)
			continue
		}
		list[n].ideas = slices.Concat(list[n].ideas, f.ideas)
		slices.SortStableFunc(list[n].ideas, byCost)
	}
	slices.SortStableFunc(list, func(f, g family) int { return byCost(f.ideas[0], g.ideas[0]) })
	return list
}

func byCost(a, b idea) int {
	return cmp.Or(
		cmp.Compare(a.key, b.key),
		cmp.Compare(len(a.corners), len(b.corners)),
		cmp.Compare(len(a.start.steps)+len(a.end.steps), len(b.start.steps)+len(b.end.steps)),
		cmp.Compare(a.name, b.name),
		cmp.Compare(a.start.rank, b.start.rank),
		cmp.Compare(a.end.rank, b.end.rank),
	)
}

const (
	// mostWays is how many ways a run lists: what fits one card in the window.
	mostWays = 8
	// mostBends is how many bends a tube may have: beyond it the errors of a hand
	// add up to more than sockets take.
	mostBends = 8
	// muchDearer is how many times the best way's cost another may have and still
	// be worth listing.
	muchDearer = 3
	// mostTries bounds how many variants of one name are checked for clearance.
	mostTries = 48
)

// ways checks the ideas in order of cost and gives the best clear one of each name.
func (h *hunt) ways(ctx context.Context) ([]Way, error) {
	var ways []Way
	for _, f := range h.inOrder() {
		if len(ways) == mostWays || f.ideas[0].key >= h.below || len(ways) > 0 && f.ideas[0].key > muchDearer*costKey(ways[0].Cost) {
			break
		}
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		if i := h.firstClear(f, h.below); i != nil {
			if w := h.way(*i, i.test.formed); !outdone(w, ways) {
				ways = append(ways, w)
			}
		}
	}
	slices.SortStableFunc(ways, compareWays)
	return ways, nil
}

// bestClear is the least cost, in steps of sameCost, of a clear way among the
// ideas so far; the largest number when there is none.
func (h *hunt) bestClear() int64 {
	best := int64(math.MaxInt64)
	for _, f := range h.inOrder() {
		if f.ideas[0].key >= best {
			break
		}
		if i := h.firstClear(f, best); i != nil {
			best = i.key
		}
	}
	return best
}

// firstClear gives the cheapest of a family that can be formed, is clear and
// costs less than a bound; nil when there is none.
func (h *hunt) firstClear(f family, below int64) *idea {
	for n := range f.ideas[:min(len(f.ideas), mostTries)] {
		i := &f.ideas[n]
		if i.key >= below {
			return nil
		}
		if h.stands(i) {
			return i
		}
	}
	return nil
}

// try forms an idea and gives what stands against it.
func (h *hunt) try(i idea) (bends.Formed, *hit) {
	if at := h.judge(h.a, i.start); at != nil {
		return bends.Formed{}, at
	}
	if at := h.judge(h.b, i.end); at != nil {
		return bends.Formed{}, at
	}
	formed, err := bends.Form(h.tube.Tube, bends.Path{Corners: i.path()})
	if err != nil {
		return formed, &hit{short: shortfall(err)}
	}
	return formed, h.tubeHits(i, formed)
}

// compareWays orders ways by cost, then fewer bends, fewer fittings, name.
func compareWays(a, b Way) int {
	return cmp.Or(
		cmp.Compare(costKey(a.Cost), costKey(b.Cost)),
		cmp.Compare(len(a.Formed.Bends), len(b.Formed.Bends)),
		cmp.Compare(a.Fittings(), b.Fittings()),
		cmp.Compare(a.Name, b.Name),
	)
}

// outdone reports whether a way that needs more fittings than sockets saves
// nothing over one already listed, all of which cost less: neither a bend nor a
// fitting.
func outdone(w Way, ways []Way) bool {
	return w.Fittings() > 2 && slices.ContainsFunc(ways, func(v Way) bool {
		return len(v.Formed.Bends) <= len(w.Formed.Bends) && v.Fittings() <= w.Fittings()
	})
}

// way makes an idea into a way.
func (h *hunt) way(i idea, f bends.Formed) Way {
	s, e := i.start.socket(), i.end.socket()
	w := Way{
		Run: h.run.Name, Name: i.name, Tube: h.tube, Formed: f, Miss: i.miss, Cost: i.cost,
		Start: h.laid(h.a, i.start), End: h.laid(h.b, i.end),
		Ends: bends.Ends{
			SeatGap: [2]float64{s.SeatGap, e.SeatGap},
			Play:    [2]float64{s.Insertion.Play(), e.Insertion.Play()},
		},
		Price: i.start.price + i.end.price,
	}
	w.Seals = len(w.Start.Bodies) + len(w.End.Bodies) + 2
	w.Cost += h.missCost(&w)
	return w
}

// laid lays a build through the plan, as the checks will.
func (h *hunt) laid(s *side, b *build) route.Laid {
	laid, err := h.plan.Lay(s.port, b.chain())
	if err != nil {
		panic("find: a chain of our own cannot be laid: " + err.Error())
	}
	return laid
}
