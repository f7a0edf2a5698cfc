package loop

import (
	"math"

	"tubewright/route"
	"tubewright/route/find"
)

// cubicMillimetres is one litre.
const cubicMillimetres = 1e6

// Volume is how much coolant a loop holds, litres: what its parts hold and the
// bores of the tubes found, π/4·ID²·length. Fittings, and runs without a way,
// count nothing; parts that do not say their volume count nothing.
func Volume(plan route.Plan, sol find.Solution, l Loop) float64 {
	sum := 0.0
	for _, name := range l.Parts {
		if part, ok := plan.FindPart(name); ok {
			sum += plan.Whole(part).Volume
		}
	}
	for _, name := range l.Runs {
		if way, ok := wayOf(sol, name); ok {
			sum += math.Pi / 4 * way.Tube.ID * way.Tube.ID * way.Formed.Developed / cubicMillimetres
		}
	}
	return sum
}
