package find_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/route/find"
	"tubewright/route/made"
	"tubewright/route/survey"
)

// allMade is a solved plan with every run recorded as made.
func allMade(t *testing.T, plan route.Plan, sol find.Solution) route.Plan {
	t.Helper()
	for _, s := range sol.Runs {
		w, ok := s.Way()
		if !ok {
			continue
		}
		try := w.Attempt()
		try.Fits, try.Cut = true, w.Formed.Developed-w.Ends.SeatGap[0]-w.Ends.SeatGap[1]
		var err error
		if plan, err = made.Record(plan, s.Run.Name, try); err != nil {
			t.Fatal(err)
		}
	}
	return plan
}

func corners(s find.Solved) []mgl64.Vec3 {
	w, _ := s.Way()
	return w.Formed.Corners
}

func farOff(a, b []mgl64.Vec3) float64 {
	if len(a) != len(b) {
		return 1e9
	}
	worst := 0.0
	for i := range a {
		worst = max(worst, a[i].Sub(b[i]).Len())
	}
	return worst
}

// Every tube of a demo recorded as made is found again where it was, by a fresh
// solve and by a memory that has seen the plan before.
func TestMadeTubesAreFoundWhereTheyWere(t *testing.T) {
	plan := demo(t, "conservation-scanner")
	var memory find.Memory
	was := remembered(t, &memory, plan)
	plan = allMade(t, plan, was)
	fresh, again := solved(t, plan), remembered(t, &memory, plan)
	for i, s := range fresh.Runs {
		if w, _ := s.Way(); w.Name != find.AsMade || !s.Drawn || s.Problem != nil {
			t.Errorf("%s: way %q, drawn %v, problem %v", s.Run.Name, w.Name, s.Drawn, s.Problem)
		}
		if d := farOff(corners(s), corners(was.Runs[i])); d > 1e-3 {
			t.Errorf("%s: %.4f mm from where it was made", s.Run.Name, d)
		}
		if d := farOff(corners(s), corners(again.Runs[i])); d != 0 {
			t.Errorf("%s: a memory finds it elsewhere", s.Run.Name)
		}
	}
}

// A chain that is no longer there leaves a made run without a way, and says why.
func TestAMadeRunWhoseFittingIsGone(t *testing.T) {
	plan := allMade(t, demo(t, "conservation-scanner"), solved(t, demo(t, "conservation-scanner")))
	plan.Runs[0].Made[0].Start = route.Chain{{Fitting: "socket-that-was"}}
	if s := solved(t, plan).Runs[0]; s.Chosen >= 0 || s.Problem == nil {
		t.Errorf("way %d, problem %v", s.Chosen, s.Problem)
	}
}

// While ports are measured a little off, only the runs on them change.
func TestOnlyAffectedRunsChange(t *testing.T) {
	before := demo(t, "conservation-scanner")
	was := solved(t, before)
	for seed := range uint64(4) {
		random := rand.New(rand.NewPCG(seed, 0))
		groups := survey.Groups(before)
		g := groups[random.IntN(len(groups))]
		r := g.Rows[random.IntN(len(g.Rows))]
		reading := survey.Reading{Ref: r.Ref, From: r.From, Distance: r.Plan}
		for axis := range reading.Distance {
			reading.Distance[axis] += random.Float64()*1.6 - 0.8
		}
		after, _, err := survey.Take(before, []survey.Reading{reading}, survey.Options{})
		if err != nil {
			t.Fatal(err)
		}
		touched := survey.Affected(before, after)
		after, _ = find.Steady(after, was, solved(t, after), touched)
		for i, s := range solved(t, after).Runs {
			if d := farOff(corners(s), corners(was.Runs[i])); d > 0.02 && !slices.Contains(touched, s.Run.Name) {
				t.Errorf("seed %d: %s measured, and %s, which is not on it, moved by %.2f mm", seed, r.Ref, s.Run.Name, d)
			}
		}
	}
}

// A run that would take another way picks the one it had, where it is still found.
func TestSteadyPicksTheWayItHad(t *testing.T) {
	plan := demo(t, "conservation-scanner")
	was := solved(t, plan)
	now := find.Solution{Runs: slices.Clone(was.Runs)}
	i := slices.IndexFunc(now.Runs, func(s find.Solved) bool { return len(s.Ways) > 1 })
	other := (now.Runs[i].Chosen + 1) % len(now.Runs[i].Ways)
	had, _ := was.Runs[i].Way()
	now.Runs[i].Chosen = other
	name := now.Runs[i].Run.Name
	got, kept := find.Steady(plan, was, now, nil)
	if len(kept) != 1 || kept[0] != name || got.Runs[i].Pick != had.Name || plan.Runs[i].Pick != "" {
		t.Errorf("kept %v, pick %q; want %s to pick %q", kept, got.Runs[i].Pick, name, had.Name)
	}
	if got, kept = find.Steady(plan, was, now, []string{name}); len(kept) != 0 || got.Runs[i].Pick != "" {
		t.Errorf("a run that is touched was held: %v", kept)
	}
}
