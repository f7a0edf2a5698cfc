package main

import (
	"bytes"
	"fmt"
	"strings"

	"tubewright/cutlist/nest"
)

// drawings are the bars to one scale: the longest fills the width.
func (a outcome) drawings(out *bytes.Buffer, width int) {
	var rows [][]string
	longest := 0
	for _, p := range a.result.Patterns {
		length := a.order.Job.Length(p)
		longest = max(longest, length)
		rows = append(rows, []string{fmt.Sprintf("%d x", p.Count), a.order.Amount(length).String()})
	}
	alignRight(rows, 0, 1)
	for i, p := range a.result.Patterns {
		head := "  " + strings.Join(rows[i], "  ") + "  "
		room := max(leastRoom, width-len(head)-len("[]"))
		fmt.Fprintf(out, "%s[%s]\n", head, a.drawing(p, longest, room))
	}
}

// leastRoom is what the longest bar takes at least; in a narrower window its
// line breaks.
const leastRoom = 20

// drawing is one bar, of columns for the longest: pieces with their lengths
// where there is room, the cuts between them, and what is left. Equal pieces too
// short for their lengths are one block with their number, if that has room.
func (a outcome) drawing(p nest.Pattern, longest, columns int) string {
	length := a.order.Job.Length(p)
	d := drawnBar{a, length, []byte(strings.Repeat(".", max(1, scaled(length, longest, columns)))), 0, 0}
	if a.order.Job.Keeps(p) {
		label(d.cells, "", '=')
	}
	for _, same := range alike(p.Pieces) {
		block := same.Length*same.Count + a.order.Job.Kerf*(same.Count-1)
		if d.wide(same.Length) <= len(a.one(nest.Piece{Length: same.Length})) && d.wide(block) > len(a.one(same)) {
			d.piece(block, a.one(same))
			continue
		}
		for range same.Count {
			d.piece(same.Length, a.one(nest.Piece{Length: same.Length}))
		}
	}
	return string(d.cells)
}

type drawnBar struct {
	outcome
	length int
	cells  []byte
	at     int // where the next piece begins
	free   int // the first column after the last cut
}

func (d *drawnBar) column(at int) int   { return scaled(at, d.length, len(d.cells)) }
func (d *drawnBar) wide(length int) int { return d.column(length) - 1 } // less its cut

// piece draws a piece and the cut after it, unless it ends where the bar does.
func (d *drawnBar) piece(length int, text string) {
	from, to := max(d.free, d.column(d.at)), d.column(d.at+length)
	label(d.cells[min(from, to):to], text, '-')
	flush := d.at+length == d.length
	d.at += length + d.order.Job.Kerf
	d.free = min(max(to+1, d.column(d.at)), len(d.cells))
	if !flush {
		label(d.cells[min(to, d.free):d.free], "", '|')
	}
}

// label fills cells and writes a text in their middle where it fits.
func label(cells []byte, text string, fill byte) {
	for i := range cells {
		cells[i] = fill
	}
	if room := len(cells) - len(text); room >= 0 {
		copy(cells[room/2:], text)
	}
}

// scaled is the column, of columns for all of whole, in which a place lies.
func scaled(at, whole, columns int) int {
	return int(float64(at) / float64(whole) * float64(columns))
}
