package board

import (
	"testing"

	"fyne.io/fyne/v2/driver/desktop"
)

// Of several scenes that come within a frame only the last is made.
func TestOfScenesWithinAFrameOneIsMade(t *testing.T) {
	s := onStage(t)
	hand := &frameHand{}
	s.SetPump(hand)
	hand.pass()
	made := ""
	for _, name := range []string{"a", "b", "c"} {
		s.SetSceneSoon(func() Scene { made += name; return *demoScene(t) })
	}
	hand.tick()
	if made != "c" || !s.running {
		t.Errorf("made %q, want c alone; running %v", made, s.running)
	}
	s.SetSceneSoon(func() Scene { made += "d"; return *demoScene(t) })
	s.SetScene(*demoScene(t))
	hand.pass()
	if made != "c" {
		t.Errorf("made %q: a scene that was set at once is followed by an older one", made)
	}
}

// A part in hand that snaps to where it is costs no picture, and the board does
// not begin the fine one while the pointer still moves.
func TestAPartThatSnapsWhereItIsIsNotPaintedAgain(t *testing.T) {
	s := onStage(t)
	s.see(Above)
	hand := &frameHand{}
	s.SetPump(hand)
	hand.pass()
	from := s.pixel(v3(400, 86, 380))
	s.down(from, desktop.MouseButtonPrimary)
	s.dragTo(from.AddXY(40, 0))
	hand.tick()
	painted := s.Board.frames
	for i := range 3 * quietFrames {
		s.dragTo(from.AddXY(40+0.1*float32(i%2), 0))
		hand.tick()
	}
	if s.Board.frames != painted || s.quality != Quick {
		t.Errorf("%d pictures for no move, quality %d", s.Board.frames-painted, s.quality)
	}
	s.dragTo(from.AddXY(80, 0))
	hand.tick()
	if s.Board.frames != painted+1 {
		t.Errorf("%d pictures for a move, want 1", s.Board.frames-painted)
	}
}
