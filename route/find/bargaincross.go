package find

import (
	"context"
)

// cross searches a run for a way that may cross others at the price of doing so,
// cheaper in all than the one it has.
func (b *bargain) cross(ctx context.Context, i int) error {
	n, cost := b.cheapestOf(i)
	b.rows[i].chosen = n
	if b.blocker(i, n) < 0 || b.left <= 0 {
		return nil
	}
	ways, spent, err := b.askAcross(ctx, i, b.acrossOthers(i, cost))
	b.left -= spent + leastSpent
	if err != nil {
		return err
	}
	for _, w := range ways {
		b.takeAnew(i, w)
	}
	b.rows[i].chosen, _ = b.cheapestOf(i)
	return nil
}

// leastSpent is what a search counts besides its states.
const leastSpent = 50

// acrossOthers is what others have chosen, at the price of a run for each.
func (b *bargain) acrossOthers(i int, below int64) *across {
	a := &across{below: below, price: make([]int64, len(b.rows))}
	for _, j := range b.order {
		r := &b.rows[j]
		if j == i || r.chosen < 0 {
			continue
		}
		a.limbs, a.of = append(a.limbs, r.options[r.chosen]), append(a.of, j)
		if a.price[j] = b.price[i*len(b.rows)+j]; r.fixed {
			a.price[j] += costKey(mostPrice)
		}
	}
	return a
}

// askAcross searches a run across others, and gives how many states that took.
func (t *table) askAcross(ctx context.Context, i int, a *across) ([]Way, int, error) {
	r := &t.rows[i]
	run, swapped := canonical(t.plan.Runs[i])
	if r.homeless {
		if err := t.goHome(ctx, r, run); err != nil {
			return nil, 0, err
		}
	}
	if r.home == nil || r.home.unbent() {
		return nil, 0, nil
	}
	none := func(int) bool { return false }
	h := r.home.among(request{others: t.around(i, none), below: a.below, brief: true}, t.halt)
	ways, err := h.goAcross(ctx, a)
	if swapped {
		for k := range ways {
			ways[k] = turnedRound(ways[k])
		}
	}
	return ways, h.effort.spent, err
}

// takeAnew is take for a run that may keep too much in mind: what was found
// longest ago and is not listed, taken nor in the best choice so far makes room.
func (b *bargain) takeAnew(i int, w Way) {
	r := &b.rows[i]
	known := len(r.options)
	if b.take(i, w) >= 0 {
		b.news += len(r.options) - known
		return
	}
	b.news++
	for range r.options {
		if r.oldest = max(r.listed, (r.oldest+1)%len(r.options)); r.oldest != r.chosen && r.oldest != b.best[i] {
			r.options[r.oldest] = newOption(w)
			b.forgetOption(i, r.oldest)
			return
		}
	}
}

// forgetOption drops what is remembered of how one option of a run stands to
// those of others.
func (t *table) forgetOption(i, n int) {
	for j := range t.rows {
		pair := t.nearMemo[min(i, j)*len(t.rows)+max(i, j)]
		if pair == nil || i == j {
			continue
		}
		for k := range mostOptions {
			if i < j {
				pair[n*mostOptions+k] = 0
			} else {
				pair[k*mostOptions+n] = 0
			}
		}
	}
}
