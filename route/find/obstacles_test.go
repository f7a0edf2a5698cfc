package find

import (
	"context"
	"errors"
	"math"
	"slices"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/route"
	"tubewright/route/clear"
)

// walled is a run that must climb over a wall: both ports low, the wall from
// side to side of the case.
func walled() route.Plan {
	plan := between(v(100, 60, 100), v(1, 0, 0), v(400, 60, 100), v(-1, 0, 0), box("wall", v(240, 0, 0), v(260, 160, 200)))
	plan.Case = mgl64.Vec3{500, 400, 200}
	return plan
}

// keepsClear checks a way against every solid again with shapes laid in the
// simplest manner: rods for straights and short rods along bends.
func keepsClear(t *testing.T, plan route.Plan, w Way, need float64, skip ...string) {
	t.Helper()
	for _, part := range plan.PlaceAll() {
		for _, s := range part.Solids {
			for at := 0.0; at <= w.Formed.Developed; at += 0.5 {
				p, _ := w.Formed.At(at)
				ball := clear.Rod{From: p, To: p, Radius: w.Tube.OD / 2}
				if gap := clear.Between(ball, s).Distance; gap < need-0.001 {
					t.Fatalf("%q comes within %.3f of %q at %.1f along it, want %.1f", w.Name, gap, part.Part.Name, at, need)
				}
			}
		}
	}
	_ = skip
}

func TestOverAWall(t *testing.T) {
	plan := walled()
	w := chosen(t, plan)
	keepsClear(t, plan, w, plan.Clear)
	if n := len(w.Formed.Bends); n != 4 {
		t.Errorf("%q has %d bends; up, over, down and on are four", w.Name, n)
	}
}

func TestThreeBendsRoundABlock(t *testing.T) {
	// the one bend's corner is taken, and so are the two short cuts
	plan := between(v(100, 100, 50), v(1, 0, 0), v(250, 350, 50), v(0, -1, 0), box("block", v(190, 60, 0), v(320, 200, 100)))
	plan.Case = mgl64.Vec3{400, 400, 100}
	w := chosen(t, plan)
	keepsClear(t, plan, w, plan.Clear)
	if n := len(w.Formed.Bends); n < 3 {
		t.Errorf("%q has %d bends, the block leaves no way with fewer than three", w.Name, n)
	}
}

func TestRoundACylinder(t *testing.T) {
	plan := between(v(100, 100, 100), v(1, 0, 0), v(400, 100, 100), v(-1, 0, 0))
	plan.Parts = append(plan.Parts, route.Part{Name: "pump", Solids: []route.Solid{{From: v(250, 60, 100), To: v(250, 140, 100), Radius: 30}}})
	w := chosen(t, plan)
	keepsClear(t, plan, w, plan.Clear)
}

func TestNoWayTellsWhatIsInTheWay(t *testing.T) {
	plan := between(v(100, 100, 100), v(1, 0, 0), v(400, 100, 100), v(-1, 0, 0), box("slab", v(240, 0, 0), v(260, 200, 200)))
	plan.Case = mgl64.Vec3{500, 200, 200}
	s := solved(t, plan)
	var none *NoWayError
	if !errors.As(s.Problem, &none) || s.Chosen != -1 {
		t.Fatalf("chosen %d, problem %v, want a NoWayError", s.Chosen, s.Problem)
	}
	// straight through: the tube's side is 8 inside each face at least; the least
	// shift that parts it from the slab with 4 to spare is along x or out of it
	if none.Run != "run" || none.Way != "slab" || none.Short <= 4 || math.IsInf(none.Short, 0) || len(none.Tried) == 0 || none.Fix == "" {
		t.Errorf("got %+v", *none)
	}
	if _, err := Ways(context.Background(), plan, "run"); !errors.As(err, &none) {
		t.Errorf("Ways says %v", err)
	}
}

func TestNoWayTooNearToForm(t *testing.T) {
	// ports 30 apart and face to face leave 18 between the stops; an end needs 26
	s := solved(t, between(v(100, 100, 100), v(1, 0, 0), v(130, 100, 100), v(-1, 0, 0)))
	var none *NoWayError
	if !errors.As(s.Problem, &none) || none.Nearest != "straight" || !near(none.Short, 8, rounding) || none.Way != "" {
		t.Errorf("got %v, want straight to lack 26 − 18 = 8", s.Problem)
	}
}

func TestNoWayWithoutSocketTubeOrPort(t *testing.T) {
	for name, spoil := range map[string]func(*route.Plan){
		"socket": func(p *route.Plan) { p.Fittings = nil },
		"tube":   func(p *route.Plan) { p.Tube = "none" },
		"port":   func(p *route.Plan) { p.Runs[0].To.Port = "none" },
		"chain":  func(p *route.Plan) { p.Runs[0].Start = route.Chain{{Fitting: "none"}} },
		"open":   func(p *route.Plan) { p.Runs[0].Start = route.Chain{} },
	} {
		plan := worked()
		spoil(&plan)
		var none *NoWayError
		if s := solved(t, plan); !errors.As(s.Problem, &none) || none.Cause == nil || none.Error() == "" {
			t.Errorf("without %s: problem %v, want a NoWayError with its cause", name, s.Problem)
		}
	}
}

// TestBarOfExactlyTheBlank: a bar as long as the blank is long enough, whatever
// the last bit of either; one shorter by the hundredth that is sawn to is not.
func TestBarOfExactlyTheBlank(t *testing.T) {
	plan := worked()
	w := chosen(t, plan)
	blank := w.Formed.Cut(w.Ends, plan.Saw.Square).Blank
	for _, c := range []struct {
		less float64
		want bool
	}{{-1e-9, true}, {0, true}, {1e-9, true}, {0.01, false}} {
		plan.Stock = []route.Stock{{Tube: plan.Tube, Length: blank - c.less}}
		s := solved(t, plan)
		if got := slices.Contains(names(s.Ways), w.Name); got != c.want {
			t.Errorf("with a bar %g mm shorter than the blank, %q found %v, want %v", c.less, w.Name, got, c.want)
		}
	}
}

func TestLongestBarIsKept(t *testing.T) {
	plan := worked()
	plan.Stock = []route.Stock{{Tube: plan.Tube, Length: 300}}
	w := chosen(t, plan)
	// the one bend's blank of 305.27 does not come out of 300; two bends are shorter
	if blank := w.Formed.Cut(w.Ends, plan.Saw.Square).Blank; blank > 300 || w.Name == "one bend" {
		t.Errorf("%q needs a blank of %.2f, the longest bar is 300", w.Name, blank)
	}
	plan.Stock[0].Length = 100
	if s := solved(t, plan); s.Problem != nil || s.Ways[0].Name != "one bend" {
		t.Errorf("no bar is long enough: the best way stands and the cut list says what is short; got %v, %v", names(s.Ways), s.Problem)
	}
	plan.Offcuts = []route.Offcuts{{Tube: plan.Tube, Lengths: []float64{320}}}
	if w := chosen(t, plan); w.Name != "one bend" {
		t.Errorf("an offcut of 320 is long enough for one bend, got %q", w.Name)
	}
}

func TestViaCornersAreKept(t *testing.T) {
	for _, via := range [][]mgl64.Vec3{
		{v(250, 100, 50)}, {v(164, 100, 50), v(164, 186, 50)}, {v(200, 60, 90)}, {v(160, 160, 120), v(250, 160, 120)},
	} {
		plan := worked()
		plan.Case = mgl64.Vec3{}
		plan.Runs[0].Via = via
		s := solved(t, plan)
		if len(s.Ways) == 0 {
			t.Errorf("via %v: %v", via, s.Problem)
		}
		for _, w := range s.Ways {
			if n := viaPassed(w, via); n < len(via) {
				t.Errorf("via %v: %q goes by %v, past %d of them", via, w.Name, w.Formed.Corners, n)
			}
		}
	}
}

// viaPassed counts the via points, in order, that are corners of a way or lie on
// its straights between the bends.
func viaPassed(w Way, via []mgl64.Vec3) int {
	next := 0
	at := func(p mgl64.Vec3) {
		if next < len(via) && p.Sub(via[next]).Len() < 0.02 {
			next++
		}
	}
	pieces := w.Formed.Pieces()
	for i, p := range pieces {
		for p.Radius == 0 && next < len(via) {
			s := via[next].Sub(p.From).Dot(p.To.Sub(p.From)) / p.To.Sub(p.From).Dot(p.To.Sub(p.From))
			was := next
			if at(p.From.Add(p.To.Sub(p.From).Mul(max(0, min(1, s))))); next == was {
				break
			}
		}
		if i < len(pieces)-1 && p.Radius == 0 {
			at(w.Formed.Corners[i/2+1])
		}
	}
	return next
}

func TestDrawnPathStands(t *testing.T) {
	plan := worked()
	plan.Runs[0].Way = route.Drawn
	plan.Runs[0].Via = []mgl64.Vec3{v(250, 100, 50)}
	plan.Parts = append(plan.Parts, box("block", v(240, 90, 0), v(260, 110, 100)))
	s := solved(t, plan)
	w, ok := s.Way()
	if !ok || !s.Drawn || s.Problem != nil || !near(w.Formed.Developed, 112+112+16*math.Pi, rounding) {
		t.Errorf("a drawn path must stand even where it hits: %+v, %v", w.Formed, s.Problem)
	}
	plan.Runs[0].Via = []mgl64.Vec3{v(120, 100, 50), v(120, 244, 50)}
	s = solved(t, plan)
	var faults bends.Faults
	if !errors.As(s.Problem, &faults) || !s.Drawn || s.Chosen != -1 {
		t.Errorf("problem %v, want what the bends refuse", s.Problem)
	}
	if _, err := Ways(context.Background(), plan, "run"); !errors.As(err, &faults) {
		t.Errorf("Ways says %v", err)
	}
}

func TestDrawnBetweenGivenChains(t *testing.T) {
	plan := withExtras(worked())
	plan.Runs[0].Way = route.Drawn
	plan.Runs[0].Start = route.Chain{{Fitting: "elbow-90"}, {Fitting: "socket-16"}}
	plan.Runs[0].Via = []mgl64.Vec3{v(114, 180, 50), v(250, 180, 50)}
	w := chosen(t, plan)
	if w.Miss.Degrees > 1e-3 {
		t.Errorf("the elbow is not turned to the path: %.3f° askew", w.Miss.Degrees)
	}
}

func TestPickIsTaken(t *testing.T) {
	plan := worked()
	plan.Runs[0].Pick = "two bends"
	if w := chosen(t, plan); w.Name != "two bends" {
		t.Errorf("picked two bends, got %q", w.Name)
	}
	plan.Runs[0].Pick = "no such way"
	if w := chosen(t, plan); w.Name != "one bend" {
		t.Errorf("an unknown pick leaves the best, got %q", w.Name)
	}
}
