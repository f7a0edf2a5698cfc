// Package photo reads pictures to lay under a drawing: PNG or JPEG, upright as
// the camera held it, and no larger in memory than a screen has use for.
package photo

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	_ "image/jpeg" // the two kinds of picture that are read
	_ "image/png"
	"io"
	"os"
	"path/filepath"

	"golang.org/x/image/draw"
)

const (
	// MostPixels is how many pixels a picture may have: what the largest common
	// cameras give. A file says in a few bytes that it has more.
	MostPixels = 64_000_000
	// MostBytes is how long a file may be.
	MostBytes = 64 << 20
	// keptPixels is what is kept of it: more than a large screen shows.
	keptPixels = 4_000_000
)

// Photo is a picture as it is shown. W and H are the pixels of its file, once
// it stands upright; Image may have fewer.
type Photo struct {
	Image *image.RGBA
	W, H  int
}

// TooLargeError says that a picture has more pixels or bytes than are read.
type TooLargeError struct {
	Name        string
	W, H        int // pixels; 0: the file itself is too long
	Most, Bytes int
}

func (e *TooLargeError) Error() string {
	if e.W == 0 {
		return fmt.Sprintf("%s is longer than %d MB; save a smaller copy of it", e.Name, e.Bytes>>20)
	}
	return fmt.Sprintf("%s has %d by %d pixels, more than the %d million that are read; save a smaller copy of it", e.Name, e.W, e.H, e.Most/1_000_000)
}

// FormatError says that a file is no picture that can be read.
type FormatError struct {
	Name string
	Err  error
}

func (e *FormatError) Error() string {
	if errors.Is(e.Err, image.ErrFormat) {
		return e.Name + " is neither PNG nor JPEG; save it as one of them"
	}
	return fmt.Sprintf("%s cannot be read as a picture (%v); save it anew as PNG or JPEG", e.Name, e.Err)
}

func (e *FormatError) Unwrap() error { return e.Err }

// Load reads a picture. Errors are those of the file, a *[TooLargeError] or a
// *[FormatError].
func Load(path string) (*Photo, error) {
	data, err := readFile(path)
	if err != nil {
		return nil, err
	}
	return Decode(filepath.Base(path), data)
}

func readFile(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close() //nolint:errcheck // only read from: nothing to lose
	data, err := io.ReadAll(io.LimitReader(f, MostBytes+1))
	if err == nil && len(data) > MostBytes {
		err = &TooLargeError{Name: filepath.Base(path), Bytes: MostBytes}
	}
	return data, err
}

// Decode reads a picture from the bytes of a file called name.
func Decode(name string, data []byte) (*Photo, error) {
	c, _, err := image.DecodeConfig(bytes.NewReader(data))
	if err != nil {
		return nil, &FormatError{name, err}
	}
	if c.Width <= 0 || c.Height <= 0 || c.Width > MostPixels/c.Height {
		return nil, &TooLargeError{Name: name, W: c.Width, H: c.Height, Most: MostPixels}
	}
	img, _, err := image.Decode(bytes.NewReader(data))
	if err != nil {
		return nil, &FormatError{name, err}
	}
	upright := turned(shrunk(img), orientation(data))
	p := &Photo{Image: upright, W: c.Width, H: c.Height}
	if swaps(orientation(data)) {
		p.W, p.H = p.H, p.W
	}
	return p, nil
}

// shrunk is a picture with no more pixels than are kept, on white where it is
// clear.
func shrunk(img image.Image) *image.RGBA {
	size := img.Bounds().Size()
	w, h := size.X, size.Y
	for w*h > keptPixels {
		w, h = (w+1)/2, (h+1)/2
	}
	out := image.NewRGBA(image.Rect(0, 0, w, h))
	draw.Draw(out, out.Rect, image.White, image.Point{}, draw.Src)
	draw.ApproxBiLinear.Scale(out, out.Rect, img, img.Bounds(), draw.Over, nil)
	return out
}
