package insert_test

import (
	"context"
	"testing"

	"tubewright/route"
	"tubewright/route/insert"
)

var (
	free   = insert.Options{}
	stay   = insert.Options{Stay: true}
	thread = insert.Options{Thread: 5}
)

// cases were judged by hand, of a stiff piece that may be moved in any way.
var cases = []struct {
	name  string
	scene *scene
	opt   insert.Options
	can   bool
}{
	// Both sockets off: a tube between open faces comes in from the side.
	{"facing, 80 apart", facing(80), free, true},
	{"facing, 120 apart", facing(120), free, true},
	{"facing, 300 apart", facing(300), free, true},
	{"facing along y", facing(150).turned(), free, true},
	{"facing along z", facing(150).turned().turned(), free, true},
	{"elbow", elbow(120, 120), free, true},
	{"elbow, long", elbow(300, 200), free, true},
	{"elbow, turned", elbow(150, 90).turned(), free, true},
	{"elbow, turned twice", elbow(150, 90).turned().turned(), free, true},
	{"offset", offset(200, 90), free, true},
	{"offset, turned", offset(200, 90).turned(), free, true},
	{"offset, long", offset(320, 120), free, true},
	// Ports that face the same way: both ends go in at once.
	{"loop, sockets stay", loop(90, 120), stay, true},
	{"loop, wide, sockets stay", loop(90, 260), stay, true},
	{"loop, long, sockets stay", loop(220, 120), stay, true},
	{"loop, turned, sockets stay", loop(120, 140).turned(), stay, true},
	{"loop, turned twice, sockets stay", loop(120, 140).turned().turned(), stay, true},
	{"loop with threads", loop(90, 120), thread, true},
	{"loop with threads, turned", loop(90, 120).turned(), thread, true},
	// Something beside it.
	{"facing, through a slot", facing(160).slotted(70, 10, 20), free, true},
	{"facing, through a slot wide enough for the collar", facing(160).slotted(70, 10, 30), free, true},
	{"facing, through a thick slot", facing(160).slotted(60, 40, 18), free, true},
	{"elbow, leg through a slot", elbow(160, 120).slotted(50, 10, 20), free, true},
	{"facing, a tube beside it", facing(140).beside(140, 60, 0), free, true},
	{"facing, a tube above it", facing(140).beside(140, 0, -60), free, true},
	{"facing, a tube before it", facing(140).beside(140, 0, 60), free, true},
	{"elbow, a plate below", elbow(140, 120).part("plate", nil, vec{}, vec{}), free, true},
	{"loop through a slot, sockets stay", loop(140, 160).slotted(50, 6, 20), stay, true},
	{"elbow, a leg through a hole: it draws out along the leg", elbow(160, 120).holed(50, 10, 20), free, true},
	{"loop, one leg through a hole wide enough, sockets stay", loop(140, 160).holed(60, 1, 500), stay, true},

	// Sockets that stay and face each other: 11 mm too long.
	{"facing, sockets stay, 80", facing(80), stay, false},
	{"facing, sockets stay, 120", facing(120), stay, false},
	{"facing, sockets stay, 160", facing(160), stay, false},
	{"facing, sockets stay, 240", facing(240), stay, false},
	{"facing along y, sockets stay", facing(150).turned(), stay, false},
	{"facing along z, sockets stay", facing(150).turned().turned(), stay, false},
	// Two ways at once.
	{"elbow, sockets stay", elbow(100, 100), stay, false},
	{"elbow, sockets stay, longer", elbow(130, 110), stay, false},
	{"elbow, sockets stay, turned", elbow(110, 100).turned(), stay, false},
	{"elbow, sockets stay, turned twice", elbow(110, 100).turned().turned(), stay, false},
	{"elbow, sockets stay, uneven", elbow(150, 80), stay, false},
	{"offset, sockets stay", offset(170, 80), stay, false},
	{"offset, sockets stay, wider", offset(170, 110), stay, false},
	{"offset, sockets stay, turned", offset(180, 90).turned(), stay, false},
	// Threads of 5 mm against 1 mm of play: 4 mm short.
	{"facing, threads", facing(120), thread, false},
	{"facing, threads, short", facing(80), thread, false},
	{"facing along y, threads", facing(140).turned(), thread, false},
	{"facing along z, threads", facing(140).turned().turned(), thread, false},
	// Through a hole: the tube is longer than what is free on either side of it.
	{"through a hole of 17", facing(160).holed(70, 20, 17), free, false},
	{"through a hole of 18", facing(160).holed(70, 20, 18), free, false},
	{"through a hole of 19, thick", facing(160).holed(60, 40, 19), free, false},
	{"through a hole of 20, thick", facing(160).holed(50, 60, 20), free, false},
	{"through a hole of 18 along y", facing(160).holed(70, 20, 18).turned(), free, false},
	{"through a hole of 18 along z", facing(160).holed(70, 20, 18).turned().turned(), free, false},
	{"through a hole of 18, sockets stay", facing(160).holed(70, 20, 18), stay, false},
	{"through a hole of 18, threads", facing(160).holed(70, 20, 18), thread, false},
	{"through a tunnel", facing(200).holed(30, 140, 19), free, false},
	{"through a tunnel along y", facing(200).holed(30, 140, 19).turned(), free, false},
	{"through two holes", facing(200).holed(40, 20, 18).holed(140, 20, 18), free, false},
	{"through a hole for tube and collar, too short to draw out", facing(160).holed(70, 20, 26), free, false},
}

func TestNoVerdictIsWrong(t *testing.T) {
	undecided, can := 0, 0
	for _, tc := range cases {
		plan, sol := tc.scene.solve(t)
		r, ok := insert.Run(plan, sol, "r", func(string) bool { return true }, tc.opt)
		if !ok {
			t.Fatalf("%s: no such run", tc.name)
		}
		if tc.can {
			can++
		}
		switch {
		case r.Verdict == insert.Undecided:
			undecided++
			t.Logf("%s: not decided", tc.name)
		case (r.Verdict == insert.Possible) != tc.can:
			t.Errorf("%s: %s, by hand possible is %v: %s", tc.name, r.Verdict, tc.can, r.Words)
		case r.Verdict == insert.Impossible && !(r.Short > 0 && r.Blocker != ""):
			t.Errorf("%s: impossible by %v of %q", tc.name, r.Short, r.Blocker)
		}
	}
	t.Logf("%d cases, %d possible by hand, %d not decided", len(cases), can, undecided)
	if len(cases) != 60 || can != 30 || undecided > len(cases)/10 {
		t.Errorf("%d cases, %d possible, %d not decided; want 60, 30, at most 6", len(cases), can, undecided)
	}
}

func TestShortfallsByHand(t *testing.T) {
	for _, tc := range []struct {
		scene *scene
		opt   insert.Options
		short float64
		words string
	}{
		{facing(120), stay, 11, "The tube is 11.0 mm too long to go between its sockets at a.p and b.p"}, // 12 − 0.5 to be out, 0.5 to push in
		{facing(120), thread, 4, "4.0 mm too long"},                                                      // 5 of thread, 1 of play
	} {
		plan, sol := tc.scene.solve(t)
		r, _ := insert.Run(plan, sol, "r", func(string) bool { return true }, tc.opt)
		if d := r.Short - tc.short; d > 1e-9 || d < -1e-9 || !told(r.Words, tc.words) || r.Blocker != "the sockets" {
			t.Errorf("short %v by %s, want %v: %s", r.Short, r.Blocker, tc.short, r.Words)
		}
	}
	plan, sol := facing(120).solve(t)
	r, _ := insert.Run(plan, sol, "r", func(string) bool { return true }, free)
	if !r.Off[0] || !r.Off[1] || !r.InLine || r.Play != 1 || !told(r.Words, "Unscrew the sockets at a.p and b.p") || !told(r.Words, "1.0 mm of play") {
		t.Errorf("facing: %+v", r)
	}
	plan, sol = loop(90, 120).solve(t)
	r, _ = insert.Run(plan, sol, "r", func(string) bool { return true }, free)
	if r.Off != [2]bool{} || r.InLine || !told(r.Words, "Both sockets stay") {
		t.Errorf("loop: %+v", r)
	}
	if _, ok := insert.Run(plan, sol, "nobody", nil, free); ok {
		t.Error("a run that is not there has an answer")
	}
}

// Two tubes in a channel open toward you, one behind the other: the far one goes
// in first and comes out last.
func stacked() *scene {
	s := facing(140).beside(140, 0, 40)
	return s.part("channel", []route.Solid{
		boxed(vec{30, 13, -100}, vec{110, 30, 80}), boxed(vec{30, -30, -100}, vec{110, -13, 80}), boxed(vec{30, -13, -100}, vec{110, 13, -20}),
	}, vec{}, vec{})
}

func TestOrderWhereItMatters(t *testing.T) {
	plan, sol := stacked().solve(t)
	r := machineOf(t, plan, sol, free)
	if len(r.Order) != 2 || r.Order[0] != "r" || r.Order[1] != "s" || len(r.Left) != 0 {
		t.Fatalf("order %v, left %v", r.Order, r.Left)
	}
	if len(r.First[0]) != 1 || r.First[0][0] != "s" || len(r.First[1]) != 0 {
		t.Errorf("first out are %v", r.First)
	}
	plan, sol = facing(160).holed(70, 20, 18).solve(t)
	if r := machineOf(t, plan, sol, free); len(r.Left) != 1 || r.In[0].Verdict != insert.Impossible || !told(r.In[0].Words, "No path of slides leads in") {
		t.Errorf("through a hole: %+v", r)
	}
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := insert.Machine(ctx, plan, sol, free); err == nil {
		t.Error("a stopped search gives no error")
	}
}
