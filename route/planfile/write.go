package planfile

import (
	"fmt"

	"tubewright/route"
)

// Report tells what writing a plan did to its file.
type Report struct {
	// Source is the file as written: hand it to the next [Write] or [Save].
	Source *Source
	// CommentsLost is true when comments of the file could not be kept.
	CommentsLost bool
	// Message says so in a sentence fit for the person; empty: nothing to say.
	Message string
	// Before is where [Save] keeps the version before; empty: there was none.
	Before string
}

// NotWritableError says that a plan holds something its file cannot hold, such
// as a name with a line break or a number that is none.
type NotWritableError struct {
	Where string   // the first value that would not come back; empty when the text would not be read
	Why   Problems // what the reader would say of the text
}

func (e *NotWritableError) Error() string {
	if len(e.Why) > 0 {
		return "the plan cannot be written: its file would not be read again:\n" + e.Why.Error()
	}
	return fmt.Sprintf("the plan cannot be written: %s would not be read again as it is", e.Where)
}

// Write gives the text of a plan. With the source the plan came from, only what
// changed is changed in its text; comments, blank lines and everything else
// stay as they are. Without one, or where the change cannot be made soundly,
// the plan is written afresh, and the Report says what was lost. What is given
// out has been read again and is the plan. Errors are of type
// *[NotWritableError].
func Write(plan route.Plan, src *Source) ([]byte, Report, error) {
	w := writer{plan: plan, name: "plan" + Ending}
	if w.plan.Catalogue == nil {
		w.plan.Catalogue = Shelf()
	}
	if src != nil {
		w.name = src.name
	}
	return w.fresh(src)
}

type writer struct {
	plan route.Plan
	name string
}

// fresh writes the plan as if no file had been.
func (w writer) fresh(src *Source) ([]byte, Report, error) {
	text := w.item().document()
	made, err := w.proven(text)
	if err != nil {
		return nil, Report{}, err
	}
	return made.data, Report{Source: made}, nil
}

// item is the plan as it will stand in the file.
func (w writer) item() *item {
	base := route.Defaults()
	f := form{factor: w.plan.Units.Factor(), shelf: w.plan.Catalogue}
	return planKeys.write(f, w.plan, base)
}

// proven reads a text again and compares what comes back with the plan.
func (w writer) proven(text string) (*Source, error) {
	back, src, err := ReadWith(w.plan.Catalogue, w.name, []byte(text))
	if err != nil {
		return nil, notWritable(err)
	}
	if where := difference(w.plan, back); where != "" {
		return nil, &NotWritableError{Where: where}
	}
	return src, nil
}
