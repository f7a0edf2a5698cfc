package sheet

import (
	"fmt"

	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/route"
)

// Sizes of the type and the page's furniture, mm.
const (
	margin   = 12.0 // on the left and right: most printers reach to 5
	top      = 19.0 // of the page's text, under the header
	bottom   = 15.0 // left for the footer
	banner   = 8.0  // height of a draft's banner with the gap below
	bodySize = 3.1  // 8.8 points
	rowSize  = 2.8
	fineSize = 2.4
	headSize = 4.6
	leading  = 1.32 // line to line, in sizes
	halfCap  = 0.36 // from the middle of a line's capitals down to its foot, in sizes
)

// book is the pages as they are filled, from the top down.
type book struct {
	list  cutlist.List
	opt   Options
	theme Theme
	units route.Units
	w, h  float64 // of the paper
	pages []*draw.Drawing
	title []string // of each page, for its header
	going string   // the section that goes on: the title of a page it breaks to
	y     float64  // where the next thing goes on the last page
	draft int      // page that names the typical numbers; 0: none yet

	corrections int // page with the table for printers that are off; 0: none yet
}

func newBook(l cutlist.List, o Options) *book {
	w, h := o.Paper.Size()
	return &book{list: l, opt: o, theme: PaperTheme(), units: l.Plan.Units, w: w, h: h}
}

// width is the width of the text.
func (b *book) width() float64 { return b.w - 2*margin }

// floor is where the text must end.
func (b *book) floor() float64 { return b.h - bottom }

// left is what is left of the page, mm.
func (b *book) left() float64 { return b.floor() - b.y }

// start is where the text of a page starts.
func (b *book) start() float64 {
	if b.list.Draft {
		return top + banner
	}
	return top
}

// page starts a new page. Pages with a name stand in the outline.
func (b *book) page(title, name string) {
	b.pages = append(b.pages, &draw.Drawing{W: b.w, H: b.h, Name: name})
	b.title, b.going = append(b.title, title), title
	b.y = b.start()
}

// section starts a section: on the page at hand when at least half of it is
// left, else on a new one.
func (b *book) section(title string) {
	if len(b.pages) == 0 || b.left() < (b.floor()-b.start())/2 {
		b.page(title, title)
		return
	}
	b.y += 5
	b.title[len(b.title)-1] += " · " + title
	b.going = title
}

// need starts a new page unless this much is left, and reports whether it did.
// On an empty page it never does: nothing larger can be had.
func (b *book) need(h float64) bool {
	if b.left() >= h || b.y <= b.start() {
		return false
	}
	b.page(b.going, "")
	return true
}

// add paints on the last page.
func (b *book) add(items ...draw.Item) { b.pages[len(b.pages)-1].Add(items...) }

// write sets one line and does not move on.
func (b *book) write(x, y float64, text string, size float64, bold bool, align draw.Align, c draw.Colour) {
	b.add(draw.Text{At: draw.Point{X: x, Y: y}, Text: text, Size: size, Bold: bold, Align: align, Colour: c})
}

// heading sets a heading, kept with at least keep mm of what follows.
func (b *book) heading(text string, size, keep float64) {
	lines := wrapped(text, size, true, b.width(), 4)
	b.need(float64(len(lines))*size*leading + 2 + keep)
	if b.y > b.start() {
		b.y += 2
	}
	for _, line := range lines {
		b.y += size * leading
		b.write(margin, b.y-0.3*size, line, size, true, draw.Left, b.theme.Ink)
	}
	b.y += 1
}

// para sets a paragraph of the body, breaking pages between lines.
func (b *book) para(text string) { b.indented(text, 0, bodySize, b.theme.Ink) }

// faint sets a paragraph of lesser weight.
func (b *book) faint(text string) { b.indented(text, 0, fineSize, b.theme.Faint) }

// indented sets a paragraph with its left edge moved in.
func (b *book) indented(text string, by, size float64, c draw.Colour) {
	for _, line := range wrapped(text, size, false, b.width()-by, 40) {
		b.need(size * leading)
		b.y += size * leading
		b.write(margin+by, b.y-0.3*size, line, size, false, draw.Left, c)
	}
	b.y += 0.8
}

// item sets a paragraph behind a box to tick, kept on one page.
func (b *book) item(text string, size float64) {
	lines := wrapped(text, size, false, b.width()-6, 40)
	b.need(float64(len(lines))*size*leading + 0.8)
	b.add(tick(margin+0.5, b.y+0.35*size, 0.95*size, b.theme))
	b.indented(text, 6, size, b.theme.Ink)
}

// tick is a box to tick.
func tick(x, y, size float64, th Theme) draw.Item {
	return draw.Frame(x, y, size, size, pen(0.25, th.Ink))
}

// finished gives the pages with header, footer and, on a draft, its banner.
func (b *book) finished() []draw.Drawing {
	out := make([]draw.Drawing, len(b.pages))
	for i, p := range b.pages {
		b.header(p, b.title[i])
		b.footer(p, i+1)
		if b.list.Draft {
			b.banner(p, i+1)
		}
		out[i] = *p
	}
	return out
}

func (b *book) header(p *draw.Drawing, title string) {
	size, half := bodySize, b.width()/2-3
	name := shortened(b.list.Plan.Name, size, true, half)
	p.Add(
		draw.Text{At: draw.Point{X: margin, Y: 13}, Text: name, Size: size, Bold: true, Colour: b.theme.Ink},
		draw.Text{At: draw.Point{X: b.w - margin, Y: 13}, Text: shortened(title, size, false, half), Size: size, Align: draw.Right, Colour: b.theme.Ink},
		draw.Segment(margin, 15, b.w-margin, 15, pen(0.25, b.theme.Ink)),
	)
}

func (b *book) footer(p *draw.Drawing, n int) {
	y := b.h - 8
	said := "Tubewright"
	for _, s := range []string{unitsLine(b.units), b.opt.Revision, b.opt.Date} {
		if s != "" {
			said += "  ·  " + s
		}
	}
	number := fmt.Sprintf("page %d of %d", n, len(b.pages))
	room := b.width() - draw.TextWidth(number, fineSize, false) - 6
	p.Add(
		draw.Segment(margin, y-3.6, b.w-margin, y-3.6, pen(0.15, b.theme.Rule)),
		draw.Text{At: draw.Point{X: margin, Y: y}, Text: shortened(said, fineSize, false, room), Size: fineSize, Colour: b.theme.Faint},
		draw.Text{At: draw.Point{X: b.w - margin, Y: y}, Text: number, Size: fineSize, Align: draw.Right, Colour: b.theme.Faint},
	)
}

// unitsLine says what the numbers of the pages count in.
func unitsLine(u route.Units) string {
	if u == route.Inches {
		return "lengths in inches, angles in degrees"
	}
	return "lengths in mm, angles in degrees"
}

func (b *book) banner(p *draw.Drawing, n int) {
	said := "Some numbers are only typical. Measure them before you cut."
	if b.draft > 0 && b.draft != n {
		said += fmt.Sprintf(" See page %d.", b.draft)
	}
	y := top - 1.5
	p.Add(draw.Box(margin, y, b.width(), banner-2, b.theme.AlarmBand, pen(0.4, b.theme.Alarm)))
	word := draw.Text{At: draw.Point{X: margin + 2.5, Y: y + 4.4}, Text: "DRAFT", Size: 4, Bold: true, Colour: b.theme.Alarm}
	x := word.At.X + draw.TextWidth(word.Text, word.Size, true) + 3
	p.Add(word, draw.Text{At: draw.Point{X: x, Y: y + 4.2}, Text: said, Size: bodySize, Colour: b.theme.Ink})
}
