package check

import (
	"math"
	"strconv"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// coarse is the least length that a tenth of a millimetre writes well, mm.
const coarse = 0.1

// length writes a length in the plan's units; one under a tenth of a millimetre
// with more digits, since it would be written as nothing.
func (r *referee) length(mm float64) string {
	if mm >= coarse || mm <= -coarse || mm == 0 {
		return r.plan.Units.TextUnit(mm)
	}
	if r.plan.Units == route.Inches {
		return strconv.FormatFloat(mm/route.Inch, 'f', 5, 64) + " in"
	}
	return strconv.FormatFloat(mm, 'f', 3, 64) + " mm"
}

// enough writes a length rounded up to what is written, so that moving by it is enough.
func (r *referee) enough(mm float64) string {
	step := 0.1
	if r.plan.Units == route.Inches {
		step = route.Inch / 1000
	}
	return r.plan.Units.TextUnit(math.Ceil(mm/step-Rounding) * step)
}

// leastPart is the part of a shift along an axis that is worth saying, mm.
const leastPart = 0.05

// shift writes a shift by its axes: "3.0 mm in +x and 4.0 mm in -y".
func (r *referee) shift(v mgl64.Vec3) string {
	var words []string
	for i, axis := range []string{"x", "y", "z"} {
		if math.Abs(v[i]) < leastPart {
			continue
		}
		sign := "+"
		if v[i] < 0 {
			sign = "-"
		}
		words = append(words, r.enough(math.Abs(v[i]))+" in "+sign+axis)
	}
	if len(words) == 0 {
		return r.enough(leastPart) + " away"
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

// capital makes a sentence of a phrase.
func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
