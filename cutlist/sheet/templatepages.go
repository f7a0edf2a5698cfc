package sheet

import (
	"fmt"
	"strconv"

	"tubewright/cutlist"
	"tubewright/cutlist/draw"
)

// templateHead is the room of a template's title, mm; a template of several
// sheets has a map of them beside it.
const (
	templateHead = 9.5
	sheetsHead   = 17.0
)

const templatesTitle = "Full-size templates"

// fullSize is what is printed at full size for the bent tubes: templates of one
// sheet and wrap strips, as many to a page as go on it, then the templates that
// take several sheets.
func (b *book) fullSize() {
	var all []template
	for _, t := range b.jigTubes() {
		all = append(all, templates(t)...)
	}
	if len(all) == 0 {
		return
	}
	b.howToPrint()
	var large []template
	for _, t := range all {
		if l := laidOut(t, b.fullRoom(templateHead)); len(l.tiles) == 1 {
			b.template(l)
		} else {
			large = append(large, t)
		}
	}
	b.wrapStrips()
	for _, t := range large {
		b.sheets(laidOut(t, b.fullRoom(sheetsHead)))
	}
}

// howToPrint starts the full-size pages.
func (b *book) howToPrint() {
	b.fullPage(templatesTitle, templatesTitle)
	b.heading(templatesTitle, headSize, 30)
	b.para("Print these pages at 100 % (“actual size”), then measure both bars of each page with a steel ruler before you trust it. " +
		"Where a bar is not 100 mm long, print again at the percentage below, times the one you printed at; where the two bars differ no percentage helps: use another printer.")
	b.correctionTable()
	b.para("A template shows the bends of a tube that lie in one plane: lay the formed tube on it. Its edges must run along the outer lines, its middle along the broken one. " +
		"Start, middle and end of each bend are measured from end A of the squared blank, as on the tube's page. The broken edges at an end are what is trimmed off. " +
		"Where a template takes several sheets, cut one of two neighbours along its edge, lay its crosses on the crosses with the same letters, and tape.")
}

// template sets a template of one sheet: on what is left of the page when it
// fits, else on a new one.
func (b *book) template(l tiling) {
	win := &l.tiles[0].window // as wide as the page, for the writing beside it
	side := (b.width() - win.w()) / 2
	win.lo.X, win.hi.X = win.lo.X-side, win.hi.X+side
	d := l.picture(0, nil, b.units, b.theme)
	b.fullNeed(templatesTitle, templateHead+d.H)
	b.templateTitle(l.template, "")
	b.set(d, margin)
}

// sheets sets a template that takes several sheets, each on a page.
func (b *book) sheets(l tiling) {
	joints, t := l.joints(), l.template
	for i := range l.tiles {
		b.fullPage(templatesTitle+": tube "+t.tube.Letter, "")
		y := b.y
		b.templateTitle(l.template, fmt.Sprintf(", sheet %d of %d", i+1, len(l.tiles)))
		b.sheetMap(l, i, y)
		b.y = y + sheetsHead
		d := l.picture(i, joints, b.units, b.theme)
		b.add(draw.Frame(margin, b.y, d.W, d.H, pen(0.12, b.theme.Rule)))
		b.set(d, margin)
	}
}

// set places a drawing at the height the page is filled to and moves on.
func (b *book) set(d draw.Drawing, x float64) {
	b.pages[len(b.pages)-1].Place(d, draw.Point{X: x, Y: b.y})
	b.y += d.H
}

// templateTitle says which tube and which of its bends, and with what to form.
func (b *book) templateTitle(t template, sheet string) {
	th, base := b.theme, b.y+5.2
	letterW := discWidth(t.tube.Letter, 3.4)
	b.add(disc(t.tube.Letter, draw.Point{X: margin + letterW/2 + 0.4, Y: base - 0.9}, 3.4, th)...)
	x := margin + letterW + 3
	room := b.width() - letterW - 3 - mapWidth - 2
	b.write(x, base, shortened(t.title()+sheet+": "+b.jigRuns(t.tube), bodySize+0.2, true, room), bodySize+0.2, true, draw.Left, th.Ink)
	b.write(x, base+3.4, shortened(t.made(b.units), fineSize, false, room), fineSize, false, draw.Left, th.Faint)
	b.y += templateHead
}

// title names a template: "Template 2 of 3, bends 3 to 5".
func (t template) title() string {
	said := "Template"
	if t.of > 1 {
		said += fmt.Sprintf(" %d of %d", t.number, t.of)
	}
	switch t.last - t.first {
	case 0:
		return said + ", bend " + strconv.Itoa(t.first+1)
	case 1:
		return said + fmt.Sprintf(", bends %d and %d", t.first+1, t.last+1)
	}
	return said + fmt.Sprintf(", bends %d to %d", t.first+1, t.last+1)
}

// mapWidth is the room kept for the map of a template's sheets, mm.
const mapWidth = 34.0

// sheetMap shows how the sheets of a template lie, with this one filled.
func (b *book) sheetMap(l tiling, this int, top float64) {
	scale := min(mapWidth/float64(l.cols), (sheetsHead-3)/float64(l.rows)/1.3, 7)
	w, h := scale, 1.3*scale
	left := b.w - margin - w*float64(l.cols)
	for i, t := range l.tiles {
		x, y := left+float64(t.col)*w, top+float64(t.row)*h
		ground := b.theme.Paper
		if i == this {
			ground = b.theme.Fitting
		}
		b.add(draw.Box(x, y, w, h, ground, pen(0.2, b.theme.Ink)))
		number := strconv.Itoa(i + 1)
		if size := shrunk(number, min(fineSize, 0.8*h), 1, false, 0.85*w); size > 1 {
			b.write(x+w/2, y+h/2+halfCap*size, number, size, false, draw.Centre, b.theme.Ink)
		}
	}
}

// TemplateCount is how many full-size templates a tube has: one for each stretch
// of it that lies in one plane, none for a straight tube.
func TemplateCount(t cutlist.Tube) int { return len(templates(t)) }
