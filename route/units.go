package route

import (
	"math"
	"strconv"
)

// Text writes a length in mm in the units, without the unit's name: to a tenth
// of a millimetre, finer than any saw, or to a thousandth of an inch. It never
// writes "-0".
func (u Units) Text(mm float64) string {
	if u == Inches {
		return decimals(mm/Inch, 3)
	}
	return decimals(mm, 1)
}

// TextUnit is Text followed by the unit: "273.3 mm".
func (u Units) TextUnit(mm float64) string {
	if u == Inches {
		return u.Text(mm) + " in"
	}
	return u.Text(mm) + " mm"
}

// Degrees writes an angle to a tenth of a degree, with its sign: "92.4°".
func Degrees(a float64) string { return decimals(a, 1) + "°" }

func decimals(v float64, n int) string {
	scale := math.Pow10(n)
	v = math.Round(v*scale) / scale
	return strconv.FormatFloat(v+0, 'f', n, 64) // +0 turns −0 into 0
}
