package trial

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"tubewright/bends"
)

// toldApart is the spread of turns, in degrees, from which on bends tell the
// fixed part of the springback from its percents: over less, a degree of scatter
// is taken for more percents than any tube has.
const toldApart = 15

// Fit works out what test bends on a tube of this outside diameter in mm say.
// The error is one of the typed ones of this package and names the bend, counted
// from 0: a [NoBendsError], [NumberError], [WordError], [MissingError],
// [MarksError], [BentBackError], [OpenedError], [RadiusError], [LegError] or
// [ResidualError].
func Fit(od float64, list []Bend, o Options) (Fitted, error) {
	stated := o.Sigmas != Sigmas{}
	s := o.Sigmas.filled()
	if err := judged(od, list, s); err != nil {
		return Fitted{}, err
	}
	if err := alone(od, list); err != nil {
		return Fitted{}, err
	}
	a := adjustment{od: od, list: list, law: lawOf(list, o.Split), cov: s.variances()}
	a.p = a.begin()
	if !a.run() || a.p[radius] <= od/2 {
		return Fitted{}, &RadiusError{-1, a.p[radius], od / 2, ""}
	}
	if err := a.astray(); err != nil {
		return Fitted{}, err
	}
	return a.fitted(stated), nil
}

// lawOf says how much the bends tell of the springback.
func lawOf(list []Bend, split bends.Springback) law {
	low, high, sum := math.Inf(1), 0.0, 0.0
	for _, b := range list {
		low, high, sum = min(low, b.After), max(high, b.After), sum+b.After
	}
	l := law{middle: sum / float64(len(list)), told: high-low >= toldApart}
	if s := split.FormTo(l.middle) - l.middle; s > 0 {
		l.fixed = split.Degrees / s
	}
	return l
}

// begin is where the rounds start: the means of what each bend gives alone.
func (a *adjustment) begin() params {
	var p params
	for _, b := range a.list {
		p[radius] += b.alone(a.od)
		p[opened] += b.Former - b.After
	}
	n := float64(len(a.list))
	p[radius], p[opened] = p[radius]/n, p[opened]/n
	return a.law.tied(p)
}

// alone is the radius one bend gives by itself, mm.
func (b Bend) alone(od float64) float64 {
	sum := b.Legs[0] + b.Legs[1] - b.length()
	if b.toBack() {
		sum -= 2 * back(od, b.After)
	}
	return sum / gains(b.After)
}

// leg is a leg to the centrelines, mm.
func (b Bend) leg(od float64, i int) float64 {
	if b.toBack() {
		return b.Legs[i] - back(od, b.After)
	}
	return b.Legs[i]
}

// fitted is the answer of an adjustment that has come to rest.
func (a *adjustment) fitted(stated bool) Fitted {
	f := Fitted{
		OD: a.od, Told: a.law.told, Freedom: 2*len(a.list) - a.free(), Stated: stated, Scale: 1,
		middle: a.law.middle,
	}
	spread := distuv.UnitNormal.Quantile(0.975)
	if !stated && f.Freedom > 0 {
		f.Scale = math.Sqrt(a.sum / float64(f.Freedom))
		spread = distuv.StudentsT{Mu: 0, Sigma: 1, Nu: float64(f.Freedom)}.Quantile(0.975)
	}
	f.spread = spread
	f.Springback = a.law.split(a.p)
	f.raw = bends.Springback{Degrees: a.p[opened] - a.p[growth]*a.law.middle, Percent: 100 * a.p[growth]}
	f.Covariance = a.covariance(f.Scale)
	f.Radius = f.value(a.p[radius], math.Sqrt(f.Covariance[0][0]))
	f.Bends = a.readings()
	f.Unsure = f.unsure()
	return f
}

// split gives the springback as a fixed part and percents, neither below 0,
// that at the middle of the bends is what they say.
func (l law) split(p params) bends.Springback {
	at := max(p[opened], 0)
	percent := min(max(p[growth]*l.middle, 0), at)
	return bends.Springback{Degrees: at - percent, Percent: 100 * percent / l.middle}
}

// splitGuess is the standard deviation of a split nobody knows: the fixed part
// may be anything from none to all, each as likely (1/√12 of the whole).
var splitGuess = 1 / math.Sqrt(12)

// covariance of radius, fixed part and percents.
func (a *adjustment) covariance(scale float64) (out [3][3]float64) {
	var of [unknowns][unknowns]float64
	for i := range a.free() {
		for j := range a.free() {
			of[i][j] = a.root.At(i, j) * scale * scale
		}
	}
	to := [3][unknowns]float64{
		{radius: 1},
		{opened: 1, growth: -a.law.middle},
		{growth: 100},
	}
	if !a.law.told {
		to[1] = [unknowns]float64{opened: a.law.fixed}
		to[2] = [unknowns]float64{opened: 100 * (1 - a.law.fixed) / a.law.middle}
	}
	for i := range out {
		for j := range out {
			for k := range of {
				for m := range of {
					out[i][j] += to[i][k] * of[k][m] * to[j][m]
				}
			}
		}
	}
	if !a.law.told {
		a.guess(&out)
	}
	return out
}

// guess adds what a split that nobody measured is worth: what one part has more
// the other has less at the middle turn.
func (a *adjustment) guess(out *[3][3]float64) {
	g := max(a.p[opened], 0) * splitGuess
	per := -100 / a.law.middle
	out[1][1] += g * g
	out[1][2] += g * g * per
	out[2][1] += g * g * per
	out[2][2] += g * g * per * per
}

// readings are the bends in the light of the fit.
func (a *adjustment) readings() []Reading {
	list := make([]Reading, len(a.list))
	for i, b := range a.list {
		x := b.reading()
		list[i] = Reading{
			Radius: b.alone(a.od), Opened: b.Former - b.After,
			Begins: b.leg(a.od, 0) - bends.Setback(a.p[radius], b.After),
			Off:    b.lengths(a.od, x, a.p).value, Astray: a.law.opening(x, a.p).value,
		}
	}
	return list
}
