package session_test

import (
	"context"
	"errors"
	"slices"
	"sync"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/find"
	"tubewright/ui/session"
)

func TestTheLatestPlanWins(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.settle()
	d.must(d.MovePart("pump", mgl64.Vec3{1, 0, 0}))
	d.must(d.MovePart("pump", mgl64.Vec3{2, 0, 0}))
	d.must(d.MovePart("pump", mgl64.Vec3{3, 0, 0}))
	if len(d.works) != 1 {
		t.Fatalf("%d solves were started at once, want 1", len(d.works))
	}
	d.solved = nil
	d.settle()
	if n := len(d.solved); n != 2 || d.solved[1].Parts[0].At[0] != 3 {
		t.Errorf("%d plans were solved, want the one that ran and the newest", n)
	}
	if now := d.Now(); !now.Current() || now.List.Plan.Parts[0].At[0] != 3 {
		t.Errorf("the answer shown is of x = %v, want 3", now.List.Plan.Parts[0].At[0])
	}
}

func TestAnAnswerToAnOlderPlanIsNotShown(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.work() // solved, its news still on the way
	d.must(d.MovePart("pump", mgl64.Vec3{1, 0, 0}))
	d.tell()
	if now := d.Now(); now.Solved != 0 || now.Listed != 0 || !now.Solving {
		t.Errorf("solved %d, listed %d, solving %v; want nothing shown yet", now.Solved, now.Listed, now.Solving)
	}
	d.settle()
	if !d.Now().Current() {
		t.Error("the newest plan was never answered")
	}
}

func TestADragShowsAnswersThatAreAFrameLate(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.settle()
	d.BeginDrag("Move pump")
	d.must(d.MovePart("pump", mgl64.Vec3{1, 0, 0}))
	late := d.Now().Version
	d.work()
	d.must(d.MovePart("pump", mgl64.Vec3{2, 0, 0}))
	d.tell()
	if now := d.Now(); now.Solved != late || !now.Solving || now.Current() {
		t.Errorf("while dragging: solved %d of %d, solving %v; want %d", now.Solved, now.Version, now.Solving, late)
	}
	d.EndDrag()
	d.settle()
	if now := d.Now(); !now.Current() || now.List.Plan.Parts[0].At[0] != 2 {
		t.Errorf("after the drag the answer is not that of its end: %+v", now.List.Plan.Parts[0].At)
	}
}

func TestEndOfADragDoesNotSolveTwice(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.settle()
	d.BeginDrag("Move pump")
	d.must(d.MovePart("pump", mgl64.Vec3{1, 0, 0}))
	d.solved = nil
	d.EndDrag()
	d.settle()
	if len(d.solved) != 1 {
		t.Errorf("%d solves for one move, want 1", len(d.solved))
	}
}

func TestStopAndSolveAgain(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.Stop()
	d.settle()
	if now := d.Now(); now.Solving || !now.Stopped || now.Err != nil || now.Current() {
		t.Errorf("stopped: solving %v, stopped %v, err %v", now.Solving, now.Stopped, now.Err)
	}
	d.SolveAgain()
	d.settle()
	if now := d.Now(); !now.Current() || now.Stopped {
		t.Error("asked again, the plan was not answered")
	}
}

func TestAFailedSolveIsTold(t *testing.T) {
	d := newDesk(t)
	d.fail = errors.New("no paper")
	d.Begin(twoParts())
	d.settle()
	if now := d.Now(); now.Err == nil || now.Solving {
		t.Fatalf("err %v, solving %v; want the error, and rest", now.Err, now.Solving)
	}
	d.fail = nil
	d.must(d.MovePart("pump", mgl64.Vec3{1, 0, 0}))
	d.settle()
	if now := d.Now(); now.Err != nil || !now.Current() {
		t.Errorf("after a sound edit err is %v", now.Err)
	}
}

func TestAPanicOfThePlanningIsAnError(t *testing.T) {
	var tasks []func()
	s := session.New(session.Tools{
		Solve:    func(context.Context, route.Plan) (find.Solution, error) { panic("boom") },
		Go:       func(work func()) { work() },
		Dispatch: func(task func()) { tasks = append(tasks, task) },
	}, func(session.Snapshot) {})
	s.Begin(twoParts())
	for _, task := range tasks {
		task()
	}
	if err := s.Now().Err; err == nil || s.Now().Solving {
		t.Errorf("err %v, want one that names the panic", err)
	}
}

func TestOpeningDropsTheAnswerOfThePlanBefore(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.work()
	other := twoParts()
	other.Name = "other"
	d.Begin(other)
	d.tell()
	if d.Now().Solved != 0 {
		t.Error("the old plan's answer is shown with the new plan")
	}
	d.settle()
	if now := d.Now(); !now.Current() || now.List.Plan.Name != "other" || now.Dirty || now.Undo != "" {
		t.Errorf("after opening: current %v, list of %q, dirty %v", now.Current(), now.List.Plan.Name, now.Dirty)
	}
}

func TestWithRealGoroutines(t *testing.T) {
	queue := make(chan func(), 1000)
	var busy sync.WaitGroup
	s := session.New(session.Tools{
		Solve: func(_ context.Context, p route.Plan) (find.Solution, error) { return solutionOf(p), nil },
		Build: func(_ context.Context, p route.Plan, _ find.Solution) (cutlist.List, error) {
			return cutlist.List{Plan: p.Clone()}, nil
		},
		Go:       func(work func()) { busy.Go(work) },
		Dispatch: func(task func()) { queue <- task },
	}, func(session.Snapshot) {})
	s.Begin(twoParts())
	for i := range 50 {
		if err := s.NudgePart("pump", mgl64.Vec3{1, 0, 0}); err != nil {
			t.Fatal(err)
		}
		if i%7 == 0 {
			s.Undo()
		}
		for len(queue) > 0 {
			(<-queue)()
		}
	}
	for s.Now().Solving {
		(<-queue)()
	}
	busy.Wait()
	now := s.Now()
	if !now.Current() || !slices.Equal(now.List.Plan.Parts[0].At[:], now.Plan.Parts[0].At[:]) {
		t.Errorf("at rest the list is of %v, the plan has %v", now.List.Plan.Parts[0].At, now.Plan.Parts[0].At)
	}
}
