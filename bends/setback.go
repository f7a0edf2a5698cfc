package bends

import "math"

const perDegree = math.Pi / 180

// Setback is how far before its corner a bend starts, in mm, for a radius to
// the centreline in mm and a turn in degrees: r·tan(a/2), the tangent length of
// road curves. It grows without bound as the turn nears 180 and is negative for
// a negative turn.
func Setback(radius, turn float64) float64 { return radius * math.Tan(turn/2*perDegree) }

// ArcLength is the length of the centreline in a bend, in mm: r·a, for a radius
// in mm and a turn in degrees.
func ArcLength(radius, turn float64) float64 { return radius * turn * perDegree }

// Gain is how much shorter the way round a bend is than the way over its
// corner, in mm: two setbacks less the arc.
func Gain(radius, turn float64) float64 { return 2*Setback(radius, turn) - ArcLength(radius, turn) }
