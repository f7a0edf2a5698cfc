package draw_test

import (
	"bytes"
	"compress/zlib"
	"errors"
	"fmt"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"tubewright/cutlist/draw"
)

var ink = draw.Colour{}

// written gives the PDF of pages.
func written(t *testing.T, pages ...draw.Drawing) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := draw.PDF(&out, draw.About{Title: "Ёлка Ωμέγα", Subject: "test"}, pages...); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// contents gives all that a PDF holds in packed streams, unpacked.
func contents(t *testing.T, pdf []byte) string {
	t.Helper()
	var all strings.Builder
	for _, part := range bytes.Split(pdf, []byte("stream\n"))[1:] {
		r, err := zlib.NewReader(bytes.NewReader(part))
		if err != nil {
			continue // not packed, or what follows "endstream"
		}
		text, err := io.ReadAll(r)
		if err != nil {
			t.Fatalf("a packed stream is broken: %v", err)
		}
		all.Write(text)
	}
	return all.String()
}

func TestPDFGivesTheSameBytesTwice(t *testing.T) {
	d := draw.Drawing{W: 210, H: 297, Name: "Seite Ж"}
	for i := range 200 {
		d.Add(draw.Text{At: draw.Point{X: 10, Y: float64(i)}, Text: fmt.Sprintf("AbΓδЖщ%c", 'а'+i%32), Size: 3, Bold: i%2 == 0})
	}
	first := written(t, d, d)
	for range 5 {
		if !bytes.Equal(first, written(t, d, d)) {
			t.Fatal("the same drawing gave other bytes")
		}
	}
}

// The page sizes are those of ISO 216 and US custom: 210 × 297 mm is 595.28 ×
// 841.89 points, 8.5 × 11 in is 612 × 792.
func TestPDFPagesHaveTheirSize(t *testing.T) {
	pdf := string(written(t, draw.Drawing{W: 210, H: 297}, draw.Drawing{W: 215.9, H: 279.4}))
	for _, want := range []string{"595.28 841.89", "612.00 792.00"} {
		if !strings.Contains(pdf, want) {
			t.Errorf("no page box of %s points", want)
		}
	}
	if n := strings.Count(pdf, "/Type /Page\n"); n != 2 {
		t.Errorf("%d pages, want 2", n)
	}
}

// A 100 mm line is 283.4646 points long (72 points to the inch).
func TestPDFLineHasItsLength(t *testing.T) {
	d := draw.Drawing{W: 210, H: 297}
	d.Add(draw.Segment(20, 30, 120, 30, draw.Stroke{Width: 0.3, Colour: ink}))
	m := regexp.MustCompile(`([\d.]+) ([\d.]+) m ([\d.]+) ([\d.]+) l`).
		FindStringSubmatch(strings.ReplaceAll(contents(t, written(t, d)), "\n", " "))
	if m == nil {
		t.Fatal("no line in the page")
	}
	x1, x2 := number(t, m[1]), number(t, m[3])
	if got, want := x2-x1, 283.4646; math.Abs(got-want) > 0.02 {
		t.Errorf("the 100 mm line is %v points long, want %v", got, want)
	}
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// Every point of the curves that stand for an arc is its radius away from its
// centre: x² + y² = r², to the hundredth of a point that the page is written in.
func TestPDFArcStaysOnItsCircle(t *testing.T) {
	for _, sweep := range []float64{90, -200, 360, 17} {
		d := draw.Drawing{W: 210, H: 297}
		a := draw.Arc{Centre: draw.Point{X: 100, Y: 150}, Radius: 32, From: 30, Sweep: sweep, Stroke: draw.Stroke{Width: 0.2}}
		d.Add(a)
		curves := regexp.MustCompile(`([-\d.]+) ([-\d.]+) ([-\d.]+) ([-\d.]+) ([-\d.]+) ([-\d.]+) c`).
			FindAllStringSubmatch(contents(t, written(t, d)), -1)
		if want := int(math.Ceil(math.Abs(sweep) / 45)); len(curves) != want {
			t.Fatalf("sweep %v: %d curves, want %d", sweep, len(curves), want)
		}
		const k = 72 / 25.4
		from := a.At(a.From)
		for _, c := range curves {
			var p [8]float64
			p[0], p[1] = from.X*k, (297-from.Y)*k
			for i := range 6 {
				p[i+2] = number(t, c[i+1])
			}
			for u := 0.0; u <= 1; u += 0.125 {
				x, y := bezier(p, u)
				if r := math.Hypot(x/k-100, 297-y/k-150); math.Abs(r-32) > 0.006 {
					t.Errorf("sweep %v: a point of the curve is %v mm from the centre, want 32", sweep, r)
				}
			}
			from = draw.Point{X: p[6] / k, Y: 297 - p[7]/k}
		}
		if end := a.At(a.From + sweep); math.Hypot(end.X-from.X, end.Y-from.Y) > 0.006 {
			t.Errorf("sweep %v: the curve ends at %v, want %v", sweep, from, end)
		}
	}
}

func bezier(p [8]float64, u float64) (x, y float64) {
	v := 1 - u
	a, b, c, d := v*v*v, 3*v*v*u, 3*v*u*u, u*u*u
	return a*p[0] + b*p[2] + c*p[4] + d*p[6], a*p[1] + b*p[3] + c*p[5] + d*p[7]
}

func TestPDFTakesAnythingAsText(t *testing.T) {
	d := draw.Drawing{W: 100, H: 100, Name: "\xff\xfe"}
	for _, s := range []string{"", "\xff\xfe\xe0", "😀 rack", "line\nbreak", "(brackets)\\", "\x00\x1b", "日本", "é"} {
		d.Add(draw.Text{At: draw.Point{X: 5, Y: 5}, Text: s, Size: 3, Turn: 33, Align: draw.Right})
	}
	d.Add(draw.Text{Text: "no size"}, draw.Line{}, draw.Fill{}, draw.Arc{Radius: 3})
	if pdf := written(t, d); !bytes.HasPrefix(pdf, []byte("%PDF-")) {
		t.Error("not a PDF")
	}
}

type fullDisk struct{}

var errFull = errors.New("disk full")

func (fullDisk) Write([]byte) (int, error) { return 0, errFull }

func TestPDFTellsOfAFailedWrite(t *testing.T) {
	if err := draw.PDF(fullDisk{}, draw.About{}, draw.Drawing{W: 10, H: 10}); !errors.Is(err, errFull) {
		t.Errorf("got %v, want %v", err, errFull)
	}
}

// A dash of one page must not reach the next.
func TestPDFPagesStartAfresh(t *testing.T) {
	one, two := draw.Drawing{W: 50, H: 50}, draw.Drawing{W: 50, H: 50}
	one.Add(draw.Segment(1, 1, 9, 1, draw.Stroke{Width: 1, Dash: []float64{1, 1}}))
	two.Add(draw.Box(1, 1, 9, 9, draw.Colour{R: 255}, draw.Stroke{Width: 1}))
	text := contents(t, written(t, one, two))
	second := text[strings.Index(text, "[2.83 2.83] 0.00 d")+5:]
	if !strings.Contains(second, "[] 0.00 d") || !strings.Contains(second, "1.000 0.000 0.000 rg") {
		t.Errorf("the second page does not set its own dash and fill:\n%s", second[:min(len(second), 400)])
	}
}
