package board

import (
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

func TestClickSelects(t *testing.T) {
	s := onStage(t)
	s.see(Above)
	s.click(s.pixel(v3(360, 86, 330)))
	if want := PartTarget("supply"); len(s.picked) != 1 || s.picked[0] != want || s.Selection()[0] != want {
		t.Errorf("picked %v, want %v", s.picked, want)
	}
	s.click(fyne.NewPos(880, 20))
	if got := s.picked[len(s.picked)-1]; got.Kind != Nothing || len(s.Selection()) != 0 {
		t.Errorf("a click beside everything picks %v and leaves %v", got, s.Selection())
	}
}

func TestManyEventsMakeOneMoveAFrame(t *testing.T) {
	s := onStage(t)
	pump := &byHand{}
	s.SetPump(pump)
	s.see(Above)
	pump.frame()
	s.held = fyne.KeyModifierAlt
	from := s.pixel(v3(400, 86, 380))
	s.down(from, desktop.MouseButtonPrimary)
	for i := range 500 {
		s.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: from.AddXY(float32(-i)/5, 0)}})
	}
	if len(s.moves) != 0 {
		t.Fatalf("%d moves were told before a frame passed", len(s.moves))
	}
	pump.frame()
	if len(s.moves) != 1 {
		t.Errorf("%d moves in one frame, want 1", len(s.moves))
	}
}

// byHand is a pump that the test turns.
type byHand struct {
	tick    func()
	stopped bool
}

func (p *byHand) Start(tick func()) { p.tick, p.stopped = tick, false }
func (p *byHand) Stop()             { p.stopped = true }
func (p *byHand) frame()            { p.tick() }

func TestPictureIsRefinedWhenNothingMoves(t *testing.T) {
	s := onStage(t)
	pump := &byHand{}
	s.SetPump(pump)
	s.SetGrid(5)
	s.FitAll()
	pump.frame()
	if s.quality != Quick {
		t.Fatal("the first picture after a change is not the quick one")
	}
	for range quietFrames {
		pump.frame()
	}
	if s.quality != Quick || pump.stopped {
		t.Fatal("refined too early")
	}
	pump.frame()
	if s.quality != Fine || !pump.stopped {
		t.Errorf("after %d quiet frames quality is %d, pump stopped %v", quietFrames, s.quality, pump.stopped)
	}
	s.FitAll()
	pump.frame()
	if s.quality != Quick {
		t.Error("a new change does not go back to the quick picture")
	}
}

func TestWheelZoomsAtThePointer(t *testing.T) {
	for _, l := range Looks() {
		s := onStage(t)
		s.see(l)
		at := fyne.NewPos(610, 205)
		before, zoom := s.camera().unproject(610, 205, 0), s.camera().Zoom
		s.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: at}, Scrolled: fyne.NewDelta(0, 50)})
		x, y := s.camera().Project(before)
		if math.Hypot(x-610, y-205) > 1e-3 {
			t.Errorf("%v: the point went to %g, %g", l, x, y)
		}
		if got := s.camera().Zoom / zoom; math.Abs(got-zoomNotch*zoomNotch) > 1e-9 {
			t.Errorf("%v: two notches zoom by %g", l, got)
		}
	}
}

func TestPanAndOrbit(t *testing.T) {
	s := onStage(t)
	s.see(Above)
	empty, to := fyne.NewPos(860, 40), fyne.NewPos(800, 100)
	c := s.camera().Centre
	s.drag(empty, to, desktop.MouseButtonPrimary)
	k := s.camera().Zoom
	s.wantBy("left drag on nothing pans a flat look", s.camera().Centre.Sub(c), v3(60/k, 0, -60/k), 1e-3)
	onPart := s.pixel(v3(400, 86, 380))
	c = s.camera().Centre
	s.drag(onPart, onPart.AddXY(30, 0), desktop.MouseButtonTertiary)
	s.wantBy("middle drag pans", s.camera().Centre.Sub(c), v3(-30/k, 0, 0), 1e-3)
	s.KeyDown(&fyne.KeyEvent{Name: fyne.KeySpace})
	s.drag(onPart, onPart.AddXY(0, 30), desktop.MouseButtonPrimary)
	s.KeyUp(&fyne.KeyEvent{Name: fyne.KeySpace})
	if len(s.moves) != 0 {
		t.Error("panning moved a part")
	}
	s.see(Turntable)
	yaw := s.camera().Yaw
	s.drag(fyne.NewPos(860, 620), fyne.NewPos(810, 620), desktop.MouseButtonPrimary)
	if got := s.camera().Yaw - yaw; math.Abs(got-50*orbitSpeed) > 1e-6 {
		t.Errorf("a drag by 50 px turns the table by %g degrees, want %g", got, 50*orbitSpeed)
	}
}

func TestHoverTellsWhatIsThere(t *testing.T) {
	s := onStage(t)
	s.see(Above)
	s.MouseIn(mouse(s.pixel(v3(400, 86, 380)), 0))
	s.MouseMoved(mouse(s.pixel(v3(19, 151, 78)), 0))
	s.MouseMoved(mouse(s.pixel(v3(290, 160, 90)), 0))
	s.MouseMoved(mouse(s.pixel(v3(108, 112, 83)), 0))
	s.MouseOut()
	want := []string{"supply", "radiator.spare, G1/4, free", "F  sensor to pump, straight 1", "two tubes run through each other", ""}
	if len(s.said) != len(want) {
		t.Fatalf("said %q, want %q", s.said, want)
	}
	for i := range want {
		if s.said[i] != want[i] {
			t.Errorf("said %q, want %q", s.said[i], want[i])
		}
	}
}

func TestMenu(t *testing.T) {
	s := onStage(t)
	s.see(Above)
	at := s.pixel(v3(400, 86, 380))
	s.down(at, desktop.MouseButtonSecondary)
	s.up(at, desktop.MouseButtonSecondary)
	if len(s.menus) != 1 || s.menus[0] != PartTarget("supply") || s.Selection()[0] != PartTarget("supply") {
		t.Errorf("menus %v, selection %v", s.menus, s.Selection())
	}
}

func TestScaleOfTheScreen(t *testing.T) {
	s := onStage(t)
	zoom := s.camera().Zoom
	s.see(Above)
	s.generate(1800, 1300) // a screen with two pixels to Fyne's unit
	s.SetScene(*s.scene)
	s.FitAll()
	s.generate(1800, 1300)
	if s.ratio != 2 {
		t.Fatalf("ratio %g, want 2", s.ratio)
	}
	x, y := s.camera().Project(v3(400, 86, 380))
	s.click(fyne.NewPos(float32(x/2), float32(y/2)))
	if len(s.picked) != 1 || s.picked[0] != PartTarget("supply") {
		t.Errorf("picked %v", s.picked)
	}
	if zoom <= 0 {
		t.Error("no zoom")
	}
}

func TestWithoutCallbacksNothingBreaks(t *testing.T) {
	s := onStage(t)
	s.Callbacks = Callbacks{}
	for _, l := range Looks() {
		s.see(l)
		for _, at := range []fyne.Position{s.pixel(v3(400, 86, 380)), s.pixel(v3(19, 151, 78)), s.pixel(v3(290, 160, 90))} {
			s.click(at)
			s.drag(at, at.AddXY(40, 30), desktop.MouseButtonPrimary)
			s.drag(at, at.AddXY(40, 30), desktop.MouseButtonSecondary)
		}
		for _, k := range []fyne.KeyName{fyne.KeyR, fyne.KeyLeft, fyne.KeyDelete, fyne.KeyM, fyne.KeyF, fyne.KeyEscape, fyne.Key2} {
			s.key(k)
		}
	}
}

// A right button that is let go outside the window is never told; the next
// press must count all the same.
func TestLostReleaseLeavesNothingStuck(t *testing.T) {
	s := onStage(t)
	s.see(Above)
	s.down(s.pixel(v3(400, 86, 380)), desktop.MouseButtonSecondary)
	s.click(s.pixel(v3(400, 86, 380)))
	if len(s.picked) != 1 || s.picked[0] != PartTarget("supply") {
		t.Errorf("picked %v", s.picked)
	}
}

func TestNoteOnAPortLeavesItFree(t *testing.T) {
	s := onStage(t)
	s.see(Above)
	fill := s.pixel(v3(380, 171, 90)) // a note says that it is open
	s.drag(fill, s.pixel(v3(19, 151, 78)), desktop.MouseButtonPrimary)
	if len(s.joins) != 1 || s.joins[0] != "pump.fill radiator.spare" {
		t.Errorf("joins %q", s.joins)
	}
}

func TestResizeShowsAllUntilThePersonRoams(t *testing.T) {
	s := onStage(t)
	s.see(Above)
	s.Resize(fyne.NewSize(450, 325))
	s.generate(450, 325)
	want := NewCamera(Above, s.scene.Case, 450, 325)
	want.Fit(s.scene, 450, 325)
	if math.Abs(s.camera().Zoom-want.Zoom) > 1e-9 {
		t.Errorf("zoom %g after the view shrank, want %g", s.camera().Zoom, want.Zoom)
	}
	s.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(9, 9)}, Scrolled: fyne.NewDelta(0, 25)})
	zoom := s.camera().Zoom
	s.Resize(fyne.NewSize(900, 650))
	s.generate(900, 650)
	if s.camera().Zoom != zoom {
		t.Errorf("a zoom of the person's own went from %g to %g", zoom, s.camera().Zoom)
	}
}
