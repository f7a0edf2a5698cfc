package find

import (
	"context"
	"errors"
	"math"
	"reflect"
	"runtime"
	"slices"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// crossing is two straight runs that meet in the middle.
func crossing() route.Plan {
	plan := between(v(100, 200, 200), v(1, 0, 0), v(300, 200, 200), v(-1, 0, 0))
	plan.Case = mgl64.Vec3{400, 400, 400}
	plan.Parts = append(plan.Parts, hole("c", v(200, 80, 200), v(0, 1, 0)), hole("d", v(200, 330, 200), v(0, -1, 0)))
	plan.Runs = append(plan.Runs, route.Run{Name: "down", From: route.PortRef{Part: "c", Port: "p"}, To: route.PortRef{Part: "d", Port: "p"}})
	return plan
}

func solve(t *testing.T, plan route.Plan) Solution {
	t.Helper()
	sol, err := Solve(context.Background(), plan)
	if err != nil {
		t.Fatalf("Solve: %v", err)
	}
	return sol
}

// apartBy is whether two chosen ways keep a gap.
func apartBy(t *testing.T, sol Solution, need float64) {
	t.Helper()
	for i, s := range sol.Runs {
		for _, u := range sol.Runs[:i] {
			w, ok := s.Way()
			x, good := u.Way()
			if !ok || !good {
				t.Fatalf("runs without a way: %v, %v", s.Problem, u.Problem)
			}
			if short := (*halt)(nil).clash(limbsOfWay(w), limbsOfWay(x), need-margin, math.Inf(1)); short > 0 {
				t.Errorf("%q and %q lack %.3f mm", w.Run, x.Run, short)
			}
		}
	}
}

func TestCrossingRunsGoRoundEachOther(t *testing.T) {
	plan := crossing()
	sol := solve(t, plan)
	apartBy(t, sol, plan.Clear)
	if w, _ := sol.Runs[0].Way(); w.Name != "straight" {
		t.Errorf("one of the two stays straight, got %q", w.Name)
	}
	if r := sol.Runs[1].Ways[0].Reason; sol.Runs[1].Chosen == 0 || !strings.Contains(r, "too near to run run") {
		t.Errorf("the straight way across is marked, got %q", r)
	}
}

func TestConflictIsTold(t *testing.T) {
	plan := crossing()
	for i := range plan.Runs {
		plan.Runs[i].Way = route.Straight
	}
	sol := solve(t, plan)
	told := 0
	for _, s := range sol.Runs {
		var e *ConflictError
		if errors.As(s.Problem, &e) {
			told++
			if e.Run == e.With || e.Short <= 0 || e.Error() == "" {
				t.Errorf("got %+v", *e)
			}
		}
		if _, ok := s.Way(); !ok {
			t.Errorf("%q keeps no way: %v", s.Run.Name, s.Problem)
		}
	}
	if told != 1 {
		t.Errorf("%d conflicts told, want one", told)
	}
}

func TestPicksThatClashStay(t *testing.T) {
	plan := crossing()
	for i := range plan.Runs {
		plan.Runs[i].Pick = "straight"
	}
	for _, s := range solve(t, plan).Runs {
		if w, _ := s.Way(); w.Name != "straight" {
			t.Errorf("%q: picked straight, got %q", s.Run.Name, w.Name)
		}
	}
}

// TestEarlyRunsLeaveRoom: the straight way of the short run would be free, but a
// longer run's socket stands beside its path; both find their way.
func TestEarlyRunsLeaveRoom(t *testing.T) {
	plan := between(v(100, 200, 200), v(1, 0, 0), v(300, 200, 200), v(-1, 0, 0))
	plan.Parts = append(plan.Parts, hole("c", v(200, 175, 200), v(0, 1, 0)), hole("d", v(200, 600, 400), v(0, -1, 0)))
	plan.Runs = append(plan.Runs, route.Run{Name: "far", From: route.PortRef{Part: "c", Port: "p"}, To: route.PortRef{Part: "d", Port: "p"}})
	apartBy(t, solve(t, plan), plan.Clear)
}

// demoLike is several runs between parts with solids.
func demoLike() route.Plan {
	plan := crossing()
	plan = withExtras(plan)
	plan.Parts = append(plan.Parts, hole("e", v(60, 60, 60), v(1, 0, 0)), hole("f", v(330, 340, 330), v(0, -1, 0)),
		hole("g", v(60, 340, 60), v(0, 0, 1)), hole("h", v(340, 60, 120), v(-1, 0, 0)),
		box("block", v(150, 120, 40), v(220, 160, 100)))
	plan.Runs = append(plan.Runs,
		route.Run{Name: "long", From: route.PortRef{Part: "e", Port: "p"}, To: route.PortRef{Part: "f", Port: "p"}},
		route.Run{Name: "other", From: route.PortRef{Part: "g", Port: "p"}, To: route.PortRef{Part: "h", Port: "p"}})
	return plan
}

func TestOrderOfRunsAndPartsDoesNotMatter(t *testing.T) {
	plan := demoLike()
	want := solve(t, plan)
	apartBy(t, want, plan.Clear)
	for range len(plan.Runs) {
		plan.Runs = append(slices.Clone(plan.Runs[1:]), plan.Runs[0])
		got := solve(t, plan)
		for i, s := range got.Runs {
			j := slices.IndexFunc(want.Runs, func(w Solved) bool { return w.Run.Name == s.Run.Name })
			if !reflect.DeepEqual(s, want.Runs[j]) {
				t.Errorf("run %q, now number %d, is not what it was", s.Run.Name, i)
			}
		}
	}
}

func TestSameAnswerEveryTime(t *testing.T) {
	plan := demoLike()
	want := solve(t, plan)
	for n := range 10 {
		before := runtime.GOMAXPROCS(1 + n%2)
		got := solve(t, plan)
		runtime.GOMAXPROCS(before)
		if !reflect.DeepEqual(got, want) {
			t.Fatalf("answer %d differs from the first", n)
		}
	}
}

func TestSolveDoesNotWriteToThePlan(t *testing.T) {
	plan := demoLike()
	before := plan.Clone()
	solve(t, plan)
	if !reflect.DeepEqual(plan, before) {
		t.Error("the plan was changed")
	}
}

func TestCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := Solve(ctx, demoLike()); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v, want the context's error", err)
	}
	if _, err := Ways(ctx, demoLike(), "run"); !errors.Is(err, context.Canceled) {
		t.Errorf("Ways got %v, want the context's error", err)
	}
}

func TestWaysOfOneRun(t *testing.T) {
	plan := demoLike()
	ways, err := Ways(context.Background(), plan, "long")
	if err != nil || len(ways) == 0 {
		t.Fatalf("got %v, %v", names(ways), err)
	}
	if want := solve(t, plan).Runs[2].Ways; !reflect.DeepEqual(ways, want) {
		t.Errorf("Ways gives %v, Solve %v", names(ways), names(want))
	}
	if _, err := Ways(context.Background(), plan, "nothing"); err == nil {
		t.Error("a run that is not there must be an error")
	}
}

func TestEmptyPlan(t *testing.T) {
	if sol := solve(t, route.Defaults()); len(sol.Runs) != 0 {
		t.Errorf("got %v", sol.Runs)
	}
}
