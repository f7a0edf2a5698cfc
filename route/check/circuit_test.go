package check_test

import (
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
)

var circuitTests = []codeTest{
	{
		"two runs on a port", func(s *scene) {
			s.run("c", "pump.out", "block.fill")
			s.problem[2] = &find.NoWayError{Run: "c"}
		},
		check.PortTwice,
		[]string{"a", "c"},
		[]string{"pump"},
		0, "",
		[]string{"Port pump.out is used by runs a and c.", "another port: pump.drain"},
		"a and c begin there",
		func(s *scene) {
			s.run("c", "pump.drain", "block.fill")
			s.problem[2] = &find.NoWayError{Run: "c"}
		},
	},
	{
		"a run back to its own port", func(s *scene) {
			s.run("c", "pump.drain", "pump.drain")
			s.problem[2] = &find.NoWayError{Run: "c"}
		},
		check.PortTwice,
		[]string{"c"},
		[]string{"pump"},
		0, "",
		[]string{"Run c begins and ends on port pump.drain.", "pump has none free"},
		"", nil,
	},
	{
		"a port too many", func(*scene) {}, check.PortOpen, nil,
		[]string{"block"},
		0, "",
		[]string{"Port block.fill has no run."},
		"the spare one",
		func(s *scene) {
			s.part("block").Ports, s.part("pump").Ports = s.part("block").Ports[:2], s.part("pump").Ports[:2]
		},
	},
	{
		"a socket of another size", func(s *scene) {
			s.plan.Fittings = append(s.plan.Fittings, s.plan.Fittings[0])
			s.plan.Fittings[2].Name, s.plan.Fittings[2].OD = "socket-14", 14
			s.plan.Runs[0].Start[0].Fitting = "socket-14"
		},
		check.MixedSizes,
		[]string{"a"},
		[]string{"pump"},
		-2, "mm",
		[]string{"The socket-14 on pump.out takes tube of 14.0 mm, and run a is made of petg-16-12, 16.0 mm.", "Put socket-16 there"},
		"14 − 16",
		socket(func(f *route.Fitting) { f.OD = 16.04 }),
	},
	{
		"another thread", func(s *scene) { s.part("pump").Ports[0].Thread = "G3/8" }, check.MixedThreads,
		[]string{"a"},
		[]string{"pump"},
		0, "",
		[]string{"The socket-16 of run a has thread G1/4, and pump.out has G3/8."},
		"", func(s *scene) { s.part("pump").Ports[0].Thread = "" },
	},
	{
		"no way round", func(s *scene) {
			s.plan.Runs, s.corners = s.plan.Runs[:1], s.corners[:1]
		},
		check.LoopOpen,
		[]string{"a"},
		[]string{"pump", "block"},
		0, "",
		[]string{"The coolant of run a has no way round: it stops at pump.in and block.out.", "Join pump.in to block.out"},
		"run b left out", nil,
	},
	{
		"the pump backwards", func(s *scene) {
			s.part("block").Ports[0].Flow, s.part("block").Ports[1].Flow = route.Out, route.In
			s.part("block").Ports[0].Name, s.part("block").Ports[1].Name = "out", "in"
			s.plan.Runs[0].To, s.plan.Runs[1].To = ref("block.out"), ref("block.in")
		},
		check.PumpBackwards,
		[]string{"a"},
		[]string{"pump", "block"},
		0, "",
		[]string{"Run a joins pump.out to block.out: both are outlets.", "Swap it at block with run b: lead this one to block.in and that one to block.out."},
		"",
		func(s *scene) { s.part("block").Ports[0].Flow = route.Any },
	},
	{
		"the pump backwards, the other port free", func(s *scene) {
			s.part("block").Ports[0].Flow, s.part("block").Ports[2].Flow = route.Out, route.In
		},
		check.PumpBackwards,
		[]string{"a"},
		[]string{"pump", "block"},
		0, "",
		[]string{"Run a joins pump.out to block.in: both are outlets.", "Join pump.out to block.fill instead."},
		"the port's flow, not its name", nil,
	},
	{
		"a card turned round, other parts between", func(s *scene) {
			s.part("block").Ports[0].Flow = route.Any
			s.part("block").Passages = [][2]string{{"in", "fill"}}
			s.add(route.Part{
				Name: "card", Passages: [][2]string{{"in", "out"}},
				Ports: []route.Port{port("out", vec{300, 200, 300}, vec{0, 0, 1}, route.Out), port("in", vec{350, 200, 300}, vec{0, 0, 1}, route.In)},
			})
			s.run("c", "block.fill", "card.out")
			s.add(route.Part{
				Name: "radiator", Passages: [][2]string{{"low", "high"}},
				Ports: []route.Port{port("low", vec{300, 240, 300}, vec{0, 0, 1}, route.Any), port("high", vec{350, 240, 300}, vec{0, 0, 1}, route.Any)},
			})
			s.run("d", "card.in", "radiator.low")
			s.plan.Runs[1].To = ref("radiator.high")
			for i := 1; i < 4; i++ {
				s.problem[i] = &find.NoWayError{Run: s.plan.Runs[i].Name}
			}
		},
		check.PumpBackwards,
		[]string{"c", "d"},
		[]string{"card"},
		0, "",
		[]string{"Going round from pump, the coolant enters card at card.out and leaves it at card.in: the wrong way.", "Swap the runs on card.out and card.in."},
		"from the pump through the block to the card's outlet", nil,
	},
	{
		"no drain", radiator(31, 250), check.NoDrain,
		[]string{"a", "b"},
		nil, 31, "mm",
		[]string{"The lowest place of the loop is on pump.out, 100.0 mm up, and the nearest to open, pump.drain, is 31.0 mm above."},
		"the drain 31 over the tubes at y 100", radiator(30, 250),
	},
	{
		"no fill", func(s *scene) { s.part("block").Ports[2].At[1] = 219 }, check.NoFill,
		[]string{"a", "b"},
		nil, 31, "mm",
		[]string{"The highest place of the loop is on block.in, 250.0 mm up, and the nearest to open, block.fill, is 31.0 mm below."},
		"250 − 219", func(s *scene) { s.part("block").Ports[2].At[1] = 220 },
	},
	{
		"nothing to open", func(s *scene) {
			s.part("block").Ports, s.part("pump").Ports = s.part("block").Ports[:2], s.part("pump").Ports[:2]
		},
		check.NoFill,
		[]string{"a", "b"},
		nil, 0, "", // nothing to measure to
		[]string{"and it has no port, tee or valve to open"},
		"", nil,
	},
	{
		"aluminium among copper", func(s *scene) {
			s.part("block").Metals, s.part("pump").Metals = []string{"copper"}, []string{"aluminium"}
		},
		check.MixedMetals, nil,
		[]string{"block", "pump"},
		0.55, "V",
		[]string{"joins copper (block) and aluminium (pump), 0.55 V apart"},
		"0.90 − 0.35",
		func(s *scene) {
			s.part("block").Metals, s.part("pump").Metals = []string{"copper", "nickel"}, []string{"brass"}
		},
	},
}
