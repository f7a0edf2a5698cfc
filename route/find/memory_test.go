package find_test

import (
	"math/rand/v2"
	"reflect"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/route/find"
)

// edited is a plan with one random change, of those a person makes in a window.
func edited(r *rand.Rand, plan route.Plan) route.Plan {
	plan = plan.Clone()
	run := &plan.Runs[r.IntN(len(plan.Runs))]
	switch r.IntN(7) {
	case 0:
		run.Pick = []string{"", "one bend", "two square bends", "straight"}[r.IntN(4)]
	case 1:
		run.Way = []route.WayKind{route.Auto, route.Straight, route.Bent}[r.IntN(3)]
	case 2:
		run.Name += "x"
	case 3:
		plan.Weigh.Bend = float64(40 + 20*r.IntN(3))
	case 4:
		plan.Stock = []route.Stock{{Tube: plan.Tube, Length: float64(300 + 100*r.IntN(8))}}
	case 5:
		run.Start = []route.Chain{nil, {{Fitting: "extender"}, {Fitting: "socket"}}}[r.IntN(2)]
	default:
		part := &plan.Parts[r.IntN(len(plan.Parts))]
		part.At = part.At.Add(mgl64.Vec3{float64(r.IntN(3) - 1), 0, float64(r.IntN(3) - 1)})
	}
	return plan
}

// TestMemoryAnswersAsSolve: after any edits, forward and back, a memory's answer
// is that of a fresh solve.
func TestMemoryAnswersAsSolve(t *testing.T) {
	for seed := range uint64(6) {
		r := rand.New(rand.NewPCG(seed, 14))
		var memory find.Memory
		undo := []route.Plan{crowdedPlan(r, 4+int(seed%3), 60)}
		for step := range 24 {
			plan := edited(r, undo[len(undo)-1])
			if n := len(undo); n > 1 && r.IntN(3) == 0 {
				undo, plan = undo[:n-1], undo[n-2]
			} else {
				undo = append(undo, plan)
			}
			got, err := memory.Solve(t.Context(), plan)
			if err != nil {
				t.Fatal(err)
			}
			want := solved(t, plan)
			for i, s := range got.Runs {
				if problem, same := words(s), words(want.Runs[i]); problem != same || !reflect.DeepEqual(s.Ways, want.Runs[i].Ways) || s.Chosen != want.Runs[i].Chosen {
					t.Fatalf("seed %d, step %d, %s: the memory's answer is another than a fresh one", seed, step, s.Run.Name)
				}
			}
		}
	}
}

// words is a run's problem as it is told; "" for none.
func words(s find.Solved) string {
	if s.Problem == nil {
		return ""
	}
	return s.Problem.Error()
}

// BenchmarkMemory is a solve again after a run of the museum demo was given
// another pick, fresh and with a memory.
func BenchmarkMemory(b *testing.B) {
	plan := demo(b, "conservation-scanner").Clone()
	picks := []string{"", "two square bends"}
	b.Run("fresh", func(b *testing.B) {
		for n := 0; b.Loop(); n++ {
			plan.Runs[0].Pick = picks[n%2]
			solved(b, plan)
		}
	})
	b.Run("memory", func(b *testing.B) {
		var memory find.Memory
		for n := 0; b.Loop(); n++ {
			plan.Runs[0].Pick = picks[n%2]
			if _, err := memory.Solve(b.Context(), plan); err != nil {
				b.Fatal(err)
			}
		}
	})
}
