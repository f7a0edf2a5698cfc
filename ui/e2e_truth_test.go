//go:build window

package ui

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tubewright/assets"
	"tubewright/route"
	"tubewright/route/planfile"
	"tubewright/route/survey"
)

// types types numbers into the fields of a form, one after the other.
func (s *stage) types(numbers ...string) {
	s.t.Helper()
	for i, n := range numbers {
		s.write(n)
		if i < len(numbers)-1 {
			s.key("Return")
		}
	}
}

// A newcomer's evening at the bench, in the real window: a port measured, a test
// bend, the surer of two ways, the sheets. Each step is looked for in the file.
func TestWindowFromSurveyToSurerSheets(t *testing.T) {
	const run = "pump-to-processor"
	text, _ := assets.Demo("ferry-bridge")
	path := filepath.Join(t.TempDir(), "ferry.plan.yaml")
	if err := os.WriteFile(path, text, 0o600); err != nil {
		t.Fatal(err)
	}
	s := newStage(t, path)
	first := s.until("the ferry's cuts", atRest).Cuts[run]

	s.key("ctrl+shift+l")
	s.until("the survey", func(b Boxes) bool { return strings.HasPrefix(b.Modal, "Survey") })
	before := s.plan(path)
	at := survey.Groups(before)[0].Rows[0]
	s.types(lengthText(at.Plan[0]+1, route.Millimetres), lengthText(at.Plan[1], route.Millimetres), lengthText(at.Plan[2], route.Millimetres))
	s.click("button Take these numbers")
	s.until("that it is taken", func(b Boxes) bool { return b.Modal == "The survey is taken" })
	s.key("Return")

	s.key("ctrl+shift+e")
	s.until("the test bends", func(b Boxes) bool { return strings.HasPrefix(b.Modal, "Test bends of") })
	s.types("93", "90", "115", "115", "200")
	s.click("button Use these figures")
	s.until("no question, and all worked out", func(b Boxes) bool { return b.Modal == "" && atRest(b) && b.Cuts[run] != first })

	s.key("ctrl+shift+j")
	s.until("how likely they fit", func(b Boxes) bool { return b.Modal == "How likely the tubes fit" })
	s.click("surer " + run)
	s.until("another way", func(b Boxes) bool { return b.Modal == "" && atRest(b) })
	s.key("ctrl+s")
	s.until("that it saved", func(b Boxes) bool { return strings.HasPrefix(b.News, "Saved") && !b.Dirty })

	after := s.plan(path)
	port, _ := after.FindPort(at.Ref)
	old, _ := before.FindPort(at.Ref)
	if d := port.Frame.At.Sub(old.Frame.At).Len(); port.KnownFrom != route.Measured || math.Abs(d-1) > 0.01 {
		t.Errorf("%s moved by %.3f and is known from %q; want 1 mm, measured", at.Ref, d, port.KnownFrom)
	}
	tube, _ := after.FindTube(after.Tube)
	if len(tube.TestBends) != 1 || math.Abs(tube.Radius-32.62) > 1e-9 {
		t.Errorf("the tube has %d test bends and radius %v, want 1 and 32.62", len(tube.TestBends), tube.Radius)
	}
	if r, _ := after.FindRun(run); r.Pick == "" {
		t.Error("no other way was taken")
	}

	dir := filepath.Join(t.TempDir(), "sheets")
	s.key("ctrl+p")
	s.until("the question about sheets", func(b Boxes) bool { return b.Modal == "Make sheets" })
	s.key("ctrl+a")
	s.write(dir)
	s.key("Return")
	s.until("that the sheets are ready", func(b Boxes) bool { return b.Modal == "The sheets are ready" })
	answer, err := os.ReadFile(firstOf(t, filepath.Join(dir, "*.json")))
	if err != nil || !strings.Contains(string(answer), `"put_in"`) || !strings.Contains(string(answer), `"radius": 32.62`) {
		t.Errorf("the answer holds no order of putting in, or not the radius: %v", err)
	}
}

func (s *stage) plan(path string) route.Plan {
	s.t.Helper()
	plan, _, err := planfile.Load(path)
	if err != nil {
		s.t.Fatal(err)
	}
	return plan
}

func firstOf(t *testing.T, pattern string) string {
	t.Helper()
	found, err := filepath.Glob(pattern)
	if err != nil || len(found) == 0 {
		t.Fatalf("nothing like %s: %v", pattern, err)
	}
	return found[0]
}
