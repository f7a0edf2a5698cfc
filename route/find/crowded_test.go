package find_test

import (
	"context"
	"flag"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"tubewright/route"
	"tubewright/route/find"
)

// crowds is how many crowded plans are solved; a tenth of them with -short. All
// 200 take minutes: a few of them search long.
var crowds = flag.Int("crowds", 40, "how many crowded plans are solved: 200 for all")

// leastTogether is the share of crowded plans that must be solved without any
// conflict.
const leastTogether = 0.98

// crowd is a plan of 4 to 10 runs that are known to go together, among 20 to 400
// blocks.
func crowd(seed uint64) route.Plan {
	r := rand.New(rand.NewPCG(seed, 11))
	return crowdedPlan(r, 4+int(seed%7), 20+r.IntN(380))
}

// TestTogether: plans that are known to have a solution are solved, as the
// referee sees it, and the order of the runs changes nothing.
func TestTogether(t *testing.T) {
	count := *crowds
	if testing.Short() {
		count /= 10
	}
	failed := 0
	for seed := range uint64(count) {
		plan := crowd(seed)
		sol := solved(t, plan)
		if why := conflicts(plan, sol); why != "" {
			failed++
			t.Logf("seed %d, %d runs, %d parts: %s", seed, len(plan.Runs), len(plan.Parts), why)
		}
		if seed%16 == 0 {
			sameShuffled(t, seed, plan, sol)
		}
	}
	t.Logf("%d of %d plans solved without conflict", count-failed, count)
	if float64(count-failed) < leastTogether*float64(count) {
		t.Errorf("only %d of %d plans solved without conflict", count-failed, count)
	}
}

// TestLegsTooShortForRightAngles: in these of the crowded plans a run has legs between
// its bends that no two right angles have room for.
func TestLegsTooShortForRightAngles(t *testing.T) {
	for _, seed := range []uint64{78, 107, 231, 241} {
		plan := crowd(seed)
		if why := conflicts(plan, solved(t, plan)); why != "" {
			t.Errorf("seed %d: %s", seed, why)
		}
	}
}

func solved(tb testing.TB, plan route.Plan) find.Solution {
	tb.Helper()
	sol, err := find.Solve(context.Background(), plan)
	if err != nil {
		tb.Fatal(err)
	}
	return sol
}

// conflicts is what the referee has against a solution; "" when every run has a
// way and all go together.
func conflicts(plan route.Plan, sol find.Solution) string {
	for _, s := range sol.Runs {
		if _, ok := s.Way(); !ok {
			return "no way: " + s.Problem.Error()
		}
	}
	var all []*judged
	for i, s := range sol.Runs {
		w, _ := s.Way()
		all = append(all, judge(plan, plan.Runs[i], w))
	}
	for i, j := range all {
		for _, k := range all[i+1:] {
			j.against(k)
		}
	}
	for _, j := range all {
		if len(j.faults) > 0 {
			return strings.Join(j.faults[:min(2, len(j.faults))], "; ")
		}
	}
	return ""
}

// sameShuffled solves a plan with its runs in another order.
func sameShuffled(t *testing.T, seed uint64, plan route.Plan, want find.Solution) {
	t.Helper()
	plan.Runs = slices.Clone(plan.Runs)
	r := rand.New(rand.NewPCG(seed, 12))
	r.Shuffle(len(plan.Runs), func(i, j int) { plan.Runs[i], plan.Runs[j] = plan.Runs[j], plan.Runs[i] })
	for _, s := range solved(t, plan).Runs {
		n := slices.IndexFunc(want.Runs, func(w find.Solved) bool { return w.Run.Name == s.Run.Name })
		if !reflect.DeepEqual(s, want.Runs[n]) {
			t.Errorf("seed %d: %s is not what it was before the runs were shuffled", seed, s.Run.Name)
		}
	}
}
