package board

import (
	"fmt"
	"image/color"
	"math"
	"testing"
)

// vision is a matrix that shows how linear RGB looks to a person without one
// kind of cone: Machado, Oliveira and Fernandes, "A physiologically-based model
// for simulation of color vision deficiency", IEEE TVCG 15 (2009), severity 1.0,
// the numbers of the authors' table as remembered; each row sums to 1, which keeps grey
// grey and is checked.
type vision struct {
	name string
	m    [3][3]float64
}

func visions() []vision {
	return []vision{
		{"usual", [3][3]float64{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}},
		{"protanopia", [3][3]float64{{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}},
		{"deuteranopia", [3][3]float64{{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}},
		{"tritanopia", [3][3]float64{{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}},
	}
}

// seen gives a colour as the eye of a vision has it, in CIE L*a*b* (CIE 15, D65,
// with the sRGB primaries of IEC 61966-2-1).
func (v vision) seen(c color.RGBA) [3]float64 {
	lin := [3]float64{linear(c.R), linear(c.G), linear(c.B)}
	var rgb [3]float64
	for i := range rgb {
		for k := range lin {
			rgb[i] += v.m[i][k] * lin[k]
		}
		rgb[i] = min(max(rgb[i], 0), 1)
	}
	x := (0.4124*rgb[0] + 0.3576*rgb[1] + 0.1805*rgb[2]) / 0.95047
	y := 0.2126*rgb[0] + 0.7152*rgb[1] + 0.0722*rgb[2]
	z := (0.0193*rgb[0] + 0.1192*rgb[1] + 0.9505*rgb[2]) / 1.08883
	f := func(t float64) float64 {
		if t > 216.0/24389 {
			return math.Cbrt(t)
		}
		return (24389.0/27*t + 16) / 116
	}
	return [3]float64{116*f(y) - 16, 500 * (f(x) - f(y)), 200 * (f(y) - f(z))}
}

func distance(a, b [3]float64) float64 {
	return math.Sqrt((a[0]-b[0])*(a[0]-b[0]) + (a[1]-b[1])*(a[1]-b[1]) + (a[2]-b[2])*(a[2]-b[2]))
}

func TestLabOfKnownColours(t *testing.T) {
	usual := visions()[0]
	for _, row := range []struct {
		c    uint32
		want [3]float64 // published for sRGB red, green, blue and white, D65
	}{{0xFF0000, [3]float64{53.24, 80.09, 67.20}}, {0x00FF00, [3]float64{87.73, -86.18, 83.18}}, {0x0000FF, [3]float64{32.30, 79.19, -107.86}}, {0xFFFFFF, [3]float64{100, 0, 0}}} {
		if got := usual.seen(rgb(row.c)); distance(got, row.want) > 0.1 {
			t.Errorf("%06X is %.2f, want %.2f", row.c, got, row.want)
		}
	}
	for _, v := range visions() {
		for i, r := range v.m {
			if sum := r[0] + r[1] + r[2]; math.Abs(sum-1) > 2e-6 {
				t.Errorf("%s: row %d sums to %.6f", v.name, i, sum)
			}
		}
	}
}

// apartByColour is the least distance in L*a*b* at which two neighbouring tubes
// are called apart: 2.3 is what one just notices (Mahy and others, 1994, common
// practice); four times that can be told across a picture.
const apartByColour = 4 * 2.3

func TestTubesAreToldApartWithoutOneKindOfCone(t *testing.T) {
	tubes := tubeColours()
	for _, v := range visions() {
		least, pair := math.Inf(1), ""
		for i, a := range tubes {
			for k := range i {
				if d := distance(v.seen(a), v.seen(tubes[k])); d < least {
					least, pair = d, fmt.Sprintf("%c and %c", 'A'+k, 'A'+i)
				}
			}
		}
		t.Logf("%s: the nearest two are %s, %.1f apart", v.name, pair, least)
		if least < apartByColour {
			t.Errorf("%s: %s are only %.1f apart, want %.1f", v.name, pair, least, apartByColour)
		}
	}
}

// linear is the light of a channel of an sRGB colour, 0 to 1.
func linear(v uint8) float64 {
	s := float64(v) / 255
	if s <= 0.04045 {
		return s / 12.92
	}
	return math.Pow((s+0.055)/1.055, 2.4)
}
