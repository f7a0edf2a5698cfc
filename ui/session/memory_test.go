package session_test

import (
	"context"
	"reflect"
	"testing"

	"tubewright/assets"
	"tubewright/route"
	"tubewright/route/find"
	"tubewright/ui/session"
)

// TestEachOpenPlanHasASolverOfItsOwn: a solver that remembers is made for a plan
// when it is opened, and serves its edits until the next is.
func TestEachOpenPlanHasASolverOfItsOwn(t *testing.T) {
	var served []int
	made := 0
	s := session.New(session.Tools{
		Solver: func() func(context.Context, route.Plan) (find.Solution, error) {
			made++
			mine := made
			return func(_ context.Context, p route.Plan) (find.Solution, error) {
				served = append(served, mine)
				return solutionOf(p), nil
			}
		},
		Build:    newDesk(t).build,
		Go:       func(work func()) { work() },
		Dispatch: func(task func()) { task() },
	}, func(session.Snapshot) {})
	s.Empty()
	s.SolveAgain()
	s.Empty()
	if want := []int{1, 1, 2}; !reflect.DeepEqual(served, want) {
		t.Errorf("solvers asked: %v, want %v", served, want)
	}
}

// TestTheRealToolsRemember: the real solver, asked while another of its solves is
// being stopped, answers as find.Solve does.
func TestTheRealToolsRemember(t *testing.T) {
	data, _ := assets.Demo("classroom-batch")
	tasks := make(chan func(), 64)
	s := session.New(session.NewTools(func(task func()) { tasks <- task }), func(session.Snapshot) {})
	if err := s.OpenBytes("classroom-batch", data); err != nil {
		t.Fatal(err)
	}
	s.Stop()
	s.SolveAgain()
	for s.Now().Solving {
		(<-tasks)()
	}
	now := s.Now()
	want, err := find.Solve(t.Context(), now.Plan)
	if err != nil {
		t.Fatal(err)
	}
	if !now.Current() || !reflect.DeepEqual(now.Solution.Runs, want.Runs) {
		t.Errorf("current %v: the session's answer is another than a fresh solve's", now.Current())
	}
}
