package sheet_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
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

// svgPath is a painted thing of an SVG.
type svgPath struct{ d, dash, label string }

func svgPaths(t testing.TB, text []byte) (all []svgPath) {
	t.Helper()
	dec := xml.NewDecoder(bytes.NewReader(text))
	for {
		tok, err := dec.Token()
		if errors.Is(err, io.EOF) {
			return all
		}
		if err != nil {
			t.Fatal(err)
		}
		e, ok := tok.(xml.StartElement)
		if !ok || e.Name.Local != "path" {
			continue
		}
		var p svgPath
		for _, a := range e.Attr {
			switch a.Name.Local {
			case "d":
				p.d = a.Value
			case "stroke-dasharray":
				p.dash = a.Value
			case "aria-label":
				p.label = a.Value
			}
		}
		all = append(all, p)
	}
}

func templateFile(t testing.TB, l cutlist.List, tube cutlist.Tube, n int) []svgPath {
	t.Helper()
	var out bytes.Buffer
	if err := sheet.TemplateSVG(&out, l, tube, n); err != nil {
		t.Fatal(err)
	}
	return svgPaths(t, out.Bytes())
}

var svgStep = regexp.MustCompile(`([MLA])([^MLA]*)`)

// walked gives points along a path of an SVG, each step of it cut into parts:
// lines, and arcs with the centre worked out from their ends and radius.
func walked(t testing.TB, d string, parts int) (points []draw.Point) {
	t.Helper()
	var at draw.Point
	for _, m := range svgStep.FindAllStringSubmatch(d, -1) {
		var v []float64
		for _, f := range strings.Fields(m[2]) {
			x, err := strconv.ParseFloat(f, 64)
			if err != nil {
				t.Fatal(err)
			}
			v = append(v, x)
		}
		to := draw.Point{X: v[len(v)-2], Y: v[len(v)-1]}
		for i := 1; i <= parts && m[1] != "M"; i++ {
			u := float64(i) / float64(parts)
			if m[1] == "L" {
				points = append(points, at.Plus(to.Minus(at).Times(u)))
			} else {
				points = append(points, onArc(at, to, v[0], v[4] == 1, u))
			}
		}
		if m[1] == "M" {
			points = append(points, to)
		}
		at = to
	}
	return points
}

// onArc is part of the way along the short arc between two points.
func onArc(a, b draw.Point, r float64, clockwise bool, u float64) draw.Point {
	half := b.Minus(a).Times(0.5)
	l := math.Hypot(half.X, half.Y)
	off := math.Sqrt(math.Max(0, r*r-l*l)) / l
	if !clockwise {
		off = -off
	}
	c := a.Plus(half).Plus(draw.Point{X: -half.Y, Y: half.X}.Times(off))
	sweep := 2 * math.Asin(math.Min(1, l/r))
	if !clockwise {
		sweep = -sweep
	}
	s, k := math.Sincos(sweep * u)
	d := a.Minus(c)
	return c.Plus(draw.Point{X: d.X*k - d.Y*s, Y: d.X*s + d.Y*k})
}

// stretch is a piece of a template as package bends has it: from and to along
// the formed tube, mm from its first stop.
type stretch struct{ from, to float64 }

// stretches is what the templates of a tube must show, worked out from the bends
// alone: a new template where a roll leaves the plane.
func stretches(tube cutlist.Tube) (all [][]stretch) {
	f, gap := tube.Way.Formed, tube.Way.Ends.SeatGap
	trim := f.Tube.Trim
	end := f.Developed - gap[1]
	var now []stretch
	add := func(from, to float64) {
		if to-from > 1e-9 {
			now = append(now, stretch{from, to})
		}
	}
	add(gap[0]-trim, gap[0])
	at := gap[0]
	for i, b := range f.Bends {
		if out := math.Abs(math.Sin(b.Roll * math.Pi / 180)); i > 0 && out > 1e-3 {
			add(at, b.Start)
			all, now = append(all, now), nil
		}
		add(at, b.Start)
		add(b.Start, b.End)
		at = b.End
	}
	add(at, end)
	add(end, end+trim)
	if len(f.Bends) == 0 {
		return nil
	}
	return append(all, now)
}

// inSpace is a place along a formed tube; before its first stop and beyond its
// last it runs straight on.
func inSpace(f bends.Formed, s float64) vec {
	p, dir := f.At(s)
	switch {
	case s < 0:
		return p.Add(dir.Mul(s))
	case s > f.Developed:
		return p.Add(dir.Mul(s - f.Developed))
	}
	return p
}

// sameShape compares points on paper with points in space by the distances
// between all pairs of them, which is all there is to a shape but its hand.
func sameShape(paper []draw.Point, space []vec) (worst float64) {
	for i := range paper {
		for k := range i {
			d := paper[i].Minus(paper[k])
			worst = math.Max(worst, math.Abs(math.Hypot(d.X, d.Y)-space[i].Sub(space[k]).Len()))
		}
	}
	return worst
}

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
