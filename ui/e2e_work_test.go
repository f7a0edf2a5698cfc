//go:build window

package ui

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"tubewright/assets"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/planfile"
)

// bytesOf reads a file that has to be there.
func (s *stage) bytesOf(path string) string {
	s.t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		s.t.Fatal(err)
	}
	return string(text)
}

// planIn reads the plan in a file as any other program would.
func (s *stage) planIn(path string) route.Plan {
	s.t.Helper()
	plan, _, err := planfile.Load(path)
	if err != nil {
		s.t.Fatal(err)
	}
	return plan
}

// saved saves by key and waits until nothing is left to save.
func (s *stage) saved() {
	s.t.Helper()
	s.key("ctrl+s")
	s.until("that it saved", func(b Boxes) bool { return !b.Dirty && strings.HasPrefix(b.News, "Saved") })
}

// answerIn reads the answer that was made with the sheets in a folder.
func (s *stage) answerIn(dir string) (answer struct {
	Tubes []struct {
		Run string `json:"run"`
		Cut struct {
			Aim float64 `json:"aim"`
		} `json:"cut"`
	} `json:"tubes"`
	Findings []struct {
		Code check.Code `json:"code"`
	} `json:"findings"`
},
) {
	s.t.Helper()
	files, err := filepath.Glob(filepath.Join(dir, "*.json"))
	if err != nil || len(files) != 1 {
		s.t.Fatalf("one answer is wanted in %s, not %v, %v", dir, files, err)
	}
	if err := json.Unmarshal([]byte(s.bytesOf(files[0])), &answer); err != nil {
		s.t.Fatal(err)
	}
	return answer
}

// sheetsInto makes the sheets by key.
func (s *stage) sheetsInto(dir string) {
	s.t.Helper()
	s.key("ctrl+p")
	s.until("the question about sheets", func(b Boxes) bool { return b.Modal == "Make sheets" })
	s.key("ctrl+a")
	s.write(dir)
	s.key("Return")
	s.until("that the sheets are ready", func(b Boxes) bool { return b.Modal == "The sheets are ready" })
	s.key("Return")
	s.until("no question", func(b Boxes) bool { return b.Modal == "" })
}

// A demo is opened from the welcome by a click, and saved as it is.
func TestWindowOpensADemo(t *testing.T) {
	const name = "conservation-scanner"
	s := newStage(t)
	s.click("begin " + demoTitle(name))
	b := s.until("the demo's cuts", atRest)
	if len(b.Cuts) < 3 || b.Dirty || b.Undo != "" {
		t.Errorf("the demo shows %d tubes, changed %v, and undoes %q", len(b.Cuts), b.Dirty, b.Undo)
	}
	dir := t.TempDir()
	s.key("ctrl+s")
	s.until("the question where to", func(b Boxes) bool { return b.Modal == "Save the plan as" })
	s.key("ctrl+a")
	s.write("mine")
	s.key("shift+Tab", "shift+Tab")
	s.key("ctrl+a")
	s.write(dir)
	s.key("Return")
	s.until("that it saved", func(b Boxes) bool { return strings.HasPrefix(b.News, "Saved") })
	want, _ := assets.Demo(name)
	if got := s.bytesOf(filepath.Join(dir, "mine"+planfile.Ending)); got != string(want) {
		t.Errorf("opened and saved, the demo differs: %d bytes, not %d", len(got), len(want))
	}
}

// answerRounding is half of the last digit of a length in the answer, mm.
const answerRounding = 0.0051

// A run is drawn from port to port and removed by undo.
func TestWindowDrawsARun(t *testing.T) {
	s, path, text := stagedBench(t)
	x, y := s.box("port left.in")
	tx, ty := s.box("port top.out")
	s.pull(int(x), int(y), int(tx-x), int(ty-y))
	b := s.until("a second tube", func(b Boxes) bool { return atRest(b) && len(b.Cuts) == 2 })
	s.saved()
	plan := s.planIn(path)
	run := plan.Runs[len(plan.Runs)-1]
	ends := [2]string{run.From.String(), run.To.String()}
	if ends != [2]string{"left.in", "top.out"} && ends != [2]string{"top.out", "left.in"} {
		t.Errorf("the run goes from %s to %s", ends[0], ends[1])
	}
	dir := filepath.Join(t.TempDir(), "sheets")
	s.sheetsInto(dir)
	answer := s.answerIn(dir)
	if len(answer.Tubes) != 2 {
		t.Fatalf("the answer has %d tubes, want 2", len(answer.Tubes))
	}
	for _, tube := range answer.Tubes {
		if math.Abs(tube.Cut.Aim-b.Cuts[tube.Run]) > answerRounding {
			t.Errorf("%s: the answer says %.3f, the window %.3f", tube.Run, tube.Cut.Aim, b.Cuts[tube.Run])
		}
	}
	s.key("ctrl+z")
	s.until("one tube again", func(b Boxes) bool { return atRest(b) && len(b.Cuts) == 1 })
	s.saved()
	if s.bytesOf(path) != string(text) {
		t.Error("drawn, undone and saved, the file differs")
	}
}

// Another way is taken by a click, and kept in the file.
func TestWindowPicksAnotherWay(t *testing.T) {
	s, path, _ := stagedBench(t)
	s.click("card left-to-top")
	const other = "way left-to-top: two bends"
	s.until("the ways", func(b Boxes) bool { return b.Boxes[other][2] > 0 })
	s.click(other)
	b := s.until("the cut of the other way", func(b Boxes) bool { return atRest(b) && b.Dirty && b.Cuts["left-to-top"] < workedAim-40 })
	s.saved()
	if run, _ := s.planIn(path).FindRun("left-to-top"); run.Pick != "two bends" {
		t.Errorf("the file picks %q; the cut is %.1f", run.Pick, b.Cuts["left-to-top"])
	}
}

// A place is typed in inches while the window counts in inches.
func TestWindowTypesInches(t *testing.T) {
	s, path, _ := stagedBench(t)
	s.key("ctrl+u")
	s.click("part left")
	s.until("the part's fields", func(b Boxes) bool { return b.Boxes["place x"][2] > 0 })
	s.click("place x")
	s.key("ctrl+a")
	s.write("2.25")
	s.key("Return")
	s.until("the part elsewhere", func(b Boxes) bool { return atRest(b) && math.Abs(b.Parts["left"][0]-57.15) < 1e-9 })
	s.saved()
	part, _ := s.planIn(path).FindPart("left")
	if math.Abs(part.At[0]-57.15) > 1e-9 {
		t.Errorf("2.25 inches are saved as %v mm, want 57.15", part.At[0])
	}
	if !strings.Contains(s.bytesOf(path), "units: mm") {
		t.Error("looking at a plan in inches changed the units of its file")
	}
}

// All that was done is undone, and done again: the files are byte for byte those
// from before and from after.
func TestWindowUndoesEverything(t *testing.T) {
	s, path, text := stagedBench(t)
	s.drag("on board left", -40, 0)
	s.until("the part moved", func(b Boxes) bool { return atRest(b) && b.Parts["left"][0] < 50 })
	s.click("part top")
	s.until("the part's fields", func(b Boxes) bool { return b.Boxes["place y"][2] > 0 })
	s.click("place y")
	s.key("ctrl+a")
	s.write("240+5")
	s.key("Return")
	s.until("the part at its number", func(b Boxes) bool { return atRest(b) && b.Parts["top"][1] == 245 })
	s.click("on hand socket-16")
	s.key("ctrl+a")
	s.write("2")
	s.key("Return")
	s.until("the count", func(b Boxes) bool { return atRest(b) && strings.Contains(b.Undo, "hand") })
	s.saved()
	after := s.bytesOf(path)
	steps := 0
	for ; steps < 10 && s.boxes().Undo != ""; steps++ {
		was := s.boxes().Version
		s.key("ctrl+z")
		s.until("one step less", func(b Boxes) bool { return atRest(b) && b.Version > was })
	}
	if steps != 3 {
		t.Errorf("%d steps were undone, want 3", steps)
	}
	s.saved()
	if s.bytesOf(path) != string(text) {
		t.Errorf("everything undone and saved, the file differs:\n%s", s.bytesOf(path))
	}
	for range steps {
		was := s.boxes().Version
		s.key("ctrl+y")
		s.until("one step more", func(b Boxes) bool { return atRest(b) && b.Version > was })
	}
	s.saved()
	if s.bytesOf(path) != after {
		t.Errorf("everything done again and saved, the file differs:\n%s\nnot\n%s", s.bytesOf(path), after)
	}
}

// A kill in the middle of a drag loses the drag and nothing else.
func TestWindowRecoversFromAKill(t *testing.T) {
	s, path, _ := stagedBench(t)
	s.click("part left")
	s.key("Right")
	s.until("a first edit", func(b Boxes) bool { return atRest(b) && b.Parts["left"][0] == 61 })
	s.saved()
	kept := s.bytesOf(path)
	s.key("Right", "Right")
	s.until("a second edit", func(b Boxes) bool { return atRest(b) && b.Parts["left"][0] == 63 })
	x, y := s.box("on board top")
	s.do("mousemove %.0f %.0f mousedown 1", x, y)
	for i := range 10 {
		s.do("mousemove %.0f %.0f", x-float64(4*i), y)
		time.Sleep(20 * time.Millisecond)
	}
	s.until("the drag", func(b Boxes) bool { return b.Parts["top"][0] < 219 })
	s.kill()
	s.do("mouseup 1")
	if s.bytesOf(path) != kept {
		t.Fatal("the kill changed the file")
	}

	s.start("--size", "1280x800")
	s.until("the offer", func(b Boxes) bool { return b.Modal == "Unsaved work was found" })
	s.key("Return")
	b := s.until("the last state", func(b Boxes) bool { return atRest(b) && b.Dirty })
	if b.Parts["left"] != [3]float64{63, 80, 30} || b.Parts["top"] != [3]float64{220, 250, 30} {
		t.Errorf("recovered with the parts at %v", b.Parts)
	}
	s.saved()
	if part, _ := s.planIn(path).FindPart("left"); part.At[0] != 63 {
		t.Errorf("the recovered plan is saved with x = %v, want 63", part.At[0])
	}
}
