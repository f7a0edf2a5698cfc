package find_test

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"math/rand/v2"
	"strings"
	"sync/atomic"
	"testing"

	"tubewright/route"
	"tubewright/route/find"
)

// plans is how many random plans the referee looks at: about 80 s of one core
// for 1000. With -short it is content with a tenth of them.
var plans = flag.Int("plans", 1000, "how many random plans the referee looks at")

const (
	// benches is how many plans are looked at side by side.
	benches = 4
	// leastShare is the share of runs that must get a way clear of everything, so
	// that the referee cannot be content with nothing found. A few ports of
	// anyPlan face a wall or a neighbour and cannot be joined at all.
	leastShare = 0.95
)

func TestReferee(t *testing.T) {
	count := uint64(*plans)
	if testing.Short() {
		count /= 10
	}
	var next atomic.Uint64
	var asked, found atomic.Int64
	t.Run("plans", func(t *testing.T) {
		for bench := range benches {
			t.Run(fmt.Sprint(bench), func(t *testing.T) {
				t.Parallel()
				for seed := next.Add(1) - 1; seed < count; seed = next.Add(1) - 1 {
					all, runs := refereed(t, seed)
					asked.Add(int64(runs))
					found.Add(int64(all))
				}
			})
		}
	})
	t.Logf("%d of %d runs of %d plans got a way", found.Load(), asked.Load(), count)
	if float64(found.Load()) < leastShare*float64(asked.Load()) {
		t.Errorf("only %d of %d runs got a way", found.Load(), asked.Load())
	}
}

// refereed solves one random plan and judges what was found. It gives how many
// of its runs got a way clear of everything.
func refereed(t *testing.T, seed uint64) (found, runs int) {
	t.Helper()
	plan := anyPlan(rand.New(rand.NewPCG(seed, 4)))
	sol, err := find.Solve(context.Background(), plan)
	if err != nil || len(sol.Runs) != len(plan.Runs) {
		t.Errorf("seed %d: %d runs of %d solved, %v", seed, len(sol.Runs), len(plan.Runs), err)
		return 0, len(plan.Runs)
	}
	all := judgeAll(plan, sol)
	for _, j := range all {
		if faults := j.faults; len(faults) > 0 {
			t.Errorf("seed %d: %d faults, first:\n\t%s", seed, len(faults), strings.Join(faults[:min(3, len(faults))], "\n\t"))
		}
		if !j.conflict {
			found++
		}
	}
	return found, len(plan.Runs)
}

// judgeAll judges the way of each run by itself and against the others'. A run
// that says that it conflicts with another is not held against it again.
func judgeAll(plan route.Plan, sol find.Solution) (all []*judged) {
	for i, s := range sol.Runs {
		w, ok := s.Way()
		var conflict *find.ConflictError
		if !ok {
			continue
		}
		j := judge(plan, plan.Runs[i], w)
		j.conflict = errors.As(s.Problem, &conflict)
		if s.Problem != nil && !j.conflict {
			j.fault("is chosen and yet has the problem %v", s.Problem)
		}
		all = append(all, j)
	}
	for i, j := range all {
		for _, k := range all[i+1:] {
			if !j.conflict && !k.conflict {
				j.against(k)
			}
		}
	}
	return all
}
