package find_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// BenchmarkForty is a plan of forty runs among two hundred parts: two with runs
// that are known to go together, and one of which nothing is known.
func BenchmarkForty(b *testing.B) {
	for name, plan := range map[string]route.Plan{
		"known":      crowdedIn(rand.New(rand.NewPCG(1, 15)), mgl64.Vec3{900, 500, 400}, 40, 150),
		"hall-known": hallKnown(0, 40, 200, mgl64.Vec3{1200, 500, 400}),
		"hall":       hallPlan(2, 40, 200, mgl64.Vec3{1200, 500, 400}),
	} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				told := 0
				for _, s := range solved(b, plan).Runs {
					if s.Problem != nil {
						told++
					}
				}
				b.ReportMetric(float64(told), "unsolved")
				b.ReportMetric(float64(len(plan.Parts)), "parts")
			}
		})
	}
}

// grown is the hall with four runs among this many blocks in a case that grows
// with them, so that the crowd is as dense at every size.
func grown(blocks int) route.Plan {
	side := math.Cbrt(float64(blocks) / 100)
	return hallPlan(3, 4, blocks+8, mgl64.Vec3{500 + 500*side, 300 * max(1, side), 300 * max(1, side)})
}

// BenchmarkGrowth fits the power of the number of blocks by which the time to
// solve grows, from 10 to 1000.
func BenchmarkGrowth(b *testing.B) {
	for b.Loop() {
		var x, y []float64
		for _, n := range []int{10, 30, 100, 300, 1000} {
			plan := grown(n)
			least := time.Hour
			for range 5 {
				at := time.Now()
				solved(b, plan)
				least = min(least, time.Since(at))
			}
			x, y = append(x, math.Log(float64(n))), append(y, math.Log(least.Seconds()))
			b.ReportMetric(least.Seconds()*1000, fmt.Sprintf("ms/%d-blocks", n))
		}
		b.ReportMetric(slope(x, y), "exponent")
	}
}

// slope is that of the line that fits points best.
func slope(x, y []float64) float64 {
	n := float64(len(x))
	var sx, sy, sxx, sxy float64
	for i := range x {
		sx, sy, sxx, sxy = sx+x[i], sy+y[i], sxx+x[i]*x[i], sxy+x[i]*y[i]
	}
	return (n*sxy - sx*sy) / (n*sxx - sx*sx)
}
