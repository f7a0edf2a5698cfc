package board

import (
	"math"
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// stage is a board with what it reported, driven as a person would. A pixel is
// one of Fyne's units.
type stage struct {
	*Board
	t      *testing.T
	held   fyne.KeyModifier
	clock  time.Time
	picked []Target
	moves  []mgl64.Vec3
	done   []bool
	nudges []mgl64.Vec3
	turns  []string
	said   []string
	looks  []Look
	joins  []string
	paths  [][]mgl64.Vec3
	taken  []string
	erased []Target
	menus  []Target
}

func onStage(t *testing.T) *stage {
	t.Helper()
	test.NewTempApp(t)
	s := &stage{Board: NewBoard(), t: t, clock: time.Unix(1000, 0)}
	s.keys = func() fyne.KeyModifier { return s.held }
	s.now = func() time.Time { return s.clock }
	s.Callbacks = Callbacks{
		OnSelect: func(x Target) { s.picked = append(s.picked, x) },
		OnMove: func(_ string, by mgl64.Vec3, done bool) {
			s.moves, s.done = append(s.moves, by), append(s.done, done)
		},
		OnNudge: func(_ string, by mgl64.Vec3) { s.nudges = append(s.nudges, by) },
		OnTurn:  func(part string, axis mgl64.Vec3, d float64) { s.turns = append(s.turns, turnText(part, axis, d)) },
		OnHover: func(text string) { s.said = append(s.said, text) },
		OnLook:  func(l Look) { s.looks = append(s.looks, l) },
		OnJoin:  func(a, b route.PortRef) { s.joins = append(s.joins, a.String()+" "+b.String()) },
		OnPath: func(_ string, via []mgl64.Vec3, done bool) {
			s.paths, s.done = append(s.paths, via), append(s.done, done)
		},
		OnMeasure: func(text string) { s.taken = append(s.taken, text) },
		OnDelete:  func(x Target) { s.erased = append(s.erased, x) },
		OnMenu:    func(x Target, _, _ float32) { s.menus = append(s.menus, x) },
	}
	s.Resize(fyne.NewSize(900, 650))
	s.SetScene(*demoScene(t))
	s.draw()
	return s
}

func turnText(part string, axis mgl64.Vec3, d float64) string {
	name, _, sign := axisName(axis)
	return part + " about " + map[float64]string{1: "+", -1: "-"}[sign] + name + " by " + route.Degrees(d)
}

// draw makes the picture as the window would before the next event.
func (s *stage) draw() {
	s.quality = Quick // in the half of the time
	s.generate(900, 650)
}

func (s *stage) see(l Look) {
	s.SetLook(l)
	s.draw()
}

func (s *stage) pixel(p mgl64.Vec3) fyne.Position {
	x, y := s.camera().Project(p)
	return fyne.NewPos(float32(x), float32(y))
}

func mouse(at fyne.Position, button desktop.MouseButton) *desktop.MouseEvent {
	e := &desktop.MouseEvent{Button: button}
	e.Position = at
	return e
}

func (s *stage) down(at fyne.Position, button desktop.MouseButton) { s.MouseDown(mouse(at, button)) }

func (s *stage) dragTo(at fyne.Position) {
	e := &fyne.DragEvent{}
	e.Position = at
	s.Dragged(e)
	s.draw()
}

func (s *stage) up(at fyne.Position, button desktop.MouseButton) {
	s.MouseUp(mouse(at, button))
	s.DragEnd()
	s.draw()
}

func (s *stage) drag(from, to fyne.Position, button desktop.MouseButton) {
	s.down(from, button)
	s.dragTo(from.AddXY(6, 0))
	s.dragTo(to)
	s.up(to, button)
}

func (s *stage) click(at fyne.Position) {
	s.down(at, desktop.MouseButtonPrimary)
	s.up(at, desktop.MouseButtonPrimary)
	s.clock = s.clock.Add(time.Second)
}

func (s *stage) key(name fyne.KeyName) {
	s.TypedKey(&fyne.KeyEvent{Name: name})
	s.draw()
}

func (s *stage) last() mgl64.Vec3 {
	s.t.Helper()
	if len(s.moves) == 0 {
		s.t.Fatal("no move was told")
	}
	return s.moves[len(s.moves)-1]
}

func (s *stage) wantBy(what string, got, want mgl64.Vec3, within float64) {
	s.t.Helper()
	if d := got.Sub(want).Len(); d > within {
		s.t.Errorf("%s: moved by %v, want %v", what, got, want)
	}
}

// pixelNoise is what the float32 of Fyne's positions may be off by, mm.
const pixelNoise = 1e-3

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

func TestMeasuring(t *testing.T) {
	s := onStage(t)
	s.see(Above)
	s.key(fyne.KeyM)
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
