package sheet_test

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"tubewright/cutlist/draw"
	"tubewright/cutlist/sheet"
)

// browserName names the variable that says where Chromium is: cmd/test.sh sets
// it. Without it the pictures are not compared, and the test says so; where it is
// set, or on a machine that says it is for continuous integration, Chromium must
// be there.
const browserName = "TUBEWRIGHT_CHROMIUM"

// browserDots is how fine the pictures are, dots per inch: twice a browser's 96.
const browserDots = 192

// inBrowser gives an SVG as Chromium shows it.
func inBrowser(t testing.TB, browser string, d draw.Drawing, about draw.About) image.Image {
	t.Helper()
	dir := t.TempDir()
	var svg bytes.Buffer
	if err := draw.SVG(&svg, about, d); err != nil {
		t.Fatal(err)
	}
	from, to := filepath.Join(dir, "drawing.svg"), filepath.Join(dir, "shown.png")
	if err := os.WriteFile(from, svg.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	w, h := math.Ceil(d.W*96/25.4), math.Ceil(d.H*96/25.4)
	out, err := exec.Command(browser, "--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", "--force-device-scale-factor=2",
		"--user-data-dir="+dir, fmt.Sprintf("--window-size=%.0f,%.0f", w, h), "--screenshot="+to, "file://"+from).CombinedOutput()
	if err != nil {
		t.Fatalf("%s=%s: %v\n%s", browserName, browser, err, out)
	}
	f, err := os.Open(to)
	if err != nil {
		t.Fatalf("%s=%s made no picture: %v\n%s", browserName, browser, err, out)
	}
	defer func() { _ = f.Close() }() // only read
	img, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	return img
}

// inPDF gives the same drawing as a page of a PDF, as poppler shows it.
func inPDF(t testing.TB, d draw.Drawing) *image.Gray {
	t.Helper()
	path := filepath.Join(t.TempDir(), "drawing.pdf")
	var pdf bytes.Buffer
	if err := draw.PDF(&pdf, draw.About{}, d); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, pdf.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	return rendered(t, path, 1, 1, browserDots)[0]
}

// unlike is the part of two pictures, in percent, where they differ by more than
// a third of black in the mean over 5 × 5 dots, which is what smoothing of edges
// leaves alone, and how much of the second is not white.
func unlike(a, b image.Image) (differs, inked float64) {
	size := a.Bounds().Size()
	w, h := min(size.X, b.Bounds().Dx()), min(size.Y, b.Bounds().Dy())
	grey := func(img image.Image, x, y int) float64 {
		return float64(color.GrayModel.Convert(img.At(x, y)).(color.Gray).Y) / 255
	}
	n := 0.0
	for y := 2; y+2 < h; y += 5 {
		for x := 2; x+2 < w; x += 5 {
			d, ink := 0.0, 0.0
			for k := range 25 {
				p, q := grey(a, x+k%5-2, y+k/5-2), grey(b, x+k%5-2, y+k/5-2)
				d, ink = d+p-q, ink+1-q
			}
			n++
			if math.Abs(d/25) > 1.0/3 {
				differs++
			}
			if ink > 0 {
				inked++
			}
		}
	}
	return 100 * differs / n, 100 * inked / n
}

// A drawing looks the same as an SVG in a browser and as a page of a PDF, with
// Latin, Greek and Cyrillic letters, in shaded looks and in line drawings.
func TestSVGInABrowserEqualsThePDF(t *testing.T) {
	browser := os.Getenv(browserName)
	if browser == "" {
		if os.Getenv("CI") != "" {
			t.Fatalf("%s is not set: set it to where Chromium is", browserName)
		}
		t.Logf("NOT CHECKED: %s is not set, so no SVG was shown in a browser", browserName)
		return
	}
	long, museum := everyList(t)["long"], everyList(t)["conservation-scanner"]
	side, about := sheet.LookPicture(long, sheet.Side, sheet.Options{})
	corner, aboutCorner := sheet.LookPicture(museum, sheet.Parallel, sheet.Options{})
	template, aboutTemplate := sheet.TemplatePicture(museum, museum.Tubes[1], 1)
	var last image.Image
	for _, one := range []struct {
		name  string
		d     draw.Drawing
		about draw.About
	}{{"side look", side, about}, {"parallel view", corner, aboutCorner}, {"template", template, aboutTemplate}} {
		shown, printed := inBrowser(t, browser, one.d, one.about), inPDF(t, one.d)
		if a, b := shown.Bounds().Size(), printed.Bounds().Size(); math.Abs(float64(a.X-b.X)) > 3 || math.Abs(float64(a.Y-b.Y)) > 3 {
			t.Errorf("%s: the browser shows %v dots, the PDF %v", one.name, a, b)
		}
		differs, inked := unlike(shown, printed)
		t.Logf("%s: %.3f %% of the picture differs; %.1f %% is not white", one.name, differs, inked)
		if differs > 0.05 || inked < 1 {
			t.Errorf("%s: %.3f %% of the picture differs, want 0.05 at most; %.1f %% is not white, want 1 at least", one.name, differs, inked)
		}
		if last != nil {
			if other, _ := unlike(last, printed); other < 1 {
				t.Errorf("%s: another drawing differs by %.3f %% only: the comparison sees nothing", one.name, other)
			}
		}
		last = shown
	}
}
