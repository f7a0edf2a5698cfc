package sheet_test

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/cutlist/sheet"
	"tubewright/route"
)

// longPlan is a machine with one tube too long for any sheet, in one plane: legs
// of 800, 700 and 600 mm.
func longPlan() route.Plan {
	p := route.Defaults()
	p.Spares = route.Spares{}
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
