package check_test

import (
	"tubewright/route/check"
)

var clearanceTests = []codeTest{
	{
		"tube inside a part", beam(95.2), check.TubeHitsPart,
		[]string{"a"},
		[]string{"beam"},
		-3.2, "mm",
		[]string{"The tube of run a is 3.2 mm inside beam.", "Move beam 7.2 mm in -y"},
		"95.2 − 92; and 4 mm clear besides", beam(87.9),
	},
	{
		"tube too near a part", beam(88.8), check.TubeHitsPart,
		[]string{"a"},
		[]string{"beam"},
		3.2, "mm",
		[]string{"stands 3.2 mm from beam, 0.8 mm less than the 4.0 mm asked", "Move beam 0.8 mm in -y"},
		"92 − 88.8", beam(88),
	},
	{
		"collar in its own part", func(s *scene) {
			s.part("pump").Solids = append(s.part("pump").Solids, box(vec{130, 80, 30}, vec{135, 94, 70})...)
		},
		check.TubeHitsPart,
		[]string{"a"},
		[]string{"pump"},
		-2, "mm",
		[]string{"The tube of run a is 2.0 mm inside pump", "Bring the tube out from pump"},
		"94 − 92, past the collar's end at x 120",
		func(s *scene) {
			s.part("pump").Solids = append(s.part("pump").Solids, box(vec{90, 80, 30}, vec{119, 94, 70})...)
		},
	},
	{
		"two collars side by side", nearer(27.9), check.CollarHits,
		[]string{"a", "b"},
		nil, 3.9, "mm",
		[]string{"The collar of the socket-16 on pump.out (run a) stands 3.9 mm from the collar of the socket-16 on pump.in (run b)"},
		"27.9 − 24", nearer(28),
	},
	{
		"two tubes crossing", crossing(80.1), check.TubeHitsTube,
		[]string{"a", "c"},
		nil, 3.9, "mm",
		[]string{"The tube of run a stands 3.9 mm from the tube of run c", "in -y"},
		"100 − 80.1 − 2·8", crossing(80),
	},
	{
		"a tube through itself", curl(0), check.TubeHitsTube,
		[]string{"a"},
		nil, -16, "mm",
		[]string{"The tube of run a is 16.0 mm inside another stretch of it"},
		"centrelines cross: two radii", curl(16.01),
	},
	{
		"two parts", gpu(20, 66.2), check.PartHitsPart, nil,
		[]string{"pump", "gpu"},
		-6.2, "mm",
		[]string{"Parts pump and gpu overlap by 6.2 mm.", "Move gpu 6.2 mm in -x."},
		"66.2 − 60", gpu(20, 60.04),
	},
	{
		"two parts and a wall behind", gpu(3, 66.2), check.PartHitsPart, nil,
		[]string{"pump", "gpu"},
		-6.2, "mm",
		[]string{"Move pump 6.2 mm in +x."},
		"gpu would stand at −3.2", gpu(3, 60),
	},
	{
		"part past a wall", gpu(400, 436.2), check.PartOutsideCase, nil,
		[]string{"gpu"},
		-6.2, "mm",
		[]string{"Part gpu stands 6.2 mm past the right wall of the case.", "Move gpu 6.2 mm in -x."},
		"436.2 − 430", gpu(400, 430.04),
	},
	{
		"collar past a wall", narrow(257), check.TubeOutsideCase,
		[]string{"a"},
		nil, -5, "mm",
		[]string{"The collar of the socket-16 on block.in (run a) stands 5.0 mm past the right wall", "Lead it 5.0 mm in -x"},
		"250 + 12 − 257", narrow(262),
	},
}
