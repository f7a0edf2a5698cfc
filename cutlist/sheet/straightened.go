package sheet

import (
	"fmt"
	"math"
	"strconv"

	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/route"
)

// Straightened draws a tube as it lies before bending, to scale along its
// length, into a box of w by h mm: bends as bands with start, middle and end,
// their number and turn above, the roll between them, trims hatched. It is the
// picture of a run's card: below 26 mm of height the marks have no numbers, and
// what does not fit is left out rather than drawn over something else.
func Straightened(t cutlist.Tube, units route.Units, th Theme, w, h float64) draw.Drawing {
	s := newStrip(t, units, th, w, h)
	if h >= roomyHeight {
		s.roomy()
	} else {
		s.compact()
	}
	return s.d
}

// roomyHeight is the least height, mm, at which the marks have their numbers.
const roomyHeight = 26.0

// strip is the straightened tube while it is drawn.
type strip struct {
	d      draw.Drawing
	tube   cutlist.Tube
	units  route.Units
	theme  Theme
	trim   float64 // on each end, mm of tube
	length float64 // of the squared blank, mm of tube
	left   float64 // where the blank starts, mm on paper
	scale  float64
	bar    frame // the tube on paper
	size   float64
}

// leastStrip is the least length drawn, mm of tube, so that sockets that leave
// nothing to cut still have a scale.
const leastStrip = 1e-3

// endRoom is left at each end for the letters A and B, in sizes of the type.
const endRoom = 1.9

func newStrip(t cutlist.Tube, units route.Units, th Theme, w, h float64) *strip {
	s := &strip{d: draw.Drawing{W: w, H: h}, tube: t, units: units, theme: th}
	s.size = math.Min(fineSize, h/5)
	if len(t.Bench.Bends) > 0 {
		s.trim = t.Way.Formed.Tube.Trim
	}
	s.length = math.Max(t.Cut.Aim+2*s.trim, leastStrip)
	s.left = endRoom * s.size
	s.scale = math.Max(w-2*s.left, 1) / s.length
	return s
}

// at is where a place on the squared blank stands on paper, mm.
func (s *strip) at(mm float64) float64 { return s.left + mm*s.scale }

// thick is how thick the tube is drawn: true to scale, but always to be seen.
func (s *strip) thick(least, most float64) float64 {
	return math.Max(least, math.Min(most, s.tube.Way.Formed.Tube.OD*s.scale))
}

func (s *strip) place(y, thick float64) {
	s.bar = frame{draw.Point{X: s.at(0), Y: y}, draw.Point{X: s.at(s.length), Y: y + thick}}
}

// compact draws the strip of a run's card.
func (s *strip) compact() {
	thick := s.thick(s.d.H*0.16, s.d.H*0.3)
	s.place(s.size*1.5+(s.d.H-2.9*s.size-thick)/2, thick)
	s.body()
	l := &labels{within: frame{hi: draw.Point{X: s.d.W, Y: s.d.H}}, theme: s.theme}
	for i, b := range s.tube.Bench.Bends {
		s.try(l, route.Degrees(b.Turn), s.at(b.BlankA.Middle), s.bar.lo.Y-0.5*s.size)
		if i > 0 && b.Roll != 0 {
			s.try(l, rolled(b.Roll), s.at((b.BlankA.Start+s.tube.Bench.Bends[i-1].BlankA.End)/2), s.bar.hi.Y+1.1*s.size)
		}
	}
	s.try(l, s.units.TextUnit(s.tube.Cut.Aim), s.at(s.length/2), s.bar.hi.Y+1.1*s.size)
}

// try writes a text above or below the tube if there is room.
func (s *strip) try(l *labels, text string, x, y float64) {
	t := draw.Text{Text: text, Size: s.size, Align: draw.Centre, Colour: s.theme.Ink}
	if items, ok := l.text(t, []draw.Point{{X: x, Y: y}}); ok {
		s.d.Add(items...)
	}
}

// rolled writes a roll with its sign: "roll +90.0°".
func rolled(roll float64) string { return "roll " + signed(roll) }

func signed(degrees float64) string {
	text := route.Degrees(degrees)
	if degrees > 0 && text != "0.0°" {
		return "+" + text
	}
	return text
}

// body draws the tube, its bends, trims and ends.
func (s *strip) body() {
	c := coloursOf(s.tube.Letter, s.theme)
	y, h := s.bar.lo.Y, s.bar.h()
	s.d.Add(draw.Box(s.at(s.trim), y, s.tube.Cut.Aim*s.scale, h, mix(c.body, s.theme.Paper, 0.55), draw.Stroke{}))
	for _, b := range s.tube.Bench.Bends {
		s.d.Add(draw.Box(s.at(b.BlankA.Start), y, (b.BlankA.End-b.BlankA.Start)*s.scale, h, c.body, draw.Stroke{}))
		for _, m := range []float64{b.BlankA.Start, b.BlankA.End} {
			s.d.Add(draw.Segment(s.at(m), y, s.at(m), y+h, pen(0.3, s.theme.Ink)))
		}
		s.d.Add(draw.Segment(s.at(b.BlankA.Middle), y, s.at(b.BlankA.Middle), y+h, dashedPen(0.3, s.theme.Ink, 0.8, 0.5)))
	}
	if s.trim > 0 {
		s.hatch(s.at(0), s.at(s.trim))
		s.hatch(s.at(s.trim+s.tube.Cut.Aim), s.at(s.length))
	}
	s.d.Add(draw.Frame(s.at(0), y, s.length*s.scale, h, pen(0.35, s.theme.Ink)))
	s.ends()
}

// hatch fills a stretch of the tube with slanted lines: this is cut off.
func (s *strip) hatch(from, to float64) {
	hatch(&s.d, frame{draw.Point{X: from, Y: s.bar.lo.Y}, draw.Point{X: to, Y: s.bar.hi.Y}}, s.theme)
}

// hatch fills a frame with slanted lines.
func hatch(d *draw.Drawing, f frame, th Theme) {
	d.Add(draw.Box(f.lo.X, f.lo.Y, f.w(), f.h(), th.Paper, pen(0.2, th.Faint)))
	for x := f.lo.X - f.h() + 1.2; x < f.hi.X; x += 1.2 {
		a, b := math.Max(x, f.lo.X), math.Min(x+f.h(), f.hi.X)
		d.Add(draw.Segment(a, f.hi.Y-(a-x), b, f.hi.Y-(b-x), pen(0.15, th.Faint)))
	}
}

func (s *strip) ends() {
	y := s.bar.middle().Y + halfCap*s.size
	for _, e := range []struct {
		name string
		x    float64
	}{{"A", s.left / 2}, {"B", s.d.W - s.left/2}} {
		s.d.Add(draw.Text{At: draw.Point{X: e.x, Y: y}, Text: e.name, Size: s.size * 1.2, Bold: true, Align: draw.Centre, Colour: s.theme.Ink})
	}
}

// roomy draws the strip of a tube's page: numbers of bends above, marks from
// end A of the blank below, the lengths under them.
func (s *strip) roomy() {
	thick := s.thick(3, 6.5)
	above := 1.0
	if len(s.tube.Bench.Bends) > 0 {
		above = 3.1*s.size*leading + 2
	}
	s.place(above, thick)
	s.body()
	s.turns()
	y := s.marks(s.bar.hi.Y)
	s.lengths(y)
}

// turns writes number, turn and roll of each bend above it.
func (s *strip) turns() {
	bends := s.tube.Bench.Bends
	rows := make([][3]string, len(bends))
	at, widest := make([]float64, len(bends)), 0.0
	for i, b := range bends {
		rows[i] = [3]string{"bend " + strconv.Itoa(i+1), route.Degrees(b.Turn), ""}
		if i > 0 {
			rows[i][2] = rolled(b.Roll)
		}
		at[i] = s.at(b.BlankA.Middle)
		for _, line := range rows[i] {
			widest = math.Max(widest, draw.TextWidth(line, s.size, false))
		}
	}
	size := s.size
	if room := s.d.W / float64(max(len(bends), 1)); widest+0.8 > room {
		size *= room / (widest + 0.8)
		widest = room - 0.8
	}
	x := apart(at, widest+0.8, widest/2, s.d.W-widest/2)
	for i := range bends {
		for n, line := range rows[i] {
			y := (float64(n) + 0.85) * s.size * leading
			s.d.Add(draw.Text{At: draw.Point{X: x[i], Y: y}, Text: line, Size: size, Bold: n == 0, Align: draw.Centre, Colour: s.theme.Ink})
		}
		s.d.Add(draw.Segment(x[i], s.bar.lo.Y-1.6, at[i], s.bar.lo.Y, pen(0.15, s.theme.Faint)))
	}
}

// marks writes start, middle and end of each bend below the tube, as measured
// from end A of the squared blank, which is what is drawn and marked; it gives
// the height they reach down to.
func (s *strip) marks(y float64) float64 {
	var at []float64
	var texts []string
	for _, b := range s.tube.Bench.Bends {
		for k, m := range []float64{b.BlankA.Start, b.BlankA.Middle, b.BlankA.End} {
			at = append(at, s.at(m))
			texts = append(texts, [...]string{"start ", "middle ", "end "}[k]+s.units.Text(m))
		}
	}
	if len(at) == 0 {
		return y + 1
	}
	size, widest := s.size, 0.0
	if room := s.d.W / float64(len(at)); room < 1.2*size {
		size = room / 1.2
	}
	for _, text := range texts {
		widest = math.Max(widest, draw.TextWidth(text, size, false))
	}
	const leader = 3.0
	x := apart(at, 1.2*size, size, s.d.W-size)
	for i, text := range texts {
		s.d.Add(draw.Line{Points: []draw.Point{{X: at[i], Y: y}, {X: at[i], Y: y + 0.6}, {X: x[i], Y: y + leader - 0.4}}, Stroke: pen(0.15, s.theme.Faint)})
		s.d.Add(draw.Text{At: draw.Point{X: x[i] - halfCap*size, Y: y + leader}, Text: text, Size: size, Turn: 90, Colour: s.theme.Ink})
	}
	return y + leader + widest + 1
}

// apart moves places on a line so that they stand at least gap from each
// other between lo and hi and as near to where they were as a sweep from each
// side can do. The order stays.
func apart(at []float64, gap, lo, hi float64) []float64 {
	x := append([]float64(nil), at...)
	for i := range x {
		x[i] = math.Max(x[i], lo)
		if i > 0 {
			x[i] = math.Max(x[i], x[i-1]+gap)
		}
	}
	edge := hi
	for i := len(x) - 1; i >= 0; i-- {
		x[i] = math.Min(x[i], edge)
		edge = x[i] - gap
	}
	return x
}

// lengths draws the finished length and, for a bent tube, the blank under it.
func (s *strip) lengths(y float64) {
	y += s.size
	s.dimension(y, s.at(s.trim), s.at(s.trim+s.tube.Cut.Aim), "finished "+s.units.TextUnit(s.tube.Cut.Aim))
	if s.trim > 0 {
		trims := fmt.Sprintf("squared blank %s: finished and %s trimmed off each end", s.units.TextUnit(s.length), s.units.TextUnit(s.trim))
		s.dimension(y+1.9*s.size, s.at(0), s.at(s.length), trims)
	}
}

// dimension draws a measure between two places.
func (s *strip) dimension(y, from, to float64, text string) {
	line := pen(0.2, s.theme.Ink)
	w := draw.TextWidth(text, s.size, false) + 2
	middle := (from + to) / 2
	s.d.Add(draw.Segment(from, y-1, from, y+1, line), draw.Segment(to, y-1, to, y+1, line))
	if to-from > w {
		s.d.Add(draw.Segment(from, y, middle-w/2, y, line), draw.Segment(middle+w/2, y, to, y, line))
	}
	s.d.Add(draw.Text{At: draw.Point{X: middle, Y: y + halfCap*s.size}, Text: text, Size: s.size, Align: draw.Centre, Colour: s.theme.Ink})
}

// roomyFor is the height a tube's strip asks for on its page.
func roomyFor(t cutlist.Tube, units route.Units, w float64) float64 {
	s := newStrip(t, units, PaperTheme(), w, 60)
	s.roomy()
	lowest := 0.0
	for _, it := range s.d.Items {
		if text, ok := it.(draw.Text); ok {
			_, hi := text.Bounds()
			lowest = math.Max(lowest, hi.Y)
		}
	}
	return lowest + 1
}
