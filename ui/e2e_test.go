//go:build window

// Tests of the real window, on a screen of their own. They need Xvfb, xdotool
// and ImageMagick's import, and fail where one is missing:
//
//	go test -tags window ./ui -run Window
package ui

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"
)

// stage is the program on a screen of its own, with a mouse and a keyboard.
type stage struct {
	t       testing.TB
	program *exec.Cmd
	env     []string
	window  string // as xdotool numbers it
	boxFile string
	config  string // folder of the settings
	screen  *screen
	stdin   io.Writer // of an xdotool that does what it is told at once
}

// patience is how long something may take to be seen: this machine may be busy.
const patience = 90 * time.Second

func (s *stage) run(name string, args ...string) string {
	s.t.Helper()
	cmd := exec.Command(name, args...)
	cmd.Env = s.env
	out, err := cmd.CombinedOutput()
	if err != nil {
		s.t.Fatalf("%s %s: %v\n%s", name, strings.Join(args, " "), err, out)
	}
	return strings.TrimSpace(string(out))
}

// program is the window's program, built once for all tests.
var program = sync.OnceValues(func() (string, error) {
	dir, err := os.MkdirTemp("", "tubewright-test")
	if err != nil {
		return "", err
	}
	built = dir
	path := filepath.Join(dir, "tubewright")
	if out, err := exec.Command("go", "build", "-o", path, "tubewright/cmd/tubewright").CombinedOutput(); err != nil {
		return "", fmt.Errorf("go build: %w\n%s", err, out)
	}
	return path, nil
})

// built is the folder of the program; empty until a test has wanted it.
var built string

func TestMain(m *testing.M) {
	code := m.Run()
	if err := os.RemoveAll(built); err != nil {
		fmt.Fprintln(os.Stderr, err)
	}
	os.Exit(code)
}

// newStage starts a screen and the program on it.
func newStage(t testing.TB, args ...string) *stage {
	t.Helper()
	s := newEmptyStage(t)
	s.start(append([]string{"--size", "1280x800"}, args...)...)
	return s
}

// newEmptyStage is a screen with nobody on it.
func newEmptyStage(t testing.TB) *stage {
	t.Helper()
	for _, tool := range []string{"Xvfb", "xdotool", "import"} {
		if _, err := exec.LookPath(tool); err != nil {
			t.Fatalf("the tests of the real window need %s (Debian: xvfb, xdotool, imagemagick): %v", tool, err)
		}
	}
	s := &stage{t: t, boxFile: filepath.Join(t.TempDir(), "boxes.json"), config: t.TempDir(), screen: newScreen(t)}
	s.env = append(os.Environ(), "DISPLAY=:"+s.screen.number, "FYNE_SCALE=1", "LC_ALL=", "LANG=en_US.UTF-8", "XDG_CONFIG_HOME="+s.config)
	t.Cleanup(func() {
		if t.Failed() {
			s.picture()
		}
		s.kill()
	})
	s.openHand()
	return s
}

// openHand starts an xdotool that reads what to do line by line: starting one
// for each step would take longer than the step.
func (s *stage) openHand() {
	cmd := exec.Command("xdotool", "-")
	cmd.Env, cmd.Stderr = s.env, os.Stderr
	in, err := cmd.StdinPipe()
	if err == nil {
		err = cmd.Start()
	}
	if err != nil {
		s.t.Fatal(err)
	}
	s.stdin = in
	s.t.Cleanup(func() {
		_ = in.Close()
		_ = cmd.Process.Kill()
		_ = cmd.Wait() // killed: it says so
	})
}

// do tells the hand what to do, in the words of xdotool.
func (s *stage) do(format string, args ...any) {
	s.t.Helper()
	if _, err := fmt.Fprintf(s.stdin, format+"\n", args...); err != nil {
		s.t.Fatal(err)
	}
}

// start starts the program and waits for its window.
func (s *stage) start(args ...string) {
	s.t.Helper()
	s.launch(args...)
	s.find(s.program.Process.Pid)
}

// launch starts the program.
func (s *stage) launch(args ...string) {
	s.t.Helper()
	path, err := program()
	if err != nil {
		s.t.Fatal(err)
	}
	_ = os.Remove(s.boxFile) // of the start before, if any
	cmd := exec.Command(path, append([]string{"--boxes", s.boxFile}, args...)...)
	cmd.Env, cmd.Stderr = s.env, os.Stderr
	if err := cmd.Start(); err != nil {
		s.t.Fatal(err)
	}
	s.program = cmd
}

// kill ends the program as a power cut would.
func (s *stage) kill() {
	if s.program != nil {
		_ = s.program.Process.Kill()
		_ = s.program.Wait() // killed: it says so
		s.program = nil
	}
}

// find waits for the program's window and gives it the keyboard.
func (s *stage) find(pid int) {
	s.t.Helper()
	for begun := time.Now(); time.Since(begun) < patience; time.Sleep(200 * time.Millisecond) {
		cmd := exec.Command("xdotool", "search", "--onlyvisible", "--pid", strconv.Itoa(pid))
		cmd.Env = s.env
		if out, err := cmd.Output(); err == nil && len(out) > 0 {
			s.window = strings.Fields(string(out))[0]
			s.run("xdotool", "windowfocus", s.window)
			return
		}
	}
	s.t.Fatal("the window never came up")
}

// picture keeps what the screen shows, for whoever looks into a failure.
func (s *stage) picture() {
	path := filepath.Join("testdata", "failed", s.t.Name()+".png")
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		s.t.Log(err)
	}
	cmd := exec.Command("timeout", "10", "import", "-window", "root", path)
	cmd.Env = s.env
	if out, err := cmd.CombinedOutput(); err != nil {
		s.t.Logf("no picture: %v %s", err, out)
		return
	}
	s.t.Logf("the screen is kept in ui/%s", path)
}

func (s *stage) boxes() (b Boxes) {
	data, err := os.ReadFile(s.boxFile)
	if err == nil {
		err = json.Unmarshal(data, &b)
	}
	if err != nil {
		b.Busy = true // not written yet
	}
	return b
}

// until waits for the window to show what is asked.
func (s *stage) until(what string, so func(Boxes) bool) Boxes {
	s.t.Helper()
	var b Boxes
	for begun := time.Now(); time.Since(begun) < patience; time.Sleep(20 * time.Millisecond) {
		if b = s.boxes(); so(b) {
			return b
		}
	}
	s.t.Fatalf("the window never showed %s; at last it was %+v", what, b)
	return b
}

func (s *stage) box(name string) (x, y float64) {
	s.t.Helper()
	var b [4]float32
	s.until("something called "+name, func(all Boxes) (ok bool) {
		b, ok = all.Boxes[name]
		return ok
	})
	return float64(b[0] + b[2]/2), float64(b[1] + b[3]/2)
}

func (s *stage) move(x, y float64) {
	s.t.Helper()
	s.run("xdotool", "mousemove", "--window", s.window, fmt.Sprintf("%.0f", x), fmt.Sprintf("%.0f", y))
}

func (s *stage) click(name string) {
	s.t.Helper()
	x, y := s.box(name)
	s.move(x, y)
	s.run("xdotool", "click", "1")
}

// drag pulls from the middle of a thing by pixels, in steps as a hand does.
func (s *stage) drag(name string, dx, dy float64) {
	s.t.Helper()
	x, y := s.box(name)
	s.move(x, y)
	s.run("xdotool", "mousedown", "1")
	const steps = 12
	for i := 1.0; i <= steps; i++ {
		s.move(x+dx*i/steps, y+dy*i/steps)
		time.Sleep(50 * time.Millisecond)
	}
	time.Sleep(300 * time.Millisecond)
	s.run("xdotool", "mouseup", "1")
}

func (s *stage) key(keys ...string) {
	s.t.Helper()
	s.run("xdotool", append([]string{"key"}, keys...)...)
}

func (s *stage) write(text string) {
	s.t.Helper()
	s.run("xdotool", "type", "--delay", "8", "--", text)
}

func atRest(b Boxes) bool { return !b.Busy && len(b.Cuts) > 0 }

// stagedBench is the window with a copy of the plan that was worked by hand.
func stagedBench(t testing.TB) (s *stage, path string, text []byte) {
	t.Helper()
	text, err := os.ReadFile(benchFile)
	if err != nil {
		t.Fatal(err)
	}
	path = filepath.Join(t.TempDir(), "bench.plan.yaml")
	if err := os.WriteFile(path, text, 0o600); err != nil {
		t.Fatal(err)
	}
	s = newStage(t, path)
	b := s.until("the worked cut", atRest)
	if got := b.Cuts["left-to-top"]; math.Abs(got-workedAim) > 0.01 {
		t.Fatalf("the cut is %.3f, want %.3f as worked by hand", got, workedAim)
	}
	return s, path, text
}

func TestWindowDragUndoSaveAndSheets(t *testing.T) {
	s, path, text := stagedBench(t)
	worked := func(b Boxes) bool { return atRest(b) && math.Abs(b.Cuts["left-to-top"]-workedAim) < 0.01 }
	moved := func(b Boxes) bool { return atRest(b) && b.Dirty && math.Abs(b.Cuts["left-to-top"]-workedAim) > 5 }

	s.drag("on board left", -40, 0)
	b := s.until("another cut after the drag", moved)
	if by := 60 - b.Parts["left"][0]; by < 10 || math.Abs(b.Cuts["left-to-top"]-workedAim-by) > 0.02 {
		t.Errorf("moved %.3f to the left the cut grew by %.3f", by, b.Cuts["left-to-top"]-workedAim)
	}
	s.key("ctrl+z")
	s.until("the cut from before the drag", func(b Boxes) bool { return worked(b) && !b.Dirty })
	s.key("ctrl+s")
	s.until("that it saved", func(b Boxes) bool { return strings.HasPrefix(b.News, "Saved") })
	if after, err := os.ReadFile(path); err != nil || string(after) != string(text) {
		t.Errorf("moved, undone and saved, the file differs: %v\n%s", err, after)
	}

	s.key("ctrl+y")
	b = s.until("the cut after the drag again", moved)
	s.key("ctrl+s")
	s.until("that nothing is left to save", func(b Boxes) bool { return !b.Dirty })
	want := fmt.Sprintf("at: [%s, 80, 30]", strconv.FormatFloat(b.Parts["left"][0], 'f', -1, 64))
	if after, err := os.ReadFile(path); err != nil || !strings.Contains(string(after), want) {
		t.Errorf("the saved file does not hold %q: %v\n%s", want, err, after)
	}

	dir := filepath.Join(t.TempDir(), "sheets")
	s.key("ctrl+p")
	s.until("the question about sheets", func(b Boxes) bool { return b.Modal == "Make sheets" })
	s.key("ctrl+a")
	s.write(dir)
	s.key("Return")
	s.until("that the sheets are ready", func(b Boxes) bool { return b.Modal == "The sheets are ready" })
	if made, err := filepath.Glob(filepath.Join(dir, "*")); err != nil || len(made) != 5 {
		t.Errorf("made %v, %v; want a PDF, three tables and the answer", made, err)
	}
	s.key("Return")
	s.until("no question", func(b Boxes) bool { return b.Modal == "" })
}

// ended waits for the program to end by itself.
func (s *stage) ended() {
	s.t.Helper()
	done := make(chan error, 1)
	go func() { done <- s.program.Wait() }()
	select {
	case err := <-done:
		if err != nil {
			s.t.Errorf("the program ended with %v", err)
		}
	case <-time.After(patience):
		s.t.Fatal("the program never ended")
	}
}

func TestWindowTypedNumbers(t *testing.T) {
	s, _, _ := stagedBench(t)
	s.click("part left")
	s.until("the part's fields", func(b Boxes) bool { return b.Boxes["place x"][2] > 0 })
	s.click("place x")
	s.key("ctrl+a")
	s.write("60-1/2 in")
	s.key("Return")
	b := s.until("the part at another place", func(b Boxes) bool { return atRest(b) && b.Dirty })
	if got := b.Parts["left"][0]; math.Abs(got-47.3) > 1e-6 {
		t.Errorf("60-1/2 in gave x = %v, want 47.3", got)
	}
	s.click("undo")
	s.until("the part where it was", func(b Boxes) bool { return atRest(b) && !b.Dirty && b.Parts["left"][0] == 60 })
}

func TestWindowCountsOnHand(t *testing.T) {
	s, _, _ := stagedBench(t)
	s.click("on hand socket-16")
	s.key("ctrl+a")
	s.write("9")
	s.key("ctrl+s") // the menu's keys work from within a field, and what was typed is kept first
	s.until("that it saved", func(b Boxes) bool { return strings.HasPrefix(b.News, "Saved") && !b.Dirty })
}
