package sheet_test

import (
	"bytes"
	"compress/zlib"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/cutlist/sheet"
)

// pointsPerMM is how a PDF counts: 72 points to the inch.
const pointsPerMM = 72 / 25.4

// curve is a cubic curve of a path in mm from the page's upper left corner; a
// line is one too.
type curve [4]draw.Point

func (c curve) at(u float64) draw.Point {
	v := 1 - u
	return c[0].Times(v * v * v).Plus(c[1].Times(3 * v * v * u)).Plus(c[2].Times(3 * v * u * u)).Plus(c[3].Times(u * u * u))
}

func straightCurve(a, b draw.Point) curve {
	return curve{a, a.Plus(b.Minus(a).Times(1.0 / 3)), a.Plus(b.Minus(a).Times(2.0 / 3)), b}
}

// stroked is a path of a page that is drawn as a line, and how.
type stroked struct {
	width  float64 // mm
	dash   string  // as the page says it, in points
	curves []curve
}

// pdfPages reads the lines of each page from the bytes of a document, by the
// operators of ISO 32000-1, 8.4 and 8.5.
func pdfPages(t testing.TB, l cutlist.List, o sheet.Options) (pages [][]stroked) {
	t.Helper()
	var out bytes.Buffer
	if err := sheet.PDF(&out, l, o); err != nil {
		t.Fatal(err)
	}
	_, height := o.Paper.Size()
	for _, part := range bytes.Split(out.Bytes(), []byte("stream\n"))[1:] {
		r, err := zlib.NewReader(bytes.NewReader(part))
		if err != nil {
			continue // not packed, or what follows "endstream"
		}
		text, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Contains(text, []byte(" BT")) && !bytes.HasPrefix(text, []byte("BT")) && !bytes.Contains(text, []byte("\nBT")) {
			continue // a font, not a page
		}
		pages = append(pages, strokedIn(string(text), height))
	}
	return pages
}

// strokedIn reads the operators of one page.
func strokedIn(text string, height float64) (all []stroked) {
	var args []float64
	var now stroked
	var at draw.Point
	place := func(i int) draw.Point { return draw.Point{X: args[i] / pointsPerMM, Y: height - args[i+1]/pointsPerMM} }
	for _, line := range strings.Split(text, "\n") {
		if i := strings.Index(line, "] "); strings.HasPrefix(line, "[") && strings.HasSuffix(line, " d") {
			now.dash = line[1:i]
			continue
		}
		if strings.Contains(line, "BT") {
			continue
		}
		for _, word := range strings.Fields(line) {
			if v, err := strconv.ParseFloat(word, 64); err == nil {
				args = append(args, v)
				continue
			}
			switch word {
			case "w":
				now.width = args[0] / pointsPerMM
			case "m":
				at = place(0)
			case "l":
				now.curves = append(now.curves, straightCurve(at, place(0)))
				at = place(0)
			case "c":
				now.curves = append(now.curves, curve{at, place(0), place(2), place(4)})
				at = place(4)
			case "S":
				all = append(all, now)
				now.curves = nil
			case "f", "B", "b", "n":
				now.curves = nil
			}
			args = args[:0]
		}
	}
	return all
}

// The pattern of centrelines, 6 1 1 1 mm, as a PDF says it in points.
const centreDash = "17.01 2.83 2.83 2.83"

// centrelines is the pieces of centrelines among a page's lines.
func centrelines(page []stroked) (all []stroked) {
	for _, s := range page {
		if s.dash == centreDash && math.Abs(s.width-0.18) < 0.01 {
			all = append(all, s)
		}
	}
	return all
}
