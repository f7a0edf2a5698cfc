package insert_test

import (
	"context"
	"reflect"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/route/find"
	"tubewright/route/insert"
)

// What is remembered is only what a fresh look would tell; what does not matter
// for putting in is told without a look.
func TestMemoryTellsWhatAFreshLookTells(t *testing.T) {
	plan, _ := demo(t, "classroom-batch")
	var y insert.Memory
	for _, step := range []struct {
		name  string
		known bool
		edit  func(*route.Plan)
	}{
		{"at first", false, func(*route.Plan) {}},
		{"once more", true, func(*route.Plan) {}},
		{"a count on hand, another saw", true, func(p *route.Plan) { p.OnHand, p.Saw.Kerf = []route.OnHand{{Item: "plug", Count: 9}}, 3 }},
		{"another price of bars", true, func(p *route.Plan) { p.Stock[0].Price *= 2 }},
		{"a part moved", false, func(p *route.Plan) { p.Parts[len(p.Parts)-1].At = p.Parts[len(p.Parts)-1].At.Add(mgl64.Vec3{0, 0, 1}) }},
		{"in other units", false, func(p *route.Plan) { p.Units = otherUnits(p.Units) }},
		{"a wider case", false, func(p *route.Plan) { p.Case[2] += 10 }},
		{"a run less", false, func(p *route.Plan) { p.Runs = p.Runs[:len(p.Runs)-1] }},
		{"no run", true, func(p *route.Plan) { p.Runs = nil }},
	} {
		plan = plan.Clone()
		step.edit(&plan)
		sol, err := find.Solve(t.Context(), plan)
		if err != nil {
			t.Fatal(err)
		}
		if _, ok := y.Known(plan, sol); ok != step.known {
			t.Errorf("%s: known %v, want %v", step.name, ok, step.known)
		}
		got, err := y.Machine(t.Context(), plan, sol)
		if err != nil {
			t.Fatal(err)
		}
		if want := machineOf(t, plan, sol, insert.Options{}); len(plan.Runs) > 0 && !reflect.DeepEqual(got, want) {
			t.Errorf("%s: remembered is %+v, looked at afresh %+v", step.name, got, want)
		}
	}
}

func otherUnits(u route.Units) route.Units {
	if u == route.Inches {
		return route.Millimetres
	}
	return route.Inches
}

// A look that was ended is not remembered.
func TestAnEndedLookIsNotRemembered(t *testing.T) {
	plan, sol := stacked().solve(t)
	var y insert.Memory
	ctx, stop := context.WithCancel(t.Context())
	stop()
	if _, err := y.Machine(ctx, plan, sol); err == nil {
		t.Error("an ended look gives no error")
	}
	if _, ok := y.Known(plan, sol); ok {
		t.Error("an ended look is remembered")
	}
}

// A finding stands at the middle of its tube.
func TestFindingsStandAtTheirTube(t *testing.T) {
	plan, sol := stacked().solve(t)
	r := machineOf(t, plan, sol, free)
	for _, f := range r.Findings() {
		way, _ := sol.Runs[0].Way()
		if ends := way.Start.Stop.At.Add(way.End.Stop.At).Mul(0.5); !f.Placed || mgl64.Vec3(f.At).Sub(ends).Len() > 1e-9 {
			t.Errorf("%s is placed %v at %v; the middle of its straight tube is %v", f.Code, f.Placed, f.At, ends)
		}
	}
}
