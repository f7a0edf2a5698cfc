package session

import (
	"context"
	"errors"
	"slices"

	"tubewright/cutlist"
	"tubewright/route/check"
	"tubewright/route/find"
	"tubewright/route/insert"
)

// ErrFittingStopped says that the person did not wait until it was known how the
// tubes go in.
var ErrFittingStopped = errors.New("the look how the tubes go in was stopped")

// fitting is a look how the tubes go in that is under way.
type fitting struct{ stop context.CancelFunc }

// known adds to a list how its tubes go in, where that is known already. It is
// for workers.
func known(i Insertion, l cutlist.List, sol find.Solution) cutlist.List {
	if i == nil {
		return l
	}
	if r, ok := i.Known(l.Plan, sol); ok {
		return l.AsPutIn(r)
	}
	return l
}

// take shows a new list. Where it is not known how the tubes go in, the findings
// of the plan before stay, until they have been looked at again.
func (s *Session) take(l cutlist.List) {
	if s.insertion == nil {
		s.answer.list = l
		return
	}
	if l.PutIn != nil {
		s.answer.old = of(l)
	} else {
		l = l.Again(s.answer.old)
	}
	s.answer.list = l
}

// of are the findings of a list about how its tubes go in.
func of(l cutlist.List) []check.Finding {
	return slices.DeleteFunc(slices.Clone(l.Findings), func(f check.Finding) bool { return !cutlist.OfPutIn(f) })
}

// fit looks how the tubes go in when the plan has rested for a moment, unless
// that is known. It takes ten times as long as a solve and waits for nobody.
func (s *Session) fit() {
	if s.insertion == nil || s.fitting != nil || s.answer.unfitted != nil || s.history.drag != nil || !s.Now().Current() || s.answer.list.PutIn != nil {
		return
	}
	ctx, stop := context.WithCancel(context.Background())
	f := &fitting{stop}
	s.fitting = f
	list, sol, tools, look := s.answer.list, s.answer.solution, s.tools, s.insertion
	tools.Go(func() {
		defer stop()
		if tools.Rest != nil {
			tools.Rest(ctx)
		}
		if ctx.Err() != nil {
			return // whoever ended it has forgotten it
		}
		report, err := guard(func() (insert.Report, error) { return look.Machine(ctx, list.Plan, sol) })
		tools.Dispatch(func() { s.fitted(f, list, report, err) })
	})
}

// fitted takes what a look found; one that is no longer wanted says nothing.
func (s *Session) fitted(f *fitting, l cutlist.List, r insert.Report, err error) {
	if s.fitting != f {
		return
	}
	s.fitting, s.answer.unfitted = nil, err
	if err == nil {
		s.take(l.AsPutIn(r))
	}
	s.publish()
}

// stopFitting ends a look because the person wants it.
func (s *Session) stopFitting() {
	if s.fitting != nil {
		s.endFitting()
		s.answer.unfitted = ErrFittingStopped
		s.publish()
	}
}

// endFitting ends a look and forgets that nobody wanted one.
func (s *Session) endFitting() {
	if s.fitting != nil {
		s.fitting.stop()
		s.fitting = nil
	}
	s.answer.unfitted = nil
}
