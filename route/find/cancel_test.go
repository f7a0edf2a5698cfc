//go:build unix

package find_test

import (
	"context"
	"errors"
	"reflect"
	"slices"
	"syscall"
	"testing"
	"time"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/route/find"
)

// gauge is a context that measures how much of the processor is used between
// two looks at it: what a person may wait at most after asking to stop. From a
// number of looks on it says that it was cancelled.
type gauge struct {
	context.Context
	looks, stop int
	last, worst time.Duration
}

func newGauge(stop int) *gauge {
	return &gauge{Context: context.Background(), stop: stop, last: used()}
}

func (g *gauge) Err() error {
	now := used()
	g.worst = max(g.worst, now-g.last)
	g.last = used()
	if g.looks++; g.looks > g.stop {
		return context.Canceled
	}
	return nil
}

// used is the processor time of this process.
func used() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		panic(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// TestStoppedAnywhere: wherever a solve is stopped it ends with the context's error
// within the next few looks, and solved again it gives what it gives undisturbed.
func TestStoppedAnywhere(t *testing.T) {
	plan := crowd(2)
	whole := newGauge(1 << 30)
	want, err := find.Solve(whole, plan)
	if err != nil {
		t.Fatal(err)
	}
	for stop := 0; stop < whole.looks; stop += 1 + whole.looks/12 {
		g := newGauge(stop)
		if _, err := find.Solve(g, plan); !errors.Is(err, context.Canceled) {
			t.Errorf("stopped at look %d of %d: got %v", stop, whole.looks, err)
		}
		if g.looks > stop+8 {
			t.Errorf("stopped at look %d: %d more looks", stop, g.looks-stop)
		}
	}
	if got := solved(t, plan); !reflect.DeepEqual(got, want) {
		t.Error("an undisturbed solve gives something else after interrupted ones")
	}
}

// BenchmarkStop is how long a solve of forty runs goes on at most without a look
// at whether it should stop.
func BenchmarkStop(b *testing.B) {
	plan := hallPlan(2, 40, 200, mgl64.Vec3{1200, 500, 400})
	for b.Loop() {
		g := newGauge(1 << 30)
		if _, err := find.Solve(g, plan); err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(float64(g.worst.Microseconds())/1000, "ms-worst")
		b.ReportMetric(float64(g.looks), "looks")
	}
}

// TestStraightsStop: a tube that cannot be bent, between ports out of line, has
// its straights searched for long; that search too looks at the context.
func TestStraightsStop(t *testing.T) {
	plan := demo(t, "conservation-scanner").Clone()
	top := slices.IndexFunc(plan.Parts, func(p route.Part) bool { return p.Name == "top" })
	plan.Parts[top].At[0] += 3
	g := newGauge(40)
	if _, err := find.Solve(g, plan); !errors.Is(err, context.Canceled) {
		t.Fatalf("got %v, want the context's error", err)
	}
	if g.looks > 60 {
		t.Errorf("%d looks after the 40th", g.looks-40)
	}
}
