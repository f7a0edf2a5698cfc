package session

import (
	"math"

	"tubewright/bends"
	"tubewright/bends/trial"
	"tubewright/route"
	"tubewright/route/made"
)

// figure is what fitted radii and springbacks are rounded to, mm, degrees and
// percent: far below what a bend repeats.
const figure = 0.01

func rounded(v float64) float64 { return math.Round(v/figure) * figure }

// KeepTestBends notes the test bends of a tube as they were typed and changes
// none of its figures.
func (s *Session) KeepTestBends(tube string, list []trial.Bend) error {
	return s.editTube("Keep the test bends of "+tube, tube, func(t *route.Tube) { t.TestBends = list })
}

// UseTestBends notes the test bends of a tube and takes its radius and its
// springback from their fit; they are measured then. A radius below the tube's
// least was bent, so the least follows.
func (s *Session) UseTestBends(tube string, list []trial.Bend, fit trial.Fitted) error {
	return s.editTube("Use the test bends of "+tube, tube, func(t *route.Tube) {
		t.TestBends, t.KnownFrom = list, route.Measured
		t.Radius = rounded(fit.Radius.At)
		t.LeastRadius = min(t.LeastRadius, t.Radius)
		t.Springback = bends.Springback{Degrees: rounded(fit.Springback.Degrees), Percent: rounded(fit.Springback.Percent)}
	})
}

// editTube changes a tube of the plan; one of the catalogue becomes the plan's own.
func (s *Session) editTube(name, tube string, change func(*route.Tube)) error {
	if _, ok := s.history.plan().FindTube(tube); !ok {
		return &MissingError{"tube", tube}
	}
	return s.Edit(name, func(p route.Plan) route.Plan {
		change(p.OwnTube(tube))
		return p
	})
}

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
