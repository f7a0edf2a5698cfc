//go:build window

package ui

import (
	"fmt"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"
	"time"
)

// mayGrow is how far the program's memory may grow in two hours of use, MB.
const mayGrow = 50

// soakTime is how long the window is used: shortly in every run of the tests, or
// as long as TUBEWRIGHT_SOAK says, such as 2h.
func soakTime(t *testing.T) time.Duration {
	t.Helper()
	text := os.Getenv("TUBEWRIGHT_SOAK")
	if text == "" {
		return 14 * time.Second
	}
	d, err := time.ParseDuration(text)
	if err != nil {
		t.Fatalf("TUBEWRIGHT_SOAK: %v", err)
	}
	return d
}

// resident is the memory the program holds, MB.
func (s *stage) resident() float64 {
	s.t.Helper()
	text, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", s.program.Process.Pid))
	if err != nil {
		s.t.Fatal(err)
	}
	_, after, _ := strings.Cut(string(text), "VmRSS:")
	var kb float64
	if _, err := fmt.Sscan(after, &kb); err != nil {
		s.t.Fatal(err)
	}
	return kb / 1024
}

// round is one round of use: drags with their undoing, the looks, zoom, another
// way seen, the next finding, the other units and the other colours.
func (s *stage) round(rnd *rand.Rand) (steps int) {
	s.t.Helper()
	b := s.boxes()
	for range 8 {
		part := [...]string{"front", "pump", "supply", "column", "top", "capture"}[rnd.IntN(6)]
		at, ok := b.Boxes["on board "+part]
		if !ok {
			continue
		}
		s.pull(int(at[0]), int(at[1]), rnd.IntN(81)-40, rnd.IntN(61)-30)
		if rnd.IntN(2) == 0 {
			s.do("key ctrl+z")
		}
		steps++
	}
	keys := [...]string{"2", "3", "4", "1", "ctrl+g", "plus", "minus", "Home", "ctrl+u", "ctrl+u"}
	for _, k := range keys {
		s.do("key %s", k)
		time.Sleep(100 * time.Millisecond)
	}
	if rnd.IntN(4) == 0 {
		s.do("key ctrl+d")
	}
	time.Sleep(200 * time.Millisecond)
	return steps + len(keys)
}

// pull drags from a place by pixels, as a hand does.
func (s *stage) pull(x, y, dx, dy int) {
	s.do("mousemove %d %d mousedown 1", x, y)
	const steps = 15
	for i := range steps {
		s.do("mousemove %d %d", x+dx*(i+1)/steps, y+dy*(i+1)/steps)
		time.Sleep(25 * time.Millisecond)
	}
	s.do("mouseup 1")
	time.Sleep(150 * time.Millisecond)
}

const (
	// leastRounds are made however short the time is.
	leastRounds = 5
	// worthMeasuring is how long a use must be for its growth to mean something:
	// the collector lets the memory go up and down by fifty megabytes and more.
	worthMeasuring = 9 * time.Minute
	// mayHold is what the program may hold at any moment on a machine of eight runs, MB.
	mayHold = 650
)

// The first third of the time is for warming up: the fonts, the buffers of the
// pictures, what the search remembers. Growth is from the median of the second
// third to that of the last.
func TestWindowSoak(t *testing.T) {
	long := soakTime(t)
	s := newStage(t, "--demo", eightRuns)
	s.until("the demo's cuts", atRest)
	rnd := rand.New(rand.NewPCG(1, 2))
	begun, steps, told := time.Now(), 0, time.Duration(0)
	var held []float64
	for spent := time.Duration(0); spent < long || len(held) < leastRounds; spent = time.Since(begun) {
		steps += s.round(rnd)
		held = append(held, s.resident())
		if spent >= told {
			t.Logf("after %5.1f min and %5d steps: %.0f MB", spent.Minutes(), steps, held[len(held)-1])
			told += max(long/24, 5*time.Second)
		}
	}
	third := len(held) / 3
	middle, last, most := median(held[third:2*third]), median(held[2*third:]), slices.Max(held)
	t.Logf("%d steps in %.1f min: %.0f MB in the second third, %.0f MB in the last, %.0f MB at most", steps, time.Since(begun).Minutes(), middle, last, most)
	if s.boxes().Version < steps/8 {
		t.Errorf("only %d changes of the plan in %d steps: the hand missed", s.boxes().Version, steps)
	}
	if most > mayHold {
		t.Errorf("the program held %.0f MB, may hold %d", most, mayHold)
	}
	if long >= worthMeasuring && last-middle > mayGrow {
		t.Errorf("the program grew by %.0f MB, may grow by %d", last-middle, mayGrow)
	}
}

func median(list []float64) float64 {
	list = slices.Sorted(slices.Values(list))
	return list[len(list)/2]
}

// Switching between light and dark makes every text's picture anew; the old ones
// must go. Kept, they were about 1 MB at each change.
func TestWindowThemeLeavesNothingBehind(t *testing.T) {
	const warm, more, mayGrow = 6, 40, 20 // changes of the theme; MB
	s := newStage(t, "--demo", eightRuns)
	s.until("the demo's cuts", atRest)
	change := func(times int) float64 {
		for range times {
			s.do("key ctrl+d")
			time.Sleep(200 * time.Millisecond) // a frame of both colours
		}
		return s.resident()
	}
	before := change(warm)
	after := change(more)
	t.Logf("%.0f MB, after %d changes %.0f MB", before, more, after)
	if after-before > mayGrow {
		t.Errorf("%d changes of the theme took %.0f MB more", more, after-before)
	}
}
