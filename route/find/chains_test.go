package find

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"tubewright/route"
)

func TestOneOffsetClosesItsOwnLength(t *testing.T) {
	plan := withExtras(between(v(100, 100, 100), v(1, 0, 0), v(300, 115, 100), v(-1, 0, 0)))
	w := named(t, plan, "straight, one offset")
	// 200 between the faces, less 22 of the offset and a stop of 6 at each end
	if !near(w.Formed.Developed, 166, rounding) {
		t.Errorf("the tube is %.4f long, by hand 200 − 22 − 12 = 166", w.Formed.Developed)
	}
	checkEnds(t, plan, w)
}

// TestTwoOffsetsCloseAnyMiss checks the rolls by laying the chains: with offsets
// d1 and d2 every miss between |d1−d2| and d1+d2 closes, and none beyond.
func TestTwoOffsetsCloseAnyMiss(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 0))
	for seed := range 60 {
		miss, angle := 1+rng.Float64()*31, rng.Float64()*2*math.Pi
		plan := withExtras(between(v(100, 500, 500), v(1, 0, 0), v(400, 500+miss*math.Cos(angle), 500+miss*math.Sin(angle)), v(-1, 0, 0)))
		plan.Runs[0].Way = route.Straight
		plan.Fittings = slices.DeleteFunc(plan.Fittings, func(f route.Fitting) bool { return f.Kind == route.Elbow })
		s := solved(t, plan)
		// pairs of 10 and 15: 0…20, 5…25, 0…30; the sockets give 0.6 more; singles do 10 and 15
		if can := miss <= 30.6; can != (len(s.Ways) > 0) {
			t.Fatalf("seed %d: miss %.3f: %v, problem %v", seed, miss, names(s.Ways), s.Problem)
		}
		for _, w := range s.Ways {
			checkEnds(t, plan, w)
		}
	}
}

// TestElbowPairBetweenPortsSideBySide: two ports face the same way, 70 apart. An
// elbow on each (legs 14 and 12) turns the ways toward each other; the tube is
// 70 less two legs of 12 and two stops of 6.
func TestElbowPairBetweenPortsSideBySide(t *testing.T) {
	plan := withExtras(between(v(300, 300, 300), v(1, 0, 0), v(300, 370, 300), v(1, 0, 0)))
	w := named(t, plan, "straight, two elbows")
	if !near(w.Formed.Developed, 70-2*12-2*6, rounding) {
		t.Errorf("the tube is %.4f long, by hand 34", w.Formed.Developed)
	}
	if got := w.Start.Stop.At; got.Sub(v(314, 318, 300)).Len() > rounding {
		t.Errorf("the first stop is at %v, by hand 14 ahead and 12+6 aside", got)
	}
}

// TestElbowWithExtender: an elbow brings a port that faces up into line with
// one that faces left, when an extender lifts its corner to the right height.
func TestElbowWithExtender(t *testing.T) {
	// corner 15 + 14 above the port: the other port stands 29 above
	plan := withExtras(between(v(100, 100, 100), v(0, 1, 0), v(300, 129, 100), v(-1, 0, 0)))
	w := named(t, plan, "straight, one elbow, one extender")
	if !near(w.Formed.Developed, 200-12-6-6, rounding) {
		t.Errorf("the tube is %.4f long, by hand 200 − 12 − 6 − 6 = 176", w.Formed.Developed)
	}
	checkEnds(t, plan, w)
}

func TestElbowThenOffset(t *testing.T) {
	plan := withExtras(between(v(100, 100, 100), v(0, 1, 0), v(300, 114, 110), v(-1, 0, 0)))
	w := named(t, plan, "straight, one offset, one elbow")
	checkEnds(t, plan, w)
	if !near(w.Formed.Developed, 200-12-6-6-20, rounding) {
		t.Errorf("the tube is %.4f long, by hand 200 − 12 − 12 − 20 = 156", w.Formed.Developed)
	}
}

func TestGivenChainsAreUsed(t *testing.T) {
	plan := withExtras(worked())
	plan.Runs[0].Start = route.Chain{{Fitting: "extender-15"}, {Fitting: "socket-16"}}
	w := chosen(t, plan)
	if w.Name != "one extender and one bend" || !near(w.Formed.Developed, 112-15+112+16*math.Pi, rounding) {
		t.Errorf("%q is %.4f long, want the worked example less 15", w.Name, w.Formed.Developed)
	}
	// a free offset at a given end is rolled so that it closes the miss of 15
	plan = withExtras(between(v(100, 100, 100), v(1, 0, 0), v(300, 100-15*math.Sqrt2/2, 100+15*math.Sqrt2/2), v(-1, 0, 0)))
	plan.Runs[0].End = route.Chain{{Fitting: "offset-15"}, {Fitting: "socket-16"}}
	w = chosen(t, plan)
	if len(w.Formed.Bends) != 0 || len(w.End.Bodies) != 2 {
		t.Errorf("%q has %d bends and %d fittings at its end", w.Name, len(w.Formed.Bends), len(w.End.Bodies))
	}
	checkEnds(t, plan, w)
	// two free offsets in a row
	plan.Runs[0].End = route.Chain{{Fitting: "offset-15"}, {Fitting: "offset-10"}, {Fitting: "socket-16"}}
	w = chosen(t, plan)
	if len(w.Formed.Bends) != 0 || len(w.End.Bodies) != 3 {
		t.Errorf("%q has %d bends and %d fittings at its end", w.Name, len(w.Formed.Bends), len(w.End.Bodies))
	}
	checkEnds(t, plan, w)
}

func TestGivenRollStays(t *testing.T) {
	plan := withExtras(worked())
	plan.Runs[0].Start = route.Chain{{Fitting: "elbow-90", Roll: 30, Rolled: true}, {Fitting: "socket-16"}}
	for _, w := range solved(t, plan).Ways {
		if w.Start.Bodies[0].Roll != 30 {
			t.Errorf("%q turned the elbow to %.1f", w.Name, w.Start.Bodies[0].Roll)
		}
	}
}

func TestFixedElbowTakesOnlyItsRolls(t *testing.T) {
	plan := worked()
	plan.Fittings = append(plan.Fittings, route.Fitting{
		Name: "elbow-fixed", Kind: route.Elbow, Thread: "G1/4", Turn: 90, Legs: [2]float64{14, 14}, Rolls: []float64{0, 90, 180, -90}, Body: 19, Price: 1,
	})
	for _, w := range solved(t, plan).Ways {
		for _, b := range w.Start.Bodies {
			if b.Fitting.Kind == route.Elbow && math.Mod(b.Roll, 90) != 0 {
				t.Errorf("%q turned a fixed elbow to %.2f", w.Name, b.Roll)
			}
		}
	}
}

func TestThreadsMustGoTogether(t *testing.T) {
	plan := between(v(100, 100, 100), v(1, 0, 0), v(300, 115, 100), v(-1, 0, 0))
	more := extras()
	for i := range more {
		more[i].Thread = "M12"
	}
	plan.Fittings = append(plan.Fittings, more...)
	for _, w := range solved(t, plan).Ways {
		if w.Fittings() > 2 {
			t.Errorf("%q uses a fitting of another thread", w.Name)
		}
	}
}

func TestLiftsAreSums(t *testing.T) {
	var got []float64
	for _, l := range sumsOf(kits{{Length: 15}, {Length: 20}, {Length: 30}}, 2) {
		got = append(got, l.total)
	}
	// 30 is one extender, not two of 15
	if want := "[0 15 20 30 35 40 45 50 60]"; fmt.Sprint(got) != want {
		t.Errorf("lifts are %v, want %s: sums of at most two of 15, 20, 30", got, want)
	}
}

func TestRollsWhereSolves(t *testing.T) {
	f := route.NewFrame(v(0, 0, 0), v(2, 3, 6).Mul(1.0/7))
	n := v(4, -4, 7).Mul(1.0 / 9)
	for _, want := range []float64{-0.5, 0, 0.2} {
		rolls := rollsWhere(f, n, want)
		if len(rolls) != 2 {
			t.Fatalf("%d rolls for %.1f, want 2", len(rolls), want)
		}
		for _, r := range rolls {
			if got := f.Side(r).Dot(n); !near(got, want, 1e-9) {
				t.Errorf("Side(%.3f)·n is %.9f, want %.1f", r, got, want)
			}
		}
	}
	if rolls := rollsWhere(f, n, 1.5); rolls != nil {
		t.Errorf("no roll makes a unit direction reach 1.5, got %v", rolls)
	}
}

// TestSocketsThatGiveNothing: an offset closes its own length to the last bit
// or not, whichever way it points; sockets without give must not tell.
func TestSocketsThatGiveNothing(t *testing.T) {
	for degrees := range 36 {
		sin, cos := math.Sincos(float64(degrees) * 10 * math.Pi / 180)
		plan := withExtras(between(v(100, 500, 500), v(1, 0, 0), v(300, 500+15*cos, 500+15*sin), v(-1, 0, 0)))
		for i := range plan.Fittings {
			plan.Fittings[i].Give = route.Give{}
		}
		named(t, plan, "straight, one offset")
	}
}

// TestElbowPairOfSocketsThatGiveNothing: the same of two elbows, whichever way
// the ports face and the second stands beside the first.
func TestElbowPairOfSocketsThatGiveNothing(t *testing.T) {
	for degrees := range 36 {
		sin, cos := math.Sincos(float64(degrees) * 10 * math.Pi / 180)
		facing, aside := v(cos, sin, 0), v(-sin*cos, cos*cos, sin)
		plan := withExtras(between(v(500, 500, 500), facing, v(500, 500, 500).Add(aside.Mul(70)), facing))
		for i := range plan.Fittings {
			plan.Fittings[i].Give = route.Give{}
		}
		named(t, plan, "straight, two elbows")
	}
}
