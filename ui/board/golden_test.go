package board

import (
	"flag"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"testing"
)

var update = flag.Bool("update", false, "write the pictures as they are now into testdata")

// Two pictures are the same when hardly a pixel differs by more than what a
// fused multiply-add or another font rasteriser may do to it.
const (
	pixelTolerance = 24     // of 255, in one channel
	partTolerance  = 0.0004 // of all pixels
)

// TestPicturesLookAsAccepted compares whole pictures with those in testdata. To
// accept new ones: go test ./ui/board -run Pictures -update, then look at each
// of them before the commit.
func TestPicturesLookAsAccepted(t *testing.T) {
	tests := []struct {
		name  string
		look  Look
		style Style
		show  Show
	}{
		{"side-light", Side, Light(), Show{Selection: []Target{PartTarget("pump")}}},
		{"above-dark", Above, Dark(), Show{Selection: []Target{RunTarget("pump to card")}}},
		{"turntable-light", Turntable, Light(), Show{Hover: PartTarget("supply")}},
		{"turntable-dark", Turntable, Dark(), Show{Selection: []Target{FindingTarget(0)}}},
	}
	s := demoScene(t)
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			c := NewCamera(tt.look, s.Case, 640, 460)
			c.Fit(s, 640, 460)
			show := tt.show
			show.Words, show.Rulers, show.Quality, show.Caption = true, true, Fine, tt.look.String()
			img, p := picture(640, 460), &Painter{}
			p.Render(img, s, c, &tt.style, show)
			compare(t, filepath.Join("testdata", tt.name+".png"), img)
		})
	}
}

func compare(t *testing.T, path string, got *image.RGBA) {
	t.Helper()
	if *update {
		write(t, path, got)
		return
	}
	want := read(t, path)
	if want.Bounds() != got.Bounds() {
		t.Fatalf("%s is %v, the picture %v", path, want.Bounds(), got.Bounds())
	}
	off := differing(got, want)
	if part := float64(off) / float64(got.Rect.Dx()*got.Rect.Dy()); part > partTolerance {
		failed := filepath.Join(t.TempDir(), filepath.Base(path))
		write(t, failed, got)
		t.Errorf("%s: %d pixels differ; accept with go test ./ui/board -run Pictures -update, then look at it", path, off)
	}
}

// differing counts the pixels that are off by more than the tolerance.
func differing(a *image.RGBA, b image.Image) int {
	n := 0
	for y := range a.Rect.Dy() {
		for x := range a.Rect.Dx() {
			r, g, bl, _ := b.At(x, y).RGBA()
			p := a.RGBAAt(x, y)
			if far(p.R, r) || far(p.G, g) || far(p.B, bl) {
				n++
			}
		}
	}
	return n
}

func far(a uint8, b uint32) bool {
	d := int(a) - int(b>>8)
	return d > pixelTolerance || d < -pixelTolerance
}

func write(t *testing.T, path string, img image.Image) {
	t.Helper()
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := png.Encode(f, img); err != nil {
		t.Fatal(err)
	}
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
}

func read(t *testing.T, path string) image.Image {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = f.Close() }()
	img, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	return img
}
