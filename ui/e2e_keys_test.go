//go:build window

package ui

import (
	"os"
	"strings"
	"testing"
)

// Without a mouse: choose another way, look at it on the way, save, and see it in the file.
func TestWindowChoosesAWayByKeysAlone(t *testing.T) {
	s, path, _ := stagedBench(t)
	best := s.boxes().Cuts["left-to-top"]
	s.key("F1")
	s.until("the keys", func(b Boxes) bool { return b.Modal == "Keys" })
	s.key("Escape")
	s.until("no question", func(b Boxes) bool { return b.Modal == "" })
	s.key("F6", "F6", "F6") // parts, board, runs
	s.key("Return")         // opens the card
	s.key("Down", "Down")   // past the way that is taken to the next
	s.key("Return")
	b := s.until("another cut", func(b Boxes) bool { return atRest(b) && b.Dirty && b.Cuts["left-to-top"] != best })
	if b.Ready == "" {
		t.Error("the window does not say whether one may cut")
	}
	s.key("ctrl+s")
	s.until("that it saved", func(b Boxes) bool { return !b.Dirty })
	if after, err := os.ReadFile(path); err != nil || !strings.Contains(string(after), "pick:") {
		t.Errorf("the saved file holds no pick: %v\n%s", err, after)
	}
}

// Quitting with unsaved changes asks, and can save them.
func TestWindowQuitsOnlyAfterAsking(t *testing.T) {
	s, path, _ := stagedBench(t)
	s.click("part left")
	s.key("Right", "Right", "Right")
	s.until("the part moved", func(b Boxes) bool { return atRest(b) && b.Parts["left"][0] == 63 })
	s.key("ctrl+q")
	s.until("the question", func(b Boxes) bool { return b.Modal == "Save the changes first?" })
	s.key("Escape")
	s.until("no question", func(b Boxes) bool { return b.Modal == "" })
	s.key("ctrl+q")
	s.until("the question again", func(b Boxes) bool { return b.Modal == "Save the changes first?" })
	s.key("Return")
	s.ended()
	after, err := os.ReadFile(path)
	if err != nil || !strings.Contains(string(after), "at: [63, 80, 30]") {
		t.Errorf("saved on quitting, the file does not hold x = 63: %v\n%s", err, after)
	}
}
