package board

import (
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// How far one press of an arrow key moves a part: by itself in mm, or in plans
// that count in inches; with Shift and with Ctrl so many times as far.
const (
	nudgeStep  = 1.0
	nudgeInch  = 0.05 * route.Inch
	nudgeLarge = 10.0
	nudgeSmall = 0.1
)

// stepBy is one step of the arrow keys along an axis, mm.
func (b *Board) stepBy(axis mgl64.Vec3, times float64) mgl64.Vec3 {
	if b.scene.Units == route.Inches {
		return axis.Mul(nudgeInch * times)
	}
	return axis.Mul(nudgeStep * times)
}

// FocusGained is for Fyne.
func (b *Board) FocusGained() {
	b.focused = true
	b.invalidate()
}

// FocusLost is for Fyne. A drag goes on: the end of it will be told.
func (b *Board) FocusLost() {
	b.focused, b.hand.space = false, false
	b.invalidate()
}

// ownLetters are the letters whose keys mean something to the board, which
// listens to keys.
const ownLetters = "1234fFrRpPmM+=- "

// TypedRune is for Fyne.
func (b *Board) TypedRune(r rune) {
	if b.OnRune != nil && !strings.ContainsRune(ownLetters, r) {
		b.OnRune(r)
	}
}

// KeyDown is for Fyne.
func (b *Board) KeyDown(e *fyne.KeyEvent) {
	if e.Name == fyne.KeySpace {
		b.hand.space = true
	}
}

// KeyUp is for Fyne.
func (b *Board) KeyUp(e *fyne.KeyEvent) {
	if e.Name == fyne.KeySpace {
		b.hand.space = false
	}
}

// TypedKey is for Fyne.
func (b *Board) TypedKey(e *fyne.KeyEvent) {
	times := 1.0
	if b.keys()&fyne.KeyModifierShift != 0 {
		times = nudgeLarge
	}
	if dir, ok := b.arrow(e.Name); ok {
		b.nudge(b.stepBy(dir, times))
		return
	}
	switch e.Name {
	case fyne.Key1, fyne.Key2, fyne.Key3, fyne.Key4:
		b.chooseLook(Look(e.Name[0] - '1'))
	case fyne.KeyF:
		b.FitSelection()
	case fyne.KeyHome:
		b.FitAll()
	case fyne.KeyR:
		b.turn()
	case fyne.KeyP:
		b.SetPerspective(!b.Perspective())
	case fyne.KeyM:
		b.SetMeasuring(!b.measuring)
	case fyne.KeyPlus, fyne.KeyEqual:
		b.zoomMiddle(zoomNotch)
	case fyne.KeyMinus:
		b.zoomMiddle(1 / zoomNotch)
	case fyne.KeyDelete, fyne.KeyBackspace:
		b.remove()
	case fyne.KeyEscape:
		b.escape()
	default:
		if b.OnKey != nil {
			b.OnKey(e)
		}
	}
}

// TypedShortcut is for Fyne: Ctrl and an arrow key arrive as a shortcut. All
// others are the window's.
func (b *Board) TypedShortcut(s fyne.Shortcut) {
	if c, ok := s.(*desktop.CustomShortcut); ok && c.Modifier == fyne.KeyModifierControl {
		if dir, ok := b.arrow(c.KeyName); ok {
			b.nudge(b.stepBy(dir, nudgeSmall))
			return
		}
	}
	d := driver()
	if d == nil {
		return
	}
	if c, ok := d.CanvasForObject(b).(fyne.Shortcutable); ok {
		c.TypedShortcut(s)
	}
}

// arrow gives the axis of the case along which a key moves things in this look.
// Page up and page down go toward the viewer and away.
func (b *Board) arrow(key fyne.KeyName) (mgl64.Vec3, bool) {
	right, up, back := b.planeAxes()
	switch key {
	case fyne.KeyLeft:
		return right.Mul(-1), true
	case fyne.KeyRight:
		return right, true
	case fyne.KeyUp:
		return up, true
	case fyne.KeyDown:
		return up.Mul(-1), true
	case fyne.KeyPageUp:
		return back, true
	case fyne.KeyPageDown:
		return back.Mul(-1), true
	}
	return mgl64.Vec3{}, false
}

// planeAxes gives the axes of the case that run to the right and up in the plane
// of the look, and the one out of it. On the turntable the plane is the floor.
func (b *Board) planeAxes() (right, up, out mgl64.Vec3) {
	right, up, out = b.camera().Axes()
	if b.look.Flat() {
		return right, up, out
	}
	right[1] = 0
	right = mainAxis(right)
	return right, mgl64.Vec3{0, 1, 0}.Cross(right), mgl64.Vec3{0, 1, 0}
}

// mainAxis is the axis of the case nearest to a direction.
func mainAxis(d mgl64.Vec3) mgl64.Vec3 {
	best := 0
	for k := range 3 {
		if math.Abs(d[k]) > math.Abs(d[best])+1e-9 {
			best = k
		}
	}
	var axis mgl64.Vec3
	axis[best] = math.Copysign(1, d[best])
	return axis
}

// chosenPart is the one part that is chosen, or the part of the one port.
func (b *Board) chosenPart() (string, bool) {
	if len(b.selection) != 1 {
		return "", false
	}
	switch t := b.selection[0]; t.Kind {
	case OnPart:
		return t.Part, true
	case OnPort:
		return t.Port.Part, true
	case Nothing, OnRun, OnFinding:
	}
	return "", false
}

// nudge moves the chosen part a step; with none chosen the picture moves.
func (b *Board) nudge(by mgl64.Vec3) {
	part, ok := b.chosenPart()
	switch {
	case !ok:
		b.panBy(by)
	case b.OnNudge != nil:
		b.OnNudge(part, by)
	}
}

// panStep is how far the picture moves for a step of 1 mm of an arrow key, px.
const panStep = 24.0

func (b *Board) panBy(by mgl64.Vec3) {
	right, up, _ := b.planeAxes()
	k := panStep * b.ratio
	b.camera().Pan(-by.Dot(right)*k, by.Dot(up)*k)
	b.roamed[b.look] = true
	b.invalidate()
}

// turn asks for a quarter turn about the look's axis: to the left as one looks
// at it, to the right with Shift.
func (b *Board) turn() {
	part, ok := b.chosenPart()
	if !ok || b.OnTurn == nil {
		return
	}
	_, _, axis := b.planeAxes()
	degrees := 90.0
	if b.keys()&fyne.KeyModifierShift != 0 {
		degrees = -90
	}
	b.OnTurn(part, axis, degrees)
}

func (b *Board) zoomMiddle(factor float64) {
	x, y := b.camera().middle()
	b.camera().ZoomAt(x, y, factor)
	b.roamed[b.look] = true
	b.invalidate()
}

// remove takes the chosen corner away, else asks to remove what is chosen.
func (b *Board) remove() {
	if b.dropCorner() || b.OnDelete == nil || len(b.selection) != 1 {
		return
	}
	b.OnDelete(b.selection[0])
}

// escape gives up one thing at a time: what is in hand, the tool, the choice.
func (b *Board) escape() {
	switch {
	case b.hand.grip != nil:
		b.letGo()
	case b.pointing != nil:
		b.unpoint()
	case b.measuring:
		b.SetMeasuring(false)
	default:
		b.choose(Target{})
	}
}
