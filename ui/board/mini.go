package board

import (
	"image"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// Mini is a small look at what a board shows. A click makes it the large one.
type Mini struct {
	widget.BaseWidget
	board   *Board
	place   int // 0 to 2 among the looks that are not the large one
	painter Painter
	picture *image.RGBA
	raster  *canvas.Raster
	hovered bool
	shown   miniState
	chosen  []Target // what was chosen when it was painted
}

// newMini is the small look at one of the three places.
func newMini(b *Board, place int) *Mini {
	m := &Mini{board: b, place: place}
	m.raster = canvas.NewRaster(m.generate)
	m.ExtendBaseWidget(m)
	return m
}

// CreateRenderer is for Fyne.
func (m *Mini) CreateRenderer() fyne.WidgetRenderer {
	return &sharpRenderer{m.raster, m.stand, func() fyne.Size { return m.raster.MinSize() }}
}

// Move is for Fyne.
func (m *Mini) Move(at fyne.Position) {
	m.BaseWidget.Move(at)
	m.stand()
}

// stand puts the picture on whole pixels of the screen.
func (m *Mini) stand() { onPixels(m, m.raster) }

// Look gives the look that is shown.
func (m *Mini) Look() Look {
	l := Look(m.place)
	if l >= m.board.look {
		l++
	}
	return l
}

// Tapped is for Fyne.
func (m *Mini) Tapped(*fyne.PointEvent) { m.board.chooseLook(m.Look()) }

// MouseIn is for Fyne.
func (m *Mini) MouseIn(*desktop.MouseEvent) { m.hoverBy(true) }

// MouseMoved is for Fyne.
func (m *Mini) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is for Fyne.
func (m *Mini) MouseOut() { m.hoverBy(false) }

func (m *Mini) hoverBy(on bool) {
	m.hovered = on
	m.raster.Refresh()
	if on {
		m.board.say(m.Look().String() + ", key " + string(rune('1'+m.Look())))
	} else {
		m.board.say("")
	}
}

// Cursor is for Fyne.
func (m *Mini) Cursor() desktop.Cursor { return desktop.PointerCursor }

// miniState is all that a small look's picture hangs on besides what is chosen.
type miniState struct {
	scene   *Scene
	style   Style
	camera  Camera // turned and in perspective as the large view would be
	quality Quality
	ratio   float64
	shift   Shift
	hovered bool
}

func (m *Mini) state() miniState {
	b := m.board
	return miniState{b.scene, b.style, b.cameras[m.Look()], b.quality, b.inkScale(), b.shift(), m.hovered}
}

// behind reports whether the picture would be another now. Turning and zooming
// the large look changes no small one, and each picture costs its share of a frame.
func (m *Mini) behind() bool {
	return m.shown != m.state() || !slices.Equal(m.chosen, m.board.selection)
}

// generate is for Fyne: the whole scene, as the large view would turn it.
func (m *Mini) generate(w, h int) image.Image {
	b, l := m.board, m.Look()
	m.picture = imageOf(m.picture, w, h)
	m.shown, m.chosen = m.state(), append(m.chosen[:0], b.selection...)
	c := b.cameras[l]
	c.Inset = [4]int{0, int(miniCaption * b.inkScale()), 0, 0}
	c.Fit(b.scene, w, h)
	m.painter.Render(m.picture, b.scene, c, &b.style, Show{
		Selection: b.selection, Quality: b.quality, Scale: b.inkScale(),
		Caption: l.String(), Shift: b.shift(), Frame: true, Focus: m.hovered,
	})
	return m.picture
}

// miniCaption is what a small look's name takes of its height.
const miniCaption = 20

// Sizes of the desk in Fyne's units.
const (
	miniWidest, miniSlimmest = 210, 140
	miniShare                = 0.21 // of the desk's width
	miniGap                  = 6
	deskWide, deskHigh       = 620, 360 // below, the large view has it all
)

// NewDesk is the large board with the three other looks small beside it where
// there is room; a click on one of them makes it the large one.
func NewDesk(b *Board) fyne.CanvasObject {
	objects := []fyne.CanvasObject{b}
	for i := range 3 {
		m := newMini(b, i)
		b.minis = append(b.minis, m)
		objects = append(objects, m)
	}
	for range 3 {
		g := canvas.NewRectangle(b.style.Background)
		b.gaps = append(b.gaps, g)
		objects = append(objects, g)
	}
	return &fyne.Container{Layout: deskLayout{}, Objects: objects}
}

// deskLayout puts the large board left and the small ones in a column beside it,
// with the ground between them: three minis after the board, then three gaps.
type deskLayout struct{}

func (deskLayout) MinSize(o []fyne.CanvasObject) fyne.Size { return o[0].MinSize() }

func (deskLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	w, h, ok := miniSize(size)
	for _, beside := range o[1:] {
		if ok {
			beside.Show()
		} else {
			beside.Hide()
		}
	}
	left := size.Width - w
	for i, m := range o[1:4] {
		m.Move(fyne.NewPos(left, float32(i)*(h+miniGap)))
		m.Resize(fyne.NewSize(w, h))
		gap := o[4+i]
		gap.Move(fyne.NewPos(left, float32(i)*(h+miniGap)-miniGap))
		gap.Resize(fyne.NewSize(w, miniGap))
	}
	if ok {
		size.Width -= w + miniGap
		o[4].Move(fyne.NewPos(size.Width, 0)) // the first is that beside the board
		o[4].Resize(fyne.NewSize(miniGap, size.Height))
	}
	o[0].Move(fyne.NewPos(0, 0))
	o[0].Resize(size)
}

// miniSize is the size of one small look on a desk; ok is false without room.
func miniSize(desk fyne.Size) (w, h float32, ok bool) {
	if desk.Width < deskWide || desk.Height < deskHigh {
		return 0, 0, false
	}
	w = min(max(floor(desk.Width*miniShare), miniSlimmest), miniWidest)
	return w, (desk.Height - 2*miniGap) / 3, true
}
