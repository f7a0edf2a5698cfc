package sheet_test

import (
	"math"
	"testing"

	"tubewright/bends"
	"tubewright/cutlist"
	"tubewright/cutlist/draw"
)

// crossesOf is the middles of the joining crosses: pairs of lines of 8 mm in
// their own width.
func crossesOf(page []stroked) (middles []draw.Point) {
	for _, s := range page {
		if math.Abs(s.width-0.22) < 0.005 && len(s.curves) == 1 {
			a, b := s.curves[0][0], s.curves[0][3]
			if d := b.Minus(a); math.Abs(d.X-8) < 0.02 && math.Abs(d.Y) < 0.01 {
				middles = append(middles, a.Plus(b).Times(0.5))
			}
		}
	}
	return middles
}

func nearest(points []draw.Point, to draw.Point) (best draw.Point) {
	least := math.Inf(1)
	for _, p := range points {
		if d := math.Hypot(p.X-to.X, p.Y-to.Y); d < least {
			best, least = p, d
		}
	}
	return best
}

// laying is how one sheet lies on another: turned, then moved.
type laying struct{ cos, sin, x, y float64 }

func (m laying) on(p draw.Point) draw.Point {
	return draw.Point{X: m.cos*p.X - m.sin*p.Y + m.x, Y: m.sin*p.X + m.cos*p.Y + m.y}
}

// laidBy lays a sheet's two points on another's, as hands do: the first on the
// first, then turned until the second lies toward the second.
func laidBy(a, b, onA, onB draw.Point) laying {
	was, is := b.Minus(a), onB.Minus(onA)
	angle := math.Atan2(is.Y, is.X) - math.Atan2(was.Y, was.X)
	s, c := math.Sincos(angle)
	m := laying{cos: c, sin: s}
	at := m.on(a)
	m.x, m.y = onA.X-at.X, onA.Y-at.Y
	return m
}

// windowOf is the frame of a sheet: the largest of the page's thin frames.
func windowOf(page []stroked) (window [2]draw.Point) {
	for _, s := range page {
		if len(s.curves) != 4 || math.Abs(s.width-0.12) > 0.01 {
			continue
		}
		lo, hi := s.curves[0][0], s.curves[1][3]
		if hi.X-lo.X > window[1].X-window[0].X {
			window = [2]draw.Point{lo, hi}
		}
	}
	return window
}

// laidOver lays all sheets of a template over the first by their crosses, and
// gives the worst miss of a second cross.
func laidOver(t testing.TB, sheets []sheetOf) (laid []laying, miss float64) {
	t.Helper()
	laid = make([]laying, len(sheets))
	laid[0].cos = 1
	todo := []int{0}
	for done := map[int]bool{0: true}; len(todo) > 0; todo = todo[1:] {
		k := todo[0]
		for i := range sheets {
			var pairs [][2]draw.Point
			for name, at := range sheets[i].crosses {
				if on, ok := sheets[k].crosses[name]; ok {
					pairs = append(pairs, [2]draw.Point{at, laid[k].on(on)})
				}
			}
			if done[i] || len(pairs) != 2 {
				continue
			}
			done[i], todo = true, append(todo, i)
			laid[i] = laidBy(pairs[0][0], pairs[1][0], pairs[0][1], pairs[1][1])
			d := laid[i].on(pairs[1][0]).Minus(pairs[1][1])
			miss = math.Max(miss, math.Hypot(d.X, d.Y))
		}
	}
	for i, m := range laid {
		if m == (laying{}) {
			t.Fatalf("tube %s: sheet %d hangs on no other by two crosses", sheets[i].tube, i+1)
		}
	}
	return laid, miss
}

// back is where a point of the first sheet lies on a sheet laid over it.
func (m laying) back(p draw.Point) draw.Point {
	x, y := p.X-m.x, p.Y-m.y
	return draw.Point{X: m.cos*x + m.sin*y, Y: -m.sin*x + m.cos*y}
}

// points is points along a sheet's centreline.
func (s sheetOf) points() (points []draw.Point) {
	for _, c := range s.lines {
		for k := range 41 {
			points = append(points, c.at(float64(k)/40))
		}
	}
	return points
}

// missOf is how far a point is from a sheet's centreline.
func (s sheetOf) missOf(p draw.Point) float64 {
	least := math.Inf(1)
	for _, c := range s.lines {
		for k := range 40 {
			least = math.Min(least, fromSegment(p, c.at(float64(k)/40), c.at(float64(k+1)/40)))
		}
	}
	return least
}

func fromSegment(p, a, b draw.Point) float64 {
	d, q := b.Minus(a), p.Minus(a)
	l := d.X*d.X + d.Y*d.Y
	u := 0.0
	if l > 0 {
		u = math.Max(0, math.Min(1, (q.X*d.X+q.Y*d.Y)/l))
	}
	return math.Hypot(q.X-u*d.X, q.Y-u*d.Y)
}

// flattened is points of a stretch of tube no farther than 1 mm apart, laid on
// paper so that its first bend turns left.
func flattened(tube cutlist.Tube, pieces []stretch) (points []draw.Point) {
	f := tube.Way.Formed
	var bend bends.Piece
	for _, p := range f.Pieces() {
		if bend.Radius == 0 && p.Radius > 0 && p.Start >= pieces[0].from-1e-6 {
			bend = p
		}
	}
	right, left := bend.V, bend.U.Mul(-1) // V is the way at the bend's start, U points away from its centre
	for _, p := range pieces {
		n := int(p.to-p.from) + 1
		for i := range n + 1 {
			q := inSpace(f, p.from+(p.to-p.from)*float64(i)/float64(n)).Sub(bend.Centre)
			points = append(points, draw.Point{X: q.Dot(right), Y: -q.Dot(left)})
		}
	}
	return points
}

// ends is the two points that are farthest from each other, one first.
func ends(points []draw.Point) (a, b draw.Point) {
	most := -1.0
	for i, p := range points {
		for _, q := range points[:i] {
			if d := math.Hypot(p.X-q.X, p.Y-q.Y); d > most {
				a, b, most = p, q, d
			}
		}
	}
	return a, b
}

// offCurve is how far points on paper are from a curve that is laid on them as
// well as it can be: by its two points that are farthest apart, one way round or
// the other, then moved and turned to lie nearer step by step (Besl and McKay,
// 1992).
func offCurve(points, curve []draw.Point) float64 {
	a, b := ends(points)
	c, d := ends(curve)
	best := math.Inf(1)
	for _, m := range []laying{laidBy(c, d, a, b), laidBy(d, c, a, b)} {
		worst := math.Inf(1)
		for range 12 {
			on := make([]draw.Point, len(points))
			far := 0.0
			for i, p := range points {
				q := m.back(p)
				on[i] = onCurve(q, curve)
				far = math.Max(far, math.Hypot(q.X-on[i].X, q.Y-on[i].Y))
			}
			worst = math.Min(worst, far)
			m = bestLaying(on, points)
		}
		best = math.Min(best, worst)
	}
	return best
}

// onCurve is the point of a curve that is nearest.
func onCurve(p draw.Point, curve []draw.Point) (best draw.Point) {
	least := math.Inf(1)
	for i := 1; i < len(curve); i++ {
		a, d := curve[i-1], curve[i].Minus(curve[i-1])
		l, q := d.X*d.X+d.Y*d.Y, p.Minus(a)
		if l == 0 {
			continue
		}
		on := a.Plus(d.Times(math.Max(0, math.Min(1, (q.X*d.X+q.Y*d.Y)/l))))
		if far := math.Hypot(p.X-on.X, p.Y-on.Y); far < least {
			best, least = on, far
		}
	}
	return best
}

// bestLaying moves and turns points so that they lie nearest to their others, by
// the squares of what is between them.
func bestLaying(from, to []draw.Point) laying {
	var a, b draw.Point
	for i := range from {
		a, b = a.Plus(from[i].Times(1/float64(len(from)))), b.Plus(to[i].Times(1/float64(len(from))))
	}
	dot, cross := 0.0, 0.0
	for i := range from {
		p, q := from[i].Minus(a), to[i].Minus(b)
		dot, cross = dot+p.X*q.X+p.Y*q.Y, cross+p.X*q.Y-p.Y*q.X
	}
	l := math.Hypot(dot, cross)
	m := laying{cos: dot / l, sin: cross / l}
	at := m.on(a)
	m.x, m.y = b.X-at.X, b.Y-at.Y
	return m
}
