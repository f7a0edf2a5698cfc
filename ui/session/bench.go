package session

import (
	"tubewright/route"
	"tubewright/route/made"
)

// NoteTry records what came of a run's tube at the bench. One that fits is a
// fact from then on; the bar it was sawn from leaves the shelf, and what is left
// of it goes there.
func (s *Session) NoteTry(run string, try route.Attempt) error {
	return s.replace("Note a try at "+run, func(p route.Plan) (route.Plan, error) { return made.Record(p, run, try) })
}

// ForgetTry takes the last try of a run back.
func (s *Session) ForgetTry(run string) error {
	return s.replace("Take back a try at "+run, func(p route.Plan) (route.Plan, error) { return made.Forget(p, run) })
}

// FailTry says of the tube that holds a run that it fits no longer, and why.
func (s *Session) FailTry(run, wrong string) error {
	return s.replace(run+" fits no longer", func(p route.Plan) (route.Plan, error) { return made.Fail(p, run, wrong) })
}

// replace is an edit that may be refused.
func (s *Session) replace(name string, change func(route.Plan) (route.Plan, error)) error {
	next, err := change(s.history.plan())
	if err != nil {
		return err
	}
	return s.Edit(name, func(route.Plan) route.Plan { return next })
}
