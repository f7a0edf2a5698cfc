package mend_test

import (
	"slices"
	"strings"
	"testing"

	"tubewright/bends"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/mend"
)

// twoInOne is a wide box at the left wall and one that stands 6 mm in it; both
// fill the case from floor to top and from far wall to open side.
func twoInOne() route.Plan {
	plan := bench()
	plan.Parts = []route.Part{box("a", vec{0, 0, 0}, vec{100, 300, 300}), box("b", vec{94, 0, 0}, vec{150, 300, 300})}
	return plan
}

// overASill is a glass tube from (50, 100, 150) to (450, 100, 150) over a sill
// 93.9 mm high across the case.
func overASill() route.Plan {
	plan := bench()
	plan.Parts = []route.Part{
		hole("a", vec{50, 100, 150}, vec{1, 0, 0}), hole("b", vec{450, 100, 150}, vec{-1, 0, 0}),
		box("sill", vec{200, 20, 0}, vec{300, 93.9, 300}),
	}
	plan.Runs = []route.Run{run("over", "a.p", "b.p")}
	plan.Runs[0].Tube = "glass-16-12"
	return plan
}

// tightCorner is a drawn corner 54 mm from both stops.
func tightCorner() route.Plan {
	plan := bench()
	plan.Parts = []route.Part{hole("a", vec{94, 100, 50}, vec{1, 0, 0}), hole("b", vec{154, 160, 50}, vec{0, -1, 0})}
	plan.Runs = []route.Run{run("corner", "a.p", "b.p")}
	plan.Runs[0].Way, plan.Runs[0].Via = route.Drawn, []vec{{154, 100, 50}}
	return plan
}

// crossed is two glass tubes between two parts that face each other, each from
// the lower port of the one to the upper of the other.
func crossed() route.Plan {
	plan := bench()
	p := with(box("p", vec{0, 50, 100}, vec{50, 200, 200}), "low", vec{50, 100, 150}, vec{1, 0, 0}, route.Any)
	q := with(box("q", vec{450, 50, 100}, vec{500, 200, 200}), "low", vec{450, 100, 150}, vec{-1, 0, 0}, route.Any)
	p = with(p, "high", vec{50, 140, 150}, vec{1, 0, 0}, route.Any)
	q = with(q, "high", vec{450, 140, 150}, vec{-1, 0, 0}, route.Any)
	p.Passages, q.Passages = [][2]string{{"low", "high"}}, [][2]string{{"low", "high"}}
	plan.Parts = []route.Part{p, q}
	plan.Runs = []route.Run{run("up", "p.low", "q.high"), run("down", "p.high", "q.low")}
	plan.Tube = "glass-16-12"
	return plan
}

// picked is two straight tubes that meet in the middle, and both are picked.
func picked() route.Plan {
	plan := bench()
	plan.Parts = []route.Part{
		hole("left", vec{50, 150, 150}, vec{1, 0, 0}), hole("right", vec{450, 150, 150}, vec{-1, 0, 0}),
		hole("floor", vec{250, 20, 150}, vec{0, 1, 0}), hole("top", vec{250, 280, 150}, vec{0, -1, 0}),
	}
	plan.Runs = []route.Run{run("across", "left.p", "right.p"), run("up", "floor.p", "top.p")}
	for i := range plan.Runs {
		plan.Runs[i].Pick = "straight"
	}
	return plan
}

// side by side on one part, 26.5 mm apart: collars of 24 mm leave 2.5. At the
// other part one port stands 60 mm back.
func collars() route.Plan {
	plan := bench()
	plan.Fittings = append(plan.Fittings, extender(15), extender(20), extender(25), extender(30))
	p := with(box("p", vec{0, 50, 100}, vec{50, 200, 200}), "low", vec{50, 100, 150}, vec{1, 0, 0}, route.Any)
	p = with(p, "high", vec{50, 126.5, 150}, vec{1, 0, 0}, route.Any)
	q := with(box("q", vec{450, 50, 100}, vec{500, 112, 200}), "low", vec{450, 100, 150}, vec{-1, 0, 0}, route.Any)
	s := with(box("s", vec{390, 116.5, 100}, vec{500, 200, 200}), "high", vec{390, 126.5, 150}, vec{-1, 0, 0}, route.Any)
	plan.Parts = []route.Part{p, q, s}
	plan.Runs = []route.Run{run("low", "p.low", "q.low"), run("high", "p.high", "s.high")}
	plan.Tube = "glass-16-12"
	for i := range plan.Runs {
		plan.Runs[i].Start = route.Chain{{Fitting: "socket-16"}}
		plan.Runs[i].End = route.Chain{{Fitting: "socket-16"}}
	}
	return plan
}

// ring is a pump and a block one above the other, joined by two straight tubes;
// the pump drives from its port "out".
func ring(from, to string) route.Plan {
	plan := bench()
	p := with(box("pump", vec{50, 20, 100}, vec{250, 50, 200}), "out", vec{100, 50, 150}, vec{0, 1, 0}, route.Out)
	p = with(p, "in", vec{200, 50, 150}, vec{0, 1, 0}, route.In)
	b := with(box("block", vec{50, 200, 100}, vec{250, 250, 200}), "in", vec{100, 200, 150}, vec{0, -1, 0}, route.In)
	b = with(b, "out", vec{200, 200, 150}, vec{0, -1, 0}, route.Out)
	b = with(b, "spare", vec{250, 225, 150}, vec{1, 0, 0}, route.Any)
	p.Passages, b.Passages = [][2]string{{"in", "out"}}, [][2]string{{"in", "out"}, {"spare", "in"}}
	plan.Parts = []route.Part{p, b}
	plan.Runs = []route.Run{run("feed", "pump."+from, "block.in"), run("back", "pump."+to, "block.out")}
	return plan
}

func TestWorkedByHand(t *testing.T) {
	tests := []struct {
		name   string
		plan   func() route.Plan
		code   check.Code
		kind   string // of the offer looked for
		words  string
		least  bool
		effort int
		source string
	}{
		{
			"a part in a part", twoInOne, check.PartHitsPart, "move", "Move b 6 mm in +x.", true, 0,
			"100 − 94; a has no room on any side, and b none in y and z",
		},
		{
			"a sill under a glass tube", overASill, check.NoWay, "move", "Move sill 6 mm in -y.", true, 0,
			"100 − 8 for the tube − 4 clear − 0.01 kept by the search = 87.99, and 93.9 − 6 is the first whole step below",
		},
		{
			"a corner too near for the former", tightCorner, check.CannotForm, "former",
			"Use a 28 mm former for petg-16-12 instead of one of 32 mm.", true, 0,
			"54 from stop to corner less 26 of straight",
		},
		{
			"tubes crossed", crossed, check.NoWay, "swap-ports", "Swap the runs on p.high and p.low.", false, 0,
			"each port then faces the other of its run",
		},
		{
			"two picks that meet", picked, check.TubeHitsTube, "pick-way", "Let the best way be taken for run across again.", false, 0,
			"without its pick it goes round the other",
		},
		{
			"collars side by side", collars, check.CollarHits, "use-chain", "Put extender-25 and socket-16 on p.high, for run high.", true, 0,
			"a collar 20 long and 4 clear: 24 ahead, and 25 is the next sold; 26.5 − 10 − 12 = 4.5 beside the extender",
		},
		{
			"two runs on one port", func() route.Plan {
				plan := ring("out", "in")
				plan.Runs[1].To = ref("block.in")
				return plan
			}, check.PortTwice, "use-port", "Let run back end on block.out.", false, 0, "the other ports of the block are out and spare; the nearer in kind is as good",
		},
		{
			"a pump the wrong way round", func() route.Plan { return ring("in", "out") }, check.PumpBackwards, "swap-ports",
			"Swap the runs on pump.in and pump.out.", false, 0, "pump.in is an inlet and so is block.in",
		},
		{
			"a drawn path through a block", func() route.Plan {
				plan := bench()
				plan.Parts = []route.Part{
					hole("a", vec{50, 100, 150}, vec{1, 0, 0}), hole("b", vec{450, 100, 150}, vec{-1, 0, 0}),
					box("post", vec{240, 0, 140}, vec{260, 300, 160}),
				}
				plan.Runs = []route.Run{run("through", "a.p", "b.p")}
				plan.Runs[0].Way = route.Drawn
				return plan
			}, check.TubeHitsPart, "hand-back",
			"Hand run through back, so that its way is found afresh: what was drawn, picked or prescribed for it is dropped.", false, 0,
			"there is room round the post",
		},
		{
			"a via point in a block", func() route.Plan {
				plan := bench()
				plan.Parts = []route.Part{
					hole("a", vec{50, 100, 150}, vec{1, 0, 0}), hole("b", vec{450, 100, 150}, vec{-1, 0, 0}),
					box("post", vec{200, 150, 100}, vec{300, 250, 200}),
				}
				plan.Runs = []route.Run{run("by", "a.p", "b.p")}
				plan.Runs[0].Via = []vec{{250, 200, 150}}
				return plan
			}, check.NoWay, "drop-via", "Take away the via points of run by.", false, 1000, "the way below the post is straight",
		},
		{
			"past a wall", func() route.Plan {
				plan := bench()
				plan.Parts = []route.Part{box("a", vec{-12.5, 100, 100}, vec{50, 150, 150})}
				return plan
			}, check.PartOutsideCase, "move", "Move a 13 mm in +x.", true, 0, "12.5 past the left wall, in whole steps",
		},
		{
			"longer than the case is high", func() route.Plan {
				plan := bench()
				plan.Parts = []route.Part{box("a", vec{200, -50, 100}, vec{250, 350, 150})}
				return plan
			}, check.PartOutsideCase, "turn", "Turn a by +90° about z.", false, 0, "400 long, and the case is 500 that way",
		},
		{
			"copper in a loop with aluminium", func() route.Plan {
				plan := ring("out", "in")
				plan.Parts[0].Metals, plan.Parts[1].Metals = []string{"aluminium"}, []string{"aluminium"}
				plan.Tubes = append(plan.Tubes, route.Tube{Name: "copper-16", Material: "copper", Tube: bends.Tube{OD: 16, ID: 14, StraightEnd: 26}})
				plan.Runs[1].Tube = "copper-16"
				return plan
			}, check.MixedMetals, "use-tube", "Make run back of petg-16-12.", false, 0, "plastic is no metal",
		},
		{
			"a socket for another tube", func() route.Plan {
				plan := ring("out", "in")
				small := plan.Fittings[0]
				small.Name, small.OD = "socket-14", 14
				plan.Fittings = append(plan.Fittings, small)
				plan.Runs[0].Start = route.Chain{{Fitting: "socket-14"}}
				return plan
			}, check.MixedSizes, "use-chain", "Leave the fittings of run feed on pump.out to be chosen.", false, 0, "socket-16 takes the tube",
		},
		{
			"coolant that stops", func() route.Plan {
				plan := ring("out", "in")
				plan.Runs = plan.Runs[:1]
				return plan
			}, check.LoopOpen, "add-run", "Join pump.in to block.out with a run.", false, 0, "the two ports the coolant stops at",
		},
		{
			"too short between its sockets", func() route.Plan {
				plan := bench()
				plan.Tubes[1].StraightEnd = 0
				plan.Parts = []route.Part{hole("a", vec{100, 100, 150}, vec{1, 0, 0}), hole("b", vec{130, 100, 150}, vec{-1, 0, 0})}
				plan.Runs = []route.Run{run("short", "a.p", "b.p")}
				plan.Runs[0].Tube, plan.Runs[0].Way = "glass-16-12", route.Drawn
				return plan
			}, check.WindowMissed, "move", "Move a 6 mm in -x.", true, 0,
			"30 − 2·6 is 18 from stop to stop, and the sockets take 2·12",
		},
		{
			"ports out of line both ways", func() route.Plan {
				plan := bench()
				plan.Parts = []route.Part{hole("a", vec{50, 100, 150}, vec{1, 0, 0}), hole("b", vec{450, 103, 147.5}, vec{-1, 0, 0})}
				plan.Runs = []route.Run{run("line", "a.p", "b.p")}
				plan.Runs[0].Tube = "glass-16-12"
				return plan
			}, check.NoWay, "move", "Move a 3 mm in +y and 2.5 mm in -z.", false, 0, "103 − 100 and 150 − 147.5",
		},
		{
			"nothing but less room", func() route.Plan {
				plan := overASill()
				plan.Parts[2] = box("sill", vec{200, 0, 0}, vec{300, 89.5, 300})
				plan.Parts[2].Solids = append(plan.Parts[2].Solids, route.Solid{Box: true, From: vec{200, 110, 0}, To: vec{300, 300, 300}})
				return plan
			}, check.NoWay, "clear", "As a compromise, ask for 1 mm clear everywhere instead of 4 mm: less room for what is off by hand.", true, 0,
			"2.5 below and 2 above the tube; at 2 the search's own 0.01 is not there",
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			plan := tt.plan()
			a := advice(t, plan, tt.code, mend.Search{Effort: tt.effort})
			at := slices.IndexFunc(a.Offers, func(o mend.Offer) bool { return o.Words == tt.words })
			if at < 0 {
				t.Fatalf("does not offer %q (%s) but\n%s", tt.words, tt.source, strings.Join(words(a.Offers), "\n"))
			}
			if o := a.Offers[at]; o.Change.Kind() != tt.kind || o.Least != tt.least {
				t.Errorf("%q is of kind %s, least %v; want %s, %v", o.Words, o.Change.Kind(), o.Least, tt.kind, tt.least)
			}
			if a.Whole != (tt.effort == 0) {
				t.Errorf("whole search: %v", a.Whole)
			}
		})
	}
}
