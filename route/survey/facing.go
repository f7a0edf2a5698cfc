package survey

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/go-gl/mathgl/mgl64"
)

// straightOn is how far a facing may lie off an axis and still be written as
// that axis: half of the last digit that is written.
const straightOn = 5e-5

// FacingText writes a facing as plans do: "+x", or three numbers.
func FacingText(dir mgl64.Vec3) string {
	for axis, name := range []string{"x", "y", "z"} {
		for _, sign := range []float64{1, -1} {
			var unit mgl64.Vec3
			unit[axis] = sign
			if dir.Sub(unit).Len() <= straightOn {
				return map[float64]string{1: "+", -1: "-"}[sign] + name
			}
		}
	}
	words := make([]string, 3)
	for i, v := range dir {
		words[i] = strconv.FormatFloat(math.Round(v*1e4)/1e4+0, 'f', -1, 64)
	}
	return strings.Join(words, " ")
}

// ParseFacing reads a facing: "+x" to "-z" ("x" is "+x"), or three numbers.
func ParseFacing(text string) (mgl64.Vec3, error) {
	text = strings.ReplaceAll(strings.ToLower(strings.TrimSpace(text)), "\u2212", "-") // a minus sign as typesetters write it
	for axis, name := range axisNames {
		for sign, value := range map[string]float64{"": 1, "+": 1, "-": -1} {
			if text == sign+name {
				var v mgl64.Vec3
				v[axis] = value
				return v, nil
			}
		}
	}
	words := strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == ',' || r == ';' || r == '[' || r == ']' })
	var v mgl64.Vec3
	for i := range v {
		if len(words) != 3 {
			return v, fmt.Errorf("%q is no facing; write +x, -x, +y, -y, +z, -z or three numbers", text)
		}
		var err error
		if v[i], err = strconv.ParseFloat(words[i], 64); err != nil || math.IsNaN(v[i]) || math.IsInf(v[i], 0) {
			return v, fmt.Errorf("%q is no facing; write +x, -x, +y, -y, +z, -z or three numbers", text)
		}
	}
	if v.Len() < 1e-6 {
		return v, fmt.Errorf("%q points nowhere", text)
	}
	return v.Normalize(), nil
}
