package sheet

import (
	"math"

	"tubewright/cutlist/draw"
)

// labels places short texts on a drawing so that none covers another.
type labels struct {
	within frame
	taken  []frame
	avoid  []frame // rather not written over: tubes
	strict bool    // never written over them
	theme  Theme
}

// free reports whether a frame lies on the drawing and meets no other label.
func (l *labels) free(f frame) bool {
	if !l.within.holds(f) {
		return false
	}
	for _, t := range l.taken {
		if t.meets(f) {
			return false
		}
	}
	return true
}

// textFrame is the room of a text, with a little air.
func textFrame(t draw.Text) frame {
	lo, hi := t.Bounds()
	return frame{lo, hi}.grown(0.25)
}

// text places a text at the first of some spots that is free, rather not over a
// tube; where that cannot be, on a ground of its own.
func (l *labels) text(t draw.Text, spots []draw.Point) ([]draw.Item, bool) {
	for _, gentle := range []bool{true, l.strict} {
		for _, s := range spots {
			t.At = s
			f := textFrame(t)
			if !l.free(f) || gentle && l.overTube(f) {
				continue
			}
			l.taken = append(l.taken, f)
			if gentle {
				return []draw.Item{t}, true
			}
			return []draw.Item{draw.Box(f.lo.X, f.lo.Y, f.w(), f.h(), l.theme.Paper, draw.Stroke{}), t}, true
		}
	}
	return nil, false
}

func (l *labels) overTube(f frame) bool {
	for _, a := range l.avoid {
		if a.meets(f) {
			return true
		}
	}
	return false
}

// badge places a ringed text at the first of some spots that is free, else as
// near to the first as it can be with a line leading to it.
func (l *labels) badge(text string, size float64, ring draw.Colour, spots []draw.Point) []draw.Item {
	room := draw.Point{X: discWidth(text, size)/2 + 0.3, Y: math.Max(1.45*size/2, size) + 0.2}
	try := func(at draw.Point) bool {
		f := frame{at.Minus(room), at.Plus(room)}
		if !l.free(f) {
			return false
		}
		l.taken = append(l.taken, f)
		return true
	}
	for _, at := range spots {
		if try(at) {
			return badge(text, at, size, ring, l.theme)
		}
	}
	if len(spots) == 0 {
		return nil
	}
	for _, at := range nearby(spots[0], 2.5*size) {
		if try(at) {
			leader := draw.Segment(spots[0].X, spots[0].Y, at.X, at.Y, pen(0.2, l.theme.Ink))
			return append([]draw.Item{leader}, badge(text, at, size, ring, l.theme)...)
		}
	}
	return nil
}

// nearby is spots in rings around a point, nearest first.
func nearby(at draw.Point, step float64) []draw.Point {
	var spots []draw.Point
	for ring := 1; ring <= 8; ring++ {
		for k := range 8 * ring {
			s, c := math.Sincos(2 * math.Pi * float64(k) / float64(8*ring))
			spots = append(spots, at.Plus(draw.Point{X: c, Y: s}.Times(step*float64(ring))))
		}
	}
	return spots
}

// over is spots spread over a frame for a text of this size: the middle first,
// then rows above and below, each from the middle outward.
func over(f frame, w, size float64) []draw.Point {
	var spots []draw.Point
	room := math.Max(0, (f.w()-w)/2)
	for row := range 9 {
		y := f.middle().Y + halfCap*size + float64((row+1)/2)*1.2*size*float64(1-2*(row%2))
		if y-size < f.lo.Y || y+0.25*size > f.hi.Y {
			continue
		}
		for _, k := range []float64{0, -0.5, 0.5, -1, 1} {
			spots = append(spots, draw.Point{X: f.middle().X + k*room, Y: y})
		}
	}
	return spots
}
