package mend_test

import (
	"context"
	"errors"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
	"tubewright/route/mend"
)

// walled is a tube between two ports that a wall from side to side keeps apart:
// a search in vain through all the case.
func walled() route.Plan {
	plan := bench()
	plan.Parts = []route.Part{
		hole("a", vec{50, 140, 140}, vec{1, 0, 0}), hole("b", vec{440, 140, 140}, vec{-1, 0, 0}),
		box("wall", vec{200, 0, 0}, vec{220, 300, 300}),
	}
	plan.Runs = []route.Run{run("shut", "a.p", "b.p")}
	plan.Fittings = append(plan.Fittings, extender(15), extender(20))
	return plan
}

// A search that is cancelled comes back within 50 ms, with the context's error.
func TestCancel(t *testing.T) {
	plan := walled()
	sol, f := finding(t, plan, check.NoWay)
	best := time.Hour
	for range 3 { // a machine with other work may come late once
		ctx, cancel := context.WithCancel(context.Background())
		var told time.Time
		stop := time.AfterFunc(40*time.Millisecond, func() { told = time.Now(); cancel() })
		_, err := mend.Search{Effort: math.MaxInt32}.Advise(ctx, plan, sol, f)
		stop.Stop()
		if !errors.Is(err, context.Canceled) {
			t.Fatalf("got %v", err)
		}
		best = min(best, time.Since(told))
	}
	if best > 50*time.Millisecond {
		t.Errorf("comes back %v after it was cancelled", best)
	}
}

// The search spends no more than it may, and little above it; it says how far it
// is, and whether it came to its end.
func TestEffortIsBounded(t *testing.T) {
	plan := walled()
	sol, f := finding(t, plan, check.NoWay)
	solved, last := 0, 0
	search := mend.Search{
		Effort:   5000,
		Progress: func(spent, allowed int) { last = spent; solved += allowed - 5000 },
		Solve: func(ctx context.Context, p route.Plan) (find.Solution, error) {
			solved++
			return find.Solve(ctx, p)
		},
	}
	a, err := search.Advise(context.Background(), plan, sol, f)
	if err != nil || a.Whole || last != 5000 {
		t.Errorf("whole %v, %d of 5000 steps, %v", a.Whole, last, err)
	}
	if solved == 0 || solved > 5000/12+1 {
		t.Errorf("%d plans solved with 5000 steps, 12 at least each", solved)
	}
}

// A fan goes with its radiator, and a part that leans on a larger one is moved
// only with a word of doubt.
func TestWhatIsFastenedGoesWith(t *testing.T) {
	plan := bench()
	radiator := with(box("radiator", vec{94, 0, 100}, vec{154, 300, 200}), "p", vec{124, 300, 150}, vec{0, 1, 0}, route.Any)
	plan.Case[1] = 340
	plan.Parts = []route.Part{
		box("tower", vec{0, 0, 0}, vec{100, 340, 300}), radiator, box("fan", vec{154, 50, 110}, vec{179, 150, 190}),
	}
	a := advice(t, plan, check.PartHitsPart, mend.Search{})
	if got := words(a.Offers); len(got) == 0 || got[0] != "Move radiator 6 mm in +x, and fan with it." {
		t.Errorf("offers %q", got)
	}
	plan.Parts[2] = box("fan", vec{150, 50, 110}, vec{175, 150, 190}) // 4 mm in the radiator
	plan.Parts[0] = box("tower", vec{0, 0, 0}, vec{94, 340, 300})
	plan.Parts = append(plan.Parts, box("frame", vec{175, 0, 0}, vec{500, 10, 300}))
	a = advice(t, plan, check.PartHitsPart, mend.Search{})
	if got := words(a.Offers); !slices.Contains(got, "Move fan 4 mm in +x.") {
		t.Errorf("offers %q", got)
	}
}

// What is in the way is named even where no way came near.
func TestWhatIsInTheWay(t *testing.T) {
	plan := overASill()
	a := advice(t, plan, check.NoWay, mend.Search{})
	if !slices.Equal(a.InTheWay.Parts, []string{"sill"}) {
		t.Errorf("in the way: %+v", a.InTheWay)
	}
	plan = crossed()
	plan.Runs = plan.Runs[:1] // its ports are 40 mm out of line, whatever stands between
	if a = advice(t, plan, check.NoWay, mend.Search{}); a.InTheWay.What != "" || len(a.InTheWay.Parts) > 0 {
		t.Errorf("in the way: %+v", a.InTheWay)
	}
}

// A finding of another plan, and one that nothing can be done about, get nothing.
func TestNothingToOffer(t *testing.T) {
	plan := ring("out", "in")
	sol := solve(t, plan)
	for _, f := range []check.Finding{
		{Code: check.NoWay, Runs: []string{"feed"}},
		{Code: check.NoWay, Runs: []string{"gone"}},
		{Code: check.PortOpen, Parts: []string{"block"}},
		{Code: check.StockTooShort, Runs: []string{"feed"}, Measure: 100},
	} {
		offers, err := mend.Offers(context.Background(), plan, sol, f)
		if err != nil || len(offers) > 0 {
			t.Errorf("%s of a sound plan: %q, %v", f.Code, words(offers), err)
		}
	}
	if mend.Can(check.PortOpen) || !mend.Can(check.NoWay) {
		t.Error("a plug is no change to the plan, a way is")
	}
}

// In inches moves are in twentieths of an inch: 6 mm is 0.236 in.
func TestMovesInInches(t *testing.T) {
	plan := overASill()
	plan.Units = route.Inches
	a := advice(t, plan, check.NoWay, mend.Search{})
	if got := words(a.Offers); len(got) == 0 || got[0] != "Move sill 0.25 in in -y." {
		t.Errorf("offers %q", got)
	}
}

// The errors that go with a finding make an offer the better for it, and are told.
func TestWhatGoesWithIt(t *testing.T) {
	a := advice(t, ring("in", "out"), check.PumpBackwards, mend.Search{})
	if len(a.Offers) == 0 || a.Offers[0].Change.Kind() != "swap-ports" || len(a.Offers[0].Settles) != 1 {
		t.Fatalf("offers %q", words(a.Offers))
	}
	if s := a.Offers[0].Settles[0]; s.Code != check.PumpBackwards {
		t.Errorf("settles %s too", s.Code)
	}
	if c := a.Offers[0].Cost; c < 20 || c > 30 {
		t.Errorf("costs %.1f: 40 for a swap, shared by two, and what the tubes are longer", c)
	}
}

// A warning that comes with a change is told.
func TestWhatComesWithIt(t *testing.T) {
	plan := ring("out", "in")
	plan.Parts[1].Ports[2].At, plan.Parts[1].Ports[2].Facing = vec{150, 250, 150}, vec{0, 1, 0} // the fill, on top
	plan.Parts = append(plan.Parts, box("post", vec{230, 60, 100}, vec{260, 300, 210}))
	sol, f := finding(t, plan, check.PartHitsPart)
	offers, err := mend.Offers(context.Background(), plan, sol, f)
	if err != nil {
		t.Fatal(err)
	}
	for _, o := range offers {
		for _, b := range o.Brings {
			if b.Severity != check.Warning || strings.TrimSpace(b.What) == "" {
				t.Errorf("%q brings %+v", o.Words, b)
			}
		}
	}
	if len(offers) == 0 {
		t.Error("no offer")
	}
}
