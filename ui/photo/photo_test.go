package photo_test

import (
	"bytes"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tubewright/ui/photo"
)

// corners is a picture 40 by 20 whose quarters are red, green, blue and white,
// from the upper left, row by row.
func corners() *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, 40, 20))
	for y := range 20 {
		for x := range 40 {
			img.Set(x, y, [2][2]color.RGBA{{red, green}, {blue, white}}[y/10][x/20])
		}
	}
	return img
}

var (
	red   = color.RGBA{255, 0, 0, 255}
	green = color.RGBA{0, 255, 0, 255}
	blue  = color.RGBA{0, 0, 255, 255}
	white = color.RGBA{255, 255, 255, 255}
)

// withOrientation puts a camera's note of how it was held into a JPEG.
func withOrientation(t *testing.T, o uint16, order binary.AppendByteOrder, mark string) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, corners(), &jpeg.Options{Quality: 100}); err != nil {
		t.Fatal(err)
	}
	tiff := []byte(mark)
	tiff = order.AppendUint16(tiff, 42)
	tiff = order.AppendUint32(tiff, 8)
	tiff = order.AppendUint16(tiff, 2) // entries
	for _, e := range [][2]uint16{{0x0100, 7}, {0x0112, o}} {
		tiff = order.AppendUint16(tiff, e[0])
		tiff = order.AppendUint16(tiff, 3) // short
		tiff = order.AppendUint32(tiff, 1)
		tiff = order.AppendUint16(tiff, e[1])
		tiff = order.AppendUint16(tiff, 0)
	}
	tiff = order.AppendUint32(tiff, 0)
	seg := append([]byte("Exif\x00\x00"), tiff...)
	out := append([]byte{}, b.Bytes()[:2]...)
	out = append(out, 0xFF, 0xE1)
	out = binary.BigEndian.AppendUint16(out, uint16(len(seg)+2))
	return append(append(out, seg...), b.Bytes()[2:]...)
}

// What stands in the upper left corner once the picture is upright. Number 6 is
// a camera turned a quarter to the right: its left edge becomes the top.
func TestPicturesStandUpright(t *testing.T) {
	wants := map[uint16][2]color.RGBA{ // upper left, upper right
		1: {red, green}, 2: {green, red}, 3: {white, blue}, 4: {blue, white},
		5: {red, blue}, 6: {blue, red}, 7: {white, green}, 8: {green, white},
		9: {red, green}, 0: {red, green},
	}
	for o, want := range wants {
		for mark, order := range map[string]binary.AppendByteOrder{"II": binary.LittleEndian, "MM": binary.BigEndian} {
			p, err := photo.Decode("a.jpg", withOrientation(t, o, order, mark))
			if err != nil {
				t.Fatal(err)
			}
			w, h := 40, 20
			if o >= 5 && o <= 8 {
				w, h = 20, 40
			}
			if p.W != w || p.H != h || p.Image.Rect.Dx() != w {
				t.Errorf("number %d: %d by %d, want %d by %d", o, p.W, p.H, w, h)
			}
			for i, at := range [2]image.Point{{w / 4, h / 4}, {3 * w / 4, h / 4}} {
				if got := p.Image.RGBAAt(at.X, at.Y); !near(got, want[i]) {
					t.Errorf("number %d, %s: corner %d is %v, want %v", o, mark, i, got, want[i])
				}
			}
		}
	}
}

func near(a, b color.RGBA) bool {
	d := func(x, y uint8) bool { return max(x, y)-min(x, y) < 12 } // what JPEG does to a colour
	return d(a.R, b.R) && d(a.G, b.G) && d(a.B, b.B)
}

// pngOf is a PNG that says it has so many pixels and holds none.
func pngOf(w, h uint32) []byte {
	out := []byte("\x89PNG\r\n\x1a\n")
	head := binary.BigEndian.AppendUint32([]byte("IHDR"), w)
	head = append(binary.BigEndian.AppendUint32(head, h), 8, 2, 0, 0, 0)
	out = binary.BigEndian.AppendUint32(out, 13)
	out = append(out, head...)
	return binary.BigEndian.AppendUint32(out, crc32.ChecksumIEEE(head))
}

func TestWhatIsNoPicture(t *testing.T) {
	var large *photo.TooLargeError
	if _, err := photo.Decode("bomb.png", pngOf(60000, 60000)); !errors.As(err, &large) || !strings.Contains(err.Error(), "60000 by 60000") {
		t.Errorf("a bomb gives %v, want a TooLargeError", err)
	}
	var bad *photo.FormatError
	for name, data := range map[string][]byte{"text.png": []byte("hello"), "cut.png": pngOf(10, 10), "empty.jpg": nil} {
		if _, err := photo.Decode(name, data); !errors.As(err, &bad) || !strings.Contains(err.Error(), name) {
			t.Errorf("%s gives %v, want a FormatError with its name", name, err)
		}
	}
	if _, err := photo.Decode("a.gif", []byte("GIF89a")); !errors.Is(err, image.ErrFormat) || !strings.Contains(err.Error(), "neither PNG nor JPEG") {
		t.Errorf("a GIF gives %v", err)
	}
	if _, err := photo.Load(filepath.Join(t.TempDir(), "gone.png")); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("a missing file gives %v", err)
	}
}

// A picture of 12 million pixels is kept at a quarter of them or less.
func TestLargePicturesAreKeptSmall(t *testing.T) {
	img := image.NewGray(image.Rect(0, 0, 4000, 3001))
	for i := range img.Pix {
		img.Pix[i] = 90
	}
	path := filepath.Join(t.TempDir(), "large.png")
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := errors.Join((&png.Encoder{CompressionLevel: png.BestSpeed}).Encode(f, img), f.Close()); err != nil {
		t.Fatal(err)
	}
	p, err := photo.Load(path)
	if err != nil || p.W != 4000 || p.H != 3001 || p.Image.Rect.Dx()*p.Image.Rect.Dy() > 4_000_000 {
		t.Fatalf("kept is %v of %d by %d, %v", p.Image.Rect, p.W, p.H, err)
	}
	if got := p.Image.RGBAAt(900, 700); got != (color.RGBA{90, 90, 90, 255}) {
		t.Errorf("its grey is %v", got)
	}
}

// What is clear is shown on white.
func TestClearPicturesStandOnWhite(t *testing.T) {
	var b bytes.Buffer
	if err := png.Encode(&b, image.NewNRGBA(image.Rect(0, 0, 3, 3))); err != nil {
		t.Fatal(err)
	}
	p, err := photo.Decode("clear.png", b.Bytes())
	if err != nil || p.Image.RGBAAt(1, 1) != white {
		t.Errorf("a clear pixel is %v (%v)", p.Image.RGBAAt(1, 1), err)
	}
}

func FuzzDecode(f *testing.F) {
	f.Add([]byte("\xff\xd8\xff\xe1\x00\x10Exif\x00\x00MM\x00*\x00\x00\x00\x08"))
	f.Add(pngOf(3, 3))
	f.Fuzz(func(t *testing.T, data []byte) {
		if p, err := photo.Decode("x", data); err == nil && (p.W <= 0 || p.Image == nil) {
			t.Errorf("a picture of %d by %d", p.W, p.H)
		}
	})
}
