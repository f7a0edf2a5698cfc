package session_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/ui/session"
)

// killed edits a plan with a journal and then is no more: the journal file is
// given the number of no program.
func killed(t *testing.T, dir, path string) {
	t.Helper()
	d := newDesk(t)
	d.Keep(session.NewJournal(dir))
	if path == "" {
		d.must(d.OpenBytes("demo", []byte(planText)))
	} else {
		d.must(d.Open(path))
	}
	d.BeginDrag("Move pump")
	d.must(d.MovePart("pump", mgl64.Vec3{66, 80, 30}))
	d.EndDrag()
	d.must(d.MovePart("pump", mgl64.Vec3{70, 80, 30}))
	own := journals(t, dir)
	if len(own) != 1 {
		t.Fatalf("the journal folder holds %v, want one file", own)
	}
	text := strings.Replace(read(t, own[0]), `"pid":`, `"pid":-`, 1)
	write(t, own[0]+".journal", text)
	d.must(d.Close())
	if left := journals(t, dir); len(left) != 1 {
		t.Fatalf("a closed session left its own journal: %v", left)
	}
}

func journals(t *testing.T, dir string) []string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(dir, "*.journal"))
	if err != nil {
		t.Fatal(err)
	}
	return files
}

func TestKilledWorkComesBack(t *testing.T) {
	dir, path := filepath.Join(t.TempDir(), "journal"), planFile(t)
	killed(t, dir, path)
	j := session.NewJournal(dir)
	lost, err := j.Lost()
	if err != nil || len(lost) != 1 || lost[0].Name != "Bench" || lost[0].Path != path {
		t.Fatalf("lost: %+v, %v; want the bench", lost, err)
	}
	d := newDesk(t)
	d.must(d.Recover(lost[0]))
	if now := d.Now(); d.at("pump")[0] != 70 || !now.Dirty || now.Path != path {
		t.Errorf("recovered: pump at %v, dirty %v, path %q", d.at("pump"), now.Dirty, now.Path)
	}
	d.saved(d.Save())
	if got, want := read(t, path), strings.Replace(planText, "[60, 80, 30]", "[70, 80, 30]", 1); got != want {
		t.Errorf("recovered and saved the file is\n%swant\n%s", got, want)
	}
	d.must(j.Discard(lost[0]))
	if lost, err := j.Lost(); len(lost) != 0 || err != nil {
		t.Errorf("discarded work is still lost: %v, %v", lost, err)
	}
}

func TestRecoveredWorkDoesNotWriteOverANewerFileUnasked(t *testing.T) {
	dir, path := filepath.Join(t.TempDir(), "journal"), planFile(t)
	killed(t, dir, path)
	lost, err := session.NewJournal(dir).Lost()
	if err != nil || len(lost) != 1 {
		t.Fatal(lost, err)
	}
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	d := newDesk(t)
	d.must(d.Recover(lost[0]))
	if _, err := d.Save(); err == nil {
		t.Error("the file is gone, and saving did not say so")
	}
}

func TestADemosWorkComesBackWithoutAFile(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "journal")
	killed(t, dir, "")
	lost, err := session.NewJournal(dir).Lost()
	if err != nil || len(lost) != 1 || lost[0].Path != "" {
		t.Fatalf("lost: %+v, %v", lost, err)
	}
	d := newDesk(t)
	d.must(d.Recover(lost[0]))
	if now := d.Now(); now.Path != "" || !now.Dirty {
		t.Errorf("recovered: path %q, dirty %v", now.Path, now.Dirty)
	}
}

func TestTheJournalFollowsUndoAndSaving(t *testing.T) {
	dir := t.TempDir()
	d := newDesk(t)
	d.Keep(session.NewJournal(dir))
	d.must(d.Open(planFile(t)))
	d.must(d.MovePart("pump", mgl64.Vec3{70, 80, 30}))
	d.Undo()
	if left := journals(t, dir); len(left) != 0 {
		t.Errorf("all undone, the journal still holds %v", left)
	}
	d.Redo()
	if left := journals(t, dir); len(left) != 1 {
		t.Errorf("done again, the journal holds %v, want one file", left)
	}
	d.saved(d.Save())
	if left := journals(t, dir); len(left) != 0 {
		t.Errorf("saved, the journal still holds %v", left)
	}
}

func TestARunningProgramsWorkIsNotLost(t *testing.T) {
	dir := t.TempDir()
	write(t, filepath.Join(dir, "1.journal"), `{"pid":1,"name":"x","text":""}`)
	write(t, filepath.Join(dir, "torn.journal"), `{"pid":`)
	lost, err := session.NewJournal(dir).Lost()
	if len(lost) != 0 {
		t.Errorf("program 1 always runs, yet its work is lost: %v", lost)
	}
	if err == nil || !strings.Contains(err.Error(), "torn") {
		t.Errorf("a torn journal is told as %v", err)
	}
}

func TestTroubleWithTheJournalIsTold(t *testing.T) {
	blocked := filepath.Join(t.TempDir(), "file")
	write(t, blocked, "")
	d := newDesk(t)
	d.Keep(session.NewJournal(filepath.Join(blocked, "journal")))
	d.must(d.OpenBytes("demo", []byte(planText)))
	d.must(d.MovePart("pump", mgl64.Vec3{70, 80, 30}))
	if d.Now().Trouble == nil {
		t.Error("the journal cannot be written, and nobody is told")
	}
}

func TestSettings(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "made")
	if s, err := session.LoadSettings(dir); err != nil || len(s.Recent) != 0 {
		t.Errorf("a first start: %+v, %v", s, err)
	}
	var s session.Settings
	for _, name := range strings.Split("a b c d e f g h i j b", " ") {
		s = s.Remember(filepath.Join(dir, name))
	}
	if len(s.Recent) != 8 || filepath.Base(s.Recent[0]) != "b" || filepath.Base(s.Recent[1]) != "j" {
		t.Errorf("recent files: %v", s.Recent)
	}
	s = s.Forget(s.Recent[0])
	if len(s.Recent) != 7 {
		t.Errorf("one forgotten: %v", s.Recent)
	}
	s.Theme = "dark"
	if err := s.Save(dir); err != nil {
		t.Fatal(err)
	}
	back, err := session.LoadSettings(dir)
	if err != nil || back.Theme != "dark" || len(back.Recent) != 7 {
		t.Errorf("came back as %+v, %v", back, err)
	}
	write(t, filepath.Join(dir, "settings.json"), "{")
	if _, err := session.LoadSettings(dir); err == nil {
		t.Error("torn settings were read")
	}
}
