package check_test

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"tubewright/bends"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
)

func TestASoundPlanHasOnlyItsSparePorts(t *testing.T) {
	got := sound().findings(t)
	if len(got) != 2 || got[0].Code != check.PortOpen || got[1].Code != check.PortOpen {
		t.Errorf("findings of a sound plan:%s", told(got))
	}
}

// beam is a block under the level leg of run a, whose tube's underside is at y 92.
func beam(top float64) func(*scene) {
	return func(s *scene) {
		s.add(route.Part{Name: "beam", Solids: box(vec{150, 10, 45}, vec{200, top, 55})})
	}
}

// gpu is a block from x to x, level with the pump, whose near face is at x 60.
func gpu(from, to float64) func(*scene) {
	return func(s *scene) {
		s.add(route.Part{Name: "gpu", Solids: box(vec{from, 80, 30}, vec{to, 120, 170})})
	}
}

// nearer moves run b and its ports to a distance from run a.
func nearer(apart float64) func(*scene) {
	return func(s *scene) {
		s.part("pump").Ports[1].At[2] = 50 + apart
		s.part("block").Ports[1].At[2] = 50 + apart
		for i := range s.corners[1] {
			s.corners[1][i][2] = 50 + apart
		}
	}
}

// crossing is a straight third run along z under the level leg of run a, at a height.
func crossing(y float64) func(*scene) {
	return func(s *scene) {
		s.add(route.Part{Name: "e", Ports: []route.Port{port("p", vec{200, y, 5}, vec{0, 0, 1}, route.Any)}})
		s.add(route.Part{Name: "f", Ports: []route.Port{port("p", vec{200, y, 100}, vec{0, 0, -1}, route.Any)}})
		s.run("c", "e.p", "f.p", vec{200, y, 11}, vec{200, y, 94})
	}
}

// curl makes run a cross over itself, its last leg at a depth beside the first.
// It ends on a part of its own above the floor.
func curl(beside float64) func(*scene) {
	return func(s *scene) {
		s.add(route.Part{Name: "e", Ports: []route.Port{port("p", vec{150, 30, 50 + beside}, vec{0, 1, 0}, route.Any)}})
		s.plan.Runs[0].To = ref("e.p")
		s.corners[0] = []vec{{106, 100, 50}, {300, 100, 50}, {300, 200, 50 + beside}, {150, 200, 50 + beside}, {150, 36, 50 + beside}}
	}
}

// narrow is a case whose right wall stands close to run a's collar, which
// reaches to x 262; the block is made narrower.
func narrow(wall float64) func(*scene) {
	return func(s *scene) {
		s.plan.Case[0] = wall
		s.part("block").Solids = box(vec{240, 250, 30}, vec{255, 290, 170})
	}
}

// facing is a straight run between two ports this far apart, with short collars.
func facing(apart float64) func(*scene) {
	return func(s *scene) {
		s.plan.Tubes[0].StraightEnd = 0
		s.plan.Fittings[0].Collar.Length = 8
		s.add(route.Part{Name: "e", Ports: []route.Port{port("p", vec{20, 200, 300}, vec{1, 0, 0}, route.Any)}})
		s.add(route.Part{Name: "f", Ports: []route.Port{port("p", vec{20 + apart, 200, 300}, vec{-1, 0, 0}, route.Any)}})
		s.run("c", "e.p", "f.p", vec{26, 200, 300}, vec{14 + apart, 200, 300})
	}
}

func socket(change func(*route.Fitting)) func(*scene) {
	return func(s *scene) { change(&s.plan.Fittings[0]) }
}

// drawn gives run a a path that the bends refuse, and what they say.
func drawn(tube func(*bends.Tube), corners ...vec) func(*scene) {
	return func(s *scene) {
		b := s.plan.Tubes[0].Tube
		tube(&b)
		_, s.problem[0] = bends.Form(b, bends.Path{Corners: corners})
		s.plan.Runs[0].Way, s.plan.Runs[0].Via = route.Drawn, corners[1:len(corners)-1]
	}
}

func asIs(*bends.Tube) {}

// loopOf joins the pump to a radiator with a low and a high port.
func radiator(low, high float64) func(*scene) {
	return func(s *scene) {
		s.part("block").At[1] += high - 250
		s.corners[0][2][1] += high - 250
		s.corners[1][2][1] += high - 250
		s.part("pump").Ports[2].At[1] = 100 + low
		s.part("pump").Ports[2].Facing = vec{-1, 0, 0}
	}
}

type codeTest struct {
	name    string
	change  func(*scene)
	code    check.Code
	runs    []string
	parts   []string
	measure float64
	unit    string
	say     []string // what the sentences must hold
	source  string
	near    func(*scene) // a near miss: no finding of that code
}

var codeTests = []codeTest{
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
		[]string{"Run a joins pump.out to block.out: both are outlets.", "Join pump.out to block.in instead."},
		"",
		func(s *scene) { s.part("block").Ports[0].Flow = route.Any },
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
		nil, 0, "mm",
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

// besides lists what else a plan of a test cannot help having.
var besides = map[string][]check.Code{
	"two tubes crossing":                 {check.LoopOpen}, // run c is alone
	"a tube shorter than its insertions": {check.LoopOpen},
	"a tube through itself":              {check.LoopOpen, check.NoDrain}, // run a ends elsewhere, lower
	"two runs on a port":                 {check.NoWay, check.NoFill},     // run c takes the fill
	"a run back to its own port":         {check.NoWay, check.NoDrain},    // run c takes the drain
	"nothing to open":                    {check.NoDrain},
}

func TestEachCode(t *testing.T) {
	for _, tt := range codeTests {
		t.Run(tt.name, func(t *testing.T) {
			s := sound()
			tt.change(s)
			list := s.findings(t)
			f, ok := pick(list, tt)
			if !ok {
				t.Fatalf("no %s of %v and %v among%s\n\tsource: %s", tt.code, tt.runs, tt.parts, told(list), tt.source)
			}
			if math.Abs(f.Measure-tt.measure) > 1e-6 || f.Unit != tt.unit || f.Severity != check.SeverityOf(tt.code) {
				t.Errorf("measure %v %s, want %v %s: %s", f.Measure, f.Unit, tt.measure, tt.unit, tt.source)
			}
			for _, words := range tt.say {
				if !strings.Contains(f.What+"\n"+f.Fix, words) {
					t.Errorf("it says\n\t%s\n\t%s\nand not %q", f.What, f.Fix, words)
				}
			}
			for _, f := range list {
				if f.Code != tt.code && f.Code != check.PortOpen && !slices.Contains(besides[tt.name], f.Code) {
					t.Errorf("besides %s it finds%s", tt.code, told([]check.Finding{f}))
				}
			}
			if tt.near == nil {
				return
			}
			s = sound()
			tt.near(s)
			for _, f := range s.findings(t) {
				if f.Code == tt.code {
					t.Errorf("a near miss is told of:%s", told([]check.Finding{f}))
				}
			}
		})
	}
}

// pick gives the finding a test asks for.
func pick(list []check.Finding, tt codeTest) (check.Finding, bool) {
	for _, f := range list {
		if f.Code == tt.code && reflect.DeepEqual(f.Runs, orNone(tt.runs)) && reflect.DeepEqual(f.Parts, orNone(tt.parts)) {
			return f, true
		}
	}
	return check.Finding{}, false
}

func orNone(list []string) []string {
	if list == nil {
		return []string{}
	}
	return list
}
