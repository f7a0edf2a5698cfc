package board

import (
	"image"
	"testing"

	"fyne.io/fyne/v2"
)

// frameHand is a pump whose frames a test lets pass.
type frameHand struct{ tick func() }

func (p *frameHand) Start(tick func()) { p.tick = tick }
func (p *frameHand) Stop()             { p.tick = nil }

// pass lets frames pass until the board rests, and gives how many did.
func (p *frameHand) pass() (n int) {
	for ; p.tick != nil && n < 1000; n++ {
		p.tick()
	}
	return n
}

// The small looks are painted only when they would change, and all the same show
// the newest state once the board rests.
func TestSmallLooksFollowAndRest(t *testing.T) {
	s := onStage(t)
	NewDesk(s.Board)
	hand := &frameHand{}
	s.SetPump(hand)
	show := func() {
		for _, m := range s.minis {
			m.Resize(fyne.NewSize(140, 120))
			if m.behind() {
				m.generate(140, 120)
			}
		}
	}
	hand.pass()
	show()
	behind := func() (n int) {
		for _, m := range s.minis {
			if m.behind() {
				n++
			}
		}
		return n
	}
	if behind() != 0 {
		t.Fatal("at rest and painted, a small look is behind")
	}
	s.camera().ZoomAt(100, 100, 1.3)
	s.invalidate()
	hand.pass()
	if behind() != 0 {
		t.Error("zooming the large look makes a small one paint")
	}
	was := append([]byte(nil), s.minis[0].picture.Pix...)
	s.SetSelection(PartTarget("supply"))
	if behind() != 3 {
		t.Errorf("after a choice %d small looks are behind, want 3", behind())
	}
	if n := hand.pass(); n < quietFrames {
		t.Errorf("the board rests after %d frames, want at least %d", n, quietFrames)
	}
	show()
	if same(was, s.minis[0].picture) {
		t.Error("a small look does not show what is chosen")
	}
}

func same(pix []byte, img *image.RGBA) bool { return string(pix) == string(img.Pix) }
