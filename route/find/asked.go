package find

import (
	"context"
	"slices"
)

// asked remembers a run's search and its answer. Runs are asked for again while
// they are being settled, often among the very same others.
type asked struct {
	others []solid
	ways   []Way
	err    error
}

// ask searches a run's ways among what other runs take up, or remembers.
func (t *table) ask(ctx context.Context, i int, others []solid) ([]Way, error) {
	for _, a := range t.rows[i].asked {
		if slices.Equal(a.others, others) {
			return slices.Clone(a.ways), a.err
		}
	}
	ways, err := t.waysOf(ctx, t.plan.Runs[i], others)
	if ctx.Err() == nil {
		t.rows[i].asked = append(t.rows[i].asked, asked{others, slices.Clone(ways), err})
	}
	return ways, err
}
