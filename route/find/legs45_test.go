package find

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"tubewright/route"
)

// stepped is a run whose ports face each other with a step aside between them,
// among a few blocks.
func stepped(seed uint64) route.Plan {
	rng := rand.New(rand.NewPCG(seed, 11))
	plan := between(v(100, 200, 200), v(1, 0, 0), v(420+rng.Float64()*150, 200+80+rng.Float64()*120, 200), v(0, 0, 1))
	if seed%2 == 0 {
		plan.Parts[1] = hole("b", v(420+rng.Float64()*150, 280+rng.Float64()*120, 200), v(0, 1, 0))
	}
	for i := range rng.IntN(4) {
		p := v(180+rng.Float64()*200, 180+rng.Float64()*200, 180+rng.Float64()*60)
		plan.Parts = append(plan.Parts, box(string(rune('p'+i)), p, p.Add(v(20+rng.Float64()*30, 20+rng.Float64()*30, 30))))
	}
	return plan
}

// best is the cheapest clear way of a hunt that has slanting legs.
func bestSlanted(h *hunt) float64 {
	best := math.Inf(1)
	for _, f := range h.families {
		if !strings.Contains(f.name, "at 45") {
			continue
		}
		for _, i := range f.ideas {
			if _, at := h.try(i); at == nil {
				best = min(best, i.cost)
			}
		}
	}
	return best
}

// TestSquareSlantsAgainstTrying: where any place of a single slanting leg in a square
// route is clear, looked at each millimetre, a way with slanting legs is offered
// that costs no more.
func TestSquareSlantsAgainstTrying(t *testing.T) {
	found := 0
	for seed := range uint64(60) {
		plan := stepped(seed)
		h, err := newScene(plan).newHunt(plan.Runs[0], request{})
		if err != nil {
			t.Fatal(err)
		}
		if err := h.squares(context.Background(), h.a.plain, h.b.plain, math.MaxInt64); err != nil {
			t.Fatal(err)
		}
		got, want := bestSlanted(h), math.Inf(1)
		var squares []idea
		for _, f := range h.families {
			if strings.Contains(f.name, "square") {
				squares = append(squares, f.ideas...)
			}
		}
		slices.SortStableFunc(squares, byCost)
		for _, i := range squares[:min(len(squares), slantRoutes)] {
			want = min(want, tryJogs(h, i))
		}
		if got > want+1e-6 {
			t.Errorf("seed %d: offered at %.4f, trying finds %.4f", seed, got, want)
		}
		if !math.IsInf(want, 1) {
			found++
		}
	}
	if found < 10 {
		t.Errorf("only %d scenes have a way with a slanting leg: the test says little", found)
	}
}

// tryJogs is the least cost of one slanting leg in a route, tried each millimetre.
func tryJogs(h *hunt, i idea) float64 {
	best := math.Inf(1)
	path := i.path()
	for n := 1; n+2 < len(path); n++ {
		in, aside, out := path[n].Sub(path[n-1]), path[n+1].Sub(path[n]), path[n+2].Sub(path[n+1])
		if math.Abs(in.Dot(aside)) > 1e-6 || in.Normalize().Dot(out.Normalize()) < 1-1e-9 {
			continue
		}
		for by := -in.Len(); by < out.Len()-aside.Len(); by++ {
			cut := i
			cut.corners = append([]vec(nil), i.corners...)
			cut.corners[n-1] = path[n].Add(in.Normalize().Mul(by))
			cut.corners[n] = path[n+1].Add(in.Normalize().Mul(by + aside.Len()))
			sh := measure(h.tube.Tube, cut.path())
			if sh.short > bendSlack || len(sh.turns) < 3 {
				continue
			}
			if _, at := h.try(cut); at == nil {
				best = min(best, costOf(h.plan.Weigh, h.shape(&cut), i.start, i.end))
			}
		}
	}
	return best
}
