package find_test

import (
	"math"
	"slices"
	"testing"
	"time"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// dragged is the museum demo with one of its parts moved along a path, never
// twice to the same place.
func dragged(tb testing.TB, part, step int) route.Plan {
	tb.Helper()
	plan := demo(tb, "conservation-scanner").Clone()
	x := float64(step)
	plan.Parts[part].At = plan.Parts[part].At.Add(mgl64.Vec3{6 * math.Sin(x*0.37), 0.05 * x, 5 * math.Cos(x*0.23)})
	return plan
}

// BenchmarkSolveAgain is the time to solve all runs of the museum demo again
// after one part has been moved, each part in its turn.
func BenchmarkSolveAgain(b *testing.B) {
	for b.Loop() {
		var took []float64
		for part := range demo(b, "conservation-scanner").Parts {
			for step := range 12 {
				plan := dragged(b, part, step)
				at := time.Now()
				solved(b, plan)
				took = append(took, float64(time.Since(at).Microseconds())/1000)
			}
		}
		slices.Sort(took)
		b.ReportMetric(took[len(took)/2], "ms-median")
		b.ReportMetric(took[len(took)*95/100], "ms-p95")
	}
}
