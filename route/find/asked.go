package find

import (
	"context"
	"math"
	"slices"
)

// request is what a run is searched among, and how.
type request struct {
	others []solid // what other runs take up
	below  int64   // only ways that cost less are wanted, in steps of sameCost
	brief  bool    // one of many searches
	harder bool    // a brief one may still try pairs with a fitting more
}

// anyCost is the bound of a request for ways of any cost.
const anyCost = math.MaxInt64

// asked remembers a run's search and its answer. Runs are asked for again while
// they are being settled, often among the very same others.
type asked struct {
	request
	ways   []Way
	err    error
	looked *looked // where the search looked; nil: not known
}

// answers reports whether what was found serves another request as well.
func (a *asked) answers(q request) bool {
	return (q.below == a.below || q.below < a.below && len(a.ways) == 0) && q.brief == a.brief && q.harder == a.harder && slices.Equal(a.others, q.others)
}

// answer is what is remembered of a request; nil when nothing is.
func (r *row) answer(q request) *asked {
	for n := range r.asked {
		if r.asked[n].answers(q) {
			return &r.asked[n]
		}
	}
	return nil
}

// ask searches a run's ways among what other runs take up, or remembers.
func (t *table) ask(ctx context.Context, i int, q request) ([]Way, error) {
	if a := t.rows[i].answer(q); a != nil {
		return slices.Clone(a.ways), a.err
	}
	t.rows[i].looked = nil
	ways, err := t.waysOf(ctx, i, q)
	if ctx.Err() == nil {
		a := asked{q, slices.Clone(ways), err, nil}
		if t.rows[i].homing {
			a.looked = t.rows[i].looked
		}
		t.rows[i].asked = append(t.rows[i].asked, a)
	}
	return ways, err
}
