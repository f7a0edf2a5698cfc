package bends

// Ends is what the two sockets say of a tube's ends. Index 0 is the first stop.
type Ends struct {
	SeatGap [2]float64 // left between the tube's end and the stop when cut to the aim, mm
	Play    [2]float64 // how far the end may stand back from the stop and still be safe, mm
}

// Cut is how long to cut a tube. Longest is the developed length between the
// stops; Aim is that less both seat gaps; Shortest is it less both plays.
type Cut struct {
	Aim, Shortest, Longest float64 // finished length, mm
	Blank                  float64 // sawn from the bar: a bent tube's aim plus two trims plus square, a straight one's aim plus square
}

// Bench is the bench table of a tube cut to its aim.
type Bench struct {
	Straights []float64 // of the aim-cut tube, mm
	Bends     []BenchBend
}

// BenchBend is one bend as the bench sees it, on a tube cut to its aim.
type BenchBend struct {
	Turn, Roll, Radius float64 // degrees, degrees, mm
	FromA, FromB       Marks   // from the aim-cut end A (first) and end B
	BlankA, BlankB     Marks   // the same from the ends of the blank, before trimming
	Back               Back
	Wrap               float64 // arc round the outside of the tube for the roll, mm, signed as Roll
	FormTo             float64 // turn on the former, degrees
	Heat               float64 // length to heat: the arc and one OD on each side, mm
	OuterWall          float64 // wall left on the outside of the bend, mm: t·R/(R+OD/2)
	InnerWall          float64 // wall on the inside, mm: t·R/(R−OD/2)
}

// Marks are the start, middle and end of a bend, mm from one end. The start is
// the one met first from end A, whichever end is measured from.
type Marks struct{ Start, Middle, End float64 }

// Back is what a ruler or square can take on the formed tube: from the tube's
// end (or from the back of the bend before) to the back of this bend, that is
// to the outside of the tube in line with the leg after it; and the same for
// the leg after. Nonsense for turns other than a right angle is avoided by
// measuring along the leg to where the outside of the tube would cross.
type Back struct{ Before, After float64 }
