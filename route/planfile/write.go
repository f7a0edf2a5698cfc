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
	if src != nil {
		return write(plan, src, src.name)
	}
	return write(plan, nil, "plan"+Ending)
}

// write is Write into a file of this name.
func write(plan route.Plan, src *Source, name string) ([]byte, Report, error) {
	w := writer{plan: plan, name: name}
	if w.plan.Catalogue == nil {
		w.plan.Catalogue = Shelf()
	}
	if w.plan.Name == "" {
		w.plan.Name = stem(w.name)
	}
	return w.write(src)
}

// writer writes one plan.
type writer struct {
	plan route.Plan
	name string // the file's, which names a plan that has no name of its own
}

func (w writer) write(src *Source) ([]byte, Report, error) {
	if src != nil && src.doc.root != nil {
		if made, lost, ok := w.patched(src.doc); ok {
			return made.data, lossy(Report{Source: made}, lost), nil
		}
	}
	return w.fresh(src)
}

// patched changes the text of the file, and says whether that came out sound.
func (w writer) patched(doc document) (made *Source, lost, ok bool) {
	f := form{factor: w.plan.Units.Factor(), shelf: w.plan.Catalogue}
	base := route.Defaults()
	base.Name = stem(w.name)
	it := planKeys.write(f, w.plan, base)
	if doc, ok = reordered(doc, it); !ok {
		return nil, false, false
	}
	text, lost, ok := patch(doc, it)
	if !ok {
		return nil, false, false
	}
	if doc.bom {
		text = byteOrderMark + text
	}
	made, err := w.proven(text)
	return made, lost, err == nil
}

func lossy(r Report, lost bool) Report {
	if lost {
		r.CommentsLost = true
		r.Message = "Some comments of the file stood on lines that were written afresh and are gone."
	}
	return r
}

// fresh writes the plan as if no file had been.
func (w writer) fresh(src *Source) ([]byte, Report, error) {
	f := form{factor: w.plan.Units.Factor(), shelf: w.plan.Catalogue}
	base := route.Defaults()
	made, err := w.proven(planKeys.write(f, w.plan, base).document())
	if err != nil {
		return nil, Report{}, err
	}
	report := Report{Source: made}
	if src != nil && comments(src.doc.text) {
		report.CommentsLost = true
		report.Message = "The file's layout could not be kept, so it was written afresh: its comments are gone."
	}
	return made.data, report, nil
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
