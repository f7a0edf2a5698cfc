package trial

import (
	"fmt"
	"math"

	"tubewright/bends"
)

// value is a number with its interval.
func (f Fitted) value(at, sigma float64) Value {
	return Value{At: at, Sigma: sigma, Low: at - f.spread*sigma, High: at + f.spread*sigma}
}

// Opens is how far a bend of this turn opens when it comes off, in degrees. A
// bend does not close, so At is not below 0; the interval is that of the
// readings, which may say less.
func (f Fitted) Opens(turn float64) Value {
	c, t := f.Covariance, turn/100
	v := f.value(f.raw.FormTo(turn)-turn, root(c[1][1]+2*t*c[1][2]+t*t*c[2][2]))
	v.At = f.Springback.FormTo(turn) - turn
	v.Low, v.High = min(v.Low, v.At), max(v.High, v.At)
	return v
}

// Gain is how much shorter the way round a bend of this turn is than the way
// over its corner, in mm: R·(2·tan(a/2) − a).
func (f Fitted) Gain(turn float64) Value {
	return f.value(bends.Gain(f.Radius.At, turn), f.Radius.Sigma*gains(turn))
}

// root of a variance; one that cancels to just below 0 is none.
func root(variance float64) float64 { return math.Sqrt(max(variance, 0)) }

// mostUnsure is the part of the radius its standard deviation may be: beyond it
// the bends say next to nothing.
const mostUnsure = 0.2

// unsure says what the bends cannot tell, and what would.
func (f Fitted) unsure() (list []string) {
	if !f.Told {
		list = append(list, fmt.Sprintf(
			"All bends turn about %.0f degrees, so the fixed part of the springback and its percents cannot be told apart: their split is a guess; at other turns, bend one more at least %d degrees from there.",
			f.middle, toldApart))
	}
	if !f.Stated && f.Freedom == 0 {
		list = append(list, fmt.Sprintf(
			"One bend shows no scatter: lengths are taken to be read within %g mm and turns within %g degrees; bend two more to see your own.",
			assumed.Length, assumed.Angle))
	}
	if f.Radius.Sigma > mostUnsure*f.Radius.At {
		list = append(list, fmt.Sprintf(
			"The radius is known to %.1f mm only: these bends gain too little (%.2f mm); bend to 90 degrees or more, or make more bends.",
			f.Radius.Sigma, f.Gain(f.middle).At))
	}
	return list
}
