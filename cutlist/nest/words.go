package nest

import "fmt"

// Verdict is how good a plan is, for people.
type Verdict struct {
	Cost, Bound int  // hundredths of money, or bars to buy
	Priced      bool // they are money
	Proven      bool
	Uncut       int // pieces the limits leave over; then nothing is said of the best
}

// Verdict of a result to the job that leaves so many pieces uncut.
func (j Job) Verdict(r Result, uncut int) Verdict {
	return Verdict{r.Cost, r.Bound, j.Priced(), r.Proven && uncut == 0, uncut}
}

// Words are the one wording for lists, sheets and windows: "38.70, the cheapest
// possible: proven", "6 bars to buy, within 1 bar of the fewest possible".
func (v Verdict) Words() string {
	cost, gap, best := counted(v.Cost, "bar")+" to buy", counted(v.Cost-v.Bound, "bar"), "fewest"
	if v.Priced {
		cost, gap, best = Money(v.Cost), Money(v.Cost-v.Bound), "cheapest"
	}
	if v.Cost == 0 {
		cost = "nothing to buy"
	}
	switch {
	case v.Uncut > 0:
		return fmt.Sprintf("%s; the stock does not hold %d more: see the findings", cost, v.Uncut)
	case v.Proven:
		return fmt.Sprintf("%s, the %s possible: proven", cost, best)
	}
	return fmt.Sprintf("%s, within %s of the %s possible", cost, gap, best)
}

// Money writes hundredths; nobody says of which money.
func Money(hundredths int) string {
	return fmt.Sprintf("%d.%02d", hundredths/100, hundredths%100)
}
