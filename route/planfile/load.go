package planfile

import (
	"errors"
	"fmt"
	"io"
	"os"

	"tubewright/route"
)

// Load reads the plan file at a path. The error is of type [Problems] when the
// file could be read but is no good plan, else one of the operating system's.
func Load(path string) (route.Plan, *Source, error) {
	data, err := readBounded(path)
	if err != nil {
		return route.Plan{}, nil, fmt.Errorf("the plan: %w", err)
	}
	plan, src, err := Read(path, data)
	src.path = path
	return plan, src, err
}

// readBounded reads a file, but not much more of it than a plan may be long,
// so that a wrong path to a huge file is answered at once.
func readBounded(path string) (data []byte, err error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer func() { err = errors.Join(err, f.Close()) }()
	return io.ReadAll(io.LimitReader(f, MaxBytes+1))
}
