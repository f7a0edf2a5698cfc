package bends

// All of these are rounding noise of our own arithmetic. Workshop errors belong
// to the person and come from the plan.
const (
	// sameSpot is how far apart, in mm, two corners may be and still be one
	// point. Near 1 m one float64 step is 1e-13 mm, so even ten thousand
	// roundings stay far below it.
	sameSpot = 1e-6
	// slack is how much shorter than its need, in mm, a straight may come out
	// and still count as long enough: the same noise as sameSpot, so that bends
	// that just touch are taken.
	slack = sameSpot
	// onLine is how far beside the line between its neighbours, in mm, a corner
	// may stand and still count as no turn. No former can make so small a turn,
	// and leaving it out moves the centreline by a tenth of what is promised
	// (0.01 mm).
	onLine = 1e-3
	// sameAngle is how far from 0 or ±180 degrees a roll may come out and still
	// be meant so: at the end of a 1 m leg it moves a point by 2e-7 mm.
	sameAngle = 1e-8
	// MostTurn is the most a corner may turn the way, in degrees. The setback
	// grows with the tangent of half the turn: at 179 degrees it is 115 radii,
	// at 180 the corner is infinitely far away.
	MostTurn = 179
)
