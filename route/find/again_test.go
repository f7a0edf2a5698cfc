package find_test

import (
	"math"
	"reflect"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/assets"
	"tubewright/route"
	"tubewright/route/find"
)

// dragged is a demo with one of its parts moved along a path, never twice to the
// same place.
func dragged(tb testing.TB, name string, part, step int) route.Plan {
	tb.Helper()
	plan := demo(tb, name).Clone()
	x := float64(step)
	plan.Parts[part].At = plan.Parts[part].At.Add(mgl64.Vec3{6 * math.Sin(x*0.37), 0.05 * x, 5 * math.Cos(x*0.23)})
	return plan
}

// remembered solves a plan with a memory.
func remembered(tb testing.TB, memory *find.Memory, plan route.Plan) find.Solution {
	tb.Helper()
	sol, err := memory.Solve(tb.Context(), plan)
	if err != nil {
		tb.Fatal(err)
	}
	return sol
}

// TestMemoryAnswersAsSolveWhenDragged: while a part is dragged about, away and
// back, and then another, a memory's answer is that of a fresh solve.
func TestMemoryAnswersAsSolveWhenDragged(t *testing.T) {
	for _, name := range assets.Demos() {
		var memory find.Memory
		for part := 0; part < len(demo(t, name).Parts); part += 4 {
			for _, step := range []int{0, 3, 7, 3} {
				plan := dragged(t, name, part, step)
				got, want := remembered(t, &memory, plan), solved(t, plan)
				for i, s := range got.Runs {
					if w := want.Runs[i]; words(s) != words(w) || !reflect.DeepEqual(s.Ways, w.Ways) || s.Chosen != w.Chosen {
						t.Errorf("%s, part %d, step %d, %s: the memory's answer is another than a fresh one", name, part, step, s.Run.Name)
					}
				}
			}
		}
	}
}
