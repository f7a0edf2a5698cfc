package find

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"

	"tubewright/route"
)

// canonical gives the run from its first port by name to its last, and whether
// that turned it round: a run and the same run the other way round are then the
// same search, and get the same tube.
func canonical(r route.Run) (route.Run, bool) {
	from, to := r.From, r.To
	if c := strings.Compare(from.Part, to.Part); c < 0 || c == 0 && from.Port <= to.Port {
		return r, false
	}
	r.From, r.To, r.Start, r.End = to, from, r.End, r.Start
	r.Via = slices.Clone(r.Via)
	slices.Reverse(r.Via)
	return r, true
}

// turnedRound is a way seen from its other end.
func turnedRound(w Way) Way {
	w.Start, w.End = w.End, w.Start
	w.Formed = w.Formed.Reversed()
	w.Ends.SeatGap[0], w.Ends.SeatGap[1] = w.Ends.SeatGap[1], w.Ends.SeatGap[0]
	w.Ends.Play[0], w.Ends.Play[1] = w.Ends.Play[1], w.Ends.Play[0]
	w.Chance = 0 // it is told as seen from the first port, to the last bit
	return w
}

// newHunt makes a run ready for searching. The error is a *NoWayError.
func (sc *scene) newHunt(run route.Run, q request) (*hunt, error) {
	h := &hunt{scene: sc, run: run, request: q}
	h.effort.brief = q.brief
	var ok bool
	if h.tube, ok = sc.plan.TubeOf(run); !ok {
		return nil, h.cannot(fmt.Errorf("there is no tube %q", run.Tube))
	}
	var err error
	if h.a, err = sc.newSide(run.From, run.Start, h.tube); err != nil {
		return nil, h.cannot(err)
	}
	if h.b, err = sc.newSide(run.To, run.End, h.tube); err != nil {
		return nil, h.cannot(err)
	}
	h.longest = sc.longestStock(h.tube.Name)
	return h, nil
}

func (h *hunt) cannot(cause error) *NoWayError {
	return &NoWayError{Run: h.run.Name, Cause: cause, Fix: "Correct the plan there.", Units: h.plan.Units}
}

// waysOf searches one run. Drawn runs give their one way. An error other than
// the context's is a *NoWayError or, of a drawn run, what the bends refuse.
func (t *table) waysOf(ctx context.Context, i int, q request) ([]Way, error) {
	if _, ok := t.plan.Runs[i].AsMade(); ok {
		w, err := t.asMade(t.plan.Runs[i])
		if err != nil {
			return nil, err
		}
		return []Way{w}, nil
	}
	run, swapped := canonical(t.plan.Runs[i])
	ways, err := t.huntWays(ctx, &t.rows[i], run, q)
	if err != nil {
		return nil, err
	}
	if swapped {
		for i := range ways {
			ways[i] = turnedRound(ways[i])
		}
	}
	return ways, nil
}

// huntWays hunts for a run's ways. The hunt that lists them stays the run's home:
// brief searches build on what it thought of.
func (t *table) huntWays(ctx context.Context, r *row, run route.Run, q request) ([]Way, error) {
	if q.brief && r.homeless {
		if err := t.goHome(ctx, r, run); err != nil {
			return nil, err
		}
	}
	if q.brief && r.home != nil && !r.home.unbent() {
		return r.home.among(q, t.halt).lookAgain(ctx)
	}
	h, err := t.newHunt(run, q)
	if err != nil {
		return nil, err
	}
	h.halt = t.halt
	if r.homing && t.past != nil {
		r.looked = new(looked)
		h.looked = r.looked
	}
	ways, err := h.all(ctx)
	if err != nil && ctx.Err() == nil && h.stockShort() {
		h = h.fromAnyBar()
		ways, err = h.all(ctx)
	}
	if err == nil && r.homing && run.Way != route.Drawn {
		r.home, r.homeless, h.looked, h.halt = h, false, nil, nil
	}
	return ways, err
}

// goHome searches a run's list again for the sake of its home.
func (t *table) goHome(ctx context.Context, r *row, run route.Run) error {
	r.homeless, r.homing = false, true
	defer func() { r.homing = false }()
	_, err := t.huntWays(ctx, r, run, request{others: r.reserved, below: anyCost})
	if err != nil && ctx.Err() == nil && !byItself(err) { // it has ways among the parts alone, or none
		_, _ = t.huntWays(ctx, r, run, request{below: anyCost})
	}
	return ctx.Err()
}

// among is a hunt for the same run among others, with the ideas of this one.
func (h *hunt) among(q request, stop *halt) *hunt {
	next := &hunt{
		scene: h.scene, run: h.run, tube: h.tube, a: h.a, b: h.b, request: q, longest: h.longest, halt: stop,
		base: h.families, starts: h.starts, ends: h.ends,
	}
	next.effort.brief = q.brief
	return next
}

// lookAgain looks for square routes among the others, and gives the ways that
// are clear of them.
func (h *hunt) lookAgain(ctx context.Context) ([]Way, error) {
	if len(h.starts) > 0 {
		if err := h.squares(ctx, h.starts[0], h.ends[0], min(h.below, h.bestClear())); err != nil {
			return nil, err
		}
	}
	ways, err := h.ways(ctx)
	if len(ways) > 0 || err != nil || !h.request.harder || len(h.starts) == 0 {
		return ways, err
	}
	if err := h.harder(ctx); err != nil {
		return nil, err
	}
	if ways, err = h.ways(ctx); len(ways) > 0 || err != nil {
		return ways, err
	}
	return h.slidingBends(), ctx.Err()
}

// stockShort reports whether a way was refused only for the length of its blank.
func (h *hunt) stockShort() bool {
	return slices.ContainsFunc(h.missed, func(m missed) bool { return m.hit.what == theStock })
}

// fromAnyBar is a hunt as if bars of any length could be had: a tube whose
// stock the cut list then finds too short helps more than none.
func (h *hunt) fromAnyBar() *hunt {
	open := h.among(h.request, h.halt)
	open.longest, open.base, open.looked, open.minded = 0, nil, h.looked, h.minded
	return open
}

// all gives the ways of a hunt, as the run asks for them.
func (h *hunt) all(ctx context.Context) ([]Way, error) {
	if h.run.Way == route.Drawn {
		w, err := h.drawn()
		if err != nil {
			return nil, fmt.Errorf("run %q: %w", h.run.Name, err)
		}
		return []Way{w}, nil
	}
	ways, err := h.look(ctx)
	if err == nil && len(ways) == 0 {
		return nil, h.noWay()
	}
	return ways, err
}

// look offers every idea the run allows and gives the clear ones.
func (h *hunt) look(ctx context.Context) ([]Way, error) {
	if len(h.run.Via) == 0 && h.run.Way != route.Bent {
		h.straights()
	}
	if h.run.Way != route.Straight && h.tube.Radius > 0 || len(h.run.Via) > 0 {
		if err := h.bent(ctx); err != nil {
			return nil, err
		}
		h.moreStraights()
		if err := h.mixes(ctx); err != nil {
			return nil, err
		}
	}
	ways, err := h.ways(ctx)
	if len(ways) > 0 || err != nil || h.brief || h.run.Way == route.Straight || h.tube.Radius == 0 {
		return ways, err
	}
	h.harderStraights()
	if err := h.harder(ctx); err != nil {
		return nil, err
	}
	if ways, err = h.ways(ctx); len(ways) > 0 || err != nil {
		return ways, err
	}
	if err := h.mixedSquares(ctx); err != nil {
		return nil, err
	}
	if ways, err = h.ways(ctx); len(ways) > 0 || err != nil {
		return ways, err
	}
	return h.slidingBends(), ctx.Err()
}

// bent offers ways with bends: from the chains as they stand, then with one
// fitting more at either end.
func (h *hunt) bent(ctx context.Context) error {
	h.starts, h.ends = h.chains()
	h.bendPair(h.starts[0], h.ends[0], true)
	if err := h.squares(ctx, h.starts[0], h.ends[0], min(h.below, h.bestClear())); err != nil {
		return err
	}
	known := h.known()
	for i, start := range h.starts {
		for j, end := range h.ends {
			if i+j > 0 && start.extra()+end.extra() <= h.leastExtra(h.starts, h.ends)+1 {
				h.mixed(start, end, known)
			}
		}
		if err := ctx.Err(); err != nil {
			return err
		}
	}
	return nil
}

// known is the least cost of a clear way with at most so many bends from the
// plain chains.
func (h *hunt) known() (least [3]int64) {
	plain := h.leastExtra(h.starts, h.ends)
	for n := range least {
		least[n] = anyCost
	}
	for _, f := range h.inOrder() {
		n := f.ideas[0].bends
		if n >= len(least) || f.ideas[0].start.extra()+f.ideas[0].end.extra() > plain {
			continue
		}
		if i := h.firstClear(f, least[n]); i != nil {
			for m := n; m < len(least); m++ {
				least[m] = min(least[m], i.key)
			}
		}
	}
	return least
}

// mixedWork is what it counts to offer what geometry gives between two chains.
const mixedWork = 16

// mixed offers what geometry gives between chains with a fitting more. Left out
// is what costs more than a clear way without it that has no more bends: it
// would not be listed.
func (h *hunt) mixed(start, end *build, known [3]int64) {
	w := h.plan.Weigh
	least := w.Millimetre*end.frame.At.Sub(start.frame.At).Len() + chainCost(w, start) + chainCost(w, end)
	one, two := known[1] > costKey(least+w.Bend), known[2] > costKey(least+2*w.Bend)
	h.halt.did(mixedWork)
	switch via := len(h.run.Via) > 0; {
	case h.halt.halted():
	case !via && !one && !two || !h.stand(start, end):
	case via || one && two:
		h.bendPair(start, end, false)
	case one:
		h.oneBend(start, end)
	default:
		h.twoBends(start, end, false)
	}
}

// chains lists the chains to bend from at both ends, the plain ones first.
func (h *hunt) chains() (starts, ends []*build) {
	return h.a.builds(h.b.plain.ray()), h.b.builds(h.a.plain.ray())
}

// leastExtra is how many fittings besides sockets the plainest pair has.
func (h *hunt) leastExtra(starts, ends []*build) int { return starts[0].extra() + ends[0].extra() }

// bendPair offers what geometry gives in closed form.
func (h *hunt) bendPair(start, end *build, plain bool) {
	if len(h.run.Via) > 0 {
		h.viaWays(start, end)
		return
	}
	h.oneBend(start, end)
	h.twoBends(start, end, plain)
}

// harder searches square routes from pairs of chains with one fitting more than
// need be, the cheapest first: for runs that have no way otherwise. It looks no
// further than what can still beat the best found.
func (h *hunt) harder(ctx context.Context) error {
	best := h.below
	h.effort.goHarder()
	for _, p := range h.pairs() {
		if h.pairKey(p) >= best || h.effort.over() {
			break
		}
		if err := h.squares(ctx, p.start, p.end, best); err != nil {
			return err
		}
		best = min(best, h.bestClear())
	}
	return nil
}

// chainPair is a chain for each end.
type chainPair struct{ start, end *build }

// mostPairs bounds the pairs of chains that harder searches from.
const mostPairs = 40

// pairs lists the pairs of clear chains with one fitting more than the plainest,
// the cheapest first.
func (h *hunt) pairs() []chainPair {
	starts, ends := h.starts, h.ends
	most := h.leastExtra(starts, ends) + 1
	var list []chainPair
	for i, start := range starts {
		for j, end := range ends {
			if h.halt.halted() {
				return nil
			}
			if i+j > 0 && (i == 0 || j == 0) && start.extra()+end.extra() <= most && h.stand(start, end) {
				list = append(list, chainPair{start, end})
			}
		}
	}
	slices.SortStableFunc(list, func(p, q chainPair) int { return cmp.Compare(h.pairKey(p), h.pairKey(q)) })
	return list[:min(len(list), mostPairs)]
}

func (h *hunt) pairKey(p chainPair) int64 {
	return costKey(chainCost(h.plan.Weigh, p.start) + chainCost(h.plan.Weigh, p.end))
}

// stand reports whether both chains are clear of everything.
func (h *hunt) stand(start, end *build) bool {
	return h.judge(h.a, start) == nil && h.judge(h.b, end) == nil
}
