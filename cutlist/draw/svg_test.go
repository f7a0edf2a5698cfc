package draw_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tubewright/cutlist/draw"
)

// svg gives the SVG of a drawing.
func svg(t testing.TB, about draw.About, d draw.Drawing) string {
	t.Helper()
	var out bytes.Buffer
	if err := draw.SVG(&out, about, d); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// element is one thing of an SVG.
type element struct {
	name, text string
	attr       map[string]string
}

// elements reads an SVG as any reader of XML does.
func elements(t interface{ Fatalf(string, ...any) }, text string) (all []element) {
	dec := xml.NewDecoder(strings.NewReader(text))
	for {
		tok, err := dec.Token()
		if errors.Is(err, io.EOF) {
			return all
		}
		if err != nil {
			t.Fatalf("no XML: %v in\n%s", err, text)
		}
		switch tok := tok.(type) {
		case xml.StartElement:
			e := element{name: tok.Name.Local, attr: map[string]string{}}
			for _, a := range tok.Attr {
				e.attr[a.Name.Local] = a.Value
			}
			all = append(all, e)
		case xml.CharData:
			if len(all) > 0 {
				all[len(all)-1].text += string(tok)
			}
		}
	}
}

// paths gives the elements that are painted.
func paths(t testing.TB, text string) (all []element) {
	for _, e := range elements(t, text) {
		if e.name == "path" {
			all = append(all, e)
		}
	}
	return all
}

func TestSVGHasItsTrueSizeAndSaysWhatItIs(t *testing.T) {
	all := elements(t, svg(t, draw.About{Title: `Ёлка & <Ωμέγα> "7"`, Subject: "seen from above"}, draw.Drawing{W: 215.9, H: 279.4}))
	root := all[0].attr
	if root["width"] != "215.9mm" || root["height"] != "279.4mm" || root["viewBox"] != "0 0 215.9 279.4" {
		t.Errorf("size %s × %s, view %q; want 215.9mm × 279.4mm and one unit for a millimetre", root["width"], root["height"], root["viewBox"])
	}
	if all[1].name != "title" || strings.TrimSpace(all[1].text) != `Ёлка & <Ωμέγα> "7"` || strings.TrimSpace(all[2].text) != "seen from above" {
		t.Errorf("title %q, desc %q", all[1].text, all[2].text)
	}
}

func TestSVGLinesStandWhereTheyShould(t *testing.T) {
	d := draw.Drawing{W: 100, H: 50}
	d.Add(
		draw.Line{Points: []draw.Point{{X: 1, Y: 2}, {X: 3.14159, Y: -0.0001}}, Stroke: draw.Stroke{Width: 0.25, Colour: draw.Colour{R: 1, G: 171, B: 255}, Dash: []float64{2, 0.5}, Skip: 0.7}},
		draw.Box(10, 10, 20, 5, draw.Colour{R: 255}, draw.Stroke{}),
	)
	all := paths(t, svg(t, draw.About{}, d))
	want := []map[string]string{
		{"d": "M1 2L3.142 0", "stroke": "#01abff", "stroke-width": "0.25", "stroke-dasharray": "2 0.5", "stroke-dashoffset": "0.7"},
		{"d": "M10 10L30 10L30 15L10 15z", "fill": "#ff0000"},
	}
	for i, w := range want {
		for k, v := range w {
			if all[i].attr[k] != v {
				t.Errorf("path %d: %s is %q, want %q", i, k, all[i].attr[k], v)
			}
		}
	}
	if _, ok := all[1].attr["stroke"]; ok {
		t.Error("a fill without a stroke has one")
	}
}

// An arc of a path ends on its circle, and its middle lies on the side that the
// sweep says: the centre worked out from ends, radius and flag is the arc's own
// (the arithmetic of SVG 1.1, F.6.5, for circles).
func TestSVGArcsKeepTheirCentre(t *testing.T) {
	step := regexp.MustCompile(`A([\d.]+) ([\d.]+) 0 (0) ([01]) ([-\d.]+) ([-\d.]+)`)
	for _, sweep := range []float64{90, -90, 121, -200, 360, 17, 359.9} {
		a := draw.Arc{Centre: draw.Point{X: 60, Y: 40}, Radius: 32, From: 30, Sweep: sweep, Stroke: draw.Stroke{Width: 0.2}}
		d := draw.Drawing{W: 120, H: 80}
		d.Add(a)
		path := paths(t, svg(t, draw.About{}, d))[0].attr["d"]
		from := a.At(a.From)
		steps := step.FindAllStringSubmatch(path, -1)
		if want := int(math.Ceil(math.Abs(sweep) / 120)); len(steps) != want {
			t.Fatalf("sweep %v: %d arcs in %q, want %d", sweep, len(steps), path, want)
		}
		for _, s := range steps {
			to := draw.Point{X: number(t, s[5]), Y: number(t, s[6])}
			if c := arcCentre(from, to, number(t, s[1]), s[4] == "1"); math.Hypot(c.X-60, c.Y-40) > 0.02 {
				t.Errorf("sweep %v: the centre falls on %v, want 60, 40", sweep, c)
			}
			from = to
		}
		if end := a.At(a.From + sweep); math.Hypot(end.X-from.X, end.Y-from.Y) > 0.002 {
			t.Errorf("sweep %v: ends at %v, want %v", sweep, from, end)
		}
	}
}

// arcCentre is the centre of the short arc from one point to another.
func arcCentre(from, to draw.Point, r float64, clockwise bool) draw.Point {
	half := to.Minus(from).Times(0.5)
	l := math.Hypot(half.X, half.Y)
	off := math.Sqrt(math.Max(0, r*r-l*l)) / l
	if !clockwise {
		off = -off
	}
	return from.Plus(half).Plus(draw.Point{X: -half.Y, Y: half.X}.Times(off))
}

// Writing is outlines: the widths are the ones the PDF is set with, whatever
// fonts the reader has.
func TestSVGWritingIsOutlines(t *testing.T) {
	const written = "Aб Ω9"
	d := draw.Drawing{W: 100, H: 50}
	d.Add(draw.Text{At: draw.Point{X: 50, Y: 20}, Text: written, Size: 4, Align: draw.Right, Turn: 90, Bold: true})
	text := svg(t, draw.About{}, d)
	if strings.Contains(text, "<text") || strings.Contains(text, "font") {
		t.Error("the file asks for fonts")
	}
	e := paths(t, text)[0].attr
	if e["aria-label"] != written {
		t.Errorf("readers of screens hear %q", e["aria-label"])
	}
	if want := "translate(50 " + trim(20-draw.TextWidth(written, 4, true)) + ") rotate(90) scale(0.00195312)"; e["transform"] != want {
		t.Errorf("placed by %q, want %q: 4 mm of 2048 units, as far back as it is wide", e["transform"], want)
	}
	if n := strings.Count(e["d"], "M"); n != 2+2+1+2 {
		t.Errorf("%d outlines, want 7: A 2, б 2, Ω 1, 9 2", n)
	}
}

// trim writes a number to a thousandth without the zeros at its end.
func trim(v float64) string {
	return strings.TrimRight(strings.TrimRight(strconv.FormatFloat(v, 'f', 3, 64), "0"), ".")
}

func TestSVGLettersOfEveryScriptDiffer(t *testing.T) {
	seen := map[string]rune{}
	for _, c := range "ABgй ЖщΓλΩß7" {
		if c == ' ' {
			continue
		}
		d := draw.Drawing{W: 9, H: 9}
		d.Add(draw.Text{Text: string(c), Size: 3})
		path := paths(t, svg(t, draw.About{}, d))[0].attr["d"]
		if other, ok := seen[path]; ok {
			t.Errorf("%c and %c look the same", c, other)
		}
		seen[path] = c
	}
}

func TestSVGLeavesOutWhatIsNowhere(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	d := draw.Drawing{W: 9, H: 9}
	s := draw.Stroke{Width: 1}
	d.Add(
		draw.Segment(nan, 0, 1, 1, s), draw.Segment(0, 0, inf, 1, s), draw.Box(0, 0, nan, 1, ink, s), draw.Arc{Radius: inf, Sweep: 90, Stroke: s},
		draw.Arc{Radius: 1, Sweep: nan, Stroke: s}, draw.Text{Text: "x", Size: nan}, draw.Text{Text: "x", Size: 3, At: draw.Point{X: inf}},
		draw.Text{Size: 3}, draw.Line{Stroke: s}, draw.Line{Points: make([]draw.Point, 3)}, draw.Fill{}, draw.Arc{Radius: 3, Sweep: 9},
	)
	if all := paths(t, svg(t, draw.About{}, d)); len(all) != 0 {
		t.Errorf("painted %v, want nothing", all)
	}
}

func TestSVGIsWellFormedWhateverItIsCalled(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.OneOf(rapid.String(), rapid.SampledFrom([]string{`"><script>`, "]]>", "\x00\x1b", "\xff\xfe", "&amp;", "--> <!--", "\ufffe"})).Draw(t, "name")
		d := draw.Drawing{W: 9, H: 9}
		d.Add(draw.Text{Text: name, Size: 3})
		var out bytes.Buffer
		if err := draw.SVG(&out, draw.About{Title: name, Subject: name}, d); err != nil {
			t.Fatal(err)
		}
		if n := len(elements(t, out.String())); n < 4 || n > 5 {
			t.Fatalf("%d elements, want svg, title, desc, g and one path at most", n)
		}
	})
}

func TestSVGTellsOfAFailedWrite(t *testing.T) {
	if err := draw.SVG(fullDisk{}, draw.About{}, draw.Drawing{W: 10, H: 10}); !errors.Is(err, errFull) {
		t.Errorf("got %v, want %v", err, errFull)
	}
}

// A dashed line that starts somewhere in its pattern paints what the same line
// begun earlier paints there: pixel by pixel, 10 to the millimetre.
func TestDashesGoOnWhereTheyWereLeft(t *testing.T) {
	dash := []float64{3, 1, 0.5, 1}
	for _, skip := range []float64{0, 0.4, 3, 3.2, 4.1, 5.4, 5.5, 12.3} {
		a := painted(10, draw.Segment(10, 1, 50, 1, draw.Stroke{Width: 1, Dash: dash}))
		b := painted(10, draw.Segment(10+skip, 1, 50, 1, draw.Stroke{Width: 1, Dash: dash, Skip: skip}))
		for x := int(math.Ceil((10+skip)*10)) + 1; x < 600; x++ {
			if a.RGBAAt(x, 10) != b.RGBAAt(x, 10) {
				t.Errorf("skip %v: at %v mm one line is %v, the other %v", skip, float64(x)/10, a.RGBAAt(x, 10), b.RGBAAt(x, 10))
				break
			}
		}
	}
}
