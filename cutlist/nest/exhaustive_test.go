package nest_test

import (
	"cmp"
	"context"
	"errors"
	"math/rand/v2"
	"slices"
	"testing"

	"tubewright/cutlist/nest"
)

// verdict is what a plan is judged by, in this order.
type verdict struct{ uncut, cost, bars, remnant int }

func (v verdict) better(w verdict) bool {
	return cmp.Or(cmp.Compare(v.uncut, w.uncut), cmp.Compare(v.cost, w.cost),
		cmp.Compare(v.bars, w.bars), cmp.Compare(w.remnant, v.remnant)) < 0
}

// tryAll is slow and plainly right: it puts each piece in turn on every bar that
// is open, on every bar that could be opened, or nowhere.
type tryAll struct {
	job    nest.Job
	pieces []int
	kinds  []nest.Bar // stock, then offcuts
	left   []int
	open   []openBar
	now    verdict
	best   verdict
	found  bool
}

type openBar struct{ kind, used, count int }

func bestByTryingAll(job nest.Job) verdict {
	a := &tryAll{job: job, kinds: slices.Concat(job.Stock, job.Offcuts)}
	for _, p := range job.Pieces {
		a.pieces = append(a.pieces, slices.Repeat([]int{p.Length}, p.Count)...)
	}
	for i, k := range a.kinds {
		switch {
		case k.Most > 0:
			a.left = append(a.left, k.Most)
		case i < len(job.Stock):
			a.left = append(a.left, len(a.pieces))
		default:
			a.left = append(a.left, 1)
		}
	}
	a.place(0)
	return a.best
}

func (a *tryAll) place(i int) {
	if a.found && cmp.Or(cmp.Compare(a.now.uncut, a.best.uncut), cmp.Compare(a.now.cost, a.best.cost)) > 0 {
		return
	}
	if i == len(a.pieces) {
		a.judge()
		return
	}
	for o := range a.open {
		a.onto(i, o)
	}
	for k := range a.kinds {
		if a.left[k] == 0 {
			continue
		}
		a.left[k]--
		a.now.cost += a.costOf(k)
		a.open = append(a.open, openBar{kind: k})
		a.onto(i, len(a.open)-1)
		a.open = a.open[:len(a.open)-1]
		a.now.cost -= a.costOf(k)
		a.left[k]++
	}
	a.now.uncut++
	a.place(i + 1)
	a.now.uncut--
}

func (a *tryAll) costOf(k int) int {
	switch {
	case k >= len(a.job.Stock):
		return 0
	case a.job.Priced():
		return a.kinds[k].Price
	}
	return 1
}

// onto saws piece i from an open bar if it fits: lengths and the kerfs between.
func (a *tryAll) onto(i, o int) {
	bar := a.open[o]
	if bar.used+bar.count*a.job.Kerf+a.pieces[i] > a.kinds[bar.kind].Length {
		return
	}
	a.open[o].used += a.pieces[i]
	a.open[o].count++
	a.place(i + 1)
	a.open[o] = bar
}

func (a *tryAll) judge() {
	v := a.now
	v.bars = len(a.open)
	for _, o := range a.open {
		if left := max(0, a.kinds[o.kind].Length-o.used-o.count*a.job.Kerf); left >= a.job.KeepOver {
			v.remnant = max(v.remnant, left)
		}
	}
	if !a.found || v.better(a.best) {
		a.best, a.found = v, true
	}
}

func randomJob(rnd *rand.Rand) nest.Job {
	job := nest.Job{Kerf: rnd.IntN(4), KeepOver: rnd.IntN(30)}
	unit := 1 + 4*rnd.IntN(2)
	priced, scarce := rnd.IntN(2), rnd.IntN(4) == 0
	for range 1 + rnd.IntN(3) {
		length := 40 + rnd.IntN(80)
		job.Stock = append(job.Stock, nest.Bar{
			Length: length * unit, Price: priced * (length/2 + rnd.IntN(20)), Most: max(0, rnd.IntN(7)-3),
		})
		if scarce {
			job.Stock[len(job.Stock)-1].Most = 1
		}
	}
	for range rnd.IntN(4) {
		job.Offcuts = append(job.Offcuts, nest.Bar{Length: (20 + rnd.IntN(50)) * unit, Most: rnd.IntN(3)})
	}
	for range 1 + rnd.IntN(4) {
		job.Pieces = append(job.Pieces, nest.Piece{Length: (5 + rnd.IntN(35)) * unit, Count: 1 + rnd.IntN(2)})
	}
	return job
}

func judge(job nest.Job, r nest.Result) verdict {
	v := verdict{cost: r.Cost, bars: r.Bars}
	for _, p := range r.Patterns {
		if p.Left >= job.KeepOver {
			v.remnant = max(v.remnant, p.Left)
		}
	}
	return v
}

func TestSolveAgainstTryingAll(t *testing.T) {
	few := 0
	for seed := range uint64(700) {
		job := randomJob(rand.New(rand.NewPCG(seed, 0)))
		want := bestByTryingAll(job)
		got, err := nest.Solve(context.Background(), job, nest.Options{})
		var short *nest.TooFewError
		if errors.As(err, &short) != (want.uncut > 0) || err != nil && short == nil {
			t.Fatalf("seed %d: %+v: error %v, best leaves %d uncut", seed, job, err, want.uncut)
		}
		v := judge(job, got)
		if short != nil {
			few++
			checkPlan(t, job, got, short.Uncut)
			if v.uncut = countPieces(short.Uncut); v.uncut != want.uncut || !short.Proven {
				t.Fatalf("seed %d: %+v: %d uncut (proven %v), best leaves %d", seed, job, v.uncut, short.Proven, want.uncut)
			}
			continue
		}
		checkPlan(t, job, got, nil)
		if v != want || !got.Proven || got.Bound != got.Cost {
			t.Fatalf("seed %d: %+v:\ngot  %+v proven %v, %+v\nbest %+v", seed, job, v, got.Proven, got.Patterns, want)
		}
	}
	if few < 20 {
		t.Errorf("only %d jobs had too few bars; the seeds do not test that", few)
	}
}

func countPieces(pieces []nest.Piece) int {
	n := 0
	for _, p := range pieces {
		n += p.Count
	}
	return n
}
