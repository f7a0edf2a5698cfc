package planfile_test

import (
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"tubewright/route"
	"tubewright/route/planfile"
)

// desk is a copy of the full example in a folder of its own.
func desk(t *testing.T) (path string, plan route.Plan, src *planfile.Source) {
	t.Helper()
	text, err := os.ReadFile("testdata/full.plan.yaml")
	if err != nil {
		t.Fatal(err)
	}
	path = filepath.Join(t.TempDir(), "desk"+planfile.Ending)
	if err := os.WriteFile(path, text, 0o600); err != nil {
		t.Fatal(err)
	}
	plan, src, err = planfile.Load(path)
	if err != nil {
		t.Fatal(err)
	}
	return path, plan, src
}

func fileText(t *testing.T, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func TestSaveKeepsTheVersionBefore(t *testing.T) {
	path, plan, src := desk(t)
	first := fileText(t, path)
	for i, clear := range []float64{5, 6, 7} {
		before := fileText(t, path)
		plan.Clear = clear
		report, err := planfile.Save(path, plan, src)
		if err != nil {
			t.Fatalf("save %d: %v", i, err)
		}
		if got := fileText(t, report.Before); got != before {
			t.Errorf("save %d: %s holds\n%s\nwant the version before:\n%s", i, report.Before, got, before)
		}
		src = report.Source
	}
	back, _, err := planfile.Load(path)
	if err != nil || !planfile.Same(plan, back) || fileText(t, path) == first {
		t.Errorf("the saved plan came back different (%v)", err)
	}
}

func TestSaveOfNothingNewTouchesNothing(t *testing.T) {
	path, plan, src := desk(t)
	report, err := planfile.Save(path, plan, src)
	if err != nil || report.Before != "" {
		t.Fatalf("Save = %+v, %v; want no version before", report, err)
	}
	if _, err := os.Stat(path + planfile.BeforeEnding); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("a version before was kept of a file that did not change: %v", err)
	}
}

func TestSaveKeepsThePermission(t *testing.T) {
	path, plan, src := desk(t)
	plan.Clear = 5
	report, err := planfile.Save(path, plan, src)
	if err != nil {
		t.Fatal(err)
	}
	if runtime.GOOS == "windows" {
		return // permissions are of another kind there
	}
	for _, p := range []string{path, report.Before} {
		if info, err := os.Stat(p); err != nil || info.Mode().Perm() != 0o600 {
			t.Errorf("%s has mode %v (%v), want that of the file before, 0600", p, info.Mode(), err)
		}
	}
}

func TestSaveSeesThatSomebodyElseWrote(t *testing.T) {
	path, plan, src := desk(t)
	if err := os.WriteFile(path, []byte("# theirs\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	plan.Clear = 5
	_, err := planfile.Save(path, plan, src)
	var changed *planfile.ChangedOnDiskError
	if !errors.As(err, &changed) || fileText(t, path) != "# theirs\n" {
		t.Fatalf("Save = %v; want a ChangedOnDiskError and their file untouched", err)
	}
	report, err := planfile.SaveOver(path, plan, src)
	if err != nil || fileText(t, report.Before) != "# theirs\n" {
		t.Errorf("SaveOver = %+v, %v; want theirs kept as the version before", report, err)
	}
}

func TestSaveAgainAfterTheFileWasDeleted(t *testing.T) {
	path, plan, src := desk(t)
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	if report, err := planfile.Save(path, plan, src); err != nil || report.Before != "" {
		t.Errorf("Save = %+v, %v; want the file back and no version before", report, err)
	}
}

func TestSaveUnderAnotherNameKeepsTheComments(t *testing.T) {
	path, plan, src := desk(t)
	other := filepath.Join(filepath.Dir(path), "other"+planfile.Ending)
	report, err := planfile.Save(other, plan, src)
	if err != nil || fileText(t, other) != fileText(t, path) || report.Source.Path() != other {
		t.Errorf("Save = %v, source path %q; want the same text at %s", err, report.Source.Path(), other)
	}
}

func TestSaveFollowsLinks(t *testing.T) {
	path, plan, src := desk(t)
	folder := t.TempDir()
	link, ring := filepath.Join(folder, "link"+planfile.Ending), filepath.Join(folder, "ring"+planfile.Ending)
	if err := errors.Join(os.Symlink(path, link), os.Symlink(ring, ring)); err != nil {
		t.Fatal(err)
	}
	plan.Clear = 5
	if _, err := planfile.Save(link, plan, src); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Lstat(link); err != nil || info.Mode()&os.ModeSymlink == 0 {
		t.Errorf("the link was replaced by a file (%v)", err)
	}
	if back, _, err := planfile.Load(path); err != nil || back.Clear != 5 {
		t.Errorf("the file behind the link holds clear %v (%v), want 5", back.Clear, err)
	}
	var failed *planfile.SaveError
	if _, err := planfile.Save(ring, plan, src); !errors.As(err, &failed) {
		t.Errorf("Save through a link to itself = %v, want a SaveError", err)
	}
}

func TestSaveWhereItCannot(t *testing.T) {
	path, plan, src := desk(t)
	var odd *planfile.NotAFileError
	if _, err := planfile.Save(filepath.Dir(path), plan, src); !errors.As(err, &odd) {
		t.Errorf("Save over a folder = %v, want a NotAFileError", err)
	}
	var failed *planfile.SaveError
	if _, err := planfile.Save(filepath.Join(path, "below"+planfile.Ending), plan, src); !errors.As(err, &failed) {
		t.Errorf("Save below a file = %v, want a SaveError", err)
	}
	if _, err := planfile.Save(filepath.Join(filepath.Dir(path), "no", "folder"+planfile.Ending), plan, src); !errors.As(err, &failed) {
		t.Errorf("Save in a folder that is not there = %v, want a SaveError", err)
	}
}

func TestSaveLeavesAReadOnlyFileAlone(t *testing.T) {
	path, plan, src := desk(t)
	before := fileText(t, path)
	if err := os.Chmod(path, 0o400); err != nil {
		t.Fatal(err)
	}
	plan.Clear = 5
	var marked *planfile.ReadOnlyError
	if _, err := planfile.Save(path, plan, src); !errors.As(err, &marked) || fileText(t, path) != before {
		t.Errorf("Save = %v; want a ReadOnlyError and the file untouched", err)
	}
	if _, err := planfile.SaveOver(path, plan, src); err != nil {
		t.Errorf("SaveOver = %v, want it saved", err)
	}
}

func TestSaveOfAPlanNoFileCanHold(t *testing.T) {
	path, plan, src := desk(t)
	before := fileText(t, path)
	plan.Name = "two\nlines"
	var no *planfile.NotWritableError
	if _, err := planfile.Save(path, plan, src); !errors.As(err, &no) || fileText(t, path) != before {
		t.Errorf("Save = %v; want a NotWritableError and the file untouched", err)
	}
}
