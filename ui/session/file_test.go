package session_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route/planfile"
	"tubewright/ui/session"
)

const planText = `# A bench, invented.
format: 1
name: Bench
case:
  size: [400, 300, 200]   # inside
parts:
  pump:
    at: [60, 80, 30]      # on the floor
    solids:
      - box: {from: [0, 0, 0], to: [40, 60, 40]}
`

// planFile writes the plan to a file of the test's own.
func planFile(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "bench.plan.yaml")
	write(t, path, planText)
	return path
}

func write(t *testing.T, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
}

func read(t *testing.T, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func (d *desk) saved(_ string, err error) {
	d.t.Helper()
	d.must(err)
}

func TestOpenEditSaveKeepsComments(t *testing.T) {
	d, path := newDesk(t), planFile(t)
	d.must(d.Open(path))
	if now := d.Now(); now.Path != path || now.Dirty || now.Plan.Name != "Bench" || !now.Solving {
		t.Fatalf("opened: %q of %q, dirty %v, solving %v", now.Plan.Name, now.Path, now.Dirty, now.Solving)
	}
	d.must(d.MovePart("pump", mgl64.Vec3{70, 80, 30}))
	d.saved(d.Save())
	want := strings.Replace(planText, "[60, 80, 30]", "[70, 80, 30]", 1)
	if got := read(t, path); got != want {
		t.Errorf("the saved file is\n%swant\n%s", got, want)
	}
	if now := d.Now(); now.Dirty || now.Undo != "Move pump" {
		t.Errorf("saved: dirty %v, undo %q", now.Dirty, now.Undo)
	}
	d.Undo()
	if !d.Now().Dirty {
		t.Error("undone past the saving, the plan does not count as changed")
	}
	d.saved(d.Save())
	if got := read(t, path); got != planText {
		t.Errorf("undone and saved the file is\n%swant it byte for byte as it was", got)
	}
}

func TestSaveRefuses(t *testing.T) {
	d := newDesk(t)
	if _, err := d.Save(); !errors.Is(err, session.ErrNoPlan) {
		t.Errorf("nothing open: %v", err)
	}
	if _, err := d.SaveAs("x"); !errors.Is(err, session.ErrNoPlan) {
		t.Errorf("nothing open: %v", err)
	}
	d.must(d.OpenBytes("demo", []byte(planText)))
	if _, err := d.Save(); !errors.Is(err, session.ErrNoPath) {
		t.Errorf("a demo: %v", err)
	}
	if _, err := d.SaveOver(); !errors.Is(err, session.ErrNoPath) {
		t.Errorf("a demo: %v", err)
	}
	path := planFile(t)
	d.must(d.Open(path))
	write(t, path, planText+"# by somebody else\n")
	var changed *session.ChangedError
	if _, err := d.Save(); !errors.As(err, &changed) || changed.Gone || changed.Path != path {
		t.Errorf("changed on disk: %v", err)
	}
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	if _, err := d.Save(); !errors.As(err, &changed) || !changed.Gone {
		t.Errorf("gone from disk: %v", err)
	}
	d.saved(d.SaveOver())
	d.saved(d.Save())
	if got := read(t, path); got != planText {
		t.Errorf("written over, the file is\n%s", got)
	}
}

func TestAFailedSaveLeavesThePlanUnsaved(t *testing.T) {
	d := newDesk(t)
	d.must(d.OpenBytes("demo", []byte(planText)))
	d.must(d.MovePart("pump", mgl64.Vec3{70, 80, 30}))
	if _, err := d.SaveAs(filepath.Join(t.TempDir(), "no", "such", "folder", "x.plan.yaml")); err == nil {
		t.Error("saving into no folder went well")
	}
	if now := d.Now(); !now.Dirty || now.Path != "" {
		t.Errorf("after it: dirty %v, path %q", now.Dirty, now.Path)
	}
}

func TestOpenThatFailsKeepsThePlan(t *testing.T) {
	d, path := newDesk(t), planFile(t)
	d.must(d.Open(path))
	bad := filepath.Join(t.TempDir(), "bad.plan.yaml")
	write(t, bad, "format: 1\nparts: 7\n")
	var problems planfile.Problems
	if err := d.Open(bad); !errors.As(err, &problems) {
		t.Errorf("a bad file: %v", err)
	}
	if err := d.Open(filepath.Join(t.TempDir(), "none")); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("no file: %v", err)
	}
	if err := d.OpenBytes("bad", []byte("7")); err == nil {
		t.Error("a bad text was opened")
	}
	if now := d.Now(); now.Path != path || now.Plan.Name != "Bench" {
		t.Errorf("the plan that was open is gone: %q of %q", now.Plan.Name, now.Path)
	}
}

func TestEmptyPlanCanBeSavedAndOpened(t *testing.T) {
	d := newDesk(t)
	d.Empty()
	path := filepath.Join(t.TempDir(), "new.plan.yaml")
	d.saved(d.SaveAs(path))
	d.must(d.Open(path))
	if now := d.Now(); now.Plan.Name != "New plan" || now.Plan.Case != (mgl64.Vec3{450, 450, 220}) || now.Plan.Tube == "" {
		t.Errorf("an empty plan came back as %q, %v, %q", now.Plan.Name, now.Plan.Case, now.Plan.Tube)
	}
}
