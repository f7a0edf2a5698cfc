package check_test

import (
	"math"

	"tubewright/route"
	"tubewright/route/check"
)

// elbowed is a third run whose start goes 24 mm to +z by an elbow in one piece,
// body 19, from a port at x facing up, and a post behind it up to a z.
func elbowed(x, postTo float64, rotary bool) func(*scene) {
	return func(s *scene) {
		s.plan.Fittings = append(s.plan.Fittings, route.Fitting{
			Name: "elbow", Kind: route.Elbow, Thread: "G1/4", Turn: 90, Legs: [2]float64{14, 24}, Body: 19, Rotary: rotary,
		})
		s.add(route.Part{Name: "e", Ports: []route.Port{port("p", vec{x, 60, 290}, vec{0, 1, 0}, route.Any)}})
		s.add(route.Part{Name: "f", Ports: []route.Port{port("p", vec{x, 74, 390}, vec{0, 0, -1}, route.Any)}})
		s.add(route.Part{Name: "post", Solids: box(vec{x - 15, 20, 240}, vec{x + 60, 130, postTo})})
		s.run("c", "e.p", "f.p", vec{x, 74, 320}, vec{x, 74, 384})
		s.plan.Runs[2].Start = route.Chain{{Fitting: "elbow"}, {Fitting: "socket-16"}}
	}
}

// reach is how far the rim of that elbow's end goes from the axis, looked at
// every 2 degrees: 24·cos a + 9.5·sin a at the best of them, 22 degrees.
var reach = 24*math.Cos(22*math.Pi/180) + 9.5*math.Sin(22*math.Pi/180)

var turningTests = []codeTest{
	{
		"an elbow with a post behind it", elbowed(200, 275, false), check.CannotScrewIn,
		[]string{"c"},
		[]string{"post"},
		(290 - reach) - 275, "mm",
		[]string{"The elbow on e.p (run c) has no room to turn", "at a roll of 158° it is 10.8 mm inside post", "Take a rotary one"},
		"its rim reaches √(24² + 9.5²) = 25.8 from the axis at z 290", elbowed(200, 290-26, false),
	},
	{
		"an elbow beside a wall", elbowed(20, 264, false), check.CannotScrewIn,
		[]string{"c"},
		nil,
		20 - reach, "mm",
		[]string{"5.8 mm inside the left wall of the case", "an extender under it."},
		"the axis is 20 mm from the wall", elbowed(26, 264, false),
	},
	{
		"a rotary elbow there", elbowed(200, 275, false), check.CannotScrewIn,
		[]string{"c"},
		[]string{"post"},
		(290 - reach) - 275, "mm", nil,
		"only the base of a rotary one turns", elbowed(200, 275, true),
	},
}
