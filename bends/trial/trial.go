// Package trial works out from one or several test bends what the former really
// does: the centreline radius it leaves, what a bend gains, and how far it opens
// when it comes off, each with how well it is known.
//
// # A test bend
//
// Take a piece of the tube and measure it, or make two marks on it well outside
// of where the bend will be and measure between them. Bend between the marks.
// Write down the angle on the former and the angle the bend keeps when it has
// been let go (and is cold). Then measure both legs: from the tube's end, or
// from the mark, to the back of the bend, where the outsides of the two legs
// would meet if they ran on (a rule laid along each shows it); or to where the
// centrelines would meet.
//
// # What follows from it
//
// Let L1 and L2 be the legs to where the centrelines meet, D the length of the
// centreline between the two points measured from, R the radius and a the turn
// in radians. Each leg is its straight and one setback R·tan(a/2); D is both
// straights and the arc R·a; so the straights go out and
//
//	gain = L1 + L2 − D = R·(2·tan(a/2) − a)
//	R    = (L1 + L2 − D) / (2·tan(a/2) − a)
//
// A leg to the back of the bend is longer by (OD/2)·tan(a/2). It does not matter
// where between the marks the bend was made. What the tube stretches or shrinks
// in forming is taken into R, which is then the radius that makes lengths come
// out, whatever a gauge says.
//
// A bend formed to F that keeps the turn a has opened by F − a, taken as
//
//	F − a = degrees + percent/100·a
//
// # Worked by hand
//
// Two marks 200 mm apart on tube of 16 mm, formed to 93 degrees, opening to 90.
// From each mark to the back of the bend it is 115 mm. To the centrelines that
// is 115 − 8·tan 45° = 107; the gain is 2·107 − 200 = 14; 2·tan 45° − π/2 is
// 0.429204, so R = 14/0.429204 = 32.62 mm. The bend opened by 3 degrees. With a
// rule read to 0.5 mm and a protractor to 0.5 degrees (one standard deviation
// each), a millimetre of gain is 2.33 mm of radius and a radian of turn is
// (8/cos² 45° + 32.62·tan² 45°)/0.429204 = 113.3 mm, so the radius is known to
// √((2.33·0.5·√3)² + (113.3·0.5·π/180)²) = √(2.018² + 0.989²) = 2.25 mm: one
// bend says little, four halve it.
//
// # How it is fitted
//
// All readings of all bends are adjusted together, each as little as its
// standard deviation asks, until both equations hold for every bend: least
// squares with conditions between readings and unknowns (Helmert 1872; W. E.
// Deming, Statistical Adjustment of Data, 1943), by Gauss-Newton.
//
// Lengths are millimetres and angles degrees in every exported field. A turn is
// 0 where the tube is straight. The package reads no files and knows no plan.
package trial

import "tubewright/bends"

// From says which points the legs of a test bend were measured from.
type From string

// To says to where they were measured.
type To string

// The empty values count as Ends and Back.
const (
	Ends   From = "ends"  // the tube's two squared ends
	Marks  From = "marks" // two marks made before bending
	Back   To   = "back"  // where the outsides of the two legs would meet
	Centre To   = "centre"
)

// Bend is one test bend as it was typed in.
type Bend struct {
	Blank  float64    // length of the piece before bending, mm; 0: not measured
	Marks  [2]float64 // of two marks made before bending, mm from one end, or from anywhere when only their distance counts; equal: none
	Former float64    // turn on the former, degrees
	After  float64    // turn the bend keeps, degrees
	Legs   [2]float64 // as measured, mm
	From   From
	To     To
}

// Sigmas is how well things are read and bent: one standard deviation of each.
// A zero among others is taken from [Assumed].
type Sigmas struct {
	Length float64 // of each length read, mm
	Angle  float64 // of each turn read off a formed bend, degrees
	Turn   float64 // of the turn from bend to bend, formed to the same mark, degrees
}

// assumed is a steady hand with a steel rule and a protractor: common practice.
// Where nothing is known the scatter of the bends themselves sets the scale, and
// only the ratios of these count.
var assumed = Sigmas{Length: 0.5, Angle: 0.5, Turn: 1.5}

// Assumed gives the standard deviations taken where nobody states them: half a
// millimetre, half a degree, and a degree and a half from bend to bend.
func Assumed() Sigmas { return assumed }

// filled takes what is not stated from the assumed.
func (s Sigmas) filled() Sigmas {
	for _, f := range [...]struct {
		at    *float64
		usual float64
	}{{&s.Length, assumed.Length}, {&s.Angle, assumed.Angle}, {&s.Turn, assumed.Turn}} {
		if *f.at == 0 {
			*f.at = f.usual
		}
	}
	return s
}

// Options is what is known beside the bends. The zero value is nothing.
type Options struct {
	// Sigmas of the readings. All zero: not known; the bends' own scatter sets
	// the scale, and Student's t the intervals.
	Sigmas Sigmas
	// Split is the springback of which the bends keep the split between its
	// fixed part and its percents while they cannot tell the two apart. The zero
	// value counts all as percents.
	Split bends.Springback
}

// Value is a number and how well it is known.
type Value struct {
	At        float64
	Sigma     float64 // one standard deviation
	Low, High float64 // holds the truth 95 times in 100
}

// Holds reports whether a number lies within the interval.
func (v Value) Holds(x float64) bool { return v.Low <= x && x <= v.High }

// Fitted is what test bends say.
type Fitted struct {
	OD         float64 // of the tube, mm
	Radius     Value   // to the centreline, mm
	Springback bends.Springback
	// Covariance of radius (mm), Springback.Degrees and Springback.Percent, in
	// this order. The last two are of what the bends say before it is kept from
	// going below 0.
	Covariance [3][3]float64
	Told       bool     // the bends tell fixed and percent apart; else their split is the one given, and a guess
	Freedom    int      // readings beyond the unknowns
	Stated     bool     // standard deviations were stated; else the scatter of the bends, or the assumed ones, set them
	Scale      float64  // times the sigmas, what the bends really scattered; 1 where Stated
	Unsure     []string // what the bends cannot tell, one sentence each
	Bends      []Reading

	spread float64          // half-width of the interval over sigma
	middle float64          // mean turn of the bends, degrees
	raw    bends.Springback // before it was kept from going below 0
}

// Reading is one test bend in the light of all.
type Reading struct {
	Radius float64 // that this bend alone gives, mm
	Opened float64 // degrees
	Begins float64 // where the bend begins, mm from the point the first leg was measured from
	Off    float64 // its legs are this much longer than the fit says, mm
	Astray float64 // it opened this much more than the fit says, degrees
}
