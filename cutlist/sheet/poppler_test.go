package sheet_test

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"tubewright/cutlist"
	"tubewright/cutlist/sheet"
)

// These tests read the PDF with poppler, another program's idea of what the
// document says and where.

func poppler(t *testing.T, l cutlist.List, paper sheet.Paper, name string, args ...string) []byte {
	t.Helper()
	path := filepath.Join(t.TempDir(), "sheets.pdf")
	var pdf bytes.Buffer
	if err := sheet.PDF(&pdf, l, sheet.Options{Paper: paper, Date: "1 May", Revision: "rev B"}); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, pdf.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(name, append(args, path, "-")...).Output()
	if err != nil {
		t.Fatalf("%s of poppler-utils is needed to read the PDF (bash cmd/test.sh installs it): %v", name, err)
	}
	return out
}

// numbersIn is every number of a JSON value, rounded to hundredths.
func numbersIn(v any, found map[int]string, where string) {
	switch v := v.(type) {
	case float64:
		found[int(math.Round(v*100))] = where
	case []any:
		for i, one := range v {
			numbersIn(one, found, fmt.Sprintf("%s[%d]", where, i))
		}
	case map[string]any:
		for key, one := range v {
			numbersIn(one, found, where+"."+key)
		}
	}
}

func TestPDFHoldsEveryNumberOfTheAnswer(t *testing.T) {
	for name, l := range everyList(t) {
		data, err := l.JSON()
		if err != nil {
			t.Fatal(err)
		}
		var answer any
		if err := json.Unmarshal(data, &answer); err != nil {
			t.Fatal(err)
		}
		want := map[int]string{}
		numbersIn(answer, want, "")
		printed := map[int]bool{}
		for _, word := range strings.FieldsFunc(string(poppler(t, l, sheet.A4, "pdftotext")), func(r rune) bool { return !strings.ContainsRune("-.0123456789", r) }) {
			if v, err := strconv.ParseFloat(strings.Trim(word, "."), 64); err == nil {
				printed[int(math.Round(v*100))] = true
			}
		}
		for v, where := range want {
			if !printed[v] {
				t.Errorf("%s: %v of %s is not in the PDF", name, float64(v)/100, where)
			}
		}
	}
}

// word is a word of a page as poppler sees it, in points.
type word struct {
	XMin float64 `xml:"xMin,attr"`
	YMin float64 `xml:"yMin,attr"`
	XMax float64 `xml:"xMax,attr"`
	YMax float64 `xml:"yMax,attr"`
	Text string  `xml:",chardata"`
}

type popplerPages struct {
	Pages []struct {
		Width  float64 `xml:"width,attr"`
		Height float64 `xml:"height,attr"`
		Words  []word  `xml:"word"`
	} `xml:"body>doc>page"`
}

// inkOf shrinks a word's box, which poppler makes as high as the font's lines,
// to where most letters have ink: a quarter off at the top and at the bottom,
// whichever way the word runs.
func inkOf(w word) word {
	if w.YMax-w.YMin > w.XMax-w.XMin && len([]rune(w.Text)) > 1 { // turned
		d := (w.XMax - w.XMin) / 4
		w.XMin, w.XMax = w.XMin+d, w.XMax-d
		return w
	}
	d := (w.YMax - w.YMin) / 4
	w.YMin, w.YMax = w.YMin+d, w.YMax-d
	return w
}

func TestPopplerSeesNoWordClippedOrCovered(t *testing.T) {
	const edge, slack = 4 / 25.4 * 72, 0.4 // points: 4 mm that printers leave white; a hairline
	for name, l := range everyList(t) {
		papers := []sheet.Paper{sheet.A4, sheet.Letter}
		if name != "stress" && name != "conservation-scanner" {
			papers = papers[:1] // TestNoTextLeavesThePageOrCoversAnother looks at all of them on both
		}
		for _, paper := range papers {
			var seen popplerPages
			if err := xml.Unmarshal(poppler(t, l, paper, "pdftotext", "-bbox"), &seen); err != nil {
				t.Fatal(err)
			}
			words := 0
			for n, p := range seen.Pages {
				words += len(p.Words)
				for i, a := range p.Words {
					a = inkOf(a)
					if a.XMin < edge || a.YMin < edge || a.XMax > p.Width-edge || a.YMax > p.Height-edge {
						t.Errorf("%s on %s, page %d: %q leaves the page", name, paper, n+1, a.Text)
					}
					for _, b := range p.Words[i+1:] {
						b = inkOf(b)
						if math.Min(a.XMax, b.XMax)-math.Max(a.XMin, b.XMin) > slack && math.Min(a.YMax, b.YMax)-math.Max(a.YMin, b.YMin) > slack {
							t.Errorf("%s on %s, page %d: %q and %q cover each other", name, paper, n+1, a.Text, b.Text)
						}
					}
				}
			}
			if words < 100 {
				t.Errorf("%s: poppler sees %d words", name, words)
			}
		}
	}
}
