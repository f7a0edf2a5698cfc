package nest_test

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"tubewright/cutlist/nest"
)

// smallJob is a job of one machine: up to thirty pieces, three stock lengths,
// one of them limited, six offcuts, a kerf. Where few is set its pieces are of
// few lengths, so that all plans can be gone through.
func smallJob(seed uint64, few bool) nest.Job {
	rnd := rand.New(rand.NewPCG(seed, 11))
	job := nest.Job{
		Kerf: 50 * rnd.IntN(7), KeepOver: 12000,
		Stock: []nest.Bar{{50000, 700 + 10*rnd.IntN(9), 0}, {100000, 1250 + 10*rnd.IntN(20), 0}, {75000, 1000 + 10*rnd.IntN(9), 1 + rnd.IntN(3)}},
	}
	for range 6 {
		job.Offcuts = append(job.Offcuts, nest.Bar{Length: 12000 + 50*rnd.IntN(600)})
	}
	left, rows := 1+rnd.IntN(30), 1
	for left > 0 {
		n := 1
		if few {
			if n = min(left, 1+rnd.IntN(11)); rows*(n+1) > smallRows {
				break
			}
		}
		rows, left = rows*(n+1), left-n
		job.Pieces = append(job.Pieces, nest.Piece{Length: 6000 + rnd.IntN(45000), Count: n})
	}
	return job
}

// smallJobs are held against the table.
const smallJobs = 500

// smallRows bounds the tables of small jobs, for time.
const smallRows = 5000

// Five hundred jobs of up to thirty pieces equal what going through all plans
// finds, in cost, bars and the longest remnant; their proofs are accepted.
func TestSmallJobsAgainstTable(t *testing.T) {
	largest, all, most := 0, time.Duration(0), time.Duration(0)
	for seed := range uint64(smallJobs) {
		job := smallJob(seed, true)
		start := time.Now()
		r, err := nest.Solve(context.Background(), job, nest.Options{})
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		all, most = all+time.Since(start), max(most, time.Since(start))
		want, ok := bestByTable(job)
		if !ok {
			t.Fatalf("seed %d: no table", seed)
		}
		checkPlan(t, job, r, nil)
		got := judge(job, r)
		if got != want || !r.Proven {
			t.Errorf("seed %d: %+v proven %v; best %+v", seed, got, r.Proven, want)
		}
		if err := checkCertificate(job, r.Bound, r.Certificate); err != nil {
			t.Errorf("seed %d: %v", seed, err)
		}
		largest = max(largest, countPieces(job.Pieces))
	}
	t.Logf("up to %d pieces; the solver took %v, at most %v", largest, all, most)
	if largest < 30 {
		t.Errorf("at most %d pieces", largest)
	}
}

// The table itself, against trying everything piece by piece.
func TestTableAgainstTryingAll(t *testing.T) {
	checked := 0
	for seed := range uint64(400) {
		job := randomJob(rand.New(rand.NewPCG(seed, 5)))
		want := bestByTryingAll(job)
		got, ok := bestByTable(job)
		if ok != (want.uncut == 0) || ok && got != want {
			t.Fatalf("seed %d: %+v: table %+v, %v; all plans %+v", seed, job, got, ok, want)
		}
		if ok {
			checked++
		}
	}
	if checked < 200 {
		t.Errorf("only %d of 400 could be cut", checked)
	}
}

// BenchmarkSmallJobs is the time of jobs of up to thirty pieces: median, 95th
// percentile and worst of 500, of few lengths and all of other lengths.
func BenchmarkSmallJobs(b *testing.B) {
	b.Run("few lengths", func(b *testing.B) { timeSmallJobs(b, true) })
	b.Run("all different", func(b *testing.B) { timeSmallJobs(b, false) })
}

func timeSmallJobs(b *testing.B, few bool) {
	for b.Loop() {
		var took []float64
		proven := 0
		for seed := range uint64(smallJobs) {
			job := smallJob(seed, few)
			start := time.Now()
			r, err := nest.Solve(context.Background(), job, nest.Options{})
			if err != nil {
				b.Fatal(err)
			}
			took = append(took, time.Since(start).Seconds()*1e3)
			if r.Proven {
				proven++
			}
		}
		slices.Sort(took)
		b.ReportMetric(took[smallJobs/2], "ms-median")
		b.ReportMetric(took[smallJobs*95/100], "ms-p95")
		b.ReportMetric(took[smallJobs-1], "ms-max")
		b.ReportMetric(float64(proven), "proven-of-500")
	}
}
