package sheet_test

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/cutlist/sheet"
)

// scanned renders pages of a list's document with poppler and reads them back
// as grey pictures.
func scanned(t testing.TB, l cutlist.List, o sheet.Options, first, last, dpi int) (pages []*image.Gray) {
	t.Helper()
	dir := t.TempDir()
	path := filepath.Join(dir, "sheets.pdf")
	var pdf bytes.Buffer
	if err := sheet.PDF(&pdf, l, o); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, pdf.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	return rendered(t, path, first, last, dpi)
}

// rendered gives pages of a PDF as poppler shows them.
func rendered(t testing.TB, path string, first, last, dpi int) (pages []*image.Gray) {
	t.Helper()
	to := filepath.Join(filepath.Dir(path), "page")
	out, err := exec.Command("pdftoppm", "-gray", "-r", strconv.Itoa(dpi), "-f", strconv.Itoa(first), "-l", strconv.Itoa(last), path, to).CombinedOutput()
	if err != nil {
		t.Fatalf("pdftoppm (of poppler-utils, which the tests need): %v %s", err, out)
	}
	names, err := filepath.Glob(to + "*.pgm")
	if err != nil || len(names) != last-first+1 {
		t.Fatalf("poppler made %v (%v), want %d pages", names, err, last-first+1)
	}
	for _, name := range names {
		pages = append(pages, greyMap(t, name))
	}
	return pages
}

// greyMap reads a picture as pdftoppm writes it (Netpbm's P5).
func greyMap(t testing.TB, name string) *image.Gray {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	var w, h, most int
	if _, err := fmt.Sscanf(string(data[:min(40, len(data))]), "P5\n%d %d\n%d", &w, &h, &most); err != nil || most != 255 || len(data) < w*h {
		t.Fatalf("%s is no grey picture (%v)", name, err)
	}
	img := image.NewGray(image.Rect(0, 0, w, h))
	copy(img.Pix, data[len(data)-w*h:])
	return img
}

// flipped is a picture with x and y changed over.
func flipped(img *image.Gray) *image.Gray {
	size := img.Rect.Size()
	out := image.NewGray(image.Rect(0, 0, size.Y, size.X))
	for y := range size.Y {
		for x := range size.X {
			out.SetGray(y, x, img.GrayAt(x, y))
		}
	}
	return out
}

// dark is how much ink a pixel holds, 0 to 1.
func dark(c color.Gray) float64 { return 1 - float64(c.Y)/255 }

// barLength measures the bar whose line lies in rows between two heights, mm:
// from the middle of its first tick to that of its last, one mm to the side.
func barLength(t testing.TB, img *image.Gray, dpi int, from, to, side float64) float64 {
	t.Helper()
	px := float64(dpi) / 25.4
	base, longest := 0, 0
	for y := int(from * px); y < int(to*px); y++ {
		if n := longestRun(img, y); n > longest && float64(n) < 110*px { // rules are longer
			base, longest = y, n
		}
	}
	if mm := float64(longest) / px; mm < 90 {
		t.Fatalf("the longest line between %v and %v mm is %v mm", from, to, mm)
	}
	y := base + int(math.Round(side*px))
	var middles []float64
	sum, at := 0.0, 0.0
	for x := range img.Rect.Dx() {
		ink := dark(img.GrayAt(x, y))
		if ink < 0.04 {
			if sum > 0 {
				middles = append(middles, at/sum)
			}
			sum, at = 0, 0
			continue
		}
		sum, at = sum+ink, at+ink*(float64(x)+0.5)
	}
	return measured(t, middles, px)
}

// measured is from the first of eleven ticks to the last; what else is in the
// row is farther than a tick from its neighbours.
func measured(t testing.TB, middles []float64, px float64) float64 {
	t.Helper()
	for i := 0; i+10 < len(middles); i++ {
		even := true
		for k := i; k < i+10; k++ {
			even = even && math.Abs((middles[k+1]-middles[k])/px-10) < 0.5
		}
		if even {
			return (middles[i+10] - middles[i]) / px
		}
	}
	t.Fatalf("no eleven ticks 10 mm apart at %.1f", middles)
	return 0
}

func longestRun(img *image.Gray, y int) (most int) {
	n := 0
	for x := range img.Rect.Dx() {
		if dark(img.GrayAt(x, y)) > 0.5 {
			n++
			most = max(most, n)
		} else {
			n = 0
		}
	}
	return most
}

// pageNumber is the first page whose title starts so, from 1.
func pageNumber(t testing.TB, pages []draw.Drawing, title string) int {
	t.Helper()
	for i, p := range pages {
		if len(pagesOf([]draw.Drawing{p}, title)) > 0 {
			return i + 1
		}
	}
	t.Fatalf("no page %q", title)
	return 0
}

// Rendered at 300 dots per inch a pixel is 0.085 mm; the middles of the ticks
// are known to a few hundredths.
func TestScaleBarsMeasure100mmOnPaper(t *testing.T) {
	const dpi = 300
	l := list(t, smallPlan())
	for _, paper := range []sheet.Paper{sheet.A4, sheet.Letter} {
		o := sheet.Options{Paper: paper}
		pages := sheet.Pages(l, o)
		n := pageNumber(t, pages, "Full-size templates")
		img := scanned(t, l, o, n, n, dpi)[0]
		level := barLength(t, img, dpi, 25, 45, -1)
		upright := barLength(t, flipped(img), dpi, 5, 11, 1)
		cut := pageNumber(t, pages, "Cut list")
		first := barLength(t, scanned(t, l, o, cut, cut, dpi)[0], dpi, 22, 45, -1)
		for what, got := range map[string]float64{"level bar": level, "upright bar": upright, "cut list's bar": first} {
			t.Logf("%s: %s measures %.3f mm", paper, what, got)
			if math.Abs(got-100) > 0.1 {
				t.Errorf("%s: the %s measures %.3f mm, want 100.0 within 0.1", paper, what, got)
			}
		}
	}
}

// Every page that is used at full size has both bars.
func TestEveryFullSizePageHasBothBars(t *testing.T) {
	for name, l := range everyList(t) {
		pages := sheet.Pages(l, sheet.Options{})
		found := append(pagesOf(pages, "Full-size templates"), pagesOf(pages, "Wrap strips")...)
		if want := len(l.Tubes) > 0; want != (len(found) > 0) {
			t.Errorf("%s: %d full-size pages", name, len(found))
		}
		for _, p := range found {
			level, upright := 0, 0
			for _, it := range p.Items {
				if l, ok := it.(draw.Line); ok && len(l.Points) == 2 && l.Stroke.Width == 0.3 {
					d := l.Points[1].Minus(l.Points[0])
					if near(d.X, 100) && d.Y == 0 {
						level++
					}
					if near(d.Y, 100) && d.X == 0 {
						upright++
					}
				}
			}
			if level != 1 || upright != 1 {
				t.Errorf("%s: a full-size page has %d level and %d upright bars of 100 mm, want 1 and 1", name, level, upright)
			}
			if !strings.Contains(run([]draw.Drawing{p}), "Measureme:100mm") {
				t.Errorf("%s: a full-size page does not say what its bar is for", name)
			}
		}
	}
}

// What a printer makes of 100 mm, times the percentage printed for it, is 100.
func TestCorrectionTableMakesTheBarRight(t *testing.T) {
	inches := smallPlan()
	inches.Units = "in"
	l := list(t, inches)
	pages := pagesOf(sheet.Pages(l, sheet.Options{}), "Full-size templates")
	rows := map[int][]float64{}
	for _, p := range texts(pages[0]) {
		if v, err := strconv.ParseFloat(p.text, 64); err == nil && regexp.MustCompile(`^[\d.]+$`).MatchString(p.text) {
			y := int(math.Round(p.hi.Y * 2))
			rows[y] = append(rows[y], v)
		}
	}
	var head, inch, percent []float64
	for _, row := range rows {
		switch {
		case len(row) == 13 && row[0] == 97:
			head = row
		case len(row) == 13 && row[0] < 4:
			inch = row
		case len(row) == 13:
			percent = row
		}
	}
	if len(head) != 13 || len(inch) != 13 || len(percent) != 13 {
		t.Fatalf("rows of 13 numbers: head %v, inches %v, percent %v", head, inch, percent)
	}
	for i, mm := range head {
		if math.Abs(mm*percent[i]/100-100) > 0.06 || math.Abs(inch[i]*25.4-mm) > 0.02 {
			t.Errorf("a bar of %v mm (%v in) at %v %% comes to %v mm", mm, inch[i], percent[i], mm*percent[i]/100)
		}
	}
}
