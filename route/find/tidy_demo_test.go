package find_test

import (
	"context"
	"math"
	"testing"

	"tubewright/assets"
	"tubewright/route"
	"tubewright/route/find"
)

// slantLegs measures the legs of all chosen ways that run along no axis of the
// case, by the ports' places alone: mm, and how many.
func slantLegs(sol find.Solution) (long float64, count int) {
	for _, s := range sol.Runs {
		w, ok := s.Way()
		if !ok || s.Drawn {
			continue
		}
		for i := 1; i < len(w.Formed.Corners); i++ {
			d := w.Formed.Corners[i].Sub(w.Formed.Corners[i-1])
			if most := max(math.Abs(d[0]), math.Abs(d[1]), math.Abs(d[2])); d.Len()-most > 0.01 {
				long += d.Len()
				count++
			}
		}
	}
	return long, count
}

// TestTidyOnTheDemos: with the weight that plans have by themselves, less tube
// runs aslant than with none, on no demo more.
func TestTidyOnTheDemos(t *testing.T) {
	var all [2]float64
	for _, name := range assets.Demos() {
		var sums [2]float64
		for n, tidy := range []float64{0, route.Defaults().Weigh.Tidy} {
			plan := demo(t, name)
			plan.Weigh.Tidy = tidy
			sol, err := find.Solve(context.Background(), plan)
			if err != nil {
				t.Fatal(err)
			}
			long, count := slantLegs(sol)
			t.Logf("%s, tidy %v: %d legs aslant, %.0f mm", name, tidy, count, long)
			sums[n] = long
		}
		if sums[1] > sums[0]+1 {
			t.Errorf("%s: %.0f mm aslant with tidy, %.0f without", name, sums[1], sums[0])
		}
		all[0], all[1] = all[0]+sums[0], all[1]+sums[1]
	}
	if all[1] >= all[0] {
		t.Errorf("%.0f mm aslant on all demos with tidy, %.0f without", all[1], all[0])
	}
}
