package board

import (
	"math"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// hand is what the pointer is doing. Events only fill it in; follow acts on it
// once per frame.
type hand struct {
	x, y    float64 // where the pointer is, px
	over    bool    // it is on the board
	moved   bool    // since the last frame
	pressed bool
	press   press
	grip    grip
	hover   Target
	said    string
	space   bool // the space bar is held
	settle  Shift
	last    time.Time // of the press before, for double clicks
}

// press is how a button went down.
type press struct {
	x, y   float64
	button desktop.MouseButton
	on     Target
	twice  bool
}

const (
	// clickPath is how far the pointer may stray in a click, px of a plain screen.
	clickPath = 4.0
	// doubleTime is the longest time between the presses of a double click.
	doubleTime = 400 * time.Millisecond
)

// at takes an event's place on the widget to px of the picture.
func (b *Board) at(p fyne.Position) (x, y float64) {
	p = p.Subtract(b.raster.Position())
	return float64(p.X) * b.ratio, float64(p.Y) * b.ratio
}

// point takes note of where the pointer is.
func (b *Board) point(p fyne.Position) {
	b.hand.x, b.hand.y = b.at(p)
	b.hand.moved = true
}

// MouseDown is for Fyne.
func (b *Board) MouseDown(e *desktop.MouseEvent) {
	b.takeFocus()
	if b.hand.grip != nil {
		return // a second button does nothing while something is in hand
	}
	b.point(e.Position)
	h := &b.hand
	now := b.now()
	p := press{x: h.x, y: h.y, button: e.Button, on: b.painter.Hit(h.x, h.y)}
	p.twice = e.Button == desktop.MouseButtonPrimary && now.Sub(h.last) <= doubleTime && b.near(h.press.x, h.press.y)
	h.pressed, h.press, h.last = true, p, now
	if p.twice {
		h.last = time.Time{}
	}
}

// near reports whether the pointer is within a click of a place.
func (b *Board) near(x, y float64) bool {
	return math.Hypot(b.hand.x-x, b.hand.y-y) < clickPath*b.ratio
}

// takeFocus makes the keys go to the board.
func (b *Board) takeFocus() {
	if d := driver(); d != nil {
		if c := d.CanvasForObject(b); c != nil {
			c.Focus(b)
		}
	}
}

// Dragged is for Fyne.
func (b *Board) Dragged(e *fyne.DragEvent) {
	h := &b.hand
	if !h.pressed {
		return
	}
	b.point(e.Position)
	if h.grip == nil && !b.near(h.press.x, h.press.y) {
		h.grip = b.take(h.press)
		h.moved = true // taking hold may have passed a frame
		b.invalidate()
		return
	}
	b.still = 0 // what is in hand says whether the picture changes
	b.wake()
}

// DragEnd is for Fyne. It comes even when the button is let go outside the window.
func (b *Board) DragEnd() { b.release() }

// MouseUp is for Fyne.
func (b *Board) MouseUp(e *desktop.MouseEvent) {
	if b.hand.pressed && e.Button == b.hand.press.button {
		b.point(e.Position)
		b.release()
	}
}

// release ends a drag or a click; of the two events that may tell, the second
// finds nothing left to do.
func (b *Board) release() {
	h := &b.hand
	if !h.pressed {
		return
	}
	h.pressed = false
	if g := h.grip; g != nil {
		g.move(b, h.x, h.y)
		h.grip = nil
		g.end(b, true)
	} else {
		b.click(h.press)
	}
	b.invalidate()
}

// letGo gives up what is in hand.
func (b *Board) letGo() {
	if g := b.hand.grip; g != nil {
		b.hand.grip, b.hand.pressed = nil, false
		g.end(b, false)
		b.invalidate()
	}
}

// click acts on a press that did not become a drag.
func (b *Board) click(p press) {
	switch {
	case p.button == desktop.MouseButtonSecondary:
		b.menu(p)
	case p.button != desktop.MouseButtonPrimary || b.hand.space:
	case b.pointing != nil:
		b.pointAtPlane(p.x, p.y)
	case b.measuring:
		b.pick(p.x, p.y)
	case p.twice && b.addCorner(p):
	default:
		b.corner = b.cornerNear(p.x, p.y)
		if b.corner < 0 {
			b.choose(p.on)
		}
	}
}

// menu chooses what is under the pointer and asks for its menu.
func (b *Board) menu(p press) {
	b.choose(p.on)
	if b.OnMenu == nil {
		return
	}
	at := fyne.NewPos(float32(p.x/b.ratio), float32(p.y/b.ratio)).Add(b.raster.Position())
	if d := driver(); d != nil {
		at = at.Add(d.AbsolutePositionForObject(b))
	}
	b.OnMenu(p.on, at.X, at.Y)
}

// choose makes a target the only one chosen and says so.
func (b *Board) choose(t Target) {
	if t.Kind == Nothing {
		b.SetSelection()
	} else {
		b.SetSelection(t)
	}
	if b.OnSelect != nil {
		b.OnSelect(t)
	}
}

// follow does once what the events of a frame ask for.
func (b *Board) follow() {
	h := &b.hand
	if !h.moved {
		return
	}
	h.moved = false
	if h.grip != nil {
		if h.grip.move(b, h.x, h.y) {
			b.dirty = true
		}
		return
	}
	b.hoverOver()
}

// hoverOver finds what is under the pointer and tells it in words.
func (b *Board) hoverOver() {
	t := Target{}
	if b.hand.over {
		t = b.painter.Hit(b.hand.x, b.hand.y)
	}
	if t != b.hand.hover {
		b.hand.hover, b.dirty = t, true
	}
	if b.measuring && b.measure != nil && !b.measureDone() {
		b.dirty = true
	}
	b.say(b.scene.Words(t))
}

// say passes words on when they are others than before.
func (b *Board) say(text string) {
	if text != b.hand.said {
		b.hand.said = text
		if b.OnHover != nil {
			b.OnHover(text)
		}
	}
}

// MouseIn is for Fyne.
func (b *Board) MouseIn(e *desktop.MouseEvent) { b.MouseMoved(e) }

// MouseMoved is for Fyne.
func (b *Board) MouseMoved(e *desktop.MouseEvent) {
	b.hand.over = true
	b.point(e.Position)
	b.wake()
}

// MouseOut is for Fyne.
func (b *Board) MouseOut() {
	b.hand.over, b.hand.moved = false, true
	b.wake()
}

// wake runs the frames without asking for a picture; follow asks when it needs one.
func (b *Board) wake() {
	if !b.running {
		b.running, b.still = true, 0
		b.pump.Start(b.tick)
	}
}

// Zoom per notch of the wheel, and per notch with Shift held. Fyne counts 25 a notch.
const (
	zoomNotch, zoomFine = 1.2, 1.04
	notch               = 25.0
)

// Scrolled is for Fyne: the wheel zooms at the pointer.
func (b *Board) Scrolled(e *fyne.ScrollEvent) {
	x, y := b.at(e.Position)
	factor := math.Pow(zoomNotch, float64(e.Scrolled.DY)/notch)
	if e.Scrolled.DY == 0 { // Shift and the wheel arrive as a sideways scroll
		factor = math.Pow(zoomFine, float64(e.Scrolled.DX)/notch)
	}
	b.camera().ZoomAt(x, y, factor)
	b.roamed[b.look] = true
	b.hand.moved = true
	b.invalidate()
}

// Cursor is for Fyne.
func (b *Board) Cursor() desktop.Cursor {
	switch {
	case b.measuring, b.pointing != nil:
		return desktop.CrosshairCursor
	case b.hand.hover.Kind != Nothing:
		return desktop.PointerCursor
	}
	return desktop.DefaultCursor
}
