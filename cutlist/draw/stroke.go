package draw

import "math"

// shortest is the least length of a line's part that has a direction, in the
// unit of its points (mm or pixels): far below both.
const shortest = 1e-9

// dashed cuts a line into the parts that a dash pattern leaves when the line
// starts skip into it; a pattern that is empty or has no length leaves it whole.
func dashed(points []Point, pattern []float64, skip float64) [][]Point {
	total := 0.0
	for _, d := range pattern {
		total += d
	}
	if !(total > shortest) || len(pattern)%2 != 0 {
		return [][]Point{points}
	}
	c := dashCutter{pattern: pattern, left: pattern[0], part: points[:1:1]}
	c.skip(math.Mod(skip, total), points[0])
	for i := 1; i < len(points); i++ {
		c.along(points[i-1], points[i])
	}
	return c.done()
}

// dashCutter walks along a line with a pattern.
type dashCutter struct {
	pattern []float64
	at      int     // which length of the pattern: even ones are drawn
	left    float64 // of that length
	part    []Point // being drawn
	parts   [][]Point
}

// skip goes on in the pattern before the line starts at a point.
func (c *dashCutter) skip(by float64, at Point) {
	for by > shortest {
		step := math.Min(c.left, by)
		by -= step
		if c.left -= step; c.left <= shortest {
			c.at = (c.at + 1) % len(c.pattern)
			c.left = c.pattern[c.at]
		}
	}
	c.part = []Point{at}
}

func (c *dashCutter) along(from, to Point) {
	length := math.Hypot(to.X-from.X, to.Y-from.Y)
	for done := 0.0; length-done > shortest; {
		step := math.Min(c.left, length-done)
		done += step
		c.left -= step
		p := from.Plus(to.Minus(from).Times(done / length))
		if c.at%2 == 0 {
			c.part = append(c.part, p)
		}
		for turns := 0; c.left <= shortest && turns <= len(c.pattern); turns++ {
			c.turn(p)
		}
	}
}

// turn goes on to the next length of the pattern.
func (c *dashCutter) turn(p Point) {
	if c.at%2 == 0 {
		c.parts = append(c.parts, c.part)
	}
	c.at = (c.at + 1) % len(c.pattern)
	c.left = c.pattern[c.at]
	c.part = []Point{p}
}

func (c *dashCutter) done() [][]Point {
	if c.at%2 == 0 && len(c.part) > 1 {
		c.parts = append(c.parts, c.part)
	}
	return c.parts
}

// smooth is the cosine of the sharpest corner (20 degrees) at which two parts of
// a line share their edges' corners; at sharper ones a disc fills the gap.
const smooth = 0.9397

// outline gives polygons that together cover a stroked line: a quad for each
// part, and a disc for each sharp corner. All go round the same way.
func outline(points []Point, half float64) [][]Point {
	points = withoutRepeats(points)
	if len(points) < 2 {
		return nil
	}
	closed := len(points) > 2 && points[0] == points[len(points)-1]
	sides := make([]Point, len(points)-1)
	for i := range sides {
		sides[i] = side(points[i], points[i+1])
	}
	var shapes [][]Point
	for i, n := range sides {
		before, after := neighbours(sides, i, closed)
		a, roundA := edge(before, n)
		b, sharp := edge(n, after)
		if sharp {
			b = n
		}
		shapes = append(shapes, quad(points[i], points[i+1], a.Times(half), b.Times(half)))
		if roundA {
			shapes = append(shapes, joint(points[i], half))
		}
	}
	return shapes
}

// withoutRepeats leaves out points that add no length.
func withoutRepeats(points []Point) []Point {
	out := points[:1:1]
	for _, p := range points[1:] {
		d := p.Minus(out[len(out)-1])
		if math.Hypot(d.X, d.Y) > shortest {
			out = append(out, p)
		}
	}
	return out
}

// side is the unit direction square to a part of a line.
func side(a, b Point) Point {
	d := b.Minus(a)
	return Point{-d.Y, d.X}.Times(1 / math.Hypot(d.X, d.Y))
}

// neighbours gives the sides of the parts before and after; a free end has its own.
func neighbours(sides []Point, i int, closed bool) (before, after Point) {
	before, after = sides[i], sides[i]
	if i > 0 || closed {
		before = sides[(i+len(sides)-1)%len(sides)]
	}
	if i < len(sides)-1 || closed {
		after = sides[(i+1)%len(sides)]
	}
	return before, after
}

// edge is where the edges of two parts meet at their corner, in halves of the
// width; round says that the corner is too sharp for them to. The parts are
// then cut square, the second by n's own side.
func edge(m, n Point) (at Point, round bool) {
	dot := m.X*n.X + m.Y*n.Y
	if dot < smooth {
		return n, true
	}
	return m.Plus(n).Times(1 / (1 + dot)), false
}

// quad is a part of a line between two points whose edges stand off by a and b.
func quad(p, q, a, b Point) []Point {
	return []Point{p.Plus(a), p.Minus(a), q.Minus(b), q.Plus(b)}
}

// joint is the disc that rounds a corner, with as many corners as its size in
// pixels needs; it goes round as quad does.
func joint(at Point, half float64) []Point {
	n := max(6, min(int(6*math.Sqrt(half))+6, 64))
	points := make([]Point, n)
	for i := range points {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		points[i] = at.Plus(Point{half * c, half * s})
	}
	return points
}
