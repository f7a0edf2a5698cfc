package planfile

import (
	"math"
	"regexp"
	"strconv"

	"gopkg.in/yaml.v3"
)

// bound says which numbers a key takes. The zero value takes none.
type bound struct {
	least, most float64
	above       bool // least itself is refused
}

// limit is the largest number a plan holds: a kilometre in mm.
const limit = 1e6

var (
	anyNumber = bound{least: -limit, most: limit}
	noLess    = bound{least: 0, most: limit}              // 0 or more
	over      = bound{least: 0, most: limit, above: true} // above 0
)

func (b bound) holds(v float64) bool {
	return v <= b.most && v >= b.least && (!b.above || v > b.least)
}

// asks says what the bound asks of a number that it does not hold, in the
// file's units.
func (b bound) asks(v, factor float64) string {
	least := plain(b.least / factor)
	switch {
	case v > b.most:
		return "at most " + plain(math.Round(b.most/factor*10)/10)
	case b.above:
		return "above " + least
	}
	return least + " or more"
}

func plain(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// decimal is how a number is written: no octal, hexadecimal or grouped digits,
// which YAML would read as something the writer hardly meant.
var decimal = regexp.MustCompile(`^[-+]?(0|[1-9]\d*|\d+\.\d*|\.\d+)([eE][-+]?\d+)?$`)

// number gives the value of a node that is a plain decimal number.
func number(n *yaml.Node) (float64, bool) {
	if n.Kind != yaml.ScalarNode || n.Style&(yaml.DoubleQuotedStyle|yaml.SingleQuotedStyle|yaml.LiteralStyle|yaml.FoldedStyle) != 0 {
		return 0, false
	}
	if !decimal.MatchString(n.Value) {
		return 0, false
	}
	v, err := strconv.ParseFloat(n.Value, 64)
	return v, err == nil
}

// count is a number without a unit: degrees, litres, prices, weights.
func count(b bound) codec[float64] { return quantity(b, func(float64) float64 { return 1 }) }

// length is a length: in the file in its units, in the plan in mm.
func length(b bound) codec[float64] {
	return quantity(b, func(factor float64) float64 { return factor })
}

func quantity(b bound, scale func(factor float64) float64) codec[float64] {
	return codec[float64]{
		read: func(s spot, n *yaml.Node, into *float64) {
			factor := scale(s.factor)
			if v, ok := s.number(n, b, factor); ok {
				*into = v * factor
			}
		},
		write: func(f form, v, _ float64) *item {
			if v == 0 && !b.holds(0) {
				return nil // not given
			}
			return numberItem(v, scale(f.factor))
		},
		same:  alike,
		shape: shape{kind: "number", bound: b, length: scale(2) == 2},
	}
}

// number gives the number at n as the file counts, once it lies in the bound.
func (s spot) number(n *yaml.Node, b bound, factor float64) (float64, bool) {
	v, ok := number(n)
	if !ok {
		s.bad(n, "must be a number, but "+says(n), numberFix(n))
		return 0, false
	}
	if !b.holds(v * factor) {
		asked := b.asks(v*factor, factor)
		s.bad(n, "must be "+asked+", but is "+short(n.Value), "Give a number that is "+asked+".")
		return 0, false
	}
	return v + 0, true // +0 turns −0 into 0
}

var odd = regexp.MustCompile(`^[-+]?0[0-9xob_]+`)

func numberFix(n *yaml.Node) string {
	switch {
	case n.Kind == yaml.ScalarNode && n.Style == 0 && decimal.MatchString(n.Value):
		return "It is too large to be counted: give a smaller one."
	case n.Kind == yaml.ScalarNode && decimal.MatchString(n.Value):
		return "Take the quotes away."
	case n.Kind == yaml.ScalarNode && odd.MatchString(n.Value):
		return "Write it in decimal figures without leading zeros."
	}
	return "Write one decimal number, with a point and without a unit, such as 12.5."
}

// whole is a count of things.
func whole(least, most int) codec[int] {
	return codec[int]{
		read: func(s spot, n *yaml.Node, into *int) {
			b := bound{least: float64(least), most: float64(most)}
			v, ok := s.number(n, b, 1)
			if ok && v != math.Trunc(v) {
				s.bad(n, "must be a whole number, but is "+short(n.Value), "Give a number without a fraction.")
			} else if ok {
				*into = int(v)
			}
		},
		write: func(_ form, v, _ int) *item {
			if v == 0 && least > 0 {
				return nil // not given
			}
			return numberItem(float64(v), 1)
		},
		same:  func(a, b int) bool { return a == b },
		shape: shape{kind: "integer", bound: bound{least: float64(least), most: float64(most)}},
	}
}

// sameNumber is rounding noise: numbers of a plan this close are one. A length
// that goes from mm to inches and back comes home within 1e-10 mm; no bench
// tells a ten-millionth of a millimetre.
const sameNumber = 1e-7

func alike(a, b float64) bool { return math.Abs(a-b) <= sameNumber || a == b }

const (
	// cleanDecimals is how many decimals a number is written with when that is
	// as good as exact; it drops the noise of sums such as 0.1 + 0.2.
	cleanDecimals = 8
	// asGoodAsExact is how far, in the file's units, the written number may
	// then lie from the true one.
	asGoodAsExact = 1e-9
	// safeDigits is how many significant digits survive decimal → float64 →
	// decimal (IEEE 754 binary64), so that a second writing gives the same text.
	safeDigits = 15
)

// figures writes a number with as few decimals as carry it. Written, read and
// written again it is the same text: a number that goes through a factor is
// first cut to its safe digits, so that the noise of multiplying and dividing
// cannot tip which side of asGoodAsExact it falls on.
func figures(v, factor float64) string {
	x, whole := v/factor, plain(v/factor)
	if factor != 1 {
		whole = strconv.FormatFloat(x, 'g', safeDigits, 64)
		x, _ = strconv.ParseFloat(whole, 64) // a number just formatted parses
	}
	for n := 0; n <= cleanDecimals; n++ {
		text := strconv.FormatFloat(x, 'f', n, 64)
		if back, err := strconv.ParseFloat(text, 64); err == nil && math.Abs(back-x) <= asGoodAsExact {
			return unsigned(text, back)
		}
	}
	return whole
}

// unsigned writes no "-0".
func unsigned(text string, v float64) string {
	if v == 0 {
		return "0"
	}
	return text
}

func numberItem(v, factor float64) *item {
	return &item{word: figures(v, factor), holds: func(n *yaml.Node) bool {
		have, ok := number(n)
		return ok && math.Abs(have*factor-v) <= asGoodAsExact*max(1, factor)
	}}
}
