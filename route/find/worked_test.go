package find

import (
	"context"
	"errors"
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/route"
)

// rounding is what two ways of working out one length may differ by, mm.
const rounding = 1e-6

func solved(t *testing.T, plan route.Plan) Solved {
	t.Helper()
	sol, err := Solve(context.Background(), plan)
	if err != nil {
		t.Fatalf("Solve: %v", err)
	}
	return sol.Runs[0]
}

func chosen(t *testing.T, plan route.Plan) Way {
	t.Helper()
	s := solved(t, plan)
	w, ok := s.Way()
	if !ok {
		t.Fatalf("no way: %v", s.Problem)
	}
	return w
}

func named(t *testing.T, plan route.Plan, name string) Way {
	t.Helper()
	s := solved(t, plan)
	for _, w := range s.Ways {
		if w.Name == name {
			return w
		}
	}
	t.Fatalf("no way is called %q: %v, problem %v", name, names(s.Ways), s.Problem)
	return Way{}
}

func names(ways []Way) []string {
	var list []string
	for _, w := range ways {
		list = append(list, w.Name)
	}
	return list
}

func near(a, b, within float64) bool { return math.Abs(a-b) <= within }

// withExtras gives a plan more fittings.
func withExtras(p route.Plan) route.Plan {
	p.Fittings = append(p.Fittings, extras()...)
	return p
}

// worked is the example that the plan format works by hand.
func worked() route.Plan {
	return between(v(100, 100, 50), v(1, 0, 0), v(250, 250, 50), v(0, -1, 0))
}

func TestWorkedExample(t *testing.T) {
	w := chosen(t, worked())
	cut := w.Formed.Cut(w.Ends, 2)
	source := "plan format, Worked by hand: corner distances 144 and 144, arc 32·pi/2"
	if w.Name != "one bend" || len(w.Formed.Bends) != 1 {
		t.Fatalf("way %q with %d bends, want one bend (%s)", w.Name, len(w.Formed.Bends), source)
	}
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"developed", w.Formed.Developed, 112 + 112 + 16*math.Pi},
		{"aim", cut.Aim, 273.265},
		{"shortest", cut.Shortest, 268.265},
		{"longest", cut.Longest, 274.265},
		{"blank", cut.Blank, 273.265 + 30 + 2},
		{"cost", w.Cost - handMiss(worked(), w), 60 + 112 + 112 + 16*math.Pi + 10*2*6.20},
		{"price", w.Price, 12.40},
		{"seals", float64(w.Seals), 4},
	} {
		if !near(c.got, c.want, 0.001) {
			t.Errorf("%s is %.4f, want %.4f (%s)", c.what, c.got, c.want, source)
		}
	}
	for i, want := range []mgl64.Vec3{v(106, 100, 50), v(250, 100, 50), v(250, 244, 50)} {
		if w.Formed.Corners[i].Sub(want).Len() > rounding {
			t.Errorf("corner %d is %v, want %v (%s)", i, w.Formed.Corners[i], want, source)
		}
	}
}

func TestRunTurnedRoundIsTheSameTube(t *testing.T) {
	plans := map[string]route.Plan{
		"one bend": worked(), "offset": between(v(100, 100, 100), v(1, 0, 0), v(400, 160, 120), v(-1, 0, 0)),
		"skew":     between(v(300, 300, 300), v(1, 0.3, 0.2), v(600, 500, 310), v(-0.2, 0.5, 0.7)),
		"elbows":   withExtras(between(v(300, 300, 300), v(1, 0, 0), v(300, 370, 300), v(1, 0, 0))),
		"obstacle": between(v(100, 100, 100), v(1, 0, 0), v(400, 300, 310), v(-1, 0, 0), box("wall", v(200, 0, 0), v(220, 500, 500))),
	}
	for _, name := range []string{"one bend", "offset", "skew", "elbows", "obstacle"} {
		plan := plans[name]
		there := solved(t, plan)
		r := &plan.Runs[0]
		r.From, r.To = r.To, r.From
		back := solved(t, plan)
		if len(there.Ways) != len(back.Ways) || len(there.Ways) == 0 {
			t.Fatalf("%s: %d ways there, %d back", name, len(there.Ways), len(back.Ways))
		}
		for i, w := range there.Ways {
			u := back.Ways[i]
			if w.Name != u.Name || !near(w.Formed.Developed, u.Formed.Developed, rounding) || !near(w.Cost, u.Cost, rounding) {
				t.Errorf("%s: way %d is %q %.4f there, %q %.4f back", name, i, w.Name, w.Formed.Developed, u.Name, u.Formed.Developed)
			}
			last := len(u.Formed.Corners) - 1
			if w.Formed.Corners[0].Sub(u.Formed.Corners[last]).Len() > rounding || u.Start.Port.Ref != r.From {
				t.Errorf("%s: way %d turned round does not begin where it ended", name, i)
			}
		}
	}
}

// checkEnds asks that a tube begins and ends at its chains' stops, along their
// ways within what the way says the sockets must give.
func checkEnds(t *testing.T, plan route.Plan, w Way) {
	t.Helper()
	path := w.Formed.Corners
	last := len(path) - 1
	for _, end := range []struct {
		laid     route.Laid
		at, next mgl64.Vec3
	}{{w.Start, path[0], path[1]}, {w.End, path[last], path[last-1]}} {
		chain := route.Chain{}
		for _, b := range end.laid.Bodies {
			chain = append(chain, route.Step{Fitting: b.Fitting.Name, Roll: b.Roll, Rolled: true})
		}
		again, err := plan.Lay(end.laid.Port, chain)
		if err != nil {
			t.Fatalf("%s: chain %v cannot be laid: %v", w.Name, chain, err)
		}
		if again.Stop.At.Sub(end.at).Len() > rounding {
			t.Errorf("%s: the tube ends at %v, the chain laid again holds it at %v", w.Name, end.at, again.Stop.At)
		}
		leg := end.next.Sub(end.at)
		along := leg.Dot(again.Stop.Dir)
		side := leg.Sub(again.Stop.Dir.Mul(along)).Len()
		// a tube may lie askew by the degrees told, and stand aside by what both sockets share
		allowed := math.Tan(w.Miss.Degrees*math.Pi/180)*leg.Len() + 2*w.Miss.Sideways + 1e-4
		if along <= 0 || side > allowed {
			t.Errorf("%s: the first leg goes %.4f aside over %.1f, allowed %.4f", w.Name, side, along, allowed)
		}
	}
}

func TestSocketsTakeUpSmallMisses(t *testing.T) {
	for _, c := range []struct {
		name     string
		to       mgl64.Vec3
		facing   mgl64.Vec3
		straight bool
		source   string
	}{
		{"in line", v(300, 100, 100), v(-1, 0, 0), true, "no miss"},
		{"0.5 aside", v(300, 100.5, 100), v(-1, 0, 0), true, "two sockets give 0.3 each"},
		{"0.6 aside", v(300, 100, 99.4), v(-1, 0, 0), true, "just what two sockets give"},
		{"0.7 aside", v(300, 100.7, 100), v(-1, 0, 0), false, "more than 0.6"},
		{"5 aside", v(300, 105, 100), v(-1, 0, 0), false, "askew by 1.5°: no tube is forced"},
		{"askew 0.9", v(300, 100, 100), v(-math.Cos(0.9*math.Pi/180), math.Sin(0.9*math.Pi/180), 0), true, "the last socket gives 1°"},
		{"askew 3", v(300, 100, 100), v(-math.Cos(3*math.Pi/180), math.Sin(3*math.Pi/180), 0), false, "more than both give"},
		{"facing away", v(300, 100, 100), v(1, 0, 0), false, "the tube would come from behind"},
	} {
		s := solved(t, between(v(100, 100, 100), v(1, 0, 0), c.to, c.facing))
		got := len(s.Ways) > 0 && s.Ways[0].Name == "straight"
		if got != c.straight {
			t.Errorf("%s: straight is %v, want %v (%s); ways %v", c.name, got, c.straight, c.source, names(s.Ways))
		}
		if got && (s.Ways[0].Miss.Sideways > 0.3+rounding || s.Ways[0].Miss.Degrees > 1+rounding) {
			t.Errorf("%s: miss %v is more than a socket gives", c.name, s.Ways[0].Miss)
		}
	}
}

func TestGlassStaysStraight(t *testing.T) {
	glass := func(p route.Plan) route.Plan {
		p.Tubes[0].Radius = 0
		return p
	}
	s := solved(t, glass(worked()))
	var none *NoWayError
	if len(s.Ways) != 0 || !errors.As(s.Problem, &none) {
		t.Errorf("a tube that cannot be bent got %v, problem %v", names(s.Ways), s.Problem)
	}
	s = solved(t, glass(withExtras(between(v(100, 100, 100), v(1, 0, 0), v(400, 120, 110), v(-1, 0, 0)))))
	for _, w := range s.Ways {
		if len(w.Formed.Bends) > 0 {
			t.Errorf("a tube that cannot be bent has %d bends in %q", len(w.Formed.Bends), w.Name)
		}
	}
	if len(s.Ways) == 0 || s.Ways[0].Name != "straight, two offsets" {
		t.Errorf("offsets of 10 and 15 close 22.36 aside, got %v, problem %v", names(s.Ways), s.Problem)
	}
}

func TestStraightAndBentAreKept(t *testing.T) {
	plan := withExtras(worked())
	for _, kind := range []route.WayKind{route.Straight, route.Bent} {
		plan.Runs[0].Way = kind
		s := solved(t, plan)
		if len(s.Ways) == 0 {
			t.Fatalf("%s: no way: %v", kind, s.Problem)
		}
		for _, w := range s.Ways {
			if (len(w.Formed.Bends) == 0) != (kind == route.Straight) {
				t.Errorf("way: %s lists %q", kind, w.Name)
			}
		}
	}
}

func TestWaysKeepTheRules(t *testing.T) {
	for _, plan := range []route.Plan{
		withExtras(worked()), withExtras(between(v(100, 100, 100), v(1, 0, 0), v(400, 120, 110), v(-1, 0, 0))),
		withExtras(between(v(300, 300, 300), v(1, 0.3, 0.2), v(600, 500, 310), v(-0.2, 0.5, 0.7))),
		withExtras(between(v(300, 300, 300), v(1, 0, 0), v(300, 370, 300), v(1, 0, 0))),
	} {
		s := solved(t, plan)
		if n := len(s.Ways); n == 0 || n > mostWays {
			t.Fatalf("%d ways, problem %v", n, s.Problem)
		}
		seen := map[string]bool{}
		for i, w := range s.Ways {
			if seen[w.Name] {
				t.Errorf("two ways are called %q", w.Name)
			}
			seen[w.Name] = true
			if i > 0 && w.Cost < s.Ways[i-1].Cost-sameCost {
				t.Errorf("%q at %.3f stands after %q at %.3f", w.Name, w.Cost, s.Ways[i-1].Name, s.Ways[i-1].Cost)
			}
			if w.Reason == "" || w.Seals != w.Fittings()+2 {
				t.Errorf("%q: reason %q, %d seals for %d fittings", w.Name, w.Reason, w.Seals, w.Fittings())
			}
			if want := handCost(plan.Weigh, w) + handMiss(plan, w); !near(w.Cost, want, 1e-6) {
				t.Errorf("%q costs %.6f, by the rule %.6f", w.Name, w.Cost, want)
			}
			if _, err := bends.Form(w.Tube.Tube, bends.Path{Corners: w.Formed.Corners}); err != nil {
				t.Errorf("%q cannot be formed again: %v", w.Name, err)
			}
			checkEnds(t, plan, w)
		}
	}
}

// handMiss is what the blanks a way is expected to lose cost. A search sees each
// run from its first port by name.
func handMiss(plan route.Plan, w Way) float64 {
	if _, turned := canonical(plan.Runs[0]); turned {
		w = turnedRound(w)
	}
	return plan.Weigh.Miss * min(1/w.Budget(plan.Errors).Chance-1, 10)
}

// handCost is the cost rule written out once more from the finished way.
func handCost(weigh route.Weigh, w Way) float64 {
	cost := weigh.Millimetre*w.Formed.Developed + weigh.Tidy*w.untidiness() + weigh.Fitting*float64(w.Fittings()-2)
	for _, b := range w.Formed.Bends {
		cost += weigh.Bend
		if math.Abs(b.Turn-45) > 0.1 && math.Abs(b.Turn-90) > 0.1 {
			cost += weigh.OddBend
		}
	}
	for _, list := range [][]route.Body{w.Start.Bodies, w.End.Bodies} {
		for _, b := range list {
			cost += weigh.Price * b.Fitting.Price
		}
	}
	return cost
}
