package cutlist

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
	"tubewright/route/made"
)

// Build makes the list of a solved plan. Runs without a way are left out; the
// findings say so. What is wrong with the plan is told in the findings, never
// as an error: errors are the context's, and those of package nest for a job
// beyond its limits.
func Build(ctx context.Context, plan route.Plan, sol find.Solution) (List, error) {
	l := List{Plan: plan, Tubes: tubes(plan, sol), Findings: check.Findings(plan, sol), Sawn: made.Sawn(plan)}
	l.Measure = measures(plan, l.Tubes)
	l.Reasons = reasons(l.Measure, l.Tubes)
	l.Draft = len(l.Reasons) > 0
	for _, kind := range kinds(l.Tubes) {
		if s, ok := l.spareFor(kind.Name); ok {
			l.Spares = append(l.Spares, s)
		}
		if err := l.cutKind(ctx, kind); err != nil {
			return List{}, fmt.Errorf("cutting %s: %w", kind.Name, err)
		}
	}
	l.Buy = buy(l)
	check.Sort(l.Findings)
	return l, ctx.Err()
}

// tubes gives the tube of every run with a way, in the plan's order. The letter
// is the run's place in the plan, so a run that has no way yet shifts no other.
func tubes(plan route.Plan, sol find.Solution) []Tube {
	var list []Tube
	for i, s := range sol.Runs {
		way, ok := s.Way()
		if !ok {
			continue
		}
		cut := way.Formed.Cut(way.Ends, plan.Saw.Square)
		cut.Blank = whole(hundredths(cut.Blank)) // what is sawn: one number in tables, bars and drawings
		list = append(list, Tube{
			Letter: Letter(i), Run: s.Run.Name, Way: way, Cut: cut, Bench: way.Formed.Bench(way.Ends),
			Budget: way.Budget(plan.Errors),
		}.withSteps(plan.Units).withTries(s.Run))
	}
	return list
}

// Letter is what the tube of the run at this place of the plan is called, from
// 0: A, B, ... Z, AA, AB, ... It is empty below 0.
func Letter(n int) string {
	if n < 0 {
		return ""
	}
	return Letter(n/26-1) + string(rune('A'+n%26))
}

// kinds lists the tubes used, by name.
func kinds(tubes []Tube) []route.Tube {
	var list []route.Tube
	for _, t := range tubes {
		if !slices.ContainsFunc(list, func(k route.Tube) bool { return k.Name == t.Way.Tube.Name }) {
			list = append(list, t.Way.Tube)
		}
	}
	slices.SortFunc(list, func(a, b route.Tube) int { return cmp.Compare(a.Name, b.Name) })
	return list
}
