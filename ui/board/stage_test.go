package board

import (
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
