package check_test

import (
	"math"

	"tubewright/bends"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
)

var formingTests = []codeTest{
	{
		"a first straight too short", drawn(asIs, vec{106, 100, 50}, vec{158, 100, 50}, vec{158, 244, 50}), check.CannotForm,
		[]string{"a"},
		nil, -6, "mm",
		[]string{"The drawn path of run a cannot be formed: straight 1 is 20.0 mm long, and an end needs 26.0 mm", "Make it 6.0 mm longer"},
		"158 − 106 − 32 = 20 of 26",
		func(s *scene) {
			s.corners[0] = []vec{{106, 100, 50}, {164, 100, 50}, {164, 160, 50}, {250, 160, 50}, {250, 244, 50}}
			s.plan.Tubes[0].StraightBetween = 22
			s.corners[0][2][1], s.corners[0][3][1] = 186, 186
		},
	},
	{
		"bends that overlap", drawn(asIs, vec{106, 100, 50}, vec{166, 100, 50}, vec{166, 160, 50}, vec{250, 160, 50}), check.CannotForm,
		[]string{"a"},
		nil, -4, "mm",
		[]string{"its bends take 64.0 mm of straight 2, which is only 60.0 mm", "Make that leg 24.0 mm longer"},
		"2·32 − 60; and 20 between", nil,
	},
	{
		"a radius too tight", drawn(func(b *bends.Tube) { b.LeastRadius = 40 }, vec{106, 100, 50}, vec{250, 100, 50}, vec{250, 244, 50}),
		check.CannotForm,
		[]string{"a"},
		nil, -8, "mm",
		[]string{"bend 1 has a radius of 32.0 mm, and the tube takes no less than 40.0 mm"},
		"40 − 32", nil,
	},
	{
		"a tube that cannot be bent", drawn(func(b *bends.Tube) { b.Radius = 0 }, vec{106, 100, 50}, vec{250, 100, 50}, vec{250, 244, 50}),
		check.CannotForm,
		[]string{"a"},
		nil, 90, "deg",
		[]string{"bend 1 turns 90.0°, and this tube cannot be bent"},
		"a right angle", nil,
	},
	{
		"a U-turn", drawn(asIs, vec{106, 100, 50}, vec{250, 100, 50}, vec{107, 101, 50}), check.CannotForm,
		[]string{"a"},
		nil,
		180 - math.Atan2(1, 143)*180/math.Pi, "deg",
		[]string{"more than the"},
		"back at 1 in 143", nil,
	},
	{
		"a way that the tube in the plan does not allow", func(s *scene) { s.plan.Tubes[0].StraightEnd = 120 }, check.CannotForm,
		[]string{"a"},
		nil,
		-8, "mm",
		[]string{"The tube of run a cannot be formed: straight 1 is 112.0 mm long"},
		"144 − 32 = 112 of 120",
		func(s *scene) { s.plan.Tubes[0].StraightEnd = 112 },
	},
	{
		"no way", func(s *scene) {
			s.problem[0] = &find.NoWayError{Run: "a", Tried: []string{"one bend"}, Nearest: "one bend", Way: "block", Short: 3.2, Fix: "Move block."}
		},
		check.NoWay,
		[]string{"a"},
		[]string{"block"},
		-3.2, "mm",
		[]string{"Run a has no way; the nearest, one bend, fails because part block is 3.2 mm too near.", "Move block."},
		"as the search says", nil,
	},
	{
		"a tube shorter than its insertions", facing(35.9), check.WindowMissed,
		[]string{"c"},
		nil, -0.1, "mm",
		[]string{"is 23.9 mm from stop to stop, and its sockets take 12.0 mm and 12.0 mm"},
		"35.9 − 12 − 24", facing(36),
	},
	{
		"no window", socket(func(f *route.Fitting) { f.Insertion.Least = 12 }), check.WindowMissed,
		[]string{"a"},
		nil, 0, "mm",
		[]string{"leave no window of lengths"},
		"12 − 12", socket(func(f *route.Fitting) { f.Insertion.Least = 11.5 }),
	},
	{
		"seat gaps past the window", socket(func(f *route.Fitting) { f.SeatGap = 4 }), check.WindowMissed,
		[]string{"a"},
		nil, -2, "mm",
		[]string{"take its tube 2.0 mm below the shortest safe length"},
		"2·3 − 2·4", socket(func(f *route.Fitting) { f.SeatGap = 3 }),
	},
	{
		"a tube askew in its socket", func(s *scene) { s.corners[0][1] = vec{250, 103, 50} }, check.WindowMissed,
		[]string{"a"},
		nil,
		math.Atan2(3, 144) * 180 / math.Pi, "deg",
		[]string{"leaves its socket on pump.out 1.2° askew, and the socket gives 1.0°"},
		"3 in 144",
		func(s *scene) { s.corners[0][1] = vec{250, 102.4, 50} },
	},
	{
		"a tube beside its stop", func(s *scene) {
			s.corners[0] = []vec{{106, 100.5, 50}, {250, 100.5, 50}, {250, 244, 50}}
		},
		check.WindowMissed,
		[]string{"a"},
		nil, -0.2, "mm",
		[]string{"ends 0.2 mm off the stop of its socket on pump.out"},
		"0.5 aside, 0.3 given",
		func(s *scene) { s.corners[0] = []vec{{106, 100.3, 50}, {250, 100.3, 50}, {250, 244, 50}} },
	},
}
