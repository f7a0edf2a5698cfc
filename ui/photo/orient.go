package photo

import (
	"encoding/binary"
	"image"
)

// A camera that was held on its side writes the picture as its sensor saw it
// and a number from 1 to 8 that says how to turn it (tag 0x0112 of Exif 2.3,
// JEITA CP-3451C, table 4; the layout of the segment from memory).
const (
	orientationTag = 0x0112
	upright        = 1
)

// orientation is the number of a JPEG; 1 where there is none.
func orientation(data []byte) int {
	if len(data) < 4 || data[0] != 0xFF || data[1] != 0xD8 {
		return upright
	}
	for at := 2; at+4 <= len(data) && data[at] == 0xFF; {
		marker, size := data[at+1], int(binary.BigEndian.Uint16(data[at+2:]))
		if size < 2 || at+2+size > len(data) || marker == 0xDA { // the picture itself begins
			return upright
		}
		if body := data[at+4 : at+2+size]; marker == 0xE1 && len(body) > 6 && string(body[:6]) == "Exif\x00\x00" {
			return tagIn(body[6:])
		}
		at += 2 + size
	}
	return upright
}

// tagIn looks for the number in the first directory of a TIFF header.
func tagIn(tiff []byte) int {
	if len(tiff) < 8 {
		return upright
	}
	var order binary.ByteOrder = binary.LittleEndian
	if string(tiff[:2]) == "MM" {
		order = binary.BigEndian
	}
	at := int(order.Uint32(tiff[4:]))
	if at < 8 || at+2 > len(tiff) {
		return upright
	}
	entries := int(order.Uint16(tiff[at:]))
	for i := range entries {
		e := at + 2 + 12*i
		if e+12 > len(tiff) {
			return upright
		}
		if order.Uint16(tiff[e:]) == orientationTag {
			if v := int(order.Uint16(tiff[e+8:])); v >= 1 && v <= 8 {
				return v
			}
			return upright
		}
	}
	return upright
}

// swaps reports whether width and height change places.
func swaps(o int) bool { return o >= 5 }

// turned is a picture turned and mirrored as its number says.
func turned(img *image.RGBA, o int) *image.RGBA {
	if o == upright {
		return img
	}
	w, h := img.Rect.Dx(), img.Rect.Dy()
	ow, oh := w, h
	if swaps(o) {
		ow, oh = h, w
	}
	out := image.NewRGBA(image.Rect(0, 0, ow, oh))
	for y := range h {
		for x := range w {
			tx, ty := placed(o, x, y, w, h)
			copy(out.Pix[out.PixOffset(tx, ty):][:4], img.Pix[img.PixOffset(x, y):][:4])
		}
	}
	return out
}

// placed is where a pixel goes.
func placed(o, x, y, w, h int) (int, int) {
	switch o {
	case 2:
		return w - 1 - x, y
	case 3:
		return w - 1 - x, h - 1 - y
	case 4:
		return x, h - 1 - y
	case 5:
		return y, x
	case 6:
		return h - 1 - y, x
	case 7:
		return h - 1 - y, w - 1 - x
	case 8:
		return y, w - 1 - x
	}
	return x, y
}
