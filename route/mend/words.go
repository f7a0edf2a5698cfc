package mend

import (
	"math"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

var axes = [3]string{"x", "y", "z"}

// length writes a length in the units, without needless zeros: "6 mm".
func length(units route.Units, mm float64) string {
	text := strings.TrimRight(strings.TrimRight(units.Text(mm), "0"), ".")
	if units == route.Inches {
		return text + " in"
	}
	return text + " mm"
}

// shift writes a shift by its axes: "3 mm in +x and 4 mm in -y".
func shift(units route.Units, by mgl64.Vec3) string {
	var words []string
	for i, axis := range axes {
		if by[i] > 0 {
			words = append(words, length(units, by[i])+" in +"+axis)
		} else if by[i] < 0 {
			words = append(words, length(units, math.Abs(by[i]))+" in -"+axis)
		}
	}
	return list(words)
}

// list joins words: "a", "a and b", "a, b and c".
func list(words []string) string {
	n := len(words)
	if n < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
}
