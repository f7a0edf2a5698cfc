package sheet_test

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"tubewright/bends"
	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/cutlist/sheet"
	"tubewright/route"
)

// longPlan is a machine with one tube too long for any sheet, in one plane: legs
// of 800, 700 and 600 mm.
func longPlan() route.Plan {
	p := route.Defaults()
	p.Name, p.Case, p.Tube = "Длинная машина μεγάλη", vec{1700, 1000, 300}, "petg-16-12"
	p.Tubes, p.Fittings = []route.Tube{petg()}, kit()
	p.Parts = []route.Part{
		block("бак", vec{20, 50, 100}, vec{100, 150, 200}, port("out", vec{100, 100, 150}, vec{1, 0, 0})),
		block("ψύκτρα", vec{1500, 750, 100}, vec{1600, 850, 200}, port("in", vec{1500, 800, 150}, vec{-1, 0, 0})),
	}
	p.Runs = []route.Run{{
		Name: "бак-ψύκτρα", From: route.PortRef{Part: "бак", Port: "out"}, To: route.PortRef{Part: "ψύκτρα", Port: "in"},
		Via: []vec{{900, 100, 150}, {900, 800, 150}},
	}}
	p.Stock = []route.Stock{{Tube: "petg-16-12", Length: 2500, Price: 30}}
	return p
}

// sheetOf is one sheet of a template as the document has it.
type sheetOf struct {
	tube     string
	template int // which of the tube's, from 1
	number   int // which sheet of it, from 1
	window   [2]draw.Point
	crosses  map[string]draw.Point // by their letters
	lines    []curve               // of the centreline, in order
}

var sheetTitle = regexp.MustCompile(`^Template ?(?:(\d+) of \d+)?.*, sheet (\d+) of \d+`)

var crossLabel = regexp.MustCompile(`^([a-z]+), sheet (\d+)$`)

// sheetsOf reads the templates of several sheets from a document's bytes: the
// lines from the PDF, the letters of the crosses from the drawing.
func sheetsOf(t testing.TB, l cutlist.List, o sheet.Options) (all []sheetOf) {
	t.Helper()
	lines := pdfPages(t, l, o)
	pages := sheet.Pages(l, o)
	if len(lines) != len(pages) {
		t.Fatalf("%d pages read from the PDF, want %d", len(lines), len(pages))
	}
	for i, p := range pages {
		s := sheetOf{crosses: map[string]draw.Point{}}
		for _, x := range texts(p) {
			if m := sheetTitle.FindStringSubmatch(x.text); m != nil {
				s.template, _ = strconv.Atoi("0" + m[1])
				s.template = max(1, s.template)
				s.number, _ = strconv.Atoi(m[2])
			}
			if tube, ok := strings.CutPrefix(x.text, "Full-size templates: tube "); ok {
				s.tube = tube
			}
		}
		if s.number == 0 {
			continue
		}
		for _, c := range centrelines(lines[i]) {
			s.lines = append(s.lines, c.curves...)
		}
		s.window = windowOf(lines[i])
		middles := crossesOf(lines[i])
		var ring draw.Point // of the cross whose letter comes next
		for _, it := range p.Items {
			switch it := it.(type) {
			case draw.Arc:
				ring = it.Centre
			case draw.Text:
				if m := crossLabel.FindStringSubmatch(it.Text); m != nil {
					s.crosses[m[1]] = nearest(middles, ring)
				}
			}
		}
		if len(s.crosses) != len(middles) {
			t.Fatalf("page %d: %d crosses, %d named", i+1, len(middles), len(s.crosses))
		}
		all = append(all, s)
	}
	return all
}

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

// checkJoined lays the sheets of one template together and says what is wrong
// with them: crosses that miss, lines that do not go on, a shape that is not
// the tube's.
func checkJoined(t testing.TB, name string, l cutlist.List, sheets []sheetOf) (crossed int) {
	t.Helper()
	laid, miss := laidOver(t, sheets)
	if miss > 0.05 {
		t.Errorf("%s: a cross misses its other by %.3f mm", name, miss)
	}
	var all []draw.Point
	for i, s := range sheets {
		for _, p := range s.points() {
			p = laid[i].on(p)
			all = append(all, p)
			for k, other := range sheets {
				q := laid[k].back(p)
				const rim = 0.5
				if k == i || q.X < other.window[0].X+rim || q.Y < other.window[0].Y+rim || q.X > other.window[1].X-rim || q.Y > other.window[1].Y-rim {
					continue
				}
				crossed++
				if d := other.missOf(q); d > 0.2 {
					t.Errorf("%s: a point of sheet %d is %.3f mm off the line of sheet %d", name, s.number, d, other.number)
				}
			}
		}
	}
	tube := tubeOf(l, sheets[0].tube)
	if d := offCurve(all, flattened(tube, stretches(tube)[sheets[0].template-1])); d > 0.2 {
		t.Errorf("%s: joined it is %.3f mm off the bends", name, d)
	}
	return crossed
}

// Sheets joined by their crosses show the whole tube as the bends have it.
func TestSheetsJoinToOneTube(t *testing.T) {
	for name, l := range everyList(t) {
		for _, paper := range []sheet.Paper{sheet.A4, sheet.Letter} {
			if name == "stress" && paper == sheet.Letter {
				continue // much the same again, and slow
			}
			all := sheetsOf(t, l, sheet.Options{Paper: paper})
			for i := 0; i < len(all); {
				k := i + 1
				for k < len(all) && all[k].number > 1 {
					k++
				}
				what := fmt.Sprintf("%s on %s, tube %s, template %d of %d sheets", name, paper, all[i].tube, all[i].template, k-i)
				if n := checkJoined(t, what, l, all[i:k]); n < 2*(k-i-1) {
					t.Errorf("%s: only %d points lie on two sheets", what, n)
				}
				i = k
			}
			if name == "long" && len(all) < 8 {
				t.Errorf("the long tube takes %d sheets of %s: too few to be true", len(all), paper)
			}
		}
	}
}

func tubeOf(l cutlist.List, letter string) cutlist.Tube {
	for _, t := range l.Tubes {
		if t.Letter == letter {
			return t
		}
	}
	return cutlist.Tube{}
}

// Templates of one sheet, read from the document's bytes, follow the bends too.
func TestTemplatesInTheDocumentFollowTheBends(t *testing.T) {
	worst := 0.0
	for name, l := range everyList(t) {
		o := sheet.Options{}
		lines, pages := pdfPages(t, l, o), sheet.Pages(l, o)
		var drawn []stroked
		for i, p := range pages {
			if len(pagesOf([]draw.Drawing{p}, "Full-size templates")) > 0 && !strings.Contains(run([]draw.Drawing{p}), ",sheet1of") {
				drawn = append(drawn, centrelines(lines[i])...)
			}
		}
		large := map[string]bool{}
		for _, s := range sheetsOf(t, l, o) {
			large[fmt.Sprint(s.tube, s.template)] = true
		}
		at := 0
		for _, tube := range l.Tubes {
			for i, pieces := range stretches(tube) {
				if large[fmt.Sprint(tube.Letter, i+1)] || at+len(pieces) > len(drawn) {
					continue
				}
				var paper []draw.Point
				var space []vec
				for k, p := range pieces {
					curves := drawn[at+k].curves
					for n, c := range curves {
						for _, u := range []float64{0, 0.5, 1} {
							paper = append(paper, c.at(u))
							space = append(space, inSpace(tube.Way.Formed, p.from+(p.to-p.from)*(float64(n)+u)/float64(len(curves))))
						}
					}
				}
				at += len(pieces)
				d := sameShape(paper, space)
				worst = math.Max(worst, d)
				if d > off {
					t.Errorf("%s, tube %s, template %d in the PDF is off by %.4f mm", name, tube.Letter, i+1, d)
				}
			}
		}
		if singles := at; singles == 0 && name != "empty" && name != "long" {
			t.Errorf("%s: no template of one sheet was read", name)
		}
	}
	t.Logf("the worst is off by %.4f mm", worst)
}
