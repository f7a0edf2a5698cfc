package sheet

import (
	"fmt"
	"strconv"

	"tubewright/cutlist"
	"tubewright/cutlist/draw"
)

// Sizes of a piece's label, mm: it is folded round the piece on its middle, so
// that the same words stand on both of its halves.
const (
	tagHeight = 20.0
	tagGap    = 2.0
	tagInset  = 1.6
)

// pieceTags is the labels of all pieces, in sawing order, for machines built in
// batches.
func (b *book) pieceTags() {
	if b.list.Plan.Build <= 1 || len(b.list.Bars) == 0 {
		return
	}
	b.page("Labels for the pieces", "Labels for the pieces")
	b.heading("Labels for the pieces", headSize, tagHeight)
	b.faint("Cut on the full lines. Fold on the broken line around the piece as it comes off the saw, and close it with tape. Plastic tube: take the label off before heat comes near it.")
	b.y += 2
	left := true
	for i, bar := range b.list.Bars {
		for n := range bar.Pieces {
			if left {
				b.need(tagHeight)
			}
			b.tag(left, i, n)
			if !left {
				b.y += tagHeight + tagGap
			}
			left = !left
		}
	}
	if !left {
		b.y += tagHeight + tagGap
	}
}

// tag sets the label of a bar's piece in the left or the right column.
func (b *book) tag(left bool, bar, piece int) {
	w := (b.width() - tagGap) / 2
	x := margin
	if !left {
		x += w + tagGap
	}
	fold := x + w/2
	b.add(
		draw.Frame(x, b.y, w, tagHeight, pen(0.15, b.theme.Rule)),
		draw.Line{Points: []draw.Point{{X: fold, Y: b.y}, {X: fold, Y: b.y + tagHeight}}, Stroke: dashedPen(0.15, b.theme.Rule, 1.2, 1)},
	)
	b.tagHalf(x+tagInset, w/2-2*tagInset, bar, piece)
	b.tagHalf(fold+tagInset, w/2-2*tagInset, bar, piece)
}

// tagHalf sets what one half of a label says.
func (b *book) tagHalf(x, w float64, bar, piece int) {
	p := b.list.Bars[bar].Pieces[piece]
	letter := letterOf(b.list, p.Run)
	room := discWidth(letter, headSize)
	b.add(disc(letter, draw.Point{X: x + room/2, Y: b.y + 6}, headSize, b.theme)...)
	length := b.units.TextUnit(p.Length)
	size := shrunk(length, headSize, fineSize, true, w-room-2)
	b.write(x+w, b.y+6+halfCap*size, length, size, true, draw.Right, b.theme.Ink)
	y := b.y + 9.5
	for _, line := range wrapped(p.Run, fineSize, true, w, 2) {
		y += fineSize * leading
		b.write(x, y-0.3*fineSize, line, fineSize, true, draw.Left, b.theme.Ink)
	}
	b.write(x, b.y+tagHeight-tagInset, shortened(tagPlace(b.list, p, bar, piece), fineSize, false, w), fineSize, false, draw.Left, b.theme.Ink)
}

// tagPlace says where a piece comes from and where it goes.
func tagPlace(l cutlist.List, p cutlist.Piece, bar, piece int) string {
	said := fmt.Sprintf("bar %d, piece %d  ·  ", bar+1, piece+1)
	if p.Spare {
		return said + "spare"
	}
	return said + "machine " + strconv.Itoa(max(1, p.Machine)) + " of " + strconv.Itoa(l.Plan.Build)
}
