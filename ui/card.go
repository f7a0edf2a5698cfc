package ui

import (
	"reflect"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	sketch "tubewright/cutlist/draw"
)

// card shows one run: its tube straightened, its figures and, when it is open,
// the ways it can be made and its bench table.
type card struct {
	widget.BaseWidget
	model    cardModel
	open     bool
	onSelect func(run string)
	onToggle func(run string)
	onChoose func(run, way string)
	onFree   func(run string)
	onLook   func(run string, way int, on bool) // nil: nobody is told

	head  *cardHead
	strip *picture
	facts *flow
	more  *flow // opens and closes
	front *press
	inner *column  // ways and bench
	rows  []*press // what can be pressed in it
	body  *column
	dark  bool
}

func newCard() *card {
	c := &card{head: newCardHead(), facts: newFlow("", smallSize, soft), more: newFlow("", smallSize, accent)}
	c.strip = newPicture(face, c.stripHeight, c.drawStrip)
	c.strip.clear = true
	c.front = newPress(newColumn(0, 4, c.head, c.strip, c.facts, c.more), c.pressed)
	c.inner = newColumn(8, 4)
	c.inner.Hide()
	c.body = newColumn(0, 0, c.front, c.inner)
	c.ExtendBaseWidget(c)
	return c
}

func (c *card) stripHeight(width float32) float32 {
	return float32(newStrip(c.model, float64(width)/linePerMM()).d.H * linePerMM())
}

func (c *card) drawStrip(width float32) sketch.Drawing {
	return drawStrip(c.model, float64(width)/linePerMM())
}

func (c *card) pressed() {
	c.onSelect(c.model.run)
	c.onToggle(c.model.run)
}

// show changes what the card tells and reports whether anything is different.
func (c *card) show(m cardModel, open, selected bool) bool {
	c.front.choose(selected)
	if c.open == open && c.dark == isDark() && reflect.DeepEqual(c.model, m) {
		return false
	}
	c.model, c.open, c.dark = m, open, isDark()
	c.head.show(m)
	c.strip.redraw()
	text, r := m.facts, soft
	if m.problem != "" {
		text, r = m.problem, bad
	}
	c.facts.set(text, r)
	c.more.set(c.moreText(), accent)
	c.fill()
	c.Refresh()
	return true
}

func (c *card) moreText() string {
	switch {
	case c.open:
		return "Close"
	case c.model.letter == "":
		return ""
	case len(c.model.ways) > 1:
		return "Ways and bench table"
	}
	return "Bench table"
}

// fill puts ways and bench table into an open card.
func (c *card) fill() {
	defer c.refocus(c.focusedOn())
	c.rows = []*press{c.front}
	if !c.open {
		c.inner.set()
		c.inner.Hide()
		return
	}
	c.inner.Show()
	c.inner.set(append(c.wayRows(), c.benchRows()...)...)
}

// focusedOn is the canvas on which a row inside the card has the focus; nil: none has.
func (c *card) focusedOn() fyne.Canvas {
	for _, p := range c.rows {
		if p.focus && p != c.front {
			return canvasOf(p)
		}
	}
	return nil
}

// refocus gives the focus to the way that is taken, after the rows were made anew.
func (c *card) refocus(on fyne.Canvas) {
	if on == nil {
		return
	}
	for _, p := range c.rows[1:] {
		if p.chosen {
			on.Focus(p)
			return
		}
	}
	on.Focus(c.front)
}

func (c *card) wayRows() []fyne.CanvasObject {
	if len(c.model.ways) == 0 {
		return nil
	}
	rows := []fyne.CanvasObject{newHeading("Ways, best first")}
	for i, w := range c.model.ways {
		rows = append(rows, c.add(c.wayRow(w, i)))
	}
	if c.model.picked {
		rows = append(rows, c.add(newPress(newFlow("Take the best way again", smallSize, accent), func() { c.onFree(c.model.run) })))
	}
	return rows
}

// add notes a row that can be pressed.
func (c *card) add(p *press) *press {
	c.rows = append(c.rows, p)
	return p
}

// wayRow is one way of the run; it is shown on the board while it has pointer or focus.
func (c *card) wayRow(w wayModel, i int) *press {
	name := newFlow(w.name, textSize, ink)
	name.bold = w.chosen
	p := newPress(newColumn(0, 0, name, newFlow(w.facts, smallSize, soft), newFlow(w.reason, smallSize, ink)),
		func() { c.onChoose(c.model.run, w.name) })
	p.inset = fyne.NewSize(10, 5)
	p.choose(w.chosen)
	run := c.model.run
	p.onLook = func(on bool) {
		if c.onLook != nil && !w.chosen {
			c.onLook(run, i, on)
		}
	}
	return p
}

func (c *card) benchRows() []fyne.CanvasObject {
	if c.model.letter == "" {
		return nil
	}
	rows := []fyne.CanvasObject{newHeading("At the bench"), newFlow(c.model.trim, smallSize, ink)}
	if len(c.model.bench) > 0 {
		rows = append(rows, newFlow("Marks: start, middle and end of each bend, in "+c.model.unit+".", smallSize, soft))
	}
	for _, b := range c.model.bench {
		title := newFlow(b.title, textSize, ink)
		title.bold = true
		rows = append(rows, title, newFiguresGrid(b.rows))
	}
	rows = append(rows, lined("In this order", c.model.steps)...)
	return append(rows, lined("Tries", c.model.tries)...)
}

// lined is sentences under a heading; nothing of none.
func lined(title string, texts []string) (rows []fyne.CanvasObject) {
	if len(texts) > 0 {
		rows = append(rows, newHeading(title))
	}
	for _, text := range texts {
		rows = append(rows, newFlow(text, smallSize, ink))
	}
	return rows
}

// newHeading is a small title inside a panel.
func newHeading(text string) *flow {
	h := newFlow(text, smallSize, soft)
	h.bold = true
	return h
}

// HeightFor is the height of the card at a width.
func (c *card) HeightFor(width float32) float32 {
	high := c.body.HeightFor(width)
	if c.open {
		high += 8
	}
	return high
}

func (c *card) CreateRenderer() fyne.WidgetRenderer {
	line := canvas.NewRectangle(paint(rule))
	return laidOut(c, &cardRenderer{c, line})
}

type cardRenderer struct {
	card *card
	line *canvas.Rectangle
}

func (r *cardRenderer) MinSize() fyne.Size {
	return fyne.NewSize(0, r.card.HeightFor(r.card.Size().Width))
}

func (r *cardRenderer) Layout(size fyne.Size) {
	r.card.body.Resize(size)
	box{fyne.NewPos(8, size.Height), fyne.NewSize(max(0, size.Width-16), 1)}.put(r.line)
}

func (r *cardRenderer) Refresh() {
	r.line.FillColor = paint(rule)
	r.line.Refresh()
	r.card.body.Refresh()
}

func (r *cardRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.card.body, r.line}
}

func (r *cardRenderer) Destroy() {}
