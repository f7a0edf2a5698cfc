package session

import (
	"context"
	"errors"
	"strings"

	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/mend"
)

// WayOut is the search for the ways out of one finding. Its zero value is none.
type WayOut struct {
	Finding check.Finding
	Asked   bool
	Looking bool
	Spent   float64 // of the allowed effort, 0 to 1
	Stopped bool    // the person ended it
	Advice  mend.Advice
	Err     error
}

// outlook is a search for ways out that is under way or done.
type outlook struct {
	now  WayOut
	stop context.CancelFunc
}

// progressSteps is how many times a search for ways out tells how far it is.
const progressSteps = 50

// LookForWayOut looks for ways out of a finding of the answer that is shown, in
// the background. An edit of the plan ends the search and forgets what it found.
func (s *Session) LookForWayOut(f check.Finding) {
	if !s.Now().Current() {
		return
	}
	s.forgetWayOut()
	ctx, stop := context.WithCancel(context.Background())
	o := &outlook{WayOut{Finding: f, Asked: true, Looking: true}, stop}
	s.outlook = o
	plan, sol, tools := s.history.plan(), s.answer.solution, s.tools
	search := mend.Search{Progress: s.progress(o)}
	tools.Go(func() {
		defer stop()
		advice, err := guard(func() (mend.Advice, error) { return tools.Advise(ctx, plan, sol, f, search) })
		tools.Dispatch(func() { s.advised(o, advice, err) })
	})
	s.publish()
}

// progress tells the session how far a search is, in so many steps. It is
// called by the worker.
func (s *Session) progress(o *outlook) func(spent, allowed int) {
	told, dispatch := 0, s.tools.Dispatch
	return func(spent, allowed int) {
		step := spent * progressSteps / max(allowed, 1)
		if step == told {
			return
		}
		told = step
		dispatch(func() {
			if s.outlook == o && o.now.Looking {
				o.now.Spent = float64(step) / progressSteps
				s.publish()
			}
		})
	}
}

// advised takes what a search found; one that is no longer wanted says nothing.
func (s *Session) advised(o *outlook, advice mend.Advice, err error) {
	if s.outlook != o {
		return
	}
	o.now.Looking, o.now.Advice = false, advice
	if !errors.Is(err, context.Canceled) {
		o.now.Err = err
	}
	s.publish()
}

// StopLooking ends the search for ways out.
func (s *Session) StopLooking() {
	if o := s.outlook; o != nil && o.now.Looking {
		o.now.Stopped = true
		o.stop()
		s.publish()
	}
}

// forgetWayOut ends the search and forgets what it found.
func (s *Session) forgetWayOut() {
	if s.outlook != nil {
		s.outlook.stop()
		s.outlook = nil
	}
}

// TakeWayOut makes the change of an offer, as one step of undo that is called
// by the offer's words.
func (s *Session) TakeWayOut(o mend.Offer) error {
	if !s.history.open() {
		return ErrNoPlan
	}
	next, err := o.Change.Apply(s.history.plan())
	if err != nil {
		return err
	}
	return s.Edit(strings.TrimSuffix(o.Words, "."), func(route.Plan) route.Plan { return next })
}
