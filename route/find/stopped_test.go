package find_test

import (
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/assets"
	"tubewright/route"
	"tubewright/route/find"
)

// stopped is a context that says it was cancelled once it has been looked at so
// often: a moment that does not hang on the clock.
type stopped struct {
	context.Context
	looks, after int
}

func stoppedAfter(looks int) *stopped { return &stopped{context.Background(), 0, looks} }

func (s *stopped) Err() error {
	if s.looks++; s.looks > s.after {
		return context.Canceled
	}
	return nil
}

const (
	// never is a look that no solve comes to.
	never = 1 << 40
	// looksToReturn is how often a solve may look again once it was told to stop.
	looksToReturn = 16
)

// mustStop calls for a solve that is to be stopped, and checks that it soon was.
func mustStop(t *testing.T, what string, after int, solve func(context.Context) (find.Solution, error)) {
	t.Helper()
	ctx := stoppedAfter(after)
	sol, err := solve(ctx)
	if !errors.Is(err, context.Canceled) || len(sol.Runs) > 0 {
		t.Errorf("%s: stopped after look %d: got %d runs, error %v", what, after, len(sol.Runs), err)
	}
	if ctx.looks > after+looksToReturn {
		t.Errorf("%s: stopped after look %d: %d more looks", what, after, ctx.looks-after)
	}
}

// mustEqual checks that a solution is another, to the last bit.
func mustEqual(t *testing.T, what string, got, want find.Solution) {
	t.Helper()
	for i, s := range got.Runs {
		if w := want.Runs[i]; words(s) != words(w) || !reflect.DeepEqual(s.Ways, w.Ways) || s.Chosen != w.Chosen || s.Drawn != w.Drawn {
			t.Errorf("%s, %s: another answer than undisturbed", what, s.Run.Name)
		}
	}
}

// stoppable are the plans that are stopped: the demos, one of them with a tube that
// cannot be bent between ports out of line, and crowded cases, of which one has a run
// without a way and one a clash.
func stoppable(t *testing.T) map[string]route.Plan {
	plans := map[string]route.Plan{}
	for _, name := range assets.Demos() {
		plans[name] = demo(t, name)
	}
	plan := demo(t, assets.Demos()[0]).Clone()
	top := slices.IndexFunc(plan.Parts, func(p route.Part) bool { return p.Name == "top" })
	plan.Parts[top].At[0] += 3
	plans["out of line"] = plan
	for _, seed := range []uint64{2, 46, 78} {
		plans[fmt.Sprintf("crowd %d", seed)] = crowd(seed)
	}
	return plans
}

// TestStoppedAnywhere: wherever a solve is stopped it soon ends with the context's
// error, and solved again it gives what it gives undisturbed, afresh and by a memory
// that was stopped before.
func TestStoppedAnywhere(t *testing.T) {
	const seed, moments = 17, 8
	for name, plan := range stoppable(t) {
		r := rand.New(rand.NewPCG(seed, uint64(len(name))))
		whole := stoppedAfter(never)
		want, err := find.Solve(whole, plan)
		if err != nil {
			t.Fatal(err)
		}
		var memory find.Memory
		for n := range moments {
			after := r.IntN(whole.looks)
			what := fmt.Sprintf("%s, seed %d, moment %d", name, seed, n)
			mustStop(t, what, after, func(ctx context.Context) (find.Solution, error) { return find.Solve(ctx, plan) })
			mustStop(t, what+", memory", after, func(ctx context.Context) (find.Solution, error) { return memory.Solve(ctx, plan) })
		}
		mustEqual(t, name, solved(t, plan), want)
		mustEqual(t, name+", memory", remembered(t, &memory, plan), want)
	}
}

// TestStoppedMemory: a memory whose solves are stopped at any moment, each then done
// again, answers as one that is never stopped, while parts are moved and runs edited.
func TestStoppedMemory(t *testing.T) {
	const seed = 18
	r := rand.New(rand.NewPCG(seed, 1))
	steps := 13
	if testing.Short() {
		steps = 3
	}
	for name, plan := range stoppable(t) {
		var disturbed, calm find.Memory
		undo := []route.Plan{plan}
		for step := range steps {
			next := undo[r.IntN(len(undo))]
			if step%3 > 0 {
				next = tried(r, next)
				undo = append(undo, next)
			}
			whole := stoppedAfter(never)
			want, err := calm.Solve(whole, next)
			if err != nil {
				t.Fatal(err)
			}
			what := fmt.Sprintf("%s, seed %d, step %d", name, seed, step)
			mustStop(t, what, r.IntN(whole.looks), func(ctx context.Context) (find.Solution, error) { return disturbed.Solve(ctx, next) })
			mustEqual(t, what, remembered(t, &disturbed, next), want)
		}
	}
}

// tried is a plan with a part moved a little or a run picked or asked for otherwise.
func tried(r *rand.Rand, plan route.Plan) route.Plan {
	plan = plan.Clone()
	if r.IntN(3) == 0 {
		run := &plan.Runs[r.IntN(len(plan.Runs))]
		run.Pick = []string{"", "one bend", "two square bends"}[r.IntN(3)]
		return plan
	}
	part := &plan.Parts[r.IntN(len(plan.Parts))]
	part.At = part.At.Add(mgl64.Vec3{float64(r.IntN(9) - 4), 0, float64(r.IntN(9) - 4)})
	return plan
}

// TestLooksAreNear: between two looks at the context no solve does more than so
// much work, counted in steps and not in time.
func TestLooksAreNear(t *testing.T) {
	const most = 2000
	plans := stoppable(t)
	plans["hall"] = hallPlan(2, 12, 60, mgl64.Vec3{800, 400, 300})
	for name, plan := range plans {
		if work := find.MostUnlooked(plan); work > most {
			t.Errorf("%s: %d steps between two looks, want at most %d", name, work, most)
		}
	}
}
