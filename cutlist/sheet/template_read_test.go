package sheet_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"tubewright/bends"
	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/cutlist/sheet"
)

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
