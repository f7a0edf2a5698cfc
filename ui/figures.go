package ui

import (
	"math"
	"strconv"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

func plainInt(n int) string { return strconv.Itoa(n) }

// lengthText writes a length for an entry: as exact as a file keeps it, with
// no zeros behind that say nothing.
func lengthText(mm float64, u route.Units) string {
	places := 3
	if u == route.Inches {
		places = 4
	}
	return trimmed(mm/u.Factor(), places)
}

func angleText(a float64) string { return trimmed(a, 3) }

func trimmed(v float64, places int) string {
	text := strconv.FormatFloat(v, 'f', places, 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		return "0"
	}
	return text
}

// alongAxis is how near to an axis a direction must be to be called by it: a
// thousandth, about 0.06 degrees.
const alongAxis = 1e-3

// facing names a direction: "+x", or its three numbers.
func facing(d mgl64.Vec3) string {
	for i, name := range [...]string{"x", "y", "z"} {
		if math.Abs(math.Abs(d[i])-1) < alongAxis {
			if d[i] < 0 {
				return "−" + name
			}
			return "+" + name
		}
	}
	return trimmed(d[0], 2) + ", " + trimmed(d[1], 2) + ", " + trimmed(d[2], 2)
}
