package nest_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"runtime"
	"testing"

	"tubewright/cutlist/nest"
)

// grownJob is a job of so many pieces of so many lengths, from two stock lengths
// with a kerf.
func grownJob(pieces, lengths int) nest.Job {
	rnd := rand.New(rand.NewPCG(uint64(pieces), uint64(lengths)))
	job := nest.Job{Kerf: 100, KeepOver: 12000, Stock: []nest.Bar{{Length: 50000, Price: 740}, {Length: 100000, Price: 1290}}}
	at := rnd.Perm(45000)
	for i := range lengths {
		n := pieces / lengths
		if i < pieces%lengths {
			n++
		}
		job.Pieces = append(job.Pieces, nest.Piece{Length: 5000 + at[i], Count: n})
	}
	return job
}

// BenchmarkGrowth shows how time and memory grow with pieces and lengths, and
// how far from proven the plans are, each with the fixed budget of steps.
func BenchmarkGrowth(b *testing.B) {
	for _, lengths := range []int{10, 50, 200} {
		for _, pieces := range []int{10, 100, 1000, 10_000} {
			if pieces < lengths {
				continue
			}
			b.Run(fmt.Sprintf("%d_pieces_of_%d", pieces, lengths), func(b *testing.B) {
				job := grownJob(pieces, lengths)
				var before, after runtime.MemStats
				runtime.ReadMemStats(&before)
				var r nest.Result
				for b.Loop() {
					var err error
					if r, err = nest.Solve(context.Background(), job, nest.Options{}); err != nil {
						b.Fatal(err)
					}
				}
				runtime.ReadMemStats(&after)
				checkPlan(b, job, r, nil)
				b.ReportMetric(float64(r.Cost-r.Bound)/float64(r.Cost)*100, "%-above-bound")
				b.ReportMetric(float64(after.Sys)/(1<<20), "MB-of-the-process")
			})
		}
	}
}
