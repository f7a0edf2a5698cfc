package loop_test

import (
	"math"
	"reflect"
	"testing"

	"tubewright/bends"
	"tubewright/route"
	"tubewright/route/find"
	"tubewright/route/loop"
)

func TestARingIsClosedAndOrderedFromThePump(t *testing.T) {
	loops := loop.Of(ring())
	if len(loops) != 1 {
		t.Fatalf("%d loops, want 1", len(loops))
	}
	l := loops[0]
	want := []loop.Stop{{"pump", "in", "out", "a"}, {"block", "in", "out", "b"}, {"rad", "low", "high", "c"}}
	if !reflect.DeepEqual(l.Order, want) {
		t.Errorf("order %v, want %v", l.Order, want)
	}
	if !l.Closed || l.Pump != "pump" || l.Loose != nil || l.Ends != nil || l.Against != nil || l.Turned != nil {
		t.Errorf("a sound ring: %+v", l)
	}
	if want := []route.PortRef{ref("pump.fill")}; !reflect.DeepEqual(l.Spare, want) {
		t.Errorf("spare ports %v, want %v", l.Spare, want)
	}
}

func TestNoRunsNoLoop(t *testing.T) {
	p := ring()
	p.Runs = nil
	if got := loop.Of(p); got != nil {
		t.Errorf("loop.Of(plan without runs) = %v", got)
	}
}

func TestOpenLoops(t *testing.T) {
	three := []route.Part{part("pump", 0, "in", "out", "fill"), part("block", 0, "in", "out"), part("rad", 0, "low", "high")}
	bare := route.Part{Name: "bare", Ports: three[1].Ports} // ports, but no passage
	tests := []struct {
		name  string
		parts []route.Part
		ends  []string // of the runs
		loose []string
		open  []string // where the coolant stops
		order []string // parts
	}{
		{
			"a gap before the pump: it stops at the radiator's other port and the pump's inlet",
			three,
			[]string{"pump.out", "block.in", "block.out", "rad.low"},
			[]string{"a", "b"},
			[]string{"pump.in", "rad.high"},
			[]string{"pump", "block", "rad"},
		},
		{
			"a part without a passage stops it at both its ports",
			[]route.Part{three[0], bare},
			[]string{"pump.out", "bare.in", "bare.out", "pump.in"},
			[]string{"a", "b"},
			[]string{"bare.in", "bare.out"},
			[]string{"pump", "bare"},
		},
		{
			"one run alone",
			three,
			[]string{"block.out", "rad.low"},
			[]string{"a"},
			[]string{"block.in", "rad.high"},
			[]string{"block", "rad"},
		},
		{
			"a dead branch off a ring",
			[]route.Part{three[0], part("block", 0, "in", "out", "spare"), three[2]},
			[]string{"pump.out", "block.in", "block.out", "pump.in", "block.spare", "rad.low"},
			[]string{"c"},
			[]string{"rad.high"},
			[]string{"pump", "block"},
		},
		{
			"a ring without a pump is closed all the same",
			three[1:],
			[]string{"block.out", "rad.low", "rad.high", "block.in"},
			nil, nil,
			[]string{"block", "rad"},
		},
		{
			"two tubes side by side are a way round",
			three[1:],
			[]string{"block.out", "rad.low", "block.out", "rad.low"},
			nil, nil,
			[]string{"block", "rad"},
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			l := loop.Of(join(route.Plan{Parts: tt.parts}, tt.ends...))[0]
			var open, order []string
			for _, e := range l.Ends {
				open = append(open, e.String())
			}
			for _, s := range l.Order {
				order = append(order, s.Part)
			}
			if !reflect.DeepEqual(l.Loose, tt.loose) || !reflect.DeepEqual(open, tt.open) || !reflect.DeepEqual(order, tt.order) {
				t.Errorf("loose %q, ends %q, order %q, want %q, %q, %q", l.Loose, open, order, tt.loose, tt.open, tt.order)
			}
			if l.Closed != (tt.loose == nil) {
				t.Errorf("closed = %v", l.Closed)
			}
		})
	}
}

func TestTwoLoopsAreTwo(t *testing.T) {
	p := route.Plan{Parts: []route.Part{
		part("pump-a", 0, "in", "out"), part("pump-b", 0, "in", "out"), part("rad-a", 0, "low", "high"), part("rad-b", 0, "low", "high"),
	}}
	loops := loop.Of(join(p, "pump-b.out", "rad-b.low", "pump-a.out", "rad-a.low", "rad-b.high", "pump-b.in", "rad-a.high", "pump-a.in"))
	if len(loops) != 2 || loops[0].Pump != "pump-b" || loops[1].Pump != "pump-a" {
		t.Fatalf("loops %+v, want that of pump-b, then that of pump-a", loops)
	}
	if want := []string{"b", "d"}; !reflect.DeepEqual(loops[1].Runs, want) {
		t.Errorf("runs %q, want %q", loops[1].Runs, want)
	}
}

func TestPumpBackwards(t *testing.T) {
	parts := ring().Parts
	tests := []struct {
		name            string
		ends            []string
		against, turned []string
	}{
		{"outlet to outlet and inlet to inlet", []string{"pump.out", "block.out", "block.in", "pump.in"}, []string{"a", "b"}, nil},
		{"through the radiator the block is met from behind", []string{"pump.out", "rad.low", "rad.high", "block.out", "block.in", "pump.in"}, []string{"c"}, nil},
		{"two radiators hide it", []string{"pump.out", "rad.low", "rad.high", "block.out", "block.in", "rad2.low", "rad2.high", "pump.in"}, nil, []string{"block"}},
		{"the same the right way", []string{"pump.out", "rad.low", "rad.high", "block.in", "block.out", "rad2.low", "rad2.high", "pump.in"}, nil, nil},
		{"drawn from the far end, still right", []string{"block.in", "pump.out", "pump.in", "block.out"}, nil, nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			l := loop.Of(join(route.Plan{Parts: append(parts, part("rad2", 0, "low", "high"))}, tt.ends...))[0]
			if !reflect.DeepEqual(l.Against, tt.against) || !reflect.DeepEqual(l.Turned, tt.turned) {
				t.Errorf("against %q, turned %q, want %q, %q", l.Against, l.Turned, tt.against, tt.turned)
			}
		})
	}
}

// Ports at 20 (pump), 100 (block) and 200 mm (radiator); run c dips to 5.
func TestLevels(t *testing.T) {
	p := ring()
	sol := find.Solution{Runs: []find.Solved{solved(p, "c", vec{0, 5, 0}, vec{0, 200, 0})}}
	low, high := loop.Levels(p, sol, loop.Of(p)[0])
	if low.At != (vec{0, 5, 0}) || low.Where != "c" || low.Opening != "pump.fill" || low.Off != 15 || !low.Served() {
		t.Errorf("low = %+v, want run c at 5 mm and pump.fill 15 mm above", low)
	}
	if high.At[1] != 200 || high.Where != "rad.low" || high.Opening != "pump.fill" || high.Off != 180 || high.Served() {
		t.Errorf("high = %+v, want rad.low at 200 mm and pump.fill 180 mm below", high)
	}
}

// Of two places equally high but for a rounding the first is told.
func TestLevelsHangOnNoLastBit(t *testing.T) {
	p := ring()
	want, high := loop.Levels(p, find.Solution{}, loop.Of(p)[0])
	for _, noise := range []float64{-1e-9, 0, 1e-9} {
		sol := find.Solution{Runs: []find.Solved{solved(p, "c", vec{7, 20 + noise, 0}, vec{7, 200 + noise, 0})}}
		if l, h := loop.Levels(p, sol, loop.Of(p)[0]); l.Where != want.Where || h.Where != high.Where {
			t.Errorf("with noise of %v the levels are at %s and %s, want %s and %s", noise, l.Where, h.Where, want.Where, high.Where)
		}
	}
}

// A bend's lowest place lies between its ends: centre 40 up, radius 32, so 8 mm.
func TestABendsLowestPlaceCounts(t *testing.T) {
	p := ring()
	tube := bends.Tube{OD: 16, ID: 10, Radius: 32, StraightBetween: 1}
	f, err := bends.Form(tube, bends.Path{Corners: []vec{{-100, 108, 0}, {0, 8 - 32*(math.Sqrt2-1), 0}, {100, 108, 0}}})
	if err != nil {
		t.Fatal(err)
	}
	r, _ := p.FindRun("a")
	sol := find.Solution{Runs: []find.Solved{{Run: r, Ways: []find.Way{{Run: "a", Formed: f}}}}}
	want := f.Corners[1][1] + 32*(1/math.Cos(f.Bends[0].Turn/2*math.Pi/180)-1)
	if low, _ := loop.Levels(p, sol, loop.Of(p)[0]); math.Abs(low.At[1]-want) > 1e-9 {
		t.Errorf("lowest place at %v, want %v: the corner plus r·(1/cos(turn/2) − 1)", low.At, want)
	}
}

func TestAValveOpensTheLoop(t *testing.T) {
	p := ring()
	p.Parts[0] = part("pump", 20, "in", "out")
	s := solved(p, "a", vec{0, 10, 0}, vec{0, 100, 0})
	valve := route.Fitting{Name: "ball-valve", Kind: route.Valve, Length: 40}
	s.Ways[0].End = route.Laid{
		Port:   route.PlacedPort{Ref: ref("block.in")},
		Bodies: []route.Body{{Fitting: valve, From: route.NewFrame(vec{0, 60, 0}, vec{0, -1, 0})}, {Fitting: route.Fitting{Kind: route.Socket}}},
	}
	low, _ := loop.Levels(p, find.Solution{Runs: []find.Solved{s}}, loop.Of(p)[0])
	if low.Opening != "the ball-valve on block.in" || low.Off != 30 || !low.Served() {
		t.Errorf("low = %+v, want the valve, its middle at 60 − 20 = 40, 30 above the low point", low)
	}
	if low, _ := loop.Levels(p, find.Solution{}, loop.Of(p)[0]); low.Opening != "" || low.Served() {
		t.Errorf("without the valve low = %+v, want no opening", low)
	}
}

// 0.3 litres and 1000 mm of 10 mm bore: π/4·10²·1000 = 78 540 mm³ = 0.0785 litres.
func TestVolume(t *testing.T) {
	p := ring()
	p.Parts[0].Volume = 0.3
	sol := find.Solution{Runs: []find.Solved{solved(p, "a", vec{}, vec{1000, 0, 0})}}
	if got, want := loop.Volume(p, sol, loop.Of(p)[0]), 0.3+0.0785398163; math.Abs(got-want) > 1e-9 {
		t.Errorf("volume %v litres, want %v", got, want)
	}
}

func TestWorstMetals(t *testing.T) {
	tests := []struct {
		name        string
		block, rad  []string
		tube        string
		noble, base string
		volts       float64
		clash       bool
		source      string
	}{
		{"usual metals", []string{"copper", "nickel"}, []string{"copper", "brass"}, "petg", "", "", 0, false, "brass 0.40 − nickel 0.30 = 0.10, under 0.15"},
		{"an aluminium radiator", []string{"copper", "nickel"}, []string{"aluminium"}, "petg", "nickel", "aluminium", 0.60, true, "0.90 − 0.30"},
		{"exactly the limit passes", []string{"copper"}, []string{"stainless"}, "glass", "", "", 0, false, "0.50 − 0.35 = 0.15"},
		{"the tube counts", []string{"aluminium"}, nil, "copper", "copper", "aluminium", 0.55, true, "0.90 − 0.35"},
		{"unknown metals are not judged", []string{"adamant"}, []string{"aluminium"}, "petg", "", "", 0, false, "no index"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p := ring()
			p.Parts[1].Metals, p.Parts[2].Metals, p.Tubes[0].Material = tt.block, tt.rad, tt.tube
			got, clash := loop.Worst(p, loop.Of(p)[0])
			if clash != tt.clash {
				t.Fatalf("Worst = %+v, %v, want %v: %s", got, clash, tt.clash, tt.source)
			}
			if clash && (got.Noble.Name != tt.noble || got.Base.Name != tt.base || math.Abs(got.Volts-tt.volts) > 1e-9) {
				t.Errorf("Worst = %+v, want %s and %s, %v V: %s", got, tt.noble, tt.base, tt.volts, tt.source)
			}
		})
	}
}
