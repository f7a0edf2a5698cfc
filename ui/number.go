package ui

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"

	"tubewright/route"
)

// A NumberError says what is wrong with a number a person typed.
type NumberError struct {
	Text string // as typed
	What string // one clause
	Fix  string // one sentence
}

func (e *NumberError) Error() string { return fmt.Sprintf("%q: %s. %s", e.Text, e.What, e.Fix) }

// scale is what a unit's name means in the field's own measure.
type scale map[string]float64

// lengthUnits gives the units a length may carry, in mm. An empty name is the
// unit that is shown.
func lengthUnits(u route.Units) scale {
	return scale{
		"": u.Factor(), "mm": 1, "cm": 10, "m": 1000,
		"in": route.Inch, "inch": route.Inch, "inches": route.Inch, `"`: route.Inch, "″": route.Inch,
	}
}

var angleUnits = scale{"": 1, "°": 1, "deg": 1, "degree": 1, "degrees": 1}

// farthest is the largest length or angle a field takes, mm or degrees.
const farthest = 10000

// parseLength reads a length such as "12.5", "12,5", "1/2 in", "1 1/2 in",
// "3 cm" or "120+15" and gives millimetres. A number without a unit counts in
// u. Errors are of type *NumberError.
func parseLength(text string, u route.Units) (float64, error) {
	return parseSum(text, lengthUnits(u), "Use mm, cm, m or in.")
}

// parseAngle reads an angle in degrees: "90", "22,5°", "45+45".
func parseAngle(text string) (float64, error) {
	return parseSum(text, angleUnits, "An angle is in degrees.")
}

func parseSum(text string, units scale, unitHelp string) (float64, error) {
	r := reader{text: text, rest: strings.TrimSpace(text), units: units, help: unitHelp}
	if r.rest == "" {
		return 0, r.wrong("there is no number", "Type one, such as 12.5.")
	}
	sum, err := r.sum()
	if err == nil && math.Abs(sum) > farthest {
		err = r.wrong("that is too large", fmt.Sprintf("At most %d can be kept.", farthest))
	}
	if err != nil {
		return 0, err
	}
	return sum + 0, nil
}

// reader takes a sum apart from the left.
type reader struct {
	text, rest string
	units      scale
	help       string
}

func (r *reader) wrong(what, fix string) error { return &NumberError{r.text, what, fix} }

// sum reads terms with + or - between them. The first may have a sign.
func (r *reader) sum() (float64, error) {
	total := 0.0
	for first := true; first || r.rest != ""; first = false {
		sign, ok := r.sign()
		if !ok && !first {
			return 0, r.wrong(fmt.Sprintf("%q does not belong there", r.rest), "Between two numbers there must be + or -.")
		}
		term, err := r.term()
		if err != nil {
			return 0, err
		}
		total += sign * term
	}
	return total, nil
}

func (r *reader) sign() (float64, bool) {
	for _, s := range []struct {
		text string
		sign float64
	}{{"+", 1}, {"-", -1}, {"−", -1}} {
		if rest, ok := strings.CutPrefix(r.rest, s.text); ok {
			r.rest = strings.TrimLeftFunc(rest, unicode.IsSpace)
			return s.sign, true
		}
	}
	return 1, false
}

// term reads "12.5", "1/2" or "1 1/2" and the unit behind it.
func (r *reader) term() (float64, error) {
	value, err := r.number()
	if err != nil {
		return 0, err
	}
	if over, ok, err := r.over(); err != nil {
		return 0, err
	} else if ok {
		value /= over
	} else if r.digitNext() {
		part, err := r.fraction()
		if err != nil {
			return 0, err
		}
		value += part
	}
	factor, err := r.unit()
	return value * factor, err
}

// fraction reads the "1/2" of "1 1/2".
func (r *reader) fraction() (float64, error) {
	top, err := r.number()
	if err != nil {
		return 0, err
	}
	over, ok, err := r.over()
	if err != nil {
		return 0, err
	}
	if !ok {
		return 0, r.wrong("there are two numbers", "Between two numbers there must be + or -.")
	}
	return top / over, nil
}

// over reads the "/2" of a fraction, if there is one.
func (r *reader) over() (float64, bool, error) {
	rest, ok := strings.CutPrefix(r.rest, "/")
	if !ok {
		return 0, false, nil
	}
	r.rest = strings.TrimLeftFunc(rest, unicode.IsSpace)
	under, err := r.number()
	if err == nil && under == 0 {
		err = r.wrong("nothing can be divided by 0", "Change the number under the fraction line.")
	}
	return under, true, err
}

func (r *reader) digitNext() bool { return r.rest != "" && r.rest[0] >= '0' && r.rest[0] <= '9' }

// number reads digits with at most one mark, a point or a comma.
func (r *reader) number() (float64, error) {
	end := strings.IndexFunc(r.rest, func(c rune) bool { return !strings.ContainsRune("0123456789.,", c) })
	if end < 0 {
		end = len(r.rest)
	}
	digits := r.rest[:end]
	if strings.Trim(digits, ".,") == "" {
		return 0, r.noNumber()
	}
	if strings.Count(digits, ".")+strings.Count(digits, ",") > 1 {
		return 0, r.wrong(fmt.Sprintf("%q has two decimal marks", digits), "Leave thousands together: 1234.5.")
	}
	value, err := strconv.ParseFloat(strings.Replace(digits, ",", ".", 1), 64)
	if err != nil {
		return 0, r.wrong(fmt.Sprintf("%q is too large", digits), fmt.Sprintf("At most %d can be kept.", farthest))
	}
	r.rest = strings.TrimLeftFunc(r.rest[end:], unicode.IsSpace)
	return value, nil
}

func (r *reader) noNumber() error {
	if r.rest == "" {
		return r.wrong("a number is missing at the end", "Finish the sum, such as 120+15.")
	}
	return r.wrong(fmt.Sprintf("%q is not a number", r.rest), "Type one, such as 12.5 or 120+15.")
}

// unit reads the unit behind a number and gives what one of it is.
func (r *reader) unit() (float64, error) {
	end := strings.IndexFunc(r.rest, func(c rune) bool {
		return !unicode.IsLetter(c) && c != '"' && c != '″' && c != '°'
	})
	if end < 0 {
		end = len(r.rest)
	}
	name := r.rest[:end]
	factor, ok := r.units[strings.ToLower(name)]
	if !ok {
		return 0, r.wrong(fmt.Sprintf("%q is not a unit", name), r.help)
	}
	r.rest = strings.TrimLeftFunc(r.rest[end:], unicode.IsSpace)
	return factor, nil
}
