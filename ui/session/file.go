package session

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"os"

	"tubewright/route"
	"tubewright/route/planfile"
)

// file is where the open plan came from and goes to.
type file struct {
	path   string           // empty: not saved yet
	source *planfile.Source // keeps comments when saved; nil: none
	sum    [sha256.Size]byte
}

func sumOf(data []byte) [sha256.Size]byte { return sha256.Sum256(data) }

// ErrNoPath says that the plan has no file yet: it must be saved under a name.
var ErrNoPath = errors.New("the plan has no file yet: save it under a name")

// ChangedError says that somebody else wrote to the file since it was opened
// or saved here.
type ChangedError struct {
	Path string
	Gone bool // it is not there any more
}

func (e *ChangedError) Error() string {
	if e.Gone {
		return fmt.Sprintf("%s has been moved or deleted since it was opened", e.Path)
	}
	return fmt.Sprintf("%s has been changed by something else since it was opened", e.Path)
}

// Open reads the plan file at a path. When it cannot, the plan that was open
// stays; problems of the file are of type [planfile.Problems].
func (s *Session) Open(path string) error {
	data, err := readFile(path)
	if err != nil {
		return fmt.Errorf("open plan: %w", err)
	}
	plan, source, err := planfile.Read(path, data)
	if err != nil {
		return err
	}
	s.closeJournal()
	s.begin(plan, file{path, source, sumOf(data)})
	return nil
}

// OpenBytes shows a plan that has no file of its own, such as a demo: saving
// asks for a name first.
func (s *Session) OpenBytes(name string, data []byte) error {
	plan, source, err := planfile.Read(name, data)
	if err != nil {
		return err
	}
	s.closeJournal()
	s.begin(plan, file{source: source})
	return nil
}

// Empty shows a plan with nothing in it but a case.
func (s *Session) Empty() {
	plan := route.Defaults()
	plan.Name, plan.Catalogue = "New plan", planfile.Shelf()
	plan.Case = [3]float64{450, 450, 220} // a usual case of middle size (common practice)
	if tubes := plan.Catalogue.Tubes; len(tubes) > 0 {
		plan.Tube = tubes[0].Name
	}
	s.closeJournal()
	s.begin(plan, file{})
}

// readFile reads a file, but not much more of it than a plan may be long.
func readFile(path string) (data []byte, err error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close() //nolint:errcheck // only read from: nothing to lose
	return io.ReadAll(io.LimitReader(f, planfile.MaxBytes+1))
}

// Save writes the plan to its file and says in a sentence what the person
// should know of it, if anything. It refuses with [ErrNoPath] when there is no
// file yet and with a *[ChangedError] when the file is not as it was left; see
// SaveOver.
func (s *Session) Save() (string, error) {
	switch {
	case !s.history.open():
		return "", ErrNoPlan
	case s.file.path == "":
		return "", ErrNoPath
	}
	data, err := readFile(s.file.path)
	if errors.Is(err, os.ErrNotExist) {
		return "", &ChangedError{s.file.path, true}
	}
	if err != nil {
		return "", fmt.Errorf("save plan: %w", err)
	}
	if sumOf(data) != s.file.sum {
		return "", &ChangedError{Path: s.file.path}
	}
	return s.saveTo(s.file.path)
}

// SaveOver writes the plan to its file whatever happened to that.
func (s *Session) SaveOver() (string, error) {
	if s.file.path == "" {
		return "", ErrNoPath
	}
	return s.saveTo(s.file.path)
}

// SaveAs writes the plan to a path, which becomes its file. What was there is
// written over: whether it may be is for the window to ask.
func (s *Session) SaveAs(path string) (string, error) {
	if !s.history.open() {
		return "", ErrNoPlan
	}
	return s.saveTo(path)
}

func (s *Session) saveTo(path string) (string, error) {
	s.EndDrag()
	report, err := planfile.Save(path, s.history.plan(), s.file.source)
	if err != nil {
		return "", err
	}
	data, err := readFile(path)
	if err != nil {
		return "", fmt.Errorf("the plan was written to %s, but cannot be read again: %w", path, err)
	}
	s.file = file{path, report.Source, sumOf(data)}
	s.history.keep()
	s.closeJournal()
	s.publish()
	return report.Message, nil
}

// text is the plan as its file would hold it.
func (s *Session) text() ([]byte, error) {
	data, _, err := planfile.Write(s.history.plan(), s.file.source)
	return data, err
}
