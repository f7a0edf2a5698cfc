package ui

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
)

func TestWaysAreShownBeforeTheyAreTaken(t *testing.T) {
	b := opened(t)
	test.Tap(b.cards.byRun["left-to-top"].front)
	c := b.cards.byRun["left-to-top"]
	shown := func() int {
		tube, _ := b.board.Scene().Tube("left-to-top")
		for i, w := range b.snapshot.Solution.Runs[0].Ways {
			if slices.Equal(tube.Corners, w.Formed.Corners) {
				return i
			}
		}
		return -1
	}
	if shown() != 0 {
		t.Fatalf("the board begins with way %d", shown())
	}
	c.rows[2].MouseIn(&desktop.MouseEvent{})
	if shown() != 1 || b.snapshot.Dirty {
		t.Errorf("with the pointer on the second way the board shows way %d, dirty %v", shown(), b.snapshot.Dirty)
	}
	c.rows[2].MouseOut()
	if shown() != 0 || b.hover != "" {
		t.Errorf("with the pointer gone the board shows way %d, the status line %q", shown(), b.hover)
	}
	b.win.Canvas().Focus(c.rows[1])
	b.press(fyne.KeyDown)
	if shown() != 1 {
		t.Errorf("moved down by key the board shows way %d, want 1", shown())
	}
	b.press(fyne.KeyReturn)
	b.settle()
	if shown() != 1 || !b.snapshot.Dirty || b.previewed.run != "" {
		t.Errorf("taken, the board shows way %d, dirty %v, still previewing %q", shown(), b.snapshot.Dirty, b.previewed.run)
	}
	if got := b.win.Canvas().Focused(); got != c.rows[2] {
		t.Errorf("after taking a way the focus is on %v, want the way's row", got)
	}
	b.handBack() // to the best way, and so does the focus
	b.settle()
	if shown() != 0 || b.ownWay() {
		t.Errorf("handed back the board shows way %d", shown())
	}
}
