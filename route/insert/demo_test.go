package insert_test

import (
	"context"
	"slices"
	"testing"

	"tubewright/assets"
	"tubewright/route"
	"tubewright/route/find"
	"tubewright/route/insert"
	"tubewright/route/planfile/demoplan"
)

func demo(t testing.TB, name string) (route.Plan, find.Solution) {
	t.Helper()
	plan := demoplan.Read(t, name)
	sol, err := find.Solve(context.Background(), plan)
	if err != nil {
		t.Fatal(err)
	}
	return plan, sol
}

func machineOf(t testing.TB, plan route.Plan, sol find.Solution, o insert.Options) insert.Report {
	t.Helper()
	r, err := insert.Machine(context.Background(), plan, sol, o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestEveryDemoHasAnOrderOfPuttingIn(t *testing.T) {
	for _, name := range assets.Demos() {
		plan, sol := demo(t, name)
		r := machineOf(t, plan, sol, insert.Options{})
		t.Logf("%s goes in in this order: %v; left: %v", name, r.Order, r.Left)
		for i, a := range r.In {
			t.Logf("  %s: %s. %s", a.Run, a.Verdict, a.Words)
			if len(r.First[i]) > 0 {
				t.Logf("    for service first: %v (%s)", r.First[i], r.Out[i].Verdict)
			}
		}
		if len(r.Left) > 0 || len(r.Order) == 0 || len(r.Order) != len(r.In) {
			t.Errorf("%s: no place in the order for %v", name, r.Left)
		}
		for i, a := range r.In {
			if a.Verdict != insert.Possible {
				t.Errorf("%s: %s: %s", name, a.Run, a.Verdict)
			}
			for _, first := range r.First[i] {
				if slices.Index(r.Order, first) < slices.Index(r.Order, a.Run) {
					t.Errorf("%s: %s comes out before %s and goes in before it too", name, first, a.Run)
				}
			}
		}
	}
}

func BenchmarkDemo(b *testing.B) {
	plan, sol := demo(b, "conservation-scanner")
	for b.Loop() {
		machineOf(b, plan, sol, insert.Options{})
	}
}
