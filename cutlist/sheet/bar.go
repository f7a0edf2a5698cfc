package sheet

import (
	"math"
	"strconv"

	"tubewright/cutlist"
	"tubewright/cutlist/draw"
)

// Bar draws a bar with its pieces in sawing order into a box of w by h mm. All
// bars of a list share one scale: the longest fills the width. Saw cuts are
// black gaps at the kerf's true width, what is left is hatched.
func Bar(l cutlist.List, b cutlist.Bar, th Theme, w, h float64) draw.Drawing {
	d := draw.Drawing{W: w, H: h}
	scale := w / math.Max(longest(l, b), 1)
	d.Add(draw.Box(0, 0, b.Length*scale, h, th.Ink, draw.Stroke{}))
	at := 0.0
	for _, p := range b.Pieces {
		barPiece(&d, l, p, frame{draw.Point{X: at * scale}, draw.Point{X: (at + p.Length) * scale, Y: h}}, th)
		at += p.Length + l.Plan.Saw.Kerf
	}
	if left := math.Min(b.Left, b.Length); left > 0 {
		barLeft(&d, l, b, frame{draw.Point{X: (b.Length - left) * scale}, draw.Point{X: b.Length * scale, Y: h}}, th)
	}
	d.Add(draw.Frame(0, 0, b.Length*scale, h, pen(0.3, th.Ink)))
	return d
}

func longest(l cutlist.List, b cutlist.Bar) float64 {
	most := b.Length
	for _, other := range l.Bars {
		most = math.Max(most, other.Length)
	}
	return most
}

// barPiece draws one piece with its letter, run and length, as many of them as
// fit.
func barPiece(d *draw.Drawing, l cutlist.List, p cutlist.Piece, f frame, th Theme) {
	letter := letterOf(l, p.Run)
	d.Add(draw.Box(f.lo.X, f.lo.Y, f.w(), f.h(), underInk(coloursOf(letter, th).body, th), draw.Stroke{}))
	size := math.Min(fineSize, f.h()/2.6)
	x, y := f.lo.X+0.8, f.middle().Y
	if disc0 := discWidth(letter, size); f.w() > disc0+1.2 && letter != "" {
		d.Add(disc(letter, draw.Point{X: x + disc0/2, Y: y}, size, th)...)
		x += disc0 + 1
	}
	number := l.Plan.Units.Text(p.Length)
	room := f.hi.X - x - 0.8
	if draw.TextWidth(number, size, true) > room {
		return
	}
	name := ""
	if rest := room - draw.TextWidth(number+"  ", size, true); rest > 4*size {
		name = shortened(PieceName(p), size, false, rest)
	}
	d.Add(draw.Text{At: draw.Point{X: x, Y: y + halfCap*size}, Text: number, Size: size, Bold: true, Colour: th.Ink})
	x += draw.TextWidth(number+"  ", size, true)
	d.Add(draw.Text{At: draw.Point{X: x, Y: y + halfCap*size}, Text: name, Size: size, Colour: th.Ink})
}

// leastContrast is what WCAG 2.1 asks of text (criterion 1.4.3, level AA), 4.5, and
// some more: on a screen no pixel of a thin small letter has the ink in full.
const leastContrast = 5.2

// underInk is a colour made so pale, toward the paper, that writing on it can be read.
func underInk(c draw.Colour, th Theme) draw.Colour {
	pale := c
	for part := 0.45; part <= 1; part += 0.05 {
		if pale = mix(c, th.Paper, part); draw.Contrast(pale, th.Ink) >= leastContrast {
			break
		}
	}
	return pale
}

// PieceName says which tube a piece becomes.
func PieceName(p cutlist.Piece) string {
	switch {
	case p.Spare:
		return "spare for " + p.Run
	case p.Machine > 1:
		return p.Run + ", machine " + strconv.Itoa(p.Machine)
	}
	return p.Run
}

func barLeft(d *draw.Drawing, l cutlist.List, b cutlist.Bar, f frame, th Theme) {
	hatch(d, f, th)
	size := math.Min(fineSize, f.h()/2.6)
	text := draw.Text{
		Text: leftText(l, b), Size: size, Align: draw.Centre, Colour: th.Ink,
		At: draw.Point{X: f.middle().X, Y: f.middle().Y + halfCap*size},
	}
	if room := textFrame(text); room.w() < f.w()-1 {
		d.Add(draw.Box(room.lo.X-0.4, room.lo.Y, room.w()+0.8, room.h(), th.Paper, draw.Stroke{}), text)
	}
}

// leftText says how much of a bar is left and whether to keep it.
func leftText(l cutlist.List, b cutlist.Bar) string {
	said := "left " + l.Plan.Units.Text(b.Left)
	if b.Keep {
		return said + ", keep"
	}
	return said
}

// letterOf is the letter of a run's tube.
func letterOf(l cutlist.List, run string) string {
	for _, t := range l.Tubes {
		if t.Run == run {
			return t.Letter
		}
	}
	return ""
}
