package session

import (
	"context"
	"errors"
	"fmt"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/find"
)

// job is one plan to solve. No one changes the plan any more.
type job struct {
	version int
	plan    route.Plan
}

// solver runs one job at a time; only the newest of those waiting is kept.
type solver struct {
	running *job
	cancel  context.CancelFunc
	dropped bool // running was told to stop
	next    *job
}

func (r *solver) stop() {
	r.dropped = true
	r.cancel()
}

func (r *solver) busy() bool { return r.running != nil }

// solve asks for an answer to the plan that is shown. What runs is stopped,
// except in the middle of a drag: there an answer that is a frame late is
// better than none until the pointer rests.
func (s *Session) solve() {
	if !s.history.open() {
		return
	}
	want := &job{s.version, s.history.plan()}
	if !s.solver.busy() {
		s.start(want)
		return
	}
	if s.solver.running.version == s.version && !s.solver.dropped {
		s.solver.next = nil
		return
	}
	s.solver.next = want
	if s.history.drag == nil {
		s.solver.stop()
	}
}

func (s *Session) start(j *job) {
	ctx, stop := context.WithCancel(context.Background())
	s.solver = solver{running: j, cancel: stop}
	tools, insertion := s.tools, s.insertion
	tools.Go(func() {
		defer stop()
		sol, err := guard(func() (find.Solution, error) { return tools.Solve(ctx, j.plan) })
		if err != nil {
			tools.Dispatch(func() { s.finish(j, err) })
			return
		}
		tools.Dispatch(func() { s.found(j, sol) })
		list, err := guard(func() (cutlist.List, error) {
			list, err := tools.Build(ctx, j.plan, sol)
			if err != nil {
				return list, err
			}
			return known(insertion, list, sol), nil
		})
		tools.Dispatch(func() { s.listed(j, list, err) })
	})
}

// guard turns a panic of the planning into an error: it costs the answer, not
// the person's work.
func guard[T any](work func() (T, error)) (result T, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("the planning broke off, which is a fault of Tubewright: %v", r)
		}
	}()
	return work()
}

// found takes the runs of a job; its list is still being made.
func (s *Session) found(j *job, sol find.Solution) {
	if s.stale(j) {
		return
	}
	s.answer.solution, s.answer.solved, s.answer.err = sol, j.version, nil
	s.publish()
}

func (s *Session) listed(j *job, list cutlist.List, err error) {
	if err == nil && !s.stale(j) {
		s.take(list)
		s.answer.listed = j.version
	}
	s.finish(j, err)
}

// stale reports whether an answer belongs to a plan that is no longer wanted:
// the one before an opening, or one whose solving was stopped for a newer.
func (s *Session) stale(j *job) bool {
	return s.solver.running != j || (j.version != s.version && s.history.drag == nil)
}

// finish ends a job and starts the one that waits.
func (s *Session) finish(j *job, err error) {
	if s.solver.running != j {
		return
	}
	if err != nil && !errors.Is(err, context.Canceled) && j.version == s.version {
		s.answer.err = err
	}
	next := s.solver.next
	s.solver = solver{}
	if next != nil {
		s.start(next)
	}
	s.fit()
	s.publish()
}

// Stop ends the solving that is under way; the plan keeps its older answer
// until the next edit or [Session.SolveAgain]. Where it is only being looked how
// the tubes go in, it ends that.
func (s *Session) Stop() {
	if !s.solver.busy() {
		s.stopFitting()
		return
	}
	s.solver.stop()
	s.solver.next = nil
	s.answer.stopped = true
	s.publish()
}

// SolveAgain asks once more for the answer to the plan that is shown.
func (s *Session) SolveAgain() {
	s.answer.stopped, s.answer.err = false, nil
	s.endFitting()
	s.solve()
	s.publish()
}
