package cutlist

import (
	"context"
	"errors"
	"slices"

	"tubewright/cutlist/nest"
)

// cutting is a job and what came of it.
type cutting struct {
	job    nest.Job
	result nest.Result
	uncut  []nest.Piece
	few    bool // it is proven that limits leave so many uncut
}

// cutFrom cuts pieces from a rack. Where its limits do not let all be cut,
// spares stay uncut before any piece a machine needs; among spares the longest
// first: in any plan that holds a longer one, a shorter could stand in its place.
func (l List) cutFrom(ctx context.Context, r rack, pieces []Piece) (cutting, error) {
	all, err := l.cutAll(ctx, r, pieces)
	needed, spares := apart(pieces)
	if err != nil || all.uncut == nil || len(spares) == 0 || len(needed) == 0 {
		return all, err
	}
	best, err := l.cutAll(ctx, r, needed)
	if err != nil {
		return best, err
	}
	needed = without(needed, best.uncut)
	proven, lastFew := best.uncut == nil || best.few, all.few
	drop, most := 0, len(spares) // without any spare it goes
	for drop < most {
		half := (drop + most) / 2
		c, err := l.cutAll(ctx, r, slices.Concat(needed, spares[half:]))
		if err != nil {
			return c, err
		}
		if c.uncut == nil {
			most, best = half, c
		} else {
			drop, lastFew = half+1, c.few
		}
	}
	best.few = proven && lastFew
	return best, nil
}

// without takes as many pieces of a length out as are uncut, the last ones first.
func without(pieces []Piece, uncut []nest.Piece) []Piece {
	drop := map[int]int{}
	for _, u := range uncut {
		drop[u.Length] = u.Count
	}
	var kept []Piece
	for _, p := range slices.Backward(pieces) {
		if drop[hundredths(p.Length)] > 0 {
			drop[hundredths(p.Length)]--
		} else {
			kept = append(kept, p)
		}
	}
	slices.Reverse(kept)
	return kept
}

// apart gives the pieces machines need, and the spares, longest first.
func apart(pieces []Piece) (needed, spares []Piece) {
	for _, p := range pieces {
		if p.Spare {
			spares = append(spares, p)
		} else {
			needed = append(needed, p)
		}
	}
	slices.SortStableFunc(spares, func(a, b Piece) int { return hundredths(b.Length) - hundredths(a.Length) })
	return needed, spares
}

// nestBudget of steps is about a second for each kind of tube: the list is made
// anew at each change of the plan.
const nestBudget = 1_000_000_000

func (l List) cutAll(ctx context.Context, r rack, pieces []Piece) (cutting, error) {
	c := cutting{job: l.job(pieces, r.stock, r.offcuts)}
	var err error
	c.result, err = nest.Solve(ctx, c.job, nest.Options{Budget: nestBudget})
	var few *nest.TooFewError
	if !errors.As(err, &few) {
		return c, err
	}
	c.uncut, c.few = few.Uncut, few.Proven
	return c, nil
}
