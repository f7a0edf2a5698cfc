package nest_test

import (
	"encoding/binary"
	"errors"
	"fmt"
	"math/big"
	"slices"

	"tubewright/cutlist/nest"
)

// tryAgain takes the word of a search that tried everything only where that can
// be done again: from a table, or by a search with a dual in hand.
func tryAgain(job nest.Job, bound int, c *nest.Certificate) error {
	if len(c.Filters) == 1 {
		k := &certChecker{bars: certBars(job, c.PerCost), perCost: c.PerCost, reached: c.Reached, work: certWork}
		switch err := newRetry(k, certKinds(job)).all(&c.Filters[0]); {
		case err == nil:
			return k.climb(job, bound)
		case !errors.Is(err, errUntried):
			return err
		}
	}
	best, ok := bestByTable(job)
	if !ok {
		return errUntried
	}
	if best.cost < bound {
		return fmt.Errorf("bound %d, but there is a plan for %d", bound, best.cost)
	}
	return nil
}

// retry looks for a plan lighter than was reached. A load falls short by
//
//	Scale·weight + Over − Σ Prices ≥ 0
//
// and a bar with a limit that is left over by its Over. A plan's weight times
// Scale is what the dual proves and all it falls short by. So loads are put on the
// longest piece left, one bar after another, as long as no more is lost than a
// lighter plan may lose.
type retry struct {
	*certChecker
	kinds   []certKind
	d       *nest.Dual
	allowed []int // what a load of a bar may be worth
	left    []int // pieces, by kind
	bars    []int // left of those with a limit
	rates   []rate
	failed  map[string]int // what could be lost without success
}

func newRetry(k *certChecker, kinds []certKind) *retry {
	r := &retry{certChecker: k, kinds: kinds, failed: map[string]int{}, rates: make([]rate, len(kinds)+1)}
	for _, c := range kinds {
		r.left = append(r.left, c.count)
	}
	for _, b := range k.bars {
		r.bars = append(r.bars, b.most)
	}
	return r
}

func (r *retry) all(d *nest.Dual) error {
	sum, err := r.proves(d, r.kinds)
	if err != nil {
		return err
	}
	if err := r.holds(d, r.kinds, nil); err != nil {
		return err
	}
	gap := new(big.Int).Sub(product(r.reached-1, d.Scale), sum)
	if gap.Sign() < 0 {
		return nil // the dual alone proves it
	}
	if !gap.IsInt64() {
		return errTooLarge
	}
	r.d = d
	for b := range r.certChecker.bars {
		most, err := r.certChecker.allows(d, b)
		if err != nil {
			return err
		}
		r.allowed = append(r.allowed, most)
	}
	for i := len(r.kinds) - 1; i >= 0; i-- {
		r.rates[i] = rate{max(0, d.Prices[i]), r.kinds[i].room}
		if !r.rates[i].dearer(r.rates[i+1]) {
			r.rates[i] = r.rates[i+1]
		}
	}
	found := r.plan(int(gap.Int64()))
	switch {
	case r.work < 0:
		return errUntried
	case found:
		return fmt.Errorf("a plan weighs less than %d", r.reached)
	}
	return nil
}

// plan reports whether what is left can be cut and lose no more than so much.
func (r *retry) plan(lose int) bool {
	first := slices.IndexFunc(r.left, func(n int) bool { return n > 0 })
	if first < 0 {
		for b, n := range r.bars {
			lose -= n * r.d.Over[b]
		}
		return lose >= 0
	}
	key := r.key()
	if most, ok := r.failed[key]; ok && lose <= most {
		return false
	}
	for b, kind := range r.certChecker.bars {
		if kind.limited && r.bars[b] == 0 || kind.room < r.kinds[first].room {
			continue
		}
		r.bars[b]--
		r.left[first]--
		found := r.load(b, first, kind.room-r.kinds[first].room, r.allowed[b]-r.d.Prices[first], lose)
		r.left[first]++
		r.bars[b]++
		if found || r.work < 0 {
			return found
		}
	}
	r.failed[key] = lose
	return false
}

// load fills a bar with pieces of kind i on, then goes on with the next; short
// is by how much the load falls short so far.
func (r *retry) load(b, i, room, short, lose int) bool {
	if r.work--; r.work < 0 || short-r.most(i, room) > lose {
		return false
	}
	if i == len(r.kinds) {
		return r.plan(lose - short)
	}
	n := min(r.left[i], room/r.kinds[i].room)
	defer func(was int) { r.left[i] = was }(r.left[i])
	for r.left[i] -= n; n >= 0; n-- {
		if r.load(b, i+1, room-n*r.kinds[i].room, short-n*r.d.Prices[i], lose) {
			return true
		}
		r.left[i]++
	}
	return false
}

// most is what a room can be worth at most from kind i on.
func (r *retry) most(i, room int) int {
	if i == len(r.kinds) || r.rates[i].price == 0 {
		return 0
	}
	return r.rates[i].of(room)
}

func (r *retry) key() string {
	key := make([]byte, 0, 2*(len(r.left)+len(r.bars)))
	for _, n := range r.left {
		key = binary.LittleEndian.AppendUint16(key, uint16(n))
	}
	for b, n := range r.bars {
		if r.certChecker.bars[b].limited {
			key = binary.LittleEndian.AppendUint16(key, uint16(n))
		}
	}
	return string(key)
}
