package draw

import (
	"math"
	"slices"
)

// Clipped gives what of an item lies in an upright box: lines and arcs cut where
// they leave it, with their dashes as they were; fills cut to it, their outline
// only where it is inside; a text only when all of it is inside.
func Clipped(it Item, lo, hi Point) []Item {
	w := window{lo, hi}
	switch it := it.(type) {
	case Line:
		return w.line(it)
	case Arc:
		return w.arc(it)
	case Fill:
		return w.fill(it)
	case Text:
		if a, b := it.Bounds(); w.has(a) && w.has(b) {
			return []Item{it}
		}
	}
	return nil
}

// window is what a drawing is seen through.
type window struct{ lo, hi Point }

func (w window) has(p Point) bool {
	return w.lo.X <= p.X && p.X <= w.hi.X && w.lo.Y <= p.Y && p.Y <= w.hi.Y
}

// line keeps the stretches of a line that are seen.
func (w window) line(l Line) (out []Item) {
	done := 0.0
	var part []Point
	begun := 0.0
	end := func() {
		if len(part) > 1 {
			out = append(out, Line{Points: part, Stroke: l.Stroke.after(begun)})
		}
		part = nil
	}
	for i := 1; i < len(l.Points); i++ {
		a, b := l.Points[i-1], l.Points[i]
		length := math.Hypot(b.X-a.X, b.Y-a.Y)
		from, to, ok := w.span(a, b)
		if ok && (from > 0 || part == nil) {
			end()
			part, begun = []Point{between(a, b, from)}, done+from*length
		}
		if ok {
			part = append(part, between(a, b, to))
		}
		if !ok || to < 1 {
			end()
		}
		done += length
	}
	end()
	return out
}

// after is a stroke as it goes on when a length of its line is done.
func (s Stroke) after(length float64) Stroke {
	if len(s.Dash) > 0 {
		s.Skip += length
	}
	return s
}

// between is the point part of the way from one to another, exact at both.
func between(a, b Point, part float64) Point {
	if part == 1 {
		return b
	}
	return a.Plus(b.Minus(a).Times(part))
}

// span is the part of the way from a to b that is seen, 0 to 1 (Liang and
// Barsky, 1984).
func (w window) span(a, b Point) (from, to float64, ok bool) {
	from, to = 0, 1
	d := b.Minus(a)
	for _, e := range [...][2]float64{
		{-d.X, a.X - w.lo.X}, {d.X, w.hi.X - a.X}, {-d.Y, a.Y - w.lo.Y}, {d.Y, w.hi.Y - a.Y},
	} {
		switch p, q := e[0], e[1]; {
		case p == 0 && q < 0:
			return 0, 0, false
		case p < 0:
			from = math.Max(from, q/p)
		case p > 0:
			to = math.Min(to, q/p)
		}
	}
	return from, to, from < to
}

// leastArc is the shortest arc that is kept, degrees: rounding at a crossing.
const leastArc = 1e-7

// arc keeps the stretches of an arc that are seen: between crossings with the
// window's sides it is wholly in or wholly out.
func (w window) arc(a Arc) (out []Item) {
	at := append([]float64{0, math.Abs(a.Sweep)}, w.crossings(a)...)
	slices.Sort(at)
	way := math.Copysign(1, a.Sweep)
	for i := 1; i < len(at); i++ {
		from, to := at[i-1], at[i]
		if to-from < leastArc || !w.has(a.At(a.From+way*(from+to)/2)) {
			continue
		}
		part := a
		part.From, part.Sweep = a.From+way*from, way*(to-from)
		part.Stroke = a.Stroke.after(from * math.Pi / 180 * a.Radius)
		out = append(out, part)
	}
	return out
}

// crossings is where an arc's way crosses the lines through the window's sides,
// degrees from its start.
func (w window) crossings(a Arc) (at []float64) {
	add := func(degrees float64) {
		along := (degrees - a.From) * math.Copysign(1, a.Sweep)
		for along = math.Mod(math.Mod(along, 360)+360, 360); along < math.Abs(a.Sweep); along += 360 {
			at = append(at, along)
		}
	}
	for _, x := range []float64{w.lo.X, w.hi.X} {
		if c := (x - a.Centre.X) / a.Radius; math.Abs(c) < 1 {
			half := math.Acos(c) * 180 / math.Pi
			add(half)
			add(-half)
		}
	}
	for _, y := range []float64{w.lo.Y, w.hi.Y} {
		if s := (y - a.Centre.Y) / a.Radius; math.Abs(s) < 1 {
			up := math.Asin(s) * 180 / math.Pi
			add(up)
			add(180 - up)
		}
	}
	return at
}

// fill cuts a polygon by one side of the window after another (Sutherland and
// Hodgman, 1974), and its outline as a line.
func (w window) fill(f Fill) (out []Item) {
	sides := [...]func(Point) float64{
		func(p Point) float64 { return p.X - w.lo.X }, func(p Point) float64 { return w.hi.X - p.X },
		func(p Point) float64 { return p.Y - w.lo.Y }, func(p Point) float64 { return w.hi.Y - p.Y },
	}
	points := f.Points
	for _, inside := range sides {
		points = cutBy(points, inside)
	}
	if len(points) > 2 {
		out = append(out, Fill{Points: points, Colour: f.Colour})
	}
	if f.Stroke.Width > 0 && len(f.Points) > 2 {
		out = append(out, closed(w.line(Line{Points: append(slices.Clone(f.Points), f.Points[0]), Stroke: f.Stroke}))...)
	}
	return out
}

// closed joins the last part of an outline to the first where they meet, so that
// the corner between them is drawn as one.
func closed(parts []Item) []Item {
	n := len(parts) - 1
	if n < 1 {
		return parts
	}
	first, last := parts[0].(Line), parts[n].(Line)
	if last.Points[len(last.Points)-1] != first.Points[0] {
		return parts
	}
	first.Points = append(slices.Clone(last.Points), first.Points[1:]...)
	parts[0] = first
	return parts[:n]
}

// cutBy keeps of a polygon what lies where inside is 0 or more.
func cutBy(points []Point, inside func(Point) float64) (out []Point) {
	for i, p := range points {
		q := points[(i+len(points)-1)%len(points)]
		a, b := inside(q), inside(p)
		if a < 0 != (b < 0) {
			out = append(out, q.Plus(p.Minus(q).Times(a/(a-b))))
		}
		if b >= 0 {
			out = append(out, p)
		}
	}
	return out
}
