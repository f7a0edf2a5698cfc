//go:build window

package ui

import (
	"flag"
	"image"
	_ "image/png" // the README's picture is one
	"os"
	"path/filepath"
	"testing"
	"time"
)

var update = flag.Bool("update", false, "take the README's picture anew: go test -tags window ./ui -run WindowInTheReadme -update, then look at it")

const (
	readmePicture = "../assets/window.png"
	// otherInk is how far a channel may differ, of 255, before a pixel counts as
	// another: the edges of letters and lines hang on the painter's rounding.
	otherInk = 48
	// othersAllowed is the share of other pixels that still is the same window.
	// A moved panel or a changed row is far beyond it; a caret or a tooltip is not.
	othersAllowed = 0.02
)

func pictureIn(t testing.TB, path string) image.Image {
	t.Helper()
	file, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close() //nolint:errcheck // only read from
	img, _, err := image.Decode(file)
	if err != nil {
		t.Fatal(err)
	}
	return img
}

// others gives the share of pixels in which two pictures of one size differ.
func others(a, b image.Image) float64 {
	bounds, n := a.Bounds(), 0
	for y := bounds.Min.Y; y < bounds.Max.Y; y++ {
		for x := bounds.Min.X; x < bounds.Max.X; x++ {
			r1, g1, b1, _ := a.At(x, y).RGBA()
			r2, g2, b2, _ := b.At(x, y).RGBA()
			if far(r1, r2) || far(g1, g2) || far(b1, b2) {
				n++
			}
		}
	}
	return float64(n) / float64(bounds.Dx()*bounds.Dy())
}

func far(a, b uint32) bool {
	return max(a, b)>>8-min(a, b)>>8 > otherInk
}

// settledPicture takes pictures of the window until two in a row are alike: the
// fine picture comes some time after the hand rests.
func (s *stage) settledPicture(path string) image.Image {
	s.t.Helper()
	var last image.Image
	for begun := time.Now(); time.Since(begun) < patience; time.Sleep(time.Second) {
		s.run("timeout", "20", "import", "-window", s.window, "-strip", path)
		now := pictureIn(s.t, path)
		if last != nil && last.Bounds() == now.Bounds() && others(now, last) == 0 {
			return now
		}
		last = now
	}
	s.t.Fatal("the window never came to rest")
	return nil
}

// The README shows the window on the first demo; the picture has to stay true.
func TestWindowInTheReadme(t *testing.T) {
	s := newStage(t, "--theme", "light", "--demo", "conservation-scanner")
	s.until("the demo's cuts", atRest)
	now := filepath.Join(t.TempDir(), "now.png")
	if *update {
		now = readmePicture
	}
	a := s.settledPicture(now)
	if b := pictureIn(t, readmePicture); a.Bounds() != b.Bounds() {
		t.Errorf("the window is %v, its picture in the README %v", a.Bounds(), b.Bounds())
	} else if share := others(a, b); share > othersAllowed {
		t.Errorf("%.1f %% of the window differs from its picture in the README; take it anew with -update and look at it", 100*share)
	}
}
