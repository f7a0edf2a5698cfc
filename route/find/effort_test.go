package find

import (
	"context"
	"testing"

	"tubewright/route"
)

// shutIn is a plan whose ports a wall from side to side of the case keeps apart.
func shutIn() route.Plan {
	plan := between(v(50, 140, 140), v(1, 0, 0), v(440, 140, 140), v(-1, 0, 0), box("wall", v(200, 0, 0), v(220, 300, 300)))
	plan.Case = v(500, 300, 300)
	plan.Fittings = append(plan.Fittings, extras()...)
	return plan
}

// A run that is shut in on all sides is given up after a bounded search.
func TestShutInIsGivenUp(t *testing.T) {
	sc := newScene(shutIn())
	run, _ := canonical(sc.plan.Runs[0])
	h, err := sc.newHunt(run, request{below: anyCost})
	if err != nil {
		t.Fatal(err)
	}
	ways, err := h.all(context.Background())
	if err == nil {
		t.Fatalf("%d ways through a wall", len(ways))
	}
	if first := h.effort.harder - mostHarder; first <= 0 || h.effort.spent <= first {
		t.Errorf("%d states looked at, %d before the pairs with a fitting more: the test says nothing of those", h.effort.spent, first)
	}
	if h.effort.spent > h.effort.harder {
		t.Errorf("%d states looked at, more than the %d allowed", h.effort.spent, h.effort.harder)
	}
}

func TestEffortSteps(t *testing.T) {
	for _, c := range []struct {
		e       effort
		bounded bool
		want    int
	}{
		{effort{spent: 90000}, false, mostSteps},
		{effort{spent: 90000}, true, betterSteps},
		{effort{spent: 10, harder: 10 + mostHarder}, false, harderSteps},
		{effort{spent: 10, harder: 10 + mostHarder}, true, harderSteps},
		{effort{spent: 10, brief: true}, true, betterSteps / briefly},
		{effort{spent: 100, harder: 170}, false, 70},
		{effort{spent: 100, harder: 170}, true, 70},
	} {
		if got := c.e.steps(c.bounded); got != c.want {
			t.Errorf("%+v, bounded %v: %d steps, want %d", c.e, c.bounded, got, c.want)
		}
	}
}

// A search among the same others is remembered, one among others is not.
func TestAskRemembers(t *testing.T) {
	plan := between(v(100, 100, 50), v(1, 0, 0), v(250, 250, 50), v(0, -1, 0))
	tab := newTable(newScene(plan))
	ctx := context.Background()
	first, err := tab.ask(ctx, 0, request{below: anyCost})
	if err != nil {
		t.Fatal(err)
	}
	first[0].Name = "changed by the caller"
	again, err := tab.ask(ctx, 0, request{others: []solid{}, below: anyCost})
	if err != nil || again[0].Name != "one bend" || len(tab.rows[0].asked) != 1 {
		t.Errorf("%d searches, best way %q, %v; want one, unchanged", len(tab.rows[0].asked), again[0].Name, err)
	}
	other := []solid{newSolid(first[0].Start.Bodies[0].Shapes[0], -1, "x")}
	if _, err := tab.ask(ctx, 0, request{others: other, below: anyCost}); len(tab.rows[0].asked) != 2 {
		t.Errorf("%d searches remembered, %v; want another for other surroundings", len(tab.rows[0].asked), err)
	}
}

// BenchmarkShutIn is the dearest kind of plan: every pair of chains is searched
// for nothing.
func BenchmarkShutIn(b *testing.B) {
	plan := shutIn()
	for b.Loop() {
		if _, err := Solve(context.Background(), plan); err != nil {
			b.Fatal(err)
		}
	}
}
