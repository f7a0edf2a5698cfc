package bends

import (
	"math"
	"slices"
)

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
	InnerWall          float64 // wall on the inside, mm: t·R/(R−OD/2); both are pure geometry, real walls differ
}

// Marks are the start, middle and end of a bend, mm from one end. The start is
// the one met first from end A, whichever end is measured from.
type Marks struct{ Start, Middle, End float64 }

// Back is what a ruler and a square can take on the formed tube, along the leg
// before a bend and along the leg after it, mm. The back of a bend is where the
// outsides of its two legs would meet if they ran on: the lines on the tube
// away from the inside of the bend, OD/2 from the centreline. That point stands
//
//	(R + OD/2)·tan(turn/2)
//
// along the leg beyond the bend's start (and, seen from the leg after, before
// its end), so for a right angle it is R + OD/2: the stub and the leg of conduit
// benders. Before runs from the tube's end, or from the back of the bend before,
// to the back of this bend; After from the back of this bend to the back of the
// next, or to the tube's end. Between two bends both are one measure, taken
// along their leg whatever the roll: the backs may lie on different sides of the
// tube, so hold a square to each.
type Back struct{ Before, After float64 }

// Bench is the bench table of the tube cut to its aim. Marks on the blank
// count from the ends of a blank sawn to the aim and two trims after both of
// its ends have been squared.
func (f Formed) Bench(e Ends) Bench {
	if len(f.Straights) == 0 {
		return Bench{}
	}
	b := Bench{Straights: slices.Clone(f.Straights), Bends: make([]BenchBend, len(f.Bends))}
	b.Straights[0] -= e.SeatGap[0]
	b.Straights[len(f.Bends)] -= e.SeatGap[1]
	aim := f.Cut(e, 0).Aim
	for i, bend := range f.Bends {
		b.Bends[i] = f.benchBend(bend, e.SeatGap[0], aim)
		b.Bends[i].Back = f.back(b.Straights, i)
	}
	return b
}

// benchBend is all of a bend that hangs on nothing but itself and the tube.
func (f Formed) benchBend(b Bend, gap, aim float64) BenchBend {
	t := f.Tube
	wall := (t.OD - t.ID) / 2
	fromA := Marks{b.Start - gap, b.Middle - gap, b.End - gap}
	fromB := Marks{aim - fromA.Start, aim - fromA.Middle, aim - fromA.End}
	return BenchBend{
		Turn: b.Turn, Roll: b.Roll, Radius: b.Radius,
		FromA: fromA, FromB: fromB, BlankA: fromA.moved(t.Trim), BlankB: fromB.moved(t.Trim),
		Wrap:      b.Roll / 360 * math.Pi * t.OD,
		FormTo:    t.Springback.FormTo(b.Turn),
		Heat:      b.Arc + 2*t.OD,
		OuterWall: wall * b.Radius / (b.Radius + t.OD/2),
		InnerWall: wall * b.Radius / (b.Radius - t.OD/2),
	}
}

func (m Marks) moved(by float64) Marks { return Marks{m.Start + by, m.Middle + by, m.End + by} }

// back measures bend i on a tube with these straights.
func (f Formed) back(straights []float64, i int) Back {
	return Back{
		Before: f.tip(i-1) + straights[i] + f.tip(i),
		After:  f.tip(i) + straights[i+1] + f.tip(i+1),
	}
}

// tip is how far beyond the start of bend i its back lies along the leg; none
// where there is no bend.
func (f Formed) tip(i int) float64 {
	if i < 0 || i >= len(f.Bends) {
		return 0
	}
	return Setback(f.Bends[i].Radius+f.Tube.OD/2, f.Bends[i].Turn)
}
