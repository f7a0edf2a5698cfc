package mend_test

import (
	"context"
	"testing"

	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/mend"
	"tubewright/route/planfile/demoplan"
)

// BenchmarkAdvise looks for the ways out of one finding, and reports how many
// steps of work that took and how many offers came of it.
func BenchmarkAdvise(b *testing.B) {
	for _, bb := range []struct {
		name string
		plan func(*testing.B) route.Plan
		code check.Code
	}{
		{"glass over a sill", func(*testing.B) route.Plan { return overASill() }, check.NoWay},
		{"a wall across the case", func(*testing.B) route.Plan { return walled() }, check.NoWay},
		{"a part in a part", func(*testing.B) route.Plan { return twoInOne() }, check.PartHitsPart},
		{"museum, front radiator 6 mm in", museumPushed, check.PartHitsPart},
		{"museum, a board across a run", museumBarred, check.NoWay},
	} {
		b.Run(bb.name, func(b *testing.B) {
			plan := bb.plan(b)
			sol, f := finding(b, plan, bb.code)
			for _, effort := range []int{mend.QuickEffort, mend.DefaultEffort} {
				b.Run(map[int]string{mend.QuickEffort: "quick", mend.DefaultEffort: "long"}[effort], func(b *testing.B) {
					steps, offers := 0, 0
					for b.Loop() {
						search := mend.Search{Effort: effort, Progress: func(spent, _ int) { steps = spent }}
						a, err := search.Advise(context.Background(), plan, sol, f)
						if err != nil {
							b.Fatal(err)
						}
						offers = len(a.Offers)
						if b.N == 1 {
							b.Log(words(a.Offers))
						}
					}
					b.ReportMetric(float64(steps), "steps")
					b.ReportMetric(float64(offers), "offers")
				})
			}
		})
	}
}

func museum(b *testing.B) route.Plan {
	b.Helper()
	return demoplan.Read(b, "conservation-scanner")
}

// museumPushed has its front radiator and that one's fans pushed into the column.
func museumPushed(b *testing.B) route.Plan {
	b.Helper()
	plan := museum(b)
	for i, k := range plan.Parts {
		if k.Name == "front" || k.Name == "front-fan-1" || k.Name == "front-fan-2" {
			plan.Parts[i].At[0] -= 31
		}
	}
	return plan
}

// museumBarred has a board before the pump's outlet.
func museumBarred(b *testing.B) route.Plan {
	b.Helper()
	plan := museum(b)
	plan.Parts = append(plan.Parts, box("board-2", vec{190, 10, 105}, vec{260, 75, 108}))
	return plan
}
