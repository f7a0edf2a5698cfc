package nest

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// Decimal counts hundredths and is written as a plain number: 30527 as 305.27.
type Decimal int

// String writes the number without needless zeros: 30527 is "305.27", 50000 "500".
func (d Decimal) String() string { return Amount{int(d), 100}.String() }

// MarshalJSON writes the number.
func (d Decimal) MarshalJSON() ([]byte, error) { return []byte(d.String()), nil }

// Amount is a number counted in parts of a unit: 30527 of 100 is 305.27.
type Amount struct {
	Parts int
	Per   int // a power of ten
}

// String writes the number exactly and without needless zeros.
func (a Amount) String() string {
	sign, n := "", uint64(a.Parts)
	if a.Parts < 0 {
		sign, n = "-", -n
	}
	per := uint64(max(1, a.Per))
	s := fmt.Sprintf("%s%d.%0*d", sign, n/per, digits(a.Per), n%per)
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}

// MarshalJSON writes the number.
func (a Amount) MarshalJSON() ([]byte, error) { return []byte(a.String()), nil }

// digits after the point that count parts of a unit.
func digits(per int) int {
	n := 0
	for ; per > 1; per /= 10 {
		n++
	}
	return max(1, n)
}

// parseAmount reads a plain decimal number exactly, as parts of a unit: no sign,
// no exponent.
func parseAmount(text string, per, most int) (int, error) {
	units, part, _ := strings.Cut(text, ".")
	places, part := digits(per), strings.TrimRight(part, "0")
	switch {
	case strings.HasPrefix(text, "-") && allDigits(strings.Replace(text[1:], ".", "", 1)):
		return 0, fmt.Errorf("is %s; it must be above 0", text)
	case text == "" || !allDigits(units+part) || text == ".":
		return 0, fmt.Errorf("%q is not a number", text)
	case len(part) > places:
		return 0, fmt.Errorf("%s is finer than %s", text, Amount{1, per})
	}
	n, err := strconv.Atoi(units + part + strings.Repeat("0", places-len(part)))
	if err != nil || n > most {
		return 0, fmt.Errorf("%s is above %s, the most there can be", text, Amount{most, per})
	}
	return n, nil
}

var errZero = errors.New("is 0; it must be above 0")

// parseSize is parseAmount of a number above 0.
func parseSize(text string, per, most int) (int, error) {
	n, err := parseAmount(text, per, most)
	if err == nil && n == 0 {
		err = errZero
	}
	return n, err
}

// parseCount reads a whole number above 0.
func parseCount(text string) (int, error) {
	if text == "" || !allDigits(text) {
		if _, err := strconv.ParseFloat(text, 64); err == nil {
			return 0, fmt.Errorf("is %s; it must be a whole number above 0", text)
		}
		return 0, fmt.Errorf("%q is not a whole number", text)
	}
	n, err := strconv.Atoi(text)
	switch {
	case err != nil || n > maxPieces:
		return 0, tooManyError(fmt.Sprintf("is %s; at most %d can be nested at once", text, maxPieces))
	case n == 0:
		return 0, errZero
	}
	return n, nil
}

// tooManyError is a count beyond what the package takes on.
type tooManyError string

func (e tooManyError) Error() string { return string(e) }

func allDigits(s string) bool {
	return strings.IndexFunc(s, func(r rune) bool { return r < '0' || r > '9' }) < 0
}
