package board

import (
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"github.com/go-gl/mathgl/mgl64"
)

func TestKeys(t *testing.T) {
	s := onStage(t)
	s.SetSelection(PartTarget("supply"))
	nudges := []struct {
		look Look
		key  fyne.KeyName
		held fyne.KeyModifier
		want mgl64.Vec3
	}{
		{Side, fyne.KeyRight, 0, v3(1, 0, 0)},
		{Side, fyne.KeyUp, 0, v3(0, 1, 0)},
		{Side, fyne.KeyPageUp, 0, v3(0, 0, 1)},
		{Above, fyne.KeyDown, 0, v3(0, 0, 1)},
		{Front, fyne.KeyLeft, fyne.KeyModifierShift, v3(0, 0, 10)},
		{Turntable, fyne.KeyRight, 0, v3(1, 0, 0)},
		{Turntable, fyne.KeyUp, 0, v3(0, 0, -1)},
		{Turntable, fyne.KeyPageDown, 0, v3(0, -1, 0)},
	}
	for _, tt := range nudges {
		s.see(tt.look)
		s.held = tt.held
		s.key(tt.key)
		s.wantBy(tt.look.String()+" "+string(tt.key), s.nudges[len(s.nudges)-1], tt.want, 0)
	}
	s.held = 0
	s.see(Above)
	s.TypedShortcut(&desktop.CustomShortcut{KeyName: fyne.KeyLeft, Modifier: fyne.KeyModifierControl})
	s.wantBy("Ctrl and left", s.nudges[len(s.nudges)-1], v3(-0.1, 0, 0), 0)
	s.key(fyne.KeyR)
	s.held = fyne.KeyModifierShift
	s.key(fyne.KeyR)
	s.held = 0
	s.see(Front)
	s.key(fyne.KeyR)
	if got, want := s.turns, []string{"supply about +y by 90.0°", "supply about +y by -90.0°", "supply about +x by 90.0°"}; len(got) != 3 || got[0] != want[0] || got[1] != want[1] || got[2] != want[2] {
		t.Errorf("turns %q, want %q", got, want)
	}
	s.key(fyne.Key4)
	s.key(fyne.Key4)
	s.key(fyne.Key1)
	if len(s.looks) != 2 || s.looks[0] != Turntable || s.looks[1] != Side {
		t.Errorf("looks %v", s.looks)
	}
	was := s.Perspective()
	s.key(fyne.KeyP)
	if s.Perspective() == was {
		t.Error("P does not switch the perspective")
	}
	s.key(fyne.KeyDelete)
	if len(s.erased) != 1 || s.erased[0] != PartTarget("supply") {
		t.Errorf("Delete asks for %v", s.erased)
	}
	s.key(fyne.KeyEscape)
	if len(s.Selection()) != 0 || s.picked[len(s.picked)-1].Kind != Nothing {
		t.Error("Escape does not deselect")
	}
	if _, tabs := any(s.Board).(fyne.Tabbable); tabs {
		t.Error("the board swallows Tab")
	}
}

func TestFitKeys(t *testing.T) {
	s := onStage(t)
	s.see(Above)
	whole := *s.camera()
	s.SetSelection(PartTarget("sensor"))
	s.key(fyne.KeyF)
	part, _ := s.scene.Part("sensor")
	if s.camera().Zoom < 2*whole.Zoom {
		t.Errorf("F zooms to %.2f px per mm; the whole has %.2f", s.camera().Zoom, whole.Zoom)
	}
	for i := range 8 {
		if x, y := s.camera().Project(boxCorner(part.Lo, part.Hi, i)); x < 0 || y < 0 || x > 900 || y > 650 {
			t.Errorf("a corner of the chosen part is drawn at %.0f, %.0f", x, y)
		}
	}
	s.key(fyne.KeyHome)
	if d := math.Abs(s.camera().Zoom/whole.Zoom - 1); d > 1e-9 {
		t.Errorf("Home leaves the zoom at %g, want %g", s.camera().Zoom, whole.Zoom)
	}
	s.SetSelection()
	s.key(fyne.KeyRight)
	if len(s.nudges) != 0 {
		t.Error("with nothing chosen an arrow nudged something")
	}
}

func TestMeasuring(t *testing.T) {
	s := onStage(t)
	s.see(Above)
	s.key(fyne.KeyM)
	if len(s.taken) != 1 || s.taken[0] != measuringHint {
		t.Errorf("with the tool in hand it tells %q, want how to use it", s.taken)
	}
	s.taken = nil
	s.click(s.pixel(v3(19, 151, 78)))  // radiator.spare at 19, 150, 78
	s.click(s.pixel(v3(388, 171, 90))) // pump.fill at 380, 170, 90
	if want := "361.8 mm   x 361.0  y 20.0  z 12.0"; len(s.taken) != 1 || s.taken[0] != want {
		t.Errorf("measured %q, want %q (√(361² + 20² + 12²) = 361.75)", s.taken, want)
	}
	s.click(s.pixel(v3(289, 86, 267))) // near the supply's corner at 290, 86, 268
	s.click(s.pixel(v3(429, 86, 268))) // and its other corner at 430, 86, 268
	if want := "140.0 mm   x 140.0  y 0.0  z 0.0"; len(s.taken) != 2 || s.taken[1] != want {
		t.Errorf("measured %q, want %q", s.taken, want)
	}
	s.key(fyne.KeyEscape)
	if s.Measuring() || s.taken[len(s.taken)-1] != "" {
		t.Error("Escape does not put the tool away")
	}
	if len(s.picked) != 0 {
		t.Errorf("measuring selected %v", s.picked)
	}
}
