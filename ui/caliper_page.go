package ui

import (
	"slices"

	"fyne.io/fyne/v2"

	"tubewright/cutlist/draw"
	"tubewright/cutlist/measure"
	"tubewright/cutlist/sheet"
	"tubewright/ui/session"
)

// caliperPage is the list of what to measure, and the form of the one thing
// that is being measured, with a drawing of how.
type caliperPage struct {
	window *Window
	page   *page
	body   *split
	list   *column
	rows   []*press // that can be pressed, from the top
	shown  []thingRow
	head   *flow
	form   *form
	sketch *picture
	told   *flow           // what is odd about the number typed last
	things []measure.Thing // what the tubes rest on, then the rest
	rests  int             // how many of the things no tube rests on
	at     string          // key of the thing shown
	lit    measure.Key     // number that has the focus
}

// sketchWide is how wide the drawing of how to measure is shown at most, in Fyne's
// pixels; sketchShare is what it takes of the window's height at most.
const (
	sketchWide  float32 = 380
	sketchShare float32 = 0.3
)

// askCaliper shows what to measure and takes the numbers.
func (w *Window) askCaliper() {
	w.settle()
	c := &caliperPage{window: w, list: newColumn(0, 2), head: newFlow("", smallSize, soft), form: newForm(), told: newFlow("", smallSize, careful)}
	w.caliper = c
	c.sketch = newPicture(face, c.sketchHeight, c.drawSketch)
	c.form.onFocus = c.focusedField
	c.body = newSplit(formGap, newPane(newColumn(longInset, 6, c.head, c.list)), newColumn(longInset, splitGap, c.sketch, c.told), newPane(newColumn(longInset, 0, c.form.column)))
	c.page = w.openPage("Enter what you measure", twoForms, c.body, c.follow)
	c.page.hold(c.form, newForm())
	if len(c.rows) > 0 {
		w.win.Canvas().Focus(c.rows[0])
	}
}

// follow brings the page up to the plan. While it is worked out the list stays
// as it was: what the tubes rest on is not known.
func (c *caliperPage) follow(s session.Snapshot) {
	if s.Current() || c.things == nil {
		used, rest := thingsOf(s)
		c.things, c.rests = append(used, rest...), len(rest)
	}
	c.showList()
	c.showThing(s)
}

func (c *caliperPage) showList() {
	text := "Nothing is only typical any more: no tube is a draft."
	used := c.things[:len(c.things)-c.rests]
	switch n := typicals(used); {
	case len(used) == 0:
		text = "Once a run has a tube, what it rests on is listed here."
	case n > 0:
		text = count(n, "thing") + " to measure. Fittings first: one sitting with a caliper serves every run."
	}
	c.head.set(text, soft)
	rows := thingRows(used)
	rows = append(rows, thingRows(c.things[len(used):])...)
	if !slices.Equal(rows, c.shown) {
		c.shown = rows
		c.fill(rows)
	}
	for i, row := range rows {
		c.rows[i].choose(row.key == c.at)
	}
}

func (c *caliperPage) fill(rows []thingRow) {
	focused := c.focused()
	c.rows = nil
	var objects []fyne.CanvasObject
	for i, row := range rows {
		if c.rests > 0 && i == len(rows)-c.rests {
			objects = append(objects, newIndent(0, 6, newHeading("What else there is: no tube rests on it now")))
		}
		mark := careful
		if row.firm {
			mark = fine
		} else if i >= len(rows)-c.rests {
			mark = soft
		}
		p := newPress(newColumn(0, 0, newFlow(row.name, textSize, ink), newFlow(row.facts, smallSize, mark)), func() { c.pick(row.key) })
		p.inset = fyne.NewSize(10, 4)
		p.onFocus = func() { c.body.list.reveal(p) }
		c.rows, objects = append(c.rows, p), append(objects, p)
	}
	c.list.set(objects...)
	var other func(fyne.KeyName) bool
	if c.page != nil {
		other = c.page.modal.key
	}
	walkable(c.rows, other)
	if focused >= 0 && focused < len(c.rows) {
		c.window.win.Canvas().Focus(c.rows[focused])
	}
	c.page.reflow()
}

// focused is the row with the focus; −1 for none.
func (c *caliperPage) focused() int {
	return slices.IndexFunc(c.rows, func(p *press) bool { return p.focus })
}

// thing is the one whose form is shown: the first that is typical, until the
// person picks one.
func (c *caliperPage) thing() (measure.Thing, bool) {
	i := slices.IndexFunc(c.things, func(t measure.Thing) bool { return thingKey(t) == c.at })
	if i < 0 {
		i = slices.IndexFunc(c.things[:len(c.things)-c.rests], func(t measure.Thing) bool { return !t.Firm() })
	}
	if i < 0 && len(c.things) > 0 {
		i = 0
	}
	if i < 0 {
		return measure.Thing{}, false
	}
	c.at = thingKey(c.things[i])
	return c.things[i], true
}

func (c *caliperPage) pick(key string) {
	c.at, c.lit = key, ""
	c.told.set("", careful)
	c.follow(c.window.snapshot)
	c.page.reflow()
}

func (c *caliperPage) showThing(s session.Snapshot) {
	t, ok := c.thing()
	if !ok {
		c.form.show(nil)
		return
	}
	for i, row := range c.shown {
		c.rows[i].choose(row.key == c.at)
	}
	e := newEditor(s, c.window.session.Put, c.window.did)
	e.note = func(text string) {
		c.told.set(text, careful)
		c.page.reflow()
	}
	if c.form.show(e.caliperForm(t)) {
		c.page.reflow()
	}
	c.sketch.redraw()
}

// focusedField brings a field into view and shows how its number is measured.
func (c *caliperPage) focusedField(id string) {
	if row := c.form.rows[id]; row != nil {
		c.body.rows.reveal(row)
	}
	c.light(measure.Key(id))
}

// light shows how the number with the focus is measured.
func (c *caliperPage) light(key measure.Key) {
	if c.lit != key {
		c.lit = key
		c.sketch.redraw()
	}
}

// number is the one that is lit, else the first of the thing.
func (c *caliperPage) number() (measure.Number, bool) {
	t, ok := c.thing()
	if !ok || len(t.Numbers) == 0 {
		return measure.Number{}, false
	}
	for _, n := range t.Numbers {
		if n.Key == c.lit {
			return n, true
		}
	}
	return t.Numbers[0], true
}

func (c *caliperPage) sketchHeight(width float32) float32 {
	return c.sketchFor(width) * sheet.SketchHeight / sheet.SketchWidth
}

// sketchFor is how wide the drawing is shown where there is a width for it.
func (c *caliperPage) sketchFor(width float32) float32 {
	most := c.window.win.Canvas().Size().Height * sketchShare * sheet.SketchWidth / sheet.SketchHeight
	return min(width, grown(sketchWide), most)
}

func (c *caliperPage) drawSketch(width float32) draw.Drawing {
	c.sketch.perMM = float64(c.sketchFor(width)) / sheet.SketchWidth
	n, ok := c.number()
	if !ok {
		return draw.Drawing{W: sheet.SketchWidth, H: sheet.SketchHeight}
	}
	return sheet.MeasureSketch(n.Sketch, c.lit, sheetTheme())
}
