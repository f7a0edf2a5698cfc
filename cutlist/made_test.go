package cutlist_test

import (
	"context"
	"encoding/json"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
	"tubewright/route/made"
	"tubewright/route/planfile"
	"tubewright/route/planfile/demoplan"
)

// demoPlan reads a demo plan.
func demoPlan(t testing.TB, name string) route.Plan {
	t.Helper()
	return demoplan.Read(t, name)
}

// answered solves a plan and makes its list.
func answered(t testing.TB, plan route.Plan) (cutlist.List, find.Solution) {
	t.Helper()
	sol, err := find.Solve(context.Background(), plan)
	if err != nil {
		t.Fatal(err)
	}
	list, err := cutlist.Build(context.Background(), plan, sol)
	if err != nil {
		t.Fatal(err)
	}
	return list, sol
}

func tubeOf(t testing.TB, l cutlist.List, run string) cutlist.Tube {
	t.Helper()
	i := slices.IndexFunc(l.Tubes, func(x cutlist.Tube) bool { return x.Run == run })
	if i < 0 {
		t.Fatalf("run %s has no tube", run)
	}
	return l.Tubes[i]
}

// recorded writes down that a run's tube was made as the list has it.
func recorded(t testing.TB, l cutlist.List, run string, from float64) route.Plan {
	t.Helper()
	tube := tubeOf(t, l, run)
	try := tube.Way.Attempt()
	try.Fits, try.Cut, try.CutFrom = true, tube.Cut.Aim, from
	plan, err := made.Record(l.Plan, run, try)
	if err != nil {
		t.Fatal(err)
	}
	return plan
}

func errorsIn(l cutlist.List) (codes []check.Code) {
	for _, f := range l.Findings {
		if f.Severity == check.Error {
			codes = append(codes, f.Code)
		}
	}
	return codes
}

// A tube that is made stays where it is, is not sawn again, and leaves the rest
// of its bar on the shelf; the others are as they were.
func TestAMadeTubeIsAFact(t *testing.T) {
	const run = "top-to-pump"
	before, _ := answered(t, demoPlan(t, "conservation-scanner"))
	after, sol := answered(t, recorded(t, before, run, 1000))
	for _, was := range before.Tubes {
		now := tubeOf(t, after, was.Run)
		for i, c := range was.Way.Formed.Corners {
			if now.Way.Formed.Corners[i].Sub(c).Len() > 1e-3 {
				t.Errorf("%s: corner %d has moved from %v to %v", was.Run, i, c, now.Way.Formed.Corners[i])
			}
		}
		if math.Abs(now.Cut.Aim-was.Cut.Aim) > 0.005 {
			t.Errorf("%s: cut to %.2f, was %.2f", was.Run, now.Cut.Aim, was.Cut.Aim)
		}
	}
	if tube := tubeOf(t, after, run); tube.Made != 1 || tube.Way.Name != find.AsMade {
		t.Errorf("made %d, way %q", tube.Made, tube.Way.Name)
	}
	for _, b := range after.Bars {
		for _, p := range b.Pieces {
			if p.Run == run && !p.Spare {
				t.Errorf("%s is sawn again from a bar of %.0f", run, b.Length)
			}
		}
	}
	if got := errorsIn(after); len(got) > 0 {
		t.Errorf("errors %v", got)
	}
	left := 1000 - tubeOf(t, before, run).Cut.Blank - 1
	if shelf := after.Plan.Offcuts[0].Lengths; math.Abs(shelf[len(shelf)-1]-left) > 0.006 {
		t.Errorf("the shelf holds %v, want %.2f too", shelf, left)
	}
	for _, s := range sol.Runs {
		if s.Run.Name == run && (!s.Drawn || len(s.Ways) != 1) {
			t.Errorf("%d ways, drawn %v; want the one that is there", len(s.Ways), s.Drawn)
		}
	}
	assertJSONSays(t, after, `"made"`, `"sawn"`, `"cut_from": 1000`)
}

func assertJSONSays(t *testing.T, l cutlist.List, words ...string) {
	t.Helper()
	text, err := l.JSON()
	if err != nil || !json.Valid(text) {
		t.Fatal(err)
	}
	for _, want := range words {
		if !strings.Contains(string(text), want) {
			t.Errorf("the answer does not say %s", want)
		}
	}
}

// A made tube is an obstacle to those that are still searched: with the tube of
// another run made right across, a run goes round it and hits nothing.
func TestOthersGoRoundAMadeTube(t *testing.T) {
	plan := crossing()
	free, _ := answered(t, plan)
	straight := tubeOf(t, free, "across")
	if len(straight.Bench.Bends) != 0 {
		t.Fatalf("with nothing in its way the run is bent: %s", straight.Way.Name)
	}
	try := straightUp()
	plan, err := made.Record(plan, "up", try)
	if err != nil {
		t.Fatal(err)
	}
	got, _ := answered(t, plan)
	if codes := errorsIn(got); len(codes) > 0 {
		t.Fatalf("errors %v", codes)
	}
	if now := tubeOf(t, got, "across"); len(now.Bench.Bends) == 0 {
		t.Errorf("the run still goes straight through the tube that is made: %v", now.Way.Formed.Corners)
	}
	if up := tubeOf(t, got, "up").Way.Formed.Corners; up[0].Sub(try.Corners[0]).Len()+up[1].Sub(try.Corners[1]).Len() > 1e-3 {
		t.Errorf("the made tube has moved to %v", up)
	}
}

// straightUp is a try at the run up that fits: 288 mm from stop to stop, 0.5 of
// seat gap at each end.
func straightUp() route.Attempt {
	return route.Attempt{
		Fits: true, Cut: 287, Corners: []mgl64.Vec3{{200, 11, 100}, {200, 299, 100}},
		Start: route.Chain{{Fitting: "socket-16"}}, End: route.Chain{{Fitting: "socket-16"}},
	}
}

// crossing is two runs whose shortest ways cross in the middle of the case.
func crossing() route.Plan {
	plan := route.Defaults()
	plan.Spares = route.Spares{}
	plan.Name, plan.Catalogue = "Crossing", planfile.Shelf()
	plan.Case, plan.Tube = mgl64.Vec3{400, 310, 200}, "petg-16-12"
	port := func(part string, at, facing mgl64.Vec3) {
		plan.Parts = append(plan.Parts, route.Part{Name: part, KnownFrom: route.Measured, Ports: []route.Port{
			{Name: "p", At: at, Facing: facing, Thread: "G1/4", Flow: route.Any},
		}})
	}
	port("left", mgl64.Vec3{5, 150, 100}, mgl64.Vec3{1, 0, 0})
	port("right", mgl64.Vec3{395, 150, 100}, mgl64.Vec3{-1, 0, 0})
	port("floor", mgl64.Vec3{200, 5, 100}, mgl64.Vec3{0, 1, 0})
	port("top", mgl64.Vec3{200, 305, 100}, mgl64.Vec3{0, -1, 0})
	ref := func(part string) route.PortRef { return route.PortRef{Part: part, Port: "p"} }
	plan.Runs = []route.Run{
		{Name: "across", From: ref("left"), To: ref("right")},
		{Name: "up", From: ref("floor"), To: ref("top")},
	}
	return plan
}

// A batch: one machine has its tube, two still need theirs.
func TestMadeCountsForOneMachine(t *testing.T) {
	plan := crossing()
	plan.Build = 3
	before, _ := answered(t, plan)
	after, _ := answered(t, recorded(t, before, "up", 0))
	n := 0
	for _, b := range after.Bars {
		for _, p := range b.Pieces {
			if p.Run == "up" {
				n++
				if p.Machine == 1 {
					t.Error("the first machine's tube is sawn again")
				}
			}
		}
	}
	if n != 2 {
		t.Errorf("%d pieces for up, want 2", n)
	}
}

// Failed tries use up bars of which there are only so many.
func TestFailedTriesUseUpStock(t *testing.T) {
	plan := crossing()
	plan.Stock = []route.Stock{{Tube: "petg-16-12", Length: 500, Price: 7, Most: 3}}
	if l, _ := answered(t, plan); len(errorsIn(l)) > 0 {
		t.Fatalf("errors %v before anything was sawn", errorsIn(l))
	}
	fail := route.Attempt{Wrong: "kinked", Blank: 400, CutFrom: 500}
	for n, want := range []check.Code{"", check.StockTooFew, check.StockTooFew} {
		var err error
		if plan, err = made.Record(plan, "across", fail); err != nil {
			t.Fatal(err)
		}
		l, _ := answered(t, plan)
		if got := errorsIn(l); want == "" && len(got) > 0 || want != "" && !slices.Contains(got, want) {
			t.Errorf("after %d failed tries: errors %v, want %q", n+1, got, want)
		}
		if tube := tubeOf(t, l, "across"); tube.Failed() != n+1 || tube.Made != 0 {
			t.Errorf("%d failed, %d made; want %d, 0", tube.Failed(), tube.Made, n+1)
		}
		if len(l.Sawn) != n+1 || l.Sawn[n].Left != 99 {
			t.Errorf("sawn: %+v", l.Sawn)
		}
	}
}

// A later measurement: the tube that is made is told not to fit any more, with
// by how much and a way out.
func TestMadeNoLongerFits(t *testing.T) {
	plan, err := made.Record(crossing(), "up", straightUp())
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name, fix string
		by        mgl64.Vec3
		measure   float64
		unit      string
	}{
		{"still fits: the seat gaps are 0.5 each", "", mgl64.Vec3{0, -0.8, 0}, 0, ""},
		{"2 mm too long: 1 of gaps goes, half of the rest at each end", "Trim 2.0 mm off its end A", mgl64.Vec3{0, -2, 0}, 0.5, "mm"},
		{"8 mm too short: play is 3 at each end, 1 of it in the gaps", "Make it again", mgl64.Vec3{0, 8, 0}, 1.5, "mm"},
		{"20 mm aside over 288: 4.0° askew", "Make it again", mgl64.Vec3{20, 0, 0}, 0, "deg"},
	} {
		moved := plan.Clone()
		moved.Parts[3].Ports[0].At = moved.Parts[3].Ports[0].At.Add(c.by)
		moved.Case[1] = 330
		l, _ := answered(t, moved)
		i := slices.IndexFunc(l.Findings, func(f check.Finding) bool { return f.Code == check.MadeNoLonger })
		if c.fix == "" {
			if i >= 0 {
				t.Errorf("%s: %s", c.name, l.Findings[i].What)
			}
			continue
		}
		if i < 0 {
			t.Errorf("%s: not told; findings %v", c.name, errorsIn(l))
			continue
		}
		f := l.Findings[i]
		if f.Severity != check.Error || !strings.HasPrefix(f.Fix, c.fix) || f.Unit != c.unit || c.measure > 0 && math.Abs(f.Measure-c.measure) > 0.06 {
			t.Errorf("%s: %s, measure %.2f %s\n%s\n%s\nwant %q and %.2f", c.name, f.Severity, f.Measure, f.Unit, f.What, f.Fix, c.fix, c.measure)
		}
	}
}

// With no try in the plan nothing of an answer is new.
func TestWithoutTriesNothingIsNew(t *testing.T) {
	l, _ := answered(t, crossing())
	text, err := l.JSON()
	if err != nil {
		t.Fatal(err)
	}
	for _, word := range []string{`"made"`, `"sawn"`} {
		if strings.Contains(string(text), word) {
			t.Errorf("the answer says %s", word)
		}
	}
	if !reflect.DeepEqual(l.Sawn, []made.Bar(nil)) {
		t.Errorf("sawn %v", l.Sawn)
	}
}
