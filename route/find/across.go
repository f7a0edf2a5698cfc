package find

import (
	"cmp"
	"context"
	"slices"
)

// across is what a run may cross at a price.
type across struct {
	limbs []*option // what the other runs have chosen
	of    []int     // their runs
	price []int64   // of each run of the plan, in steps of sameCost
	below int64     // only ways that cost less, their tolls included
}

// mostAcross is how many of the routes that one search found are formed: the
// cheapest, and what may be cheaper when tolls turn out not to be due.
const mostAcross = 3

// goAcross looks for square routes that may cross other runs at a price.
func (h *hunt) goAcross(ctx context.Context, a *across) ([]Way, error) {
	if len(h.starts) == 0 {
		return nil, nil
	}
	start, end := h.starts[0], h.ends[0]
	best := a.below - costKey(chainCost(h.plan.Weigh, start)+chainCost(h.plan.Weigh, end))
	var all []found
	for _, m := range h.frames(start, end) {
		q := h.quest(m, start, end)
		q.crossing(a)
		got, err := q.routes(ctx, best)
		q.tolls.close()
		q.free()
		if err != nil {
			return nil, err
		}
		for _, f := range got {
			for i := range f.corners {
				f.corners[i] = m.out(f.corners[i])
			}
			best = min(best, f.cost)
			all = append(all, f)
		}
	}
	slices.SortStableFunc(all, func(f, g found) int { return cmp.Compare(f.cost, g.cost) })
	return h.formed(start, end, all), nil
}

// formed makes the cheapest routes that are clear of the parts into ways.
func (h *hunt) formed(start, end *build, routes []found) (ways []Way) {
	for _, f := range routes {
		if len(ways) == mostAcross {
			break
		}
		if i, ok := h.drawUp(start, end, f.corners); ok && h.stands(&i) {
			ways = append(ways, h.way(i, i.test.formed))
		}
	}
	return ways
}

// roomsWork is what it counts to work out the rooms of one run.
const roomsWork = 16

// rooms adds the rooms of the other runs as a frame sees them, and the run of each.
func (a *across) rooms(rooms []wall, of []int, m axes, keep float64, stop *halt) ([]wall, []int) {
	for n, o := range a.limbs {
		if stop.did(roomsWork); stop.halted() {
			break
		}
		rooms = append(rooms, o.roomsIn(m, keep)...)
		for len(of) < len(rooms) {
			of = append(of, a.of[n])
		}
	}
	return rooms, of
}
