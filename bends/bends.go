// Package bends turns the centreline of one tube into the numbers a person
// needs at the bench: how long to cut it, where to mark each bend, which way
// to turn it, and how far to push it on the former.
//
// Every corner of the centreline becomes an arc of the former's radius,
// measured to the centreline. Forming is taken to leave the length of the
// centreline unchanged, so
//
//	setback          t = r·tan(a/2)
//	arc              = r·a                     (a in radians)
//	straight j       = |Vj Vj+1| − t(j) − t(j+1)
//	developed length = Σ straights + Σ arcs
//
// (Machinery's Handbook, "lengths of bends"; the same formulas serve road
// curves.) Lengths are millimetres and angles degrees, in every exported field
// and parameter; the axes are the plan's, right handed. A turn is 0 where the
// tube goes straight on. The package reads no files and draws nothing.
package bends

import "github.com/go-gl/mathgl/mgl64"

// Tube is what forming needs to know about a tube. A tube whose Radius is 0
// cannot be bent: its runs must be straight.
type Tube struct {
	OD, ID          float64    // outside and inside diameter, mm
	Radius          float64    // centreline radius of the former in use, mm; 0: cannot be bent
	LeastRadius     float64    // refuse a bend tighter than this, mm
	StraightBetween float64    // least straight between two bends, mm
	StraightEnd     float64    // least straight at an end: insertion, collar and grip, mm
	Springback      Springback // how far a bend opens when it comes off the former
	Trim            float64    // left on each end of a bent tube and cut off after forming, mm
}

// Springback is how far a bend opens when it comes off the former: a fixed
// part in degrees and a part in percent of the turn. The zero value is none.
type Springback struct{ Degrees, Percent float64 }

// Path asks for a tube: the corners of its centreline from one stop to the
// other, both included, and a centreline radius for each inner corner.
type Path struct {
	Corners []mgl64.Vec3
	Radii   []float64 // one for each inner corner, mm; nil: the tube's Radius for all
}

// Formed is a tube that can be formed: straights and bends in turn, from the
// first stop to the last. len(Straights) is len(Bends)+1.
type Formed struct {
	Tube      Tube
	Corners   []mgl64.Vec3 // as asked for, less the corners without a turn
	Straights []float64    // mm
	Bends     []Bend
	Developed float64 // length of the centreline between the two stops, mm
}

// Bend is one arc of a formed tube. Positions are measured along the
// centreline from the first stop.
type Bend struct {
	Turn    float64 // degrees, above 0 and below 180
	Roll    float64 // turn of the bend plane since the bend before, degrees in (−180, 180]; 0 for the first
	Radius  float64 // to the centreline, mm
	Setback float64 // from the corner back to the start of the bend, mm
	Arc     float64 // length of the centreline in the bend, mm
	Start   float64 // mm from the first stop
	Middle  float64
	End     float64
}

// Piece is a stretch of a formed tube's centreline in space: a straight when
// Radius is 0, else an arc whose point at angle x (0 to Turn, degrees) is
// Centre + Radius·(cos x·U + sin x·V).
type Piece struct {
	From, To     mgl64.Vec3
	Centre, U, V mgl64.Vec3 // U and V are unit and square to each other; zero for a straight
	Radius, Turn float64    // mm, degrees
	Start, End   float64    // mm along the centreline from the first stop
}
