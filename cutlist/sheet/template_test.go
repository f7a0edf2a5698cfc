package sheet_test

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"tubewright/cutlist/draw"
	"tubewright/cutlist/sheet"
	"tubewright/route"
)

// svgPath is a painted thing of an SVG.
type svgPath struct{ d, dash, label string }

var svgStep = regexp.MustCompile(`([MLA])([^MLA]*)`)

// stretch is a piece of a template as package bends has it: from and to along
// the formed tube, mm from its first stop.
type stretch struct{ from, to float64 }

// off is how far a drawn centreline may be from the bends', mm.
const off = 0.05

func TestTemplatesFollowTheBends(t *testing.T) {
	worst, templates := 0.0, 0
	for name, l := range everyList(t) {
		for _, tube := range l.Tubes {
			want := stretches(tube)
			if n := sheet.TemplateCount(tube); n != len(want) {
				t.Fatalf("%s, tube %s: %d templates, want %d", name, tube.Letter, n, len(want))
			}
			for i, pieces := range want {
				var drawn []svgPath
				for _, p := range templateFile(t, l, tube, i+1) {
					if p.dash == "6 1 1 1" {
						drawn = append(drawn, p)
					}
				}
				if len(drawn) != len(pieces) {
					t.Fatalf("%s, tube %s, template %d: %d pieces of centreline, want %d", name, tube.Letter, i+1, len(drawn), len(pieces))
				}
				var paper []draw.Point
				var space []vec
				for k, p := range pieces {
					points := walked(t, drawn[k].d, 4)
					for n, q := range points {
						paper = append(paper, q)
						space = append(space, inSpace(tube.Way.Formed, p.from+(p.to-p.from)*float64(n)/float64(len(points)-1)))
					}
				}
				templates++
				d := sameShape(paper, space)
				worst = math.Max(worst, d)
				if d > off {
					t.Errorf("%s, tube %s, template %d is off by %.4f mm", name, tube.Letter, i+1, d)
				}
			}
		}
	}
	t.Logf("%d templates, the worst off by %.4f mm", templates, worst)
}

// hand is which way the paper's face looks in space, from three points of a bend:
// the reader sees it from there.
func hand(paper [3]draw.Point, space [3]vec) vec {
	a, b := paper[1].Minus(paper[0]), paper[2].Minus(paper[0])
	n := space[1].Sub(space[0]).Cross(space[2].Sub(space[0])).Normalize()
	if a.X*b.Y-a.Y*b.X > 0 { // y runs down the page: the bend turns right
		n = n.Mul(-1)
	}
	return n
}

// A template says which way the tube leaves the paper at a roll; in space the
// next bend's tube really goes there.
func TestTemplatesSayWhichWayTheTubeLeaves(t *testing.T) {
	told := 0
	for name, l := range everyList(t) {
		for _, tube := range l.Tubes {
			f := tube.Way.Formed
			first := 0
			for i, pieces := range stretches(tube) {
				all := templateFile(t, l, tube, i+1)
				own := 0
				for _, p := range pieces {
					for _, b := range f.Bends {
						if p.from == b.Start && p.to == b.End {
							own++
						}
					}
				}
				var said []string
				var arcs []string
				for _, p := range all {
					if p.dash == "6 1 1 1" && strings.Contains(p.d, "A") {
						arcs = append(arcs, p.d)
					}
					said = append(said, p.label)
				}
				b := f.Bends[first]
				points := walked(t, arcs[0], 8)
				up := hand([3]draw.Point{points[0], points[len(points)/2], points[len(points)-1]}, [3]vec{inSpace(f, b.Start), inSpace(f, b.Middle), inSpace(f, b.End)})
				check := func(begins string, s float64) {
					for k, text := range said {
						if !strings.HasPrefix(text, begins) {
							continue
						}
						told++
						want := "the tube goes down, off the bench"
						if inSpace(f, s).Sub(inSpace(f, b.Middle)).Dot(up) > 0 {
							want = "the tube rises toward you"
						}
						if said[k+1] != want {
							t.Errorf("%s, tube %s, template %d: %q then %q, want %q", name, tube.Letter, i+1, text, said[k+1], want)
						}
						return
					}
					t.Errorf("%s, tube %s, template %d does not say %q", name, tube.Letter, i+1, begins)
				}
				if next := first + own; next < len(f.Bends) {
					check(fmt.Sprintf("bend %d starts here, roll ", next+1), f.Bends[next].Middle)
				}
				if first > 0 {
					check(fmt.Sprintf("bend %d ends here, roll ", first), f.Bends[first-1].Middle)
				}
				first += own
			}
		}
	}
	if told < 100 {
		t.Errorf("only %d rolls told", told)
	}
}

// Each template says what the bench needs: every bend with turn, radius and
// marks, both ends, and the tube it belongs to.
func TestTemplatesSayTheirNumbers(t *testing.T) {
	for name, l := range everyList(t) {
		u := l.Plan.Units
		for _, tube := range l.Tubes {
			var said []string
			for n := range sheet.TemplateCount(tube) {
				for _, p := range templateFile(t, l, tube, n+1) {
					said = append(said, p.label)
				}
			}
			all := "|" + strings.Join(said, "|") + "|"
			for i, b := range tube.Bench.Bends {
				for _, want := range []string{
					fmt.Sprintf("|bend %d: %s|", i+1, route.Degrees(b.Turn)), "|radius " + u.Text(b.Radius) + "|", "|form to " + route.Degrees(b.FormTo) + "|",
					"|start " + u.Text(b.BlankA.Start) + "|", "|middle " + u.Text(b.BlankA.Middle) + "|", "|end " + u.Text(b.BlankA.End) + "|",
					"|finished end A: cut here|", "|finished end B: cut here|", "|A|", "|B|",
				} {
					if !strings.Contains(all, want) {
						t.Errorf("%s, tube %s: no template says %q", name, tube.Letter, want)
					}
				}
			}
		}
	}
}

// The pages say at least number and turn of every bend, wherever it is cut.
func TestTemplatePagesNameEveryBend(t *testing.T) {
	for name, l := range everyList(t) {
		for _, paper := range []sheet.Paper{sheet.A4, sheet.Letter} {
			count := map[string]int{}
			for _, p := range pagesOf(sheet.Pages(l, sheet.Options{Paper: paper}), "Full-size templates") {
				for _, x := range texts(p) {
					count[x.text]++
				}
			}
			want := map[string]int{}
			for _, tube := range jigs(l) {
				for i, b := range tube.Bench.Bends {
					want[fmt.Sprintf("bend %d: %s", i+1, route.Degrees(b.Turn))]++
				}
			}
			for text, n := range want {
				if count[text] < n {
					t.Errorf("%s on %s: %q stands %d times, want %d at least", name, paper, text, count[text], n)
				}
			}
		}
	}
}
