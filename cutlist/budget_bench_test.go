package cutlist_test

import (
	"context"
	"testing"

	"tubewright/bends/budget"
	"tubewright/route/find"
	"tubewright/route/planfile/demoplan"
)

// The budgets of all runs of the museum demo, as they live while a part is dragged.
func BenchmarkBudgetsDemo(b *testing.B) {
	plan := demoplan.Read(b, "conservation-scanner")
	sol, err := find.Solve(context.Background(), plan)
	if err != nil {
		b.Fatal(err)
	}
	var last budget.Budget
	for b.Loop() {
		for _, r := range sol.Runs {
			if w, ok := r.Way(); ok {
				last = w.Budget(plan.Errors)
			}
		}
	}
	if last.Chance == 0 {
		b.Error("no budget came of it")
	}
}
