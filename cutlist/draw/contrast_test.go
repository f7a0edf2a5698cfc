package draw

import (
	"math"
	"testing"
)

// Black on white is 21 by the formula; #767676 on white is the teaching value for
// the darkest grey that just passes.
func TestContrast(t *testing.T) {
	white := Colour{R: 255, G: 255, B: 255}
	for _, row := range []struct {
		c    Colour
		want float64
	}{{Colour{}, 21}, {white, 1}, {Colour{R: 0x76, G: 0x76, B: 0x76}, 4.54}, {Colour{G: 0x72, B: 0xB2}, 5.19}} {
		if got := Contrast(row.c, white); math.Abs(got-row.want) > 0.01 || got != Contrast(white, row.c) {
			t.Errorf("%v on white has %.3f, want %.2f", row.c, got, row.want)
		}
	}
}
