package ui

import (
	"image"
	"image/color"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"tubewright/cutlist/draw"
	"tubewright/cutlist/sheet"
	"tubewright/ui/board"
)

// The small widgets that have no test beside what they are used for: their markup
// in testdata/markup, and what cannot be read there.

func TestMarkupOfABadgeAndACardsHead(t *testing.T) {
	themed(t)
	h := newCardHead()
	h.show(cardModel{run: "pump-to-processor", letter: "B", length: "543.5", unit: "mm"})
	looksLike(t, "card_head", h, fyne.NewSize(300, h.HeightFor(300)))
}

func TestMarkupOfFigures(t *testing.T) {
	themed(t)
	g := newFiguresGrid([][]string{{"from end A", "100.0", "125.1", "150.3"}, {"roll", "90°"}})
	looksLike(t, "figures", g, fyne.NewSize(260, g.HeightFor(260)))
}

func TestMarkupOfPairsBesideEachOther(t *testing.T) {
	themed(t)
	left := newColumn(0, 2, newPair("Ctrl+N", "New plan …"), newPair("Arrow keys, Page Up and Down", "Move the selected part by 1 mm"))
	right := newColumn(0, 2, newIndent(10, 4, newPair("R", "Turn it")))
	b := newBeside(20, left, right)
	looksLike(t, "pairs", b, fyne.NewSize(500, b.HeightFor(500)))
}

func TestMarkupOfATableOfFields(t *testing.T) {
	themed(t)
	e := newEntryTable(0.2, []string{"port", "x from the left wall, mm", "facing"}, nil)
	e.add("a out", "12.5", "")
	e.hint("260", "+z")
	e.add("b in", "", "")
	looksLike(t, "entry_table", e, fyne.NewSize(360, e.HeightFor(360)))
}

func TestMarkupOfASplit(t *testing.T) {
	themed(t)
	text := func(s string) *flow { return newFlow(s, textSize, ink) }
	s := newSplit(20, newPane(newColumn(0, 2, text("socket-16"), text("extender-30"))),
		newColumn(0, 4, text("a drawing")), newPane(newColumn(0, 4, text("a field"), text("another"))))
	looksLike(t, "split", s, fyne.NewSize(300, 60))
}

func TestMarkupOfABarsName(t *testing.T) {
	themed(t)
	r := newBarRow(nil)
	r.name.Text, r.wide = "600.0 offcut", 90
	looksLike(t, "bar_row", r, fyne.NewSize(300, r.HeightFor(300)))
}

// A tube's letter stands on its colour; without one there is an empty ring.
func TestABadgeHasItsTubesColour(t *testing.T) {
	themed(t)
	b := newBadge("A")
	c := sheet.ColourOf("A")
	if want := (color.NRGBA{R: c.R, G: c.G, B: c.B, A: 255}); b.disc.FillColor != want || b.text.Text != "A" {
		t.Errorf("the badge of A is %v with %q", b.disc.FillColor, b.text.Text)
	}
	if got := contrast(b.text.Color.(color.NRGBA), b.disc.FillColor.(color.NRGBA)); got < leastContrast {
		t.Errorf("its letter has a contrast of %.2f", got)
	}
	b.show("")
	if b.disc.FillColor != color.Transparent || b.disc.StrokeWidth != 1 {
		t.Errorf("without a letter it is filled with %v, a line %v wide", b.disc.FillColor, b.disc.StrokeWidth)
	}
}

// Every letter can be read on its colour.
func TestEveryBadgeCanBeRead(t *testing.T) {
	themed(t)
	for letter := 'A'; letter <= 'Z'; letter++ {
		b := newBadge(string(letter))
		if got := contrast(b.text.Color.(color.NRGBA), b.disc.FillColor.(color.NRGBA)); got < leastContrast {
			t.Errorf("%c has a contrast of %.2f on its colour", letter, got)
		}
	}
}

// The edge of a panel goes all round it without a gap, and stays within it.
func TestAPlateGoesRoundItsPanel(t *testing.T) {
	themed(t)
	for _, size := range []fyne.Size{{Width: 200, Height: 120}, {Width: 80, Height: 20}, {Width: 60, Height: 6}} {
		p := newPlate(paint(rule), paint(ground))
		p.resize(size)
		if p.cap.Position().Y != 0 || p.foot.Position().Y+p.foot.Size().Height != size.Height {
			t.Errorf("%v: from %v to %v", size, p.cap.Position().Y, p.foot.Position().Y+p.foot.Size().Height)
		}
		if from, high := p.left.Position().Y, p.left.Size().Height; from != p.cap.Size().Height || from+high != p.foot.Position().Y {
			t.Errorf("%v: the side leaves a gap: from %v, %v high", size, from, high)
		}
		for _, o := range p.objects() {
			if at := o.Position(); at.X < 0 || at.Y < 0 || at.X+o.Size().Width > size.Width || at.Y+o.Size().Height > size.Height {
				t.Errorf("%v: %v of %v stands out", size, at, o.Size())
			}
		}
	}
}

// A picture shows its drawing to scale on its ground, and paints once.
func TestAPictureIsPaintedToScale(t *testing.T) {
	themed(t)
	made := 0
	p := newPicture(face, func(float32) float32 { return 40 }, func(width float32) draw.Drawing {
		made++
		d := draw.Drawing{W: float64(width) / perMM, H: 10}
		d.Add(draw.Box(5, 2, 5, 5, draw.Colour{R: 200}, draw.Stroke{}))
		return d
	})
	p.Resize(fyne.NewSize(100, 40))
	img := p.paint(200, 80) // two pixels for one of Fyne's
	at := func(x, y float64) color.Color {
		return color.NRGBAModel.Convert(img.At(int(x*perMM*2), int(y*perMM*2)))
	}
	if got := at(7.5, 4.5); got != (color.NRGBA{R: 200, A: 255}) {
		t.Errorf("in the middle of the box the picture is %v", got)
	}
	if got := at(2.5, 4.5); got != paint(face) {
		t.Errorf("beside the box the picture is %v, want its ground %v", got, paint(face))
	}
	p.paint(200, 80)
	if made != 1 {
		t.Errorf("painted twice the drawing was made %d times", made)
	}
	p.redraw()
	p.paint(200, 80)
	if made != 2 {
		t.Errorf("after redraw it was made %d times, want 2", made)
	}
}

// A small picture of a part shows something, anew after a change of the look.
func TestAThumbShowsItsSceneInBothLooks(t *testing.T) {
	b := scanner(t)
	k, _ := b.snapshot.Plan.FindPart("pump")
	thumb := newThumb(partScene(b.snapshot.Plan, k), board.Turntable, thumbSmall)
	thumb.Resize(thumbSmall)
	light := inked(thumb.paint(72, 54), paint(face))
	b.setTheme(true)
	dark := inked(thumb.paint(72, 54), paint(face))
	if light < 400 || dark < 400 {
		t.Errorf("of 3,888 pixels %d show the part on light, %d on dark", light, dark)
	}
}

// inked counts the pixels that are not of a ground.
func inked(img image.Image, ground color.NRGBA) (n int) {
	for y := img.Bounds().Min.Y; y < img.Bounds().Max.Y; y++ {
		for x := img.Bounds().Min.X; x < img.Bounds().Max.X; x++ {
			if color.NRGBAModel.Convert(img.At(x, y)) != ground {
				n++
			}
		}
	}
	return n
}

// A field to choose in has a line round it as fields to type in have, in both looks.
func TestAChoiceHasABorder(t *testing.T) {
	themed(t)
	chosen := ""
	c := newChoice([]string{"mm", "inches"}, func(s string) { chosen = s })
	w := test.NewTempWindow(t, c)
	w.Resize(fyne.NewSize(200, 40))
	for _, dark := range []bool{false, true} {
		fyne.CurrentApp().Settings().SetTheme(NewTheme(dark))
		c.Refresh()
		objects := test.WidgetRenderer(c).Objects()
		line, ok := objects[len(objects)-1].(*canvas.Rectangle)
		if !ok || line.StrokeWidth == 0 || line.StrokeColor != paint(edge) || line.Size().Width < c.Size().Width-2 {
			t.Errorf("dark %v: the field's last object is %+v", dark, objects[len(objects)-1])
		}
		if got := contrast(paint(edge), paint(face)); got < 3 { // WCAG 2.1, criterion 1.4.11
			t.Errorf("dark %v: the line has a contrast of %.2f, want 3", dark, got)
		}
	}
	c.SetSelected("inches")
	if chosen != "inches" {
		t.Errorf("told was %q", chosen)
	}
}

// What the ready line has no room for is told while one looks at it.
func TestAShortenedReadyLineIsToldWhole(t *testing.T) {
	themed(t)
	told := ""
	h := newHeader(headerActions{look: func(text string) { told = text }})
	m := headerModel{title: "Bench", ready: readyModel{"Ready to cut? Not yet: 2 errors · 1 warning · draft, 12 numbers to measure.", bad, false}}
	h.show(m)
	for _, row := range []struct {
		width float32
		want  string
	}{{600, m.ready.text}, {1400, ""}} {
		h.Resize(fyne.NewSize(row.width, headerHigh))
		h.ready.MouseIn(nil)
		if told != row.want {
			t.Errorf("%v wide, told is %q, want %q", row.width, told, row.want)
		}
		h.ready.MouseOut()
		if told != "" {
			t.Errorf("with the pointer gone told is %q", told)
		}
	}
}
