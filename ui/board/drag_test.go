package board

import (
	"math"
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

func TestDragMovesByTheRightMillimetres(t *testing.T) {
	tests := []struct {
		look     Look
		from, to mgl64.Vec3 // points of one plane of the look, on the supply
		want     mgl64.Vec3
	}{
		{Above, v3(360, 86, 330), v3(323.5, 86, 312.25), v3(-36.5, 0, -17.75)},
		{Side, v3(360, 40, 393), v3(341.25, 66.5, 393), v3(-18.75, 26.5, 0)},
		{Front, v3(430, 40, 330), v3(430, 55.5, 301.5), v3(0, 15.5, -28.5)},
		{Turntable, v3(300, 86, 280), v3(270.5, 86, 300.5), v3(-29.5, 0, 20.5)},
	}
	for _, tt := range tests {
		s := onStage(t)
		s.SetGrid(0)
		s.see(tt.look)
		s.held = fyne.KeyModifierAlt
		s.drag(s.pixel(tt.from), s.pixel(tt.to), desktop.MouseButtonPrimary)
		s.wantBy(tt.look.String(), s.last(), tt.want, 0.02)
		if !s.done[len(s.done)-1] || s.done[0] {
			t.Errorf("%v: done was told as %v", tt.look, s.done)
		}
		if s.Selection()[0] != PartTarget("supply") {
			t.Errorf("%v: a dragged part is chosen; got %v", tt.look, s.Selection())
		}
	}
}

func TestDragSnapsToTheGridUnlessAltIsHeld(t *testing.T) {
	s := onStage(t)
	s.see(Above) // the supply's origin is at 290, 0, 268; the grid is 5 mm
	from := s.pixel(v3(400, 86, 380))
	s.drag(from, s.pixel(v3(382.7, 86, 371.2)), desktop.MouseButtonPrimary)
	s.wantBy("origin to 275, 260", s.last(), v3(-15, 0, -8), pixelNoise)
	s.held = fyne.KeyModifierAlt
	s.drag(from, s.pixel(v3(382.7, 86, 371.2)), desktop.MouseButtonPrimary)
	s.wantBy("with Alt", s.last(), v3(-17.3, 0, -8.8), 0.01)
}

func TestDragSnapsToALineOfPorts(t *testing.T) {
	s := onStage(t)
	s.see(Side) // pump.in looks at sensor.out along x; both are at y 152, z 90
	from := s.pixel(v3(398, 120, 120))
	s.down(from, desktop.MouseButtonPrimary)
	s.dragTo(from.AddXY(8, 0))
	k := float32(s.camera().Zoom)
	s.dragTo(from.AddXY(12*k, 2.2*k)) // 12 mm to the right, 2.2 mm down: near the line
	if g := s.show().Guides; len(g) != 1 || g[0].Miss != 0 || g[0].From.Part != "pump" {
		t.Fatalf("guides %+v, want the one from pump.in to sensor.out", g)
	}
	s.wantBy("drawn to the line, x to the grid", s.last(), v3(10, 0, 0), pixelNoise)
	s.dragTo(from.AddXY(12*k, 30*k))
	if g := s.show().Guides; len(g) != 0 {
		t.Errorf("30 mm off the line there is still a guide: %+v", g)
	}
	s.held = fyne.KeyModifierAlt
	s.dragTo(from.AddXY(12*k, 2.2*k))
	s.wantBy("Alt lifts the line", s.last(), v3(12, -2.2, 0), 0.01)
	s.up(from, desktop.MouseButtonPrimary)
	if g := s.show().Guides; len(g) != 0 {
		t.Errorf("guides stay after the drag: %+v", g)
	}
}

func TestGuideTellsWhatTheLookHides(t *testing.T) {
	s := onStage(t)
	scene := demoScene(t)
	for i := range scene.Ports { // the sensor stands 12 mm nearer than the pump's port
		if scene.Ports[i].Ref.Part == "sensor" {
			scene.Ports[i].Frame.At[2] += 12
		}
	}
	s.SetScene(*scene)
	s.see(Side)
	from := s.pixel(v3(398, 120, 120))
	s.down(from, desktop.MouseButtonPrimary)
	s.dragTo(from.AddXY(20, 1))
	if g := s.show().Guides; len(g) != 1 || math.Abs(g[0].Miss-12) > 1e-9 {
		t.Errorf("guides %+v, want one that misses by 12 mm across", g)
	}
	s.up(from, desktop.MouseButtonPrimary)
}

func TestPartStaysUnderThePointerWhileThePlanLags(t *testing.T) {
	s := onStage(t)
	s.see(Above)
	s.held = fyne.KeyModifierAlt
	from, to := s.pixel(v3(400, 86, 380)), s.pixel(v3(370, 86, 380))
	s.down(from, desktop.MouseButtonPrimary)
	s.dragTo(from.AddXY(6, 0))
	s.dragTo(to)
	s.wantBy("drawn shifted", s.shift().By, v3(-30, 0, 0), 0.01)
	plan, list, sol := demo(t)
	plan.Parts[8].At = plan.Parts[8].At.Add(s.last())
	s.SetScene(NewScene(plan, list, sol)) // the plan catches up
	s.wantBy("no longer shifted", s.shift().By, v3(0, 0, 0), 1e-9)
	s.up(to, desktop.MouseButtonPrimary)
	s.SetScene(NewScene(plan, list, sol))
	if got := s.shift(); got != (Shift{}) {
		t.Errorf("after the drag the part is still shifted by %+v", got)
	}
}

func TestEscapeGivesADragUp(t *testing.T) {
	s := onStage(t)
	s.see(Above)
	from := s.pixel(v3(400, 86, 380))
	s.down(from, desktop.MouseButtonPrimary)
	s.dragTo(from.AddXY(-80, 0))
	s.key(fyne.KeyEscape)
	s.wantBy("given up", s.last(), v3(0, 0, 0), 0)
	if !s.done[len(s.done)-1] {
		t.Error("the end of the drag was not told")
	}
	n := len(s.moves)
	s.dragTo(from.AddXY(-120, 0))
	s.up(from, desktop.MouseButtonPrimary)
	if len(s.moves) != n {
		t.Error("the drag went on after Escape")
	}
	if len(s.picked) != 1 {
		t.Errorf("letting go after Escape counts as a click: %v", s.picked)
	}
}

func TestShortDragIsAClick(t *testing.T) {
	s := onStage(t)
	s.see(Above)
	at := s.pixel(v3(400, 86, 380))
	s.down(at, desktop.MouseButtonPrimary)
	s.dragTo(at.AddXY(2, 1))
	s.DragEnd() // let go outside the window: no MouseUp
	if len(s.moves) != 0 || len(s.picked) != 1 || s.picked[0] != PartTarget("supply") {
		t.Errorf("moves %v, picked %v", s.moves, s.picked)
	}
}

func TestDragFromPortToPort(t *testing.T) {
	s := onStage(t)
	s.see(Above)
	spare, fill := s.pixel(v3(19, 151, 78)), s.pixel(v3(388, 171, 90))
	s.down(spare, desktop.MouseButtonPrimary)
	s.dragTo(spare.AddXY(20, 0))
	show := s.show()
	if len(show.Greyed) != len(s.scene.Ports)-2 {
		t.Errorf("%d ports are greyed, want all but the two free ones of %d", len(show.Greyed), len(s.scene.Ports))
	}
	s.dragTo(fill)
	if r := s.show().Rubber; r == nil || !r.Joins || r.Why != "" {
		t.Errorf("over the other port the line is %+v", r)
	}
	s.up(fill, desktop.MouseButtonPrimary)
	if len(s.joins) != 1 || s.joins[0] != "radiator.spare pump.fill" {
		t.Errorf("joins %q", s.joins)
	}
	used := s.pixel(v3(223, 34, 157)) // the flange of processor.out
	s.drag(spare, used, desktop.MouseButtonPrimary)
	if len(s.joins) != 1 {
		t.Errorf("a used port was joined: %q", s.joins)
	}
	if want := "from radiator.spare to processor.out: processor.out already holds processor to regulators"; !slices.Contains(s.said, want) {
		t.Errorf("said %q, want %q among it", s.said, want)
	}
}

func TestDragAStraightOfTheChosenRun(t *testing.T) {
	s := onStage(t)
	s.see(Above)
	s.SetSelection(RunTarget("pump to card"))
	s.draw()
	at := s.pixel(v3(245, 194, 229))
	s.drag(at, at.AddXY(0, float32(20*s.camera().Zoom)), desktop.MouseButtonPrimary)
	tube, _ := s.scene.Tube("pump to card")
	got := s.paths[len(s.paths)-1]
	if len(got) != 3 || got[0] != tube.Corners[1] {
		t.Fatalf("corners %v, before %v", got, tube.Corners)
	}
	by := got[1].Sub(tube.Corners[2])
	if by[1] != 0 || by[2] < 10 || got[2].Sub(tube.Corners[3]) != by {
		t.Errorf("the straight's ends moved by %v and %v", by, got[2].Sub(tube.Corners[3]))
	}
}

func TestMoveAddAndDropACorner(t *testing.T) {
	s := onStage(t)
	s.see(Above)
	s.SetSelection(RunTarget("pump to card"))
	s.draw()
	corner := s.pixel(v3(110, 186, 252))
	k := float32(s.camera().Zoom)
	s.drag(corner, corner.AddXY(10*k, -12*k), desktop.MouseButtonPrimary)
	s.wantBy("corner to the grid", s.paths[len(s.paths)-1][2], v3(120, 186, 240), pixelNoise)
	n := len(s.paths)
	on := s.pixel(v3(245, 194, 229))
	s.down(on, desktop.MouseButtonPrimary)
	s.up(on, desktop.MouseButtonPrimary)
	s.down(on, desktop.MouseButtonPrimary) // at once: a double click
	s.up(on, desktop.MouseButtonPrimary)
	if len(s.paths) != n+1 || len(s.paths[n]) != 4 {
		t.Fatalf("a double click on the straight gives %v", s.paths[n:])
	}
	s.clock = s.clock.Add(time.Second)
	s.SetSelection(RunTarget("pump to card"))
	s.draw()
	s.click(corner)
	s.key(fyne.KeyDelete)
	if got := s.paths[len(s.paths)-1]; len(got) != 2 {
		t.Errorf("after Delete on a corner %d inner corners are left, want 2", len(got))
	}
	if len(s.erased) != 0 {
		t.Error("Delete on a corner asked to delete the run")
	}
}

func TestPlansInInchesSnapAndStepInInches(t *testing.T) {
	s := onStage(t)
	plan, list, sol := demo(t)
	plan.Units = route.Inches
	s.SetScene(NewScene(plan, list, sol))
	s.see(Above)
	from := s.pixel(v3(400, 86, 380))
	s.drag(from, s.pixel(v3(384, 86, 380)), desktop.MouseButtonPrimary)
	if x := (290 + s.last()[0]) / 6.35; math.Abs(x-math.Round(x)) > 1e-9 || math.Abs(s.last()[0]+16) > 3.2 {
		t.Errorf("the supply went to x %g mm, which is %g quarters of an inch", 290+s.last()[0], x)
	}
	s.SetSelection(PartTarget("supply"))
	s.key(fyne.KeyRight)
	s.wantBy("an arrow", s.nudges[0], v3(1.27, 0, 0), 1e-12)
}
