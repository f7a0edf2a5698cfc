package session

import (
	"fmt"
	"math"

	"tubewright/route"
)

// farthest is the largest coordinate an edit may give a part, mm: the case of
// any computer is far smaller, and the arithmetic stays exact to 1e-12 mm.
const farthest = 10000

// PlaceError says that a number of a part is none or too large.
type PlaceError struct {
	Part string
	Got  float64 // mm or degrees
}

func (e *PlaceError) Error() string {
	return fmt.Sprintf("%s would have the number %g: at most ±%d can be kept", e.Part, e.Got, farthest)
}

// sound reports the first number of a part that a plan file could not hold.
func sound(p route.Plan) error {
	for _, k := range p.Parts {
		for _, v := range [...]float64{k.At[0], k.At[1], k.At[2], k.Turn[0], k.Turn[1], k.Turn[2]} {
			if math.IsNaN(v) || math.Abs(v) > farthest {
				return &PlaceError{k.Name, v}
			}
		}
	}
	return nil
}
