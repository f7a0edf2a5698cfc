//go:build unix

package find_test

import (
	"math/rand/v2"
	"runtime"
	"syscall"
	"testing"
	"time"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/route/find"
)

// gauge is a context that measures how much of the processor is used between
// two looks at it, the collector included, and from the look that says stop to the
// end: what a person may wait at most after asking to stop is both together.
type gauge struct {
	stopped
	last, worst time.Duration
}

func gaugeAfter(looks int) *gauge {
	return &gauge{stopped: *stoppedAfter(looks), last: used()}
}

func (g *gauge) Err() error {
	if g.looks <= g.after {
		g.lap()
	}
	return g.stopped.Err()
}

func (g *gauge) lap() {
	now := used()
	g.worst, g.last = max(g.worst, now-g.last), now
}

// used is the processor time of this process.
func used() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		panic(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// toReturn is the processor time a solve takes to end once a look has told it to.
func toReturn(plan route.Plan, after int) time.Duration {
	g := gaugeAfter(after)
	_, _ = find.Solve(g, plan)
	return used() - g.last
}

// BenchmarkStop is how much of the processor a solve uses at most from the moment it
// is to stop until it has: the longest stretch without a look, and the longest way
// from a look to the end of those tried.
func BenchmarkStop(b *testing.B) {
	const seed, moments = 19, 30
	for name, plan := range map[string]route.Plan{
		"museum": demo(b, "conservation-scanner"), "crowd-78": crowd(78), "crowd-101": crowd(101),
		"hall": hallPlan(2, 40, 200, mgl64.Vec3{1200, 500, 400}),
	} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				runtime.GC() // of what came before
				g := gaugeAfter(never)
				if _, err := find.Solve(g, plan); err != nil {
					b.Fatal(err)
				}
				g.lap()
				end, r := time.Duration(0), rand.New(rand.NewPCG(seed, 1))
				for range moments {
					end = max(end, toReturn(plan, r.IntN(g.looks)))
				}
				b.ReportMetric(float64((g.worst+end).Microseconds())/1000, "ms-worst")
				b.ReportMetric(float64(end.Microseconds())/1000, "ms-to-return")
				b.ReportMetric(float64(g.looks), "looks")
			}
		})
	}
}
