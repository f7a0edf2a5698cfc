package find

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math"
	"slices"

	"tubewright/route"
)

// Solve finds ways for every run of a plan and chooses one for each so that
// none comes too near to another, at the least cost. What cannot be had is told
// in each run's Problem: a *NoWayError, a *ConflictError beside the way kept
// nevertheless, or what package bends refuses of a drawn path. The error is the
// context's alone. The answer does not hang on the order of the plan's runs.
func Solve(ctx context.Context, plan route.Plan) (Solution, error) {
	return newTable(newScene(plan)).solve(ctx)
}

// solve lists the ways of each run and settles all together.
func (t *table) solve(ctx context.Context) (Solution, error) {
	t.halt = &halt{ctx: ctx}
	for _, i := range t.order {
		if err := t.list(ctx, i); err != nil {
			return Solution{}, err
		}
	}
	if err := t.settle(ctx); err != nil {
		return Solution{}, err
	}
	sol := t.solution(ctx)
	if err := ctx.Err(); err != nil {
		return Solution{}, err
	}
	return sol, nil
}

// Ways gives the ranked ways of one run, as Solve lists them beside the chosen
// ways of the other runs. The error is the context's, the run's Problem when it
// has no way, or says that there is no such run.
func Ways(ctx context.Context, plan route.Plan, run string) ([]Way, error) {
	i := slices.IndexFunc(plan.Runs, func(r route.Run) bool { return r.Name == run })
	if i < 0 {
		return nil, fmt.Errorf("there is no run %q", run)
	}
	sol, err := Solve(ctx, plan)
	if err != nil {
		return nil, err
	}
	if s := sol.Runs[i]; len(s.Ways) == 0 {
		return nil, s.Problem
	}
	return sol.Runs[i].Ways, nil
}

// table is the runs while they are being settled together.
type table struct {
	*scene
	rows  []row
	order []int // in which runs are dealt with; the file's order plays no part
	// nearMemo remembers near, for each pair of runs and their options: the
	// search for the cheapest set asks again and again.
	nearMemo [][]int8
	moves    []moved // other arrangements that are known
	past     *past   // what is known of the same parts; nil: nothing
	halt     *halt   // of the solve in hand
}

func newTable(sc *scene) *table {
	t := &table{scene: sc, rows: make([]row, len(sc.plan.Runs))}
	for i := range t.rows {
		t.rows[i].chosen, t.rows[i].ports = -1, sc.portsOf(sc.plan.Runs[i])
		t.order = append(t.order, i)
	}
	slices.SortStableFunc(t.order, func(i, j int) int {
		return cmp.Or(cmp.Compare(t.span(i), t.span(j)), cmp.Compare(sc.plan.Runs[i].Name, sc.plan.Runs[j].Name))
	})
	return t
}

// span is how far apart a run's ports stand, in thousandths of a millimetre:
// short runs have the fewest ways and go first.
func (t *table) span(i int) float64 {
	r := t.plan.Runs[i]
	p, _, ok := t.port(r.From)
	q, _, good := t.port(r.To)
	if !ok || !good {
		return math.Inf(1)
	}
	return microns(q.Frame.At.Sub(p.Frame.At).Len())
}

// list finds the ways of a run: clear of where other runs' ports need room, or
// where that cannot be, clear of the parts alone.
func (t *table) list(ctx context.Context, i int) error {
	run := t.plan.Runs[i]
	reserved := t.reserved(i)
	t.rows[i].reserved = reserved
	t.recall(ctx, i, reserved)
	t.rows[i].homing = true
	ways, err := t.ask(ctx, i, request{others: reserved, below: anyCost})
	if err != nil && !fixedPath(run) && ctx.Err() == nil && !byItself(err) {
		if bare, e := t.ask(ctx, i, request{below: anyCost}); e == nil {
			ways, err = bare, nil
		}
	}
	if ctx.Err() != nil {
		return ctx.Err()
	}
	t.rows[i].homing = false
	t.rows[i].problem = err
	t.put(i, ways)
	t.pick(i, run)
	return nil
}

// put lays ways on the table.
func (t *table) put(i int, ways []Way) {
	r := &t.rows[i]
	for _, w := range ways {
		r.options = append(r.options, newOption(w))
	}
	r.listed = len(ways)
}

// pick fixes the way a plan names, and a drawn one.
func (t *table) pick(i int, run route.Run) {
	r := &t.rows[i]
	named := slices.IndexFunc(r.options, func(o *option) bool { return o.way.Name == run.Pick })
	switch {
	case fixedPath(run) && len(r.options) > 0:
		r.chosen, r.fixed = 0, true
	case run.Pick != "" && named >= 0:
		r.chosen, r.fixed = named, true
	}
}

// solution writes the table out in the plan's order.
func (t *table) solution(ctx context.Context) Solution {
	sol := Solution{Runs: make([]Solved, len(t.rows))}
	for i := range t.rows {
		if ctx.Err() != nil {
			break
		}
		r := &t.rows[i]
		run := t.plan.Runs[i]
		var refused *NoWayError
		ways, chosen := r.list()
		ways, chosen = t.shown(i, ways, chosen)
		sol.Runs[i] = Solved{
			Run: run, Ways: t.explained(i, ways), Chosen: chosen, Problem: t.told(r.problem),
			Drawn: fixedPath(run) && !errors.As(r.problem, &refused),
		}
	}
	return sol
}
