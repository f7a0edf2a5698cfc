package session

import (
	"errors"
	"reflect"
	"strings"

	"tubewright/route"
	"tubewright/route/planfile"
)

// UnfitError says why a plan with a change made could not be kept in a file.
type UnfitError struct{ What, Fix string }

func (e *UnfitError) Error() string { return strings.TrimSuffix(e.What, ".") + ". " + e.Fix }

// Put makes one undoable change of values that were typed: only one that a plan
// file can hold, by the same rules as reading a file. Errors are of type
// *[UnfitError]. What changes nothing is no edit.
func (s *Session) Put(name string, change func(*route.Plan)) error {
	if !s.history.open() {
		return ErrNoPlan
	}
	old := s.history.plan()
	next := old.Clone()
	change(&next)
	if reflect.DeepEqual(old.Clone(), next) {
		return nil
	}
	if _, _, err := planfile.Write(next, nil); err != nil {
		return unfit(err)
	}
	return s.Edit(name, func(route.Plan) route.Plan { return next })
}

// unfit words what keeps a plan from its file for somebody who typed a value:
// without the places in a file that is not there.
func unfit(err error) error {
	var no *planfile.NotWritableError
	switch {
	case !errors.As(err, &no):
		return err
	case len(no.Why) > 0:
		return &UnfitError{no.Why[0].What, no.Why[0].Fix}
	}
	return &UnfitError{no.Where + " cannot be kept as it is", "Type another value."}
}
