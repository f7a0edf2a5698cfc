package bends

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// turnBetween is the angle from one direction to another, 0 to 180 degrees. The
// arc tangent keeps its digits near 0 and 180, where the arc cosine loses half
// of them.
func turnBetween(a, b mgl64.Vec3) float64 {
	return math.Atan2(a.Cross(b).Len(), a.Dot(b)) / perDegree
}

// rollBetween is the turn of the bend plane about the leg between two bends,
// positive by the right-hand rule along the way, in (−180, 180] degrees: the
// torsion of the four corners by the IUPAC rule. in, along and out are unit.
func rollBetween(in, along, out mgl64.Vec3) float64 {
	before, after := in.Cross(along), along.Cross(out)
	return wrapRoll(math.Atan2(along.Dot(before.Cross(after)), before.Dot(after)) / perDegree)
}

// wrapRoll brings a roll into (−180, 180] and clears the noise at 0 and 180, so
// that no wrap changes side for the last bit of a number.
func wrapRoll(roll float64) float64 {
	roll = math.Remainder(roll, 360)
	switch {
	case math.Abs(roll) <= sameAngle:
		return 0
	case math.Abs(roll) >= 180-sameAngle:
		return 180
	}
	return roll
}
