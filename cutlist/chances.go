package cutlist

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// Spare is how many extra blanks of one kind of tube are sawn, and why.
type Spare struct {
	Tube           string
	Bent, Straight int     // blanks of the longest bent and straight tube
	Chance         float64 // that with them all tubes of the kind get finished, 0 to 1
	Why            string  // "1 spare: 3 tubes at 78, 91, 95 in 100; ..."
}

// A tube that does not seat costs its blank, and the next try has the same chance:
// so of one tube of chance c exactly k blanks are lost with c·(1 − c)^k, and the
// losses of several tubes add up (a convolution of geometric distributions; with
// equal chances the negative binomial). Spares are of the longest bent or
// straight tube, so that any bent or straight one can be cut from them.

// spareFor works out the spares of one kind of tube; false where the plan asks for
// counts alone, or where nothing of the kind is to be made.
func (l List) spareFor(kind string) (Spare, bool) {
	s := Spare{Tube: kind, Bent: l.Plan.Spares.Bent, Straight: l.Plan.Spares.Straight}
	bent, straight := l.toMake(kind, true), l.toMake(kind, false)
	most := len(bent) + len(straight)
	if l.Plan.Spares.Chance <= 0 || most == 0 {
		return s, false
	}
	for s.Chance = finished(bent, s.Bent) * finished(straight, s.Straight); ; {
		if 100*s.Chance >= l.Plan.Spares.Chance || s.Bent+s.Straight >= mostTries*most {
			break
		}
		moreBent := finished(bent, s.Bent+1) * finished(straight, s.Straight)
		moreStraight := finished(bent, s.Bent) * finished(straight, s.Straight+1)
		if moreBent >= moreStraight-sameChance {
			s.Bent, s.Chance = s.Bent+1, moreBent
		} else {
			s.Straight, s.Chance = s.Straight+1, moreStraight
		}
	}
	s.Why = s.words(append(bent, straight...), l.Plan.Spares.Chance)
	s.Chance = math.Floor(100*s.Chance+sameChance) / 100 // as the words have it: never better than it is
	return s, true
}

// mostTries is how many spares are sawn for each tube at the most. Where three more
// tries at every tube do not get the chance asked, it is the measures and the hand
// that miss, and a fourth would miss as they do.
const mostTries = 3

// sameChance is how close two chances count as one, so that the choice between
// them does not hang on the last bit.
const sameChance = 1e-9

// toMake gives the chances of the bent or straight tubes of a kind that are not
// made yet, one for each machine, rounded as they are written.
func (l List) toMake(kind string, bent bool) (list []float64) {
	for _, t := range l.Tubes {
		if t.Way.Tube.Name != kind || bent != (len(t.Way.Formed.Bends) > 0) || hundredths(t.Cut.Blank) <= 0 {
			continue
		}
		for range max(1, l.Plan.Build) - t.Made {
			list = append(list, math.Round(100*t.Budget.Chance)/100)
		}
	}
	return list
}

// finished is the chance that tubes of these chances lose at most so many blanks
// until all are there.
func finished(chances []float64, spares int) float64 {
	lost := make([]float64, spares+1) // the chance to have lost exactly so many
	lost[0] = 1
	for _, c := range chances {
		for k := range lost {
			lost[k] *= c
			if k > 0 {
				lost[k] += (1 - c) * lost[k-1]
			}
		}
	}
	sum := 0.0
	for _, p := range lost {
		sum += p
	}
	return sum
}

// words say why so many: the chances from the least, each once.
func (s Spare) words(chances []float64, asked float64) string {
	slices.Sort(chances)
	var each []string
	for i, c := range chances {
		if i == 0 || c != chances[i-1] {
			each = append(each, fmt.Sprintf("%.0f", 100*c))
		}
	}
	total := s.Bent + s.Straight
	why := fmt.Sprintf("%s: %s at %s in 100; all get done in %.0f of 100 such jobs",
		counted(total, "spare"), counted(len(chances), "tube"), strings.Join(each, ", "), math.Floor(100*s.Chance+sameChance))
	if 100*s.Chance < asked {
		why += fmt.Sprintf(", not in the %g asked, and no more is sawn than %d for each tube: test bends and better measures help more", asked, mostTries)
	}
	return why
}
