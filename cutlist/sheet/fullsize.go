package sheet

import (
	"fmt"
	"strconv"

	"tubewright/cutlist/draw"
	"tubewright/route"
)

// Heights on the pages that are used at full size, mm.
const (
	fullBarHeight = 9.0  // of the bar to measure with its writing
	uprightBarTop = 40.0 // of the upright bar, from the paper's edge
	uprightBarAt  = 8.0  // of the upright bar, from the paper's left edge
)

// fullPage starts a page that is used at full size: with a bar to measure on top
// and another along its side, since printers err in each direction by itself.
func (b *book) fullPage(title, name string) {
	b.page(title, name)
	b.y += 6
	b.add(ruler(draw.Point{X: margin + 0.2, Y: b.y}, draw.Point{X: 1}, b.theme)...)
	said := "Measure me: 100 mm (3.937 in)."
	if b.corrections > 0 && b.corrections < len(b.pages) {
		said += fmt.Sprintf(" Not so? See page %d.", b.corrections)
	}
	b.write(margin+0.2+scaleBarLength+4, b.y, said, rowSize, true, draw.Left, b.theme.Ink)
	b.add(ruler(draw.Point{X: uprightBarAt, Y: uprightBarTop}, draw.Point{Y: 1}, b.theme)...)
	b.write(uprightBarAt, uprightBarTop+scaleBarLength+2.8, "100", 2, true, draw.Centre, b.theme.Ink)
	b.y += fullBarHeight - 6
}

// fullNeed starts a new page of the kind unless this much is left.
func (b *book) fullNeed(title string, h float64) {
	if b.left() < h && b.y > b.start()+fullBarHeight {
		b.fullPage(title, "")
	}
}

// fullRoom is what an empty page of the kind has for one thing, under a head.
func (b *book) fullRoom(head float64) draw.Point {
	return draw.Point{X: b.width(), Y: b.floor() - b.start() - fullBarHeight - head}
}

// ruler is a bar of 100 mm with a tick every 10 on its left, going one way.
func ruler(at, way draw.Point, th Theme) []draw.Item {
	to := at.Plus(way.Times(scaleBarLength))
	items := []draw.Item{draw.Segment(at.X, at.Y, to.X, to.Y, pen(0.3, th.Ink))}
	side := draw.Point{X: way.Y, Y: -way.X}
	for i := range 11 {
		tall := 1.4
		if i%5 == 0 {
			tall = 2.6
		}
		foot := at.Plus(way.Times(float64(i) * scaleBarLength / 10))
		head := foot.Plus(side.Times(tall))
		items = append(items, draw.Segment(foot.X, foot.Y, head.X, head.Y, pen(0.2, th.Ink)))
	}
	return items
}

// corrected is the percentage at which a printer that makes 100 mm this long
// makes it 100 mm.
func corrected(measured float64) float64 { return 100 * scaleBarLength / measured }

// correctionTable says how to print again when a bar is not 100 mm long: for
// printers that are up to 3 % off.
func (b *book) correctionTable() {
	b.corrections = len(b.pages)
	cols := []column{{head: "a bar measures, mm", bold: true}}
	inches, percent := say("the same, in"), say("print again at, %")
	for tenths := 970; tenths <= 1030; tenths += 5 {
		mm := float64(tenths) / 10
		cols = append(cols, column{head: strconv.FormatFloat(mm, 'f', 1, 64), align: draw.Right})
		inches = append(inches, cell{text: strconv.FormatFloat(mm/25.4, 'f', 3, 64)})
		percent = append(percent, cell{text: strconv.FormatFloat(corrected(mm), 'f', 1, 64), bold: true})
	}
	rows := [][]cell{percent}
	if b.units == route.Inches {
		rows = [][]cell{inches, percent}
	}
	b.table(cols, rows)
}
