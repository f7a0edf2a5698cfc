package trial

import (
	"math"

	"tubewright/bends"
)

// alone refuses bends whose own radius no tube can have.
func alone(od float64, list []Bend) error {
	for i, b := range list {
		if r := b.alone(od); r <= od/2-b.doubt(od) {
			return &RadiusError{i, r, od / 2, b.hint(od, func(r float64) bool { return r > od/2 })}
		}
	}
	return nil
}

// doubt is how far off the radius of one bend may be by honest reading, mm.
func (b Bend) doubt(od float64) float64 {
	c := b.lengths(od, b.reading(), params{radius: od})
	sum := 0.0
	for r, v := range assumed.variances() {
		sum += c.by[r] * c.by[r] * v
	}
	return beyond * math.Sqrt(sum) / gains(b.After)
}

// hint names the slip that would explain a bend: legs taken to the other place.
func (b Bend) hint(od float64, good func(radius float64) bool) string {
	other, words := b, "; it would fit with legs measured to the centrelines"
	other.To = Centre
	if !b.toBack() {
		other.To, words = Back, "; it would fit with legs measured to the back of the bend"
	}
	if good(other.alone(od)) {
		return words
	}
	return ""
}

// astray refuses bends that the fit does not explain: the worst is named.
func (a *adjustment) astray() error {
	for i, b := range a.list {
		for k := range b.Legs {
			have, need := b.leg(a.od, k), bends.Setback(a.p[radius], b.After)
			if have < need-beyond*math.Sqrt(a.cov[leg1]) {
				return &LegError{i, k, have, need}
			}
		}
	}
	worst, found := 0.0, error(nil)
	for i, b := range a.list {
		for _, e := range a.offs(i, b) {
			if ratio := math.Abs(e.Off) / e.Most; ratio > max(worst, 1) {
				worst, found = ratio, e
			}
		}
	}
	return found
}

// offs is how far off the fit both equations of a bend are.
func (a *adjustment) offs(i int, b Bend) [2]*ResidualError {
	x := b.reading()
	lengths, opening := b.lengths(a.od, x, a.p), a.law.opening(x, a.p)
	near := func(r float64) bool { return math.Abs((r-a.others(i))*gains(b.After)) <= a.most(lengths) }
	return [2]*ResidualError{
		{i, lengths.value, a.most(lengths), unitMM, b.alone(a.od), b.hint(a.od, near)},
		{i, opening.value, a.most(opening), unitDegrees, b.Former - b.After, ""},
	}
}

// most is what an equation may miss by when readings are honest.
func (a *adjustment) most(c condition) float64 {
	sum := 0.0
	for r, v := range a.cov {
		sum += c.by[r] * c.by[r] * v
	}
	return beyond * math.Sqrt(sum)
}

// others is the mean radius of the bends but one, mm; of all where there is no other.
func (a *adjustment) others(but int) float64 {
	if len(a.list) == 1 {
		return a.p[radius]
	}
	sum := 0.0
	for i, b := range a.list {
		if i != but {
			sum += b.alone(a.od)
		}
	}
	return sum / float64(len(a.list)-1)
}
