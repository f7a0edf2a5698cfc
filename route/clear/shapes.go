// Package clear measures signed distances between shapes: how far apart two
// things stand, or how deep they overlap. It knows shapes, not plans.
//
// Lengths are millimetres, angles degrees, in whatever right-handed frame the
// caller uses. A distance below zero is an overlap: its size is the depth, the
// least shift that would part the two.
package clear

import "github.com/go-gl/mathgl/mgl64"

// Shape is a solid: a [Box], a [Cylinder], a [Rod] or an [Arc].
type Shape interface {
	// Bounds gives the corners of the axis-parallel box around the shape.
	Bounds() (lo, hi mgl64.Vec3)
}

// Box is a rectangular block turned any way. The columns of Axes are its unit
// axes; Half is half its size along each.
type Box struct {
	Centre mgl64.Vec3
	Axes   mgl64.Mat3
	Half   mgl64.Vec3
}

// Cylinder is a solid cylinder with flat ends: a collar, a fitting's body, a pump.
type Cylinder struct {
	From, To mgl64.Vec3
	Radius   float64
}

// Rod is everything within Radius of a segment, so its ends are round: a
// tube's straight. From may equal To (a ball).
type Rod struct {
	From, To mgl64.Vec3
	Radius   float64
}

// Arc is everything within Radius of an arc of a circle: a tube's bend. The
// arc's point at angle x (0 to Turn, degrees) is Centre + Bend·(cos x·U + sin x·V).
type Arc struct {
	Centre, U, V mgl64.Vec3
	Bend         float64 // radius of the centreline
	Turn         float64 // above 0, at most 360
	Radius       float64
}
