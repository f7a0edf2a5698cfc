package find_test

import (
	"context"
	"errors"
	"testing"

	"tubewright/assets"
	"tubewright/bends"
	"tubewright/route"
	"tubewright/route/find"
	"tubewright/route/planfile/demoplan"
)

func demo(tb testing.TB, name string) route.Plan {
	tb.Helper()
	return demoplan.Read(tb, name)
}

// TestDemosAreSolved: every run of every demo has a way, or says in the proper
// type why not.
func TestDemosAreSolved(t *testing.T) {
	for _, name := range assets.Demos() {
		sol, err := find.Solve(context.Background(), demo(t, name))
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range sol.Runs {
			var none *find.NoWayError
			var clash *find.ConflictError
			var faults bends.Faults
			_, ok := s.Way()
			told := errors.As(s.Problem, &none) || errors.As(s.Problem, &faults)
			if ok == told || s.Problem != nil && !told && !errors.As(s.Problem, &clash) {
				t.Errorf("%s, run %q: way %v, problem %v", name, s.Run.Name, ok, s.Problem)
			}
		}
	}
}

// BenchmarkSolve is the time a demo takes to solve: what tubecut list waits for.
func BenchmarkSolve(b *testing.B) {
	for _, name := range assets.Demos() {
		plan := demo(b, name)
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := find.Solve(context.Background(), plan); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
