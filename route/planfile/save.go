package planfile

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"

	"tubewright/route"
)

// BeforeEnding is what the name of the version before ends in:
// "desk.plan.yaml.before".
const BeforeEnding = ".before"

// newMode is the permission of a plan that was not there before: everybody may
// read it, less what the person's umask takes when the program starts files
// elsewhere. Plans hold no secrets.
const newMode fs.FileMode = 0o644

// ChangedOnDiskError says that the file is no longer the one the plan was
// loaded from: somebody else wrote to it. Nothing was saved.
type ChangedOnDiskError struct{ Path string }

func (e *ChangedOnDiskError) Error() string {
	return fmt.Sprintf("%s was changed by somebody else since it was opened; load it again, save under another name, or save over it", e.Path)
}

// ReadOnlyError says that the file is marked as not to be written to. A rename
// could replace it all the same, but whoever marked it meant it.
type ReadOnlyError struct{ Path string }

func (e *ReadOnlyError) Error() string {
	return fmt.Sprintf("%s is marked read-only; take the mark away, save under another name, or save over it", e.Path)
}

const ownerMayWrite fs.FileMode = 0o200

// SaveError says which step of saving failed. The file is whole: either as it
// was or, once Done, as it is to be.
type SaveError struct {
	Path string
	Step string // what could not be done: "write beside it", "put it in place"
	Done bool   // the new text is in place, but may not survive a power cut
	Err  error
}

func (e *SaveError) Error() string {
	if e.Done {
		return fmt.Sprintf("save %s: the plan is saved, but the disk did not confirm it: %v", e.Path, e.Err)
	}
	return fmt.Sprintf("save %s: could not %s, so the file is as it was: %v", e.Path, e.Step, e.Err)
}

func (e *SaveError) Unwrap() error { return e.Err }

// Save writes a plan to a path as [Write] does, and never leaves half a file:
// the text goes into a new file beside it, onto the medium, and then takes the
// old one's name. The version before is kept beside it (see [BeforeEnding]).
// Links are followed, the permission stays.
//
// Errors are a *[NotWritableError], a *[ChangedOnDiskError] when src was loaded
// from this path and the file is no longer the same, a *[NotAFileError], a
// *[ReadOnlyError], or a *[SaveError].
func Save(path string, plan route.Plan, src *Source) (Report, error) {
	return saver{disk: osDisk{}}.save(path, plan, src)
}

// SaveOver is [Save] over whatever stands at the path now.
func SaveOver(path string, plan route.Plan, src *Source) (Report, error) {
	return saver{disk: osDisk{}, force: true}.save(path, plan, src)
}

type saver struct {
	disk  disk
	force bool
}

func (v saver) save(path string, plan route.Plan, src *Source) (Report, error) {
	text, report, err := write(plan, src, path)
	if err != nil {
		return Report{}, err
	}
	real, err := target(path)
	if err != nil {
		return Report{}, &SaveError{Path: path, Step: "find the file", Err: err}
	}
	old, mode, err := v.current(real)
	if err != nil {
		return Report{}, err
	}
	if !v.force && old != nil && src != nil && src.path == path && !bytes.Equal(old, src.data) {
		return Report{}, &ChangedOnDiskError{Path: path}
	}
	report.Source.path = path
	if old != nil && bytes.Equal(old, text) {
		return report, nil // nothing new: the version before stays the one before
	}
	report.Before, err = v.replace(real, old, text, mode)
	return report, err
}

// current gives what stands at the path; nil when nothing does.
func (v saver) current(path string) ([]byte, fs.FileMode, error) {
	old, mode, err := v.disk.read(path)
	var odd *NotAFileError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, newMode, nil
	case errors.As(err, &odd):
		return nil, 0, err
	case err != nil:
		return nil, 0, &SaveError{Path: path, Step: "read the file that is there", Err: err}
	case mode&ownerMayWrite == 0 && !v.force:
		return nil, 0, &ReadOnlyError{Path: path}
	case old == nil:
		old = []byte{} // there, but empty
	}
	return old, mode, nil
}

// replace keeps the old bytes beside the file and puts the new ones in place.
// The new text is on the medium before anything that is there is touched.
func (v saver) replace(path string, old, text []byte, mode fs.FileMode) (before string, err error) {
	made, err := v.disk.write(path, text, mode)
	if err != nil {
		return "", &SaveError{Path: path, Step: "write beside it", Err: errors.Join(err, v.discard(made))}
	}
	if old != nil {
		before = path + BeforeEnding
		if err := v.keep(before, old, mode); err != nil {
			return "", &SaveError{Path: path, Step: "keep the version before", Err: errors.Join(err, v.discard(made))}
		}
	}
	if err := v.disk.rename(made, path); err != nil {
		return "", &SaveError{Path: path, Step: "put it in place", Err: errors.Join(err, v.discard(made))}
	}
	if err := v.disk.settle(filepath.Dir(path)); err != nil {
		return before, &SaveError{Path: path, Step: "settle it", Done: true, Err: err}
	}
	return before, nil
}

func (v saver) keep(path string, old []byte, mode fs.FileMode) error {
	made, err := v.disk.write(path, old, mode)
	if err != nil {
		return errors.Join(err, v.discard(made))
	}
	if err := v.disk.rename(made, path); err != nil {
		return errors.Join(err, v.discard(made))
	}
	return nil
}

// discard takes away what a failed step left behind.
func (v saver) discard(made string) error {
	if made == "" {
		return nil
	}
	if err := v.disk.remove(made); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("and %s is left over: %w", made, err)
	}
	return nil
}
