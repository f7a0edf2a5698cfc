//go:build window

package ui

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"tubewright/assets"
	"tubewright/route/check"
)

func fitted(b Boxes) bool { return atRest(b) && !b.Fitting }

// The window's list of findings holds those of putting in, the same as the sheets'
// answer; a part in a tube's way in takes "ready to cut" away.
func TestWindowListsWhatCannotBePutIn(t *testing.T) {
	text, _ := assets.Demo("classroom-batch")
	path := filepath.Join(t.TempDir(), "class.plan.yaml")
	if err := os.WriteFile(path, text, 0o600); err != nil {
		t.Fatal(err)
	}
	s := newStage(t, path)
	b := s.until("how the tubes go in", fitted)
	if !slices.Contains(b.Findings, check.InOrderOnly) || !slices.Contains(b.Findings, check.ServiceBlocked) {
		t.Errorf("the window's findings are %v", b.Findings)
	}
	dir := filepath.Join(t.TempDir(), "sheets")
	s.sheetsInto(dir)
	var codes []check.Code
	for _, f := range s.answerIn(dir).Findings {
		codes = append(codes, f.Code)
	}
	if !slices.Equal(codes, b.Findings) {
		t.Errorf("the answer has the findings %v, the window %v", codes, b.Findings)
	}
}

// A tube that no slide brings through its hole is an error at the top of the
// window, and is none once the plate is out of its way.
func TestWindowTellsATubeThatCannotBePutIn(t *testing.T) {
	text, err := os.ReadFile("testdata/hole.plan.yaml")
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "hole.plan.yaml")
	if err := os.WriteFile(path, text, 0o600); err != nil {
		t.Fatal(err)
	}
	s := newStage(t, path)
	b := s.until("how the tube goes in", fitted)
	if len(b.Findings) == 0 || b.Findings[0] != check.CannotBePutIn || b.Ready != "Ready to cut? Not yet: 1 error · 1 warning." {
		t.Errorf("%q; findings %v", b.Ready, b.Findings)
	}
	s.click("part plate")
	s.until("the part's fields", func(b Boxes) bool { return b.Boxes["place y"][2] > 0 })
	s.click("place y")
	s.key("ctrl+a")
	s.write("-200")
	s.key("Return")
	b = s.until("that it goes in now", func(b Boxes) bool { return fitted(b) && b.Parts["plate"][1] == -200 })
	if slices.Contains(b.Findings, check.CannotBePutIn) {
		t.Errorf("with the plate moved away: %q; findings %v", b.Ready, b.Findings)
	}
	s.key("ctrl+z")
	s.until("that it does not again", func(b Boxes) bool { return fitted(b) && slices.Contains(b.Findings, check.CannotBePutIn) })
}
