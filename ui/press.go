package ui

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// wobble is how far the pointer may slip during a click, in pixels. Fyne
// itself loses a click inside a scroll that slips by 2 (its issue 4672).
const wobble = 6

// press is a field that can be pressed by mouse or key, around any content.
type press struct {
	widget.BaseWidget
	content  fyne.CanvasObject
	onPress  func()
	onKey    func(fyne.KeyName) bool // nil: none; true: it has been dealt with
	onFocus  func()                  // nil: nobody is told
	onLook   func(on bool)           // told when pointer or focus come and go; nil: nobody is
	inset    fyne.Size
	plain    bool // no ground of its own until hovered
	outlined bool // with a thin line around it
	strong   bool // filled: the one to press
	off      bool // cannot be pressed
	chosen   bool

	over, focus bool
	slipped     fyne.Delta
}

func newPress(content fyne.CanvasObject, onPress func()) *press {
	p := &press{content: content, onPress: onPress, inset: fyne.NewSize(8, 6), plain: true}
	p.ExtendBaseWidget(p)
	return p
}

// choose marks the field as the selected one.
func (p *press) choose(yes bool) {
	if p.chosen != yes {
		p.chosen = yes
		p.Refresh()
	}
}

func (p *press) act() {
	if p.onPress != nil && !p.off {
		p.onPress()
	}
}

// HeightFor is the content's height at a width, with the inset.
func (p *press) HeightFor(width float32) float32 {
	return heightFor(p.content, max(0, width-2*p.inset.Width)) + 2*p.inset.Height
}

// Tapped is a click without a slip.
func (p *press) Tapped(*fyne.PointEvent) { p.act() }

// Dragged and DragEnd make a click of a press that slipped a little.
func (p *press) Dragged(e *fyne.DragEvent) {
	p.slipped.DX += e.Dragged.DX
	p.slipped.DY += e.Dragged.DY
}

// DragEnd ends a slip.
func (p *press) DragEnd() {
	far := p.slipped.DX*p.slipped.DX+p.slipped.DY*p.slipped.DY > wobble*wobble
	p.slipped = fyne.Delta{}
	if !far {
		p.act()
	}
}

// MouseIn, MouseMoved and MouseOut show what is under the pointer.
func (p *press) MouseIn(*desktop.MouseEvent) {
	p.over = true
	p.look(true)
	p.Refresh()
}

// MouseMoved is part of being hoverable.
func (p *press) MouseMoved(*desktop.MouseEvent) {}

// MouseOut ends the hovering.
func (p *press) MouseOut() {
	p.over = false
	p.look(false)
	p.Refresh()
}

// onKey is asked first about keys while the field has the focus.
func (p *press) keyed(name fyne.KeyName) bool { return p.onKey != nil && p.onKey(name) }

// Cursor shows that the field can be pressed.
func (p *press) Cursor() desktop.Cursor { return desktop.PointerCursor }

// FocusGained shows the ring.
func (p *press) FocusGained() {
	p.focus = true
	p.Refresh()
	if p.onFocus != nil {
		p.onFocus()
	}
	p.look(true)
}

// FocusLost hides it.
func (p *press) FocusLost() {
	p.focus = false
	p.look(false)
	p.Refresh()
}

func (p *press) look(on bool) {
	if p.onLook != nil {
		p.onLook(on)
	}
}

// TypedRune leaves letters to the window.
func (p *press) TypedRune(r rune) {
	if r != ' ' {
		passRune(p, r)
	}
}

// TypedKey presses on Space and Enter. What it has no use for is the window's,
// but for the keys that would move or remove what is selected elsewhere.
func (p *press) TypedKey(e *fyne.KeyEvent) {
	if p.keyed(e.Name) {
		return
	}
	switch e.Name {
	case fyne.KeySpace, fyne.KeyReturn, fyne.KeyEnter:
		p.act()
	case fyne.KeyUp, fyne.KeyDown, fyne.KeyLeft, fyne.KeyRight, fyne.KeyDelete, fyne.KeyBackspace:
	default:
		passKey(p, e)
	}
}

func (p *press) CreateRenderer() fyne.WidgetRenderer {
	back := canvas.NewRectangle(paint(face))
	back.CornerRadius = 4
	mark := canvas.NewRectangle(paint(accent))
	r := &pressRenderer{press: p, back: back, mark: mark}
	r.tone()
	return laidOut(p, r)
}

type pressRenderer struct {
	press      *press
	back, mark *canvas.Rectangle
}

// tone gives ground, mark and ring the colours of the field's state.
func (r *pressRenderer) tone() {
	p := r.press
	r.back.FillColor, r.back.StrokeWidth = paint(face), 0
	if p.plain {
		r.back.FillColor = theme.Color(theme.ColorNameHover)
		if !p.over {
			r.back.FillColor = color.Transparent // Fyne paints any other colour that cannot be seen
		}
	} else if p.over {
		r.back.FillColor = paint(hovered)
	}
	if p.chosen {
		r.back.FillColor = paint(chosen)
	}
	if p.outlined {
		r.back.StrokeColor, r.back.StrokeWidth = paint(rule), 1
	}
	if p.strong {
		r.back.FillColor, r.back.StrokeWidth = paint(accent), 0
	}
	if p.focus {
		r.back.StrokeColor, r.back.StrokeWidth = paint(accent), 2
		if p.strong {
			r.back.StrokeColor = paint(ink)
		}
	}
	r.mark.FillColor = paint(accent)
	r.mark.Hidden = !p.chosen
}

func (r *pressRenderer) MinSize() fyne.Size {
	in := r.press.inset
	return r.press.content.MinSize().Add(fyne.NewSize(2*in.Width, 2*in.Height))
}

func (r *pressRenderer) Layout(size fyne.Size) {
	in := r.press.inset
	r.back.Resize(size)
	r.mark.Move(fyne.NewPos(0, 4))
	r.mark.Resize(fyne.NewSize(3, max(0, size.Height-8)))
	r.press.content.Move(fyne.NewPos(in.Width, in.Height))
	r.press.content.Resize(fyne.NewSize(max(0, size.Width-2*in.Width), max(0, size.Height-2*in.Height)))
}

func (r *pressRenderer) Refresh() {
	r.tone()
	r.back.Refresh()
	r.mark.Refresh()
}

func (r *pressRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.back, r.mark, r.press.content}
}

func (r *pressRenderer) Destroy() {}
