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
	families []*family
	base     []*family // of closed forms, from a hunt among other surroundings
	names    map[naming]*family
	filed    int       // ideas that were kept when they were offered
	path     []vec     // room for the path of the idea in hand
	turns    []float64 // and for its turns
	starts   []*build  // the chains to bend from at both ends, the plain ones first
	ends     []*build
	// mixStarts and mixEnds are the chains that mixes stand behind, by how many
	// fittings they have besides the socket; empty until they are asked for.
	mixStarts, mixEnds [3][]*build
	effort             effort
	sweeps             map[sweep]*hit // of fixed fittings near the ports
	looked             *looked        // where it has looked; nil: nobody asks
	halt               *halt
	// measuring makes the guard find the worst a way lacks, not just whether it does.
	measuring bool
	doubt     *route.Doubt // of its former; nil: nobody has asked
	missed    []missed     // what was looked at and refused, best of each name
	minded    bool         // other runs may have made a difference
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

// bendSlack is the rounding that package bends lets pass on a straight, mm.
const bendSlack = 1e-6

// theStock is what is in the way of a blank that no bar holds.
const theStock = "the stock"

// tooLong is how much longer the blank is than the longest bar, mm.
func (h *hunt) tooLong(sh shape, start, end *build) float64 {
	if h.longest == 0 {
		return 0
	}
	aim := sh.developed - start.socket().SeatGap - end.socket().SeatGap
	return h.tube.Blank(aim, h.plan.Saw.Square, len(sh.turns) > 0) - h.longest
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
	if err := ctx.Err(); err != nil {
		return nil, err // what seems not to be clear may not have been looked at
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
func (h *hunt) firstClear(f *family, below int64) *idea {
	for n := range f.ideas[:min(len(f.ideas), mostTries)] {
		i := &f.ideas[n]
		if i.key >= below || h.halt.halted() {
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
	return formed, h.tubeHits(newFormedTube(&i, formed))
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
	h.halt.did(chanceWork)
	return w
}

// chanceWork is what it counts to work out a way's chance.
const chanceWork = 64

// laid lays a build through the plan, as the checks will.
func (h *hunt) laid(s *side, b *build) route.Laid {
	laid, err := h.plan.Lay(s.port, b.chain())
	if err != nil {
		panic("find: a chain of our own cannot be laid: " + err.Error())
	}
	return laid
}
