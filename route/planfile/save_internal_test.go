package planfile

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// cutOff is a disk that does so many steps and then fails every further one,
// as if the program had been killed there.
type cutOff struct {
	osDisk
	left int
}

var errKilled = errors.New("killed")

func (d *cutOff) step() error {
	if d.left--; d.left < 0 {
		return errKilled
	}
	return nil
}

func (d *cutOff) read(path string) ([]byte, fs.FileMode, error) {
	if err := d.step(); err != nil {
		return nil, 0, err
	}
	return d.osDisk.read(path)
}

// write, when cut off, leaves half of the new file behind.
func (d *cutOff) write(path string, data []byte, mode fs.FileMode) (string, error) {
	if err := d.step(); err != nil {
		made, writeErr := d.osDisk.write(path, data[:len(data)/2], mode)
		return made, errors.Join(err, writeErr)
	}
	return d.osDisk.write(path, data, mode)
}

func (d *cutOff) rename(from, to string) error {
	if err := d.step(); err != nil {
		return err
	}
	return d.osDisk.rename(from, to)
}

func (d *cutOff) remove(path string) error {
	if err := d.step(); err != nil {
		return err
	}
	return d.osDisk.remove(path)
}

func (d *cutOff) settle(folder string) error {
	if err := d.step(); err != nil {
		return err
	}
	return d.osDisk.settle(folder)
}

// Killed after any number of steps, the plan is there whole, old or new, and
// the version before is whole too.
func TestSaveKilledAnywhere(t *testing.T) {
	const steps = 6 // read, write new, write old, rename old, rename new, settle
	for left := range steps + 1 {
		path, older, old := saved(t)
		plan, src, err := Load(path)
		if err != nil {
			t.Fatal(err)
		}
		plan.Clear = 7
		_, err = saver{disk: &cutOff{left: left}}.save(path, plan, src)
		if killed := left < steps; killed != errors.Is(err, errKilled) {
			t.Errorf("killed after %d steps: error is %v", left, err)
		}
		now, before := contents(t, path), contents(t, path+BeforeEnding)
		if now != old && !strings.Contains(now, "clear: 7") {
			t.Errorf("killed after %d steps: the file is neither old nor new:\n%s", left, now)
		}
		if before != older && before != old {
			t.Errorf("killed after %d steps: the version before is neither of the two:\n%s", left, before)
		}
		var failed *SaveError
		if errors.As(err, &failed) && failed.Done != (now != old) {
			t.Errorf("killed after %d steps: Done is %v, but the file holds the new plan: %v", left, failed.Done, now != old)
		}
	}
}

// saved makes a plan that has been saved twice, and gives both texts.
func saved(t *testing.T) (path, older, old string) {
	t.Helper()
	path = filepath.Join(t.TempDir(), "desk"+Ending)
	plan, _, err := Load("testdata/full.plan.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, clear := range []float64{5, 6} {
		plan.Clear = clear
		if _, err := Save(path, plan, nil); err != nil {
			t.Fatal(err)
		}
	}
	return path, contents(t, path+BeforeEnding), contents(t, path)
}

func contents(t *testing.T, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// A step that fails once is cleaned up after: no temporary file stays.
func TestSaveCleansUp(t *testing.T) {
	for failing := 1; failing < 5; failing++ {
		path, _, old := saved(t)
		plan, src, err := Load(path)
		if err != nil {
			t.Fatal(err)
		}
		plan.Clear = 7
		_, err = saver{disk: &failsOnce{at: failing}}.save(path, plan, src)
		var failed *SaveError
		if !errors.As(err, &failed) || failed.Done || contents(t, path) != old {
			t.Errorf("step %d failing: %v; the file holds:\n%s", failing, err, contents(t, path))
		}
		names, err := filepath.Glob(filepath.Join(filepath.Dir(path), ".*"))
		if err != nil || len(names) > 0 {
			t.Errorf("step %d failing leaves %v behind (%v)", failing, names, err)
		}
	}
}

type failsOnce struct {
	cutOff
	at, count int
}

func (d *failsOnce) fail() error {
	d.count++
	if d.count-1 == d.at {
		return fmt.Errorf("step %d: %w", d.at, errKilled)
	}
	return nil
}

func (d *failsOnce) read(path string) ([]byte, fs.FileMode, error) {
	d.left = 1
	if err := d.fail(); err != nil {
		return nil, 0, err
	}
	return d.cutOff.read(path)
}

func (d *failsOnce) write(path string, data []byte, mode fs.FileMode) (string, error) {
	d.left = 1
	if d.fail() != nil {
		d.left = 0
	}
	return d.cutOff.write(path, data, mode)
}

func (d *failsOnce) rename(from, to string) error {
	d.left = 1
	if err := d.fail(); err != nil {
		return err
	}
	return d.cutOff.rename(from, to)
}

func (d *failsOnce) remove(path string) error {
	d.left = 1
	return d.cutOff.remove(path)
}
