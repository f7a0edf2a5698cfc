package route

import "tubewright/bends/trial"

// Sigmas is how well a person with these errors reads and makes a test bend: a
// rule is read as well as a cut is made. Nothing is said of the protractor.
func (e Errors) Sigmas() trial.Sigmas { return trial.Sigmas{Length: e.Cut, Turn: e.Turn} }

// Tried is what a tube's test bends say, by the errors of the person who made
// them. What is used is the tube's own Radius and Springback: whoever accepts a
// fit writes it there and keeps the bends beside it. While all bends have one
// turn, the split of the springback that the tube states is kept. The errors are
// those of [trial.Fit].
func (t Tube) Tried(e Errors) (trial.Fitted, error) {
	return trial.Fit(t.OD, t.TestBends, trial.Options{Sigmas: e.Sigmas(), Split: t.Springback})
}

// Doubt is how well the radius and the springback of a tube are known.
type Doubt struct {
	Radius     float64       // one standard deviation, mm
	Springback [2][2]float64 // covariance of its fixed part in degrees and its percents
}

// What is known of a former nobody has tried. These are guesses: a drawing or a
// gauge is right to half a millimetre and half a degree; formers sold for one
// size of tube differ by three times as much from each other, and springback by
// the batch of the tube.
const (
	firmRadius, firmOpening       = 0.5, 0.5
	typicalRadius, typicalOpening = 1.5, 1.0
)

// Doubt is how well the tube's radius and springback are known: from its test
// bends, else from who vouches for the tube.
func (t Tube) Doubt(e Errors) Doubt {
	if len(t.TestBends) > 0 {
		if f, err := t.Tried(e); err == nil {
			c := f.Covariance
			return Doubt{f.Radius.Sigma, [2][2]float64{{c[1][1], c[1][2]}, {c[2][1], c[2][2]}}}
		}
	}
	if t.KnownFrom.Firm() {
		return doubt(firmRadius, firmOpening)
	}
	return doubt(typicalRadius, typicalOpening)
}

func doubt(radius, opening float64) Doubt {
	return Doubt{radius, [2][2]float64{{opening * opening, 0}, {0, 0}}}
}
