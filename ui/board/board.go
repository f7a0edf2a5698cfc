package board

import (
	"image"
	"slices"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"tubewright/route"
)

// Board is the large view: a widget that shows a scene in one of the four looks
// and lets a person take hold of it. Set its Callbacks before it is shown. All
// methods are for the UI goroutine.
type Board struct {
	widget.BaseWidget
	Callbacks

	scene     *Scene
	next      func() Scene // makes the one to show with the next frame; nil: none
	style     Style
	look      Look
	cameras   [4]Camera
	roamed    [4]bool // the person has chosen what a look shows; until then it shows all
	selection []Target
	corner    int // of the chosen run's path, -1 for none
	grid      float64
	measuring bool
	measure   *Measure
	pointing  *pointing // nil: no points are asked for

	painter Painter
	picture *image.RGBA
	raster  *canvas.Raster
	placed  bool    // where the raster stands on the screen is known
	ratio   float64 // px per unit of Fyne's
	growth  float64 // of writing and marks over the size they come with
	quality Quality
	minis   []*Mini
	gaps    []*canvas.Rectangle // the ground between the looks of a desk

	pump    Pump
	running bool
	dirty   bool
	still   int // frames since the last change
	frames  int // pictures asked for

	hand    hand
	focused bool
	// keys gives the modifiers held now, now the time; tests replace them.
	keys func() fyne.KeyModifier
	now  func() time.Time
}

// NewBoard is a board with nothing on it, in the light style.
func NewBoard() *Board {
	b := &Board{
		scene: &Scene{targets: []Target{{}}}, style: Light(), grid: gridByUnits, corner: -1,
		ratio: 1, growth: 1, pump: newPump(), keys: heldKeys, now: time.Now,
	}
	for i := range b.cameras {
		b.cameras[i] = NewCamera(Look(i), b.scene.Case, 1, 1)
	}
	b.raster = canvas.NewRaster(b.generate)
	b.ExtendBaseWidget(b)
	return b
}

// CreateRenderer is for Fyne.
func (b *Board) CreateRenderer() fyne.WidgetRenderer {
	return &sharpRenderer{b.raster, b.stand, b.MinSize}
}

// Move is for Fyne.
func (b *Board) Move(at fyne.Position) {
	b.BaseWidget.Move(at)
	b.stand()
}

// stand puts the picture on whole pixels of the screen.
func (b *Board) stand() { b.placed = onPixels(b, b.raster) }

// MinSize is the least size at which the board is of use.
func (b *Board) MinSize() fyne.Size {
	b.ExtendBaseWidget(b)
	return fyne.NewSize(240, 180)
}

// SetScene shows another state of the plan. The cameras stay, but for the first
// scene and another case, which are shown whole.
func (b *Board) SetScene(s Scene) {
	other := s.Case != b.scene.Case
	b.scene, b.next = &s, nil
	if b.hand.grip == nil {
		b.hand.settle = Shift{}
	}
	if other {
		b.FitAll()
	}
	b.invalidate()
}

// SetSceneSoon is SetScene with the next frame: of several states that come
// within one only the last is made.
func (b *Board) SetSceneSoon(make func() Scene) {
	b.next = make
	b.invalidate()
}

// Scene gives what is shown.
func (b *Board) Scene() *Scene { return b.scene }

// SetSelection marks what is chosen; none, nothing is. It does not call OnSelect.
func (b *Board) SetSelection(chosen ...Target) {
	if !slices.Equal(chosen, b.selection) {
		b.selection, b.corner = slices.Clone(chosen), -1
		b.invalidate()
	}
}

// Selection gives what is marked as chosen.
func (b *Board) Selection() []Target { return slices.Clone(b.selection) }

// SetLook makes a look the large one. It does not call OnLook.
func (b *Board) SetLook(l Look) {
	if l != b.look {
		b.letGo()
		b.unpoint()
		b.look = l
		b.invalidate()
	}
}

// chooseLook is SetLook as the person does it.
func (b *Board) chooseLook(l Look) {
	if l == b.look {
		return
	}
	b.SetLook(l)
	if b.OnLook != nil {
		b.OnLook(l)
	}
}

// Look gives the large look.
func (b *Board) Look() Look { return b.look }

// SetStyle changes the colours.
func (b *Board) SetStyle(s Style) {
	b.style = s
	for _, g := range b.gaps {
		g.FillColor = s.Background
		g.Refresh()
	}
	b.invalidate()
}

// SetGrowth makes writing, marks and rulers larger than they come, for people who
// read large text; 1 is as they come.
func (b *Board) SetGrowth(times float32) {
	if g := float64(times); g != b.growth {
		b.growth = g
		b.inset()
		for i := range b.cameras {
			if c := &b.cameras[i]; !b.roamed[i] {
				c.Fit(b.scene, c.W, c.H)
			}
		}
		b.invalidate()
	}
}

// inkScale is how many px a unit of writing and marks takes.
func (b *Board) inkScale() float64 { return b.ratio * b.growth }

// SetGrid sets the step to which dragged parts snap, mm; 0 for none. Until it is
// called the step is 5 mm, or a quarter of an inch in plans that count in inches.
func (b *Board) SetGrid(mm float64) { b.grid = max(mm, 0) }

// gridByUnits leaves the step to the plan's units.
const gridByUnits = -1

// snapStep is the step to which things snap, mm; 0 for none.
func (b *Board) snapStep() float64 {
	switch {
	case b.grid >= 0:
		return b.grid
	case b.scene.Units == route.Inches:
		return route.Inch / 4
	}
	return 5
}

// SetPerspective switches the turntable between perspective and parallel.
func (b *Board) SetPerspective(on bool) {
	b.cameras[Turntable].Perspective = on
	b.invalidate()
}

// Perspective reports whether the turntable shows far things smaller.
func (b *Board) Perspective() bool { return b.cameras[Turntable].Perspective }

// SetPump replaces what calls the board once per frame. It may not be called
// while something is dragged.
func (b *Board) SetPump(p Pump) {
	if b.running {
		b.pump.Stop()
		b.running = false
	}
	b.pump = p
	b.invalidate()
}

// camera is that of the large look.
func (b *Board) camera() *Camera { return &b.cameras[b.look] }

// quietFrames is how many frames without a change pass before the picture is
// drawn finely: 150 ms at 60 a second.
const quietFrames = 9

// invalidate asks for a new picture with the next frame.
func (b *Board) invalidate() {
	b.dirty, b.still = true, 0
	if !b.running {
		b.running = true
		b.pump.Start(b.tick)
	}
}

// tick is one frame: what has piled up is done once.
func (b *Board) tick() {
	b.settleDown()
	b.follow()
	if b.next != nil {
		b.SetScene(b.next())
	}
	switch {
	case b.dirty:
		b.dirty, b.still, b.quality = false, 0, Quick
		b.repaint()
	case b.still < quietFrames:
		b.still++
	default:
		b.rest()
	}
}

// settleDown puts the pictures on whole pixels once Fyne can say where they are.
func (b *Board) settleDown() {
	if b.placed {
		return
	}
	b.stand()
	for _, m := range b.minis {
		m.stand()
	}
	b.dirty = b.dirty || b.placed
}

// rest stops the frames, with the fine picture when it is not there yet.
func (b *Board) rest() {
	b.running = false
	b.pump.Stop()
	if b.quality != Fine {
		b.quality = Fine
		b.repaint()
	}
}

// miniFrames is how many pictures of the large look come, while something moves,
// for one of the small ones: the eye is on what the hand moves, and three small
// pictures cost as much as the large one.
const miniFrames = 4

func (b *Board) repaint() {
	b.raster.Refresh()
	b.frames++
	for i, m := range b.minis {
		if b.quality == Quick && (b.frames+i)%miniFrames != 0 {
			continue // each in its turn; they catch up when the hand rests
		}
		if m.behind() {
			m.raster.Refresh()
		}
	}
}

// generate is for Fyne: the picture at the size it asks for.
func (b *Board) generate(w, h int) image.Image {
	if width := b.raster.Size().Width; width > 0 {
		b.rescale(float64(w) / float64(width))
	}
	b.resize(w, h)
	b.picture = imageOf(b.picture, w, h)
	b.painter.Render(b.picture, b.scene, *b.camera(), &b.style, b.show())
	return b.picture
}

// imageOf gives an image of a size, the same one when it fits.
func imageOf(img *image.RGBA, w, h int) *image.RGBA {
	if img != nil && img.Rect.Dx() == w && img.Rect.Dy() == h {
		return img
	}
	return image.NewRGBA(image.Rect(0, 0, w, h))
}

// rescale takes note of the screen's scale.
func (b *Board) rescale(ratio float64) {
	if ratio == b.ratio {
		return
	}
	for i := range b.cameras {
		c := &b.cameras[i]
		c.Zoom *= ratio / b.ratio
	}
	b.ratio = ratio
	b.inset()
}

// inset keeps the room of the rulers free.
func (b *Board) inset() {
	for i := range b.cameras {
		if c := &b.cameras[i]; c.Look.Flat() {
			c.Inset = [4]int{int(rulerWide * b.inkScale()), 0, 0, int(rulerHigh * b.inkScale())}
		}
	}
}

// resize takes note of the view's size. A look that showed all goes on doing so.
func (b *Board) resize(w, h int) {
	if c := b.camera(); c.W == w && c.H == h {
		return
	}
	for i := range b.cameras {
		b.cameras[i].Resize(w, h)
		if !b.roamed[i] {
			b.cameras[i].Fit(b.scene, w, h)
		}
	}
}

// show is what the large view shows besides the scene.
func (b *Board) show() Show {
	s := Show{
		Selection: b.selection, Hover: b.hand.hover, Quality: b.quality, Scale: b.inkScale(),
		Words: true, Rulers: true, Caption: b.look.String(), Focus: b.focused,
		Shift: b.shift(), Measure: b.measure,
	}
	if b.look == Turntable && !b.Perspective() {
		s.Caption += ", parallel"
	}
	if b.pointing != nil {
		s.Points = b.pointing.at
	}
	if path := b.path(); path != nil {
		s.Path = &Path{Corners: path, Chosen: b.corner}
	}
	if b.hand.grip != nil {
		b.hand.grip.show(b, &s)
	}
	return s
}
