//go:build unix

package find_test

import (
	"slices"
	"testing"

	"tubewright/route/find"
)

// BenchmarkSolveAgain is the time to solve all runs of the museum demo again
// after one part has been moved, each part in its turn: afresh, and by a memory
// that has solved the steps before. It is processor time, so that other work on
// the machine counts little.
func BenchmarkSolveAgain(b *testing.B) {
	const name = "conservation-scanner"
	for b.Loop() {
		var fresh, again []float64
		for part := range demo(b, name).Parts {
			var memory find.Memory
			remembered(b, &memory, demo(b, name))
			for step := range 12 {
				plan := dragged(b, name, part, step)
				fresh = append(fresh, milliseconds(func() { solved(b, plan) }))
				again = append(again, milliseconds(func() { remembered(b, &memory, plan) }))
			}
		}
		report(b, fresh, "fresh")
		report(b, again, "memory")
	}
}

func milliseconds(do func()) float64 {
	at := used()
	do()
	return float64((used() - at).Microseconds()) / 1000
}

// report gives the median and the 95th percentile.
func report(b *testing.B, took []float64, what string) {
	slices.Sort(took)
	b.ReportMetric(took[len(took)/2], "ms-median-"+what)
	b.ReportMetric(took[len(took)*95/100], "ms-p95-"+what)
}
