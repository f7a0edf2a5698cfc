package steps_test

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/bends/steps"
)

// zigzag is a tube of these straights with right-angle bends of one radius,
// left and right in turn. Its socket gaps are 0, so the straights are the finished ones.
func zigzag(t testing.TB, straights []float64, radius float64) bends.Formed {
	t.Helper()
	at, dir := mgl64.Vec3{}, mgl64.Vec3{1, 0, 0}
	corners := []mgl64.Vec3{at}
	for i, s := range straights {
		if i > 0 {
			s += radius
		}
		if i < len(straights)-1 {
			s += radius
		}
		at = at.Add(dir.Mul(s))
		corners = append(corners, at)
		dir = mgl64.Vec3{dir[1], dir[0], 0}
	}
	f, err := bends.Form(bends.Tube{OD: 16, ID: 12, Radius: radius}, bends.Path{Corners: corners})
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// job is a tube of these straights with a trim, a former that wants bare straight
// on both sides, and two collars alike.
func job(t testing.TB, straights []float64, trim, between float64, collar steps.Collar) steps.Job {
	t.Helper()
	f := zigzag(t, straights, 20)
	f.Tube.Trim, f.Tube.StraightBetween = trim, between
	f.Tube.Springback = bends.Springback{Degrees: 1, Percent: 1.5}
	return steps.Job{Tube: f, Cut: f.Cut(bends.Ends{}, 2), Bench: f.Bench(bends.Ends{}), Material: "petg", Collars: [2]steps.Collar{collar, collar}}
}

var usual = steps.Collar{Length: 20, Insertion: 12} // goes on late over a leg of 32

// orderCases are held against the simulation; where order or fault is given it
// was worked out by hand.
var orderCases = []struct {
	name      string
	straights []float64
	trim      float64
	tool      steps.Tool
	collars   [2]steps.Collar
	material  string
	order     []int  // nil: left to the simulation
	fault     string // part of the fault's text; "": there is an order
}{
	// one former, wanting 20 on both sides
	{"one bend, long legs", []float64{60, 60}, 15, steps.Tool{}, [2]steps.Collar{usual, usual}, "petg", []int{0}, ""},
	{"one bend, both legs short: both collars first", []float64{28, 27}, 15, steps.Tool{}, [2]steps.Collar{usual, usual}, "petg", []int{0}, ""},
	{"one bend, leg A 25 and trim 15 just hold collar and grip", []float64{25, 60}, 15, steps.Tool{}, [2]steps.Collar{usual, usual}, "petg", []int{0}, ""},
	{"one bend, leg A 24: 1 mm short", []float64{24, 60}, 15, steps.Tool{}, [2]steps.Collar{usual, usual}, "petg", nil, "leave 1.0 mm more on end A"},
	{"one bend, leg B 24: 1 mm short", []float64{60, 24}, 15, steps.Tool{}, [2]steps.Collar{usual, usual}, "petg", nil, "leave 1.0 mm more on end B"},
	{"one bend, leg shorter than the collar", []float64{18, 60}, 15, steps.Tool{}, [2]steps.Collar{usual, usual}, "petg", nil, "its finished leg 18.0 mm"},
	{"one bend, no collars", []float64{6, 5}, 15, steps.Tool{}, [2]steps.Collar{}, "petg", []int{0}, ""},
	{"one bend, no collars, nothing to hold", []float64{4, 60}, 15, steps.Tool{}, [2]steps.Collar{}, "petg", nil, "bend 1 lacks least"},
	{"one bend, no trim, short leg", []float64{30, 60}, 0, steps.Tool{}, [2]steps.Collar{usual, usual}, "petg", nil, "leave 10.0 mm more on end A"},
	{"one bend, cold: the gap to the collar is the grip's", []float64{30, 60}, 0, steps.Tool{Held: 8, Drawn: 8}, [2]steps.Collar{usual, usual}, "copper", []int{0}, ""},
	{"one bend, hot: the gap to the collar is one diameter", []float64{30, 60}, 0, steps.Tool{Held: 8, Drawn: 8}, [2]steps.Collar{usual, usual}, "petg", nil, "leave 6.0 mm more on end A"},
	{"one bend, a short blank for two collars", []float64{27, 27}, 15, steps.Tool{}, [2]steps.Collar{{Length: 25, Insertion: 40}, {Length: 25, Insertion: 40}}, "petg", nil, "collar B has 60.4 mm of straight to go on over, and takes 65.0 mm"},
	{"two bends", []float64{60, 30, 60}, 15, steps.Tool{}, [2]steps.Collar{usual, usual}, "petg", []int{0, 1}, ""},
	{"two bends, both collars early", []float64{26, 25, 26}, 15, steps.Tool{}, [2]steps.Collar{usual, usual}, "petg", []int{0, 1}, ""},
	{"two bends too near", []float64{60, 19, 60}, 15, steps.Tool{}, [2]steps.Collar{usual, usual}, "petg", nil, "bends 1 and 2"},
	{"two bends, long collar on B only", []float64{60, 30, 40}, 15, steps.Tool{}, [2]steps.Collar{usual, {Length: 30, Insertion: 20}}, "petg", []int{0, 1}, ""},
	{"three bends", []float64{60, 30, 30, 60}, 15, steps.Tool{}, [2]steps.Collar{usual, usual}, "petg", []int{0, 1, 2}, ""},
	{"four bends, all that can be early", []float64{26, 20, 20, 20, 26}, 15, steps.Tool{}, [2]steps.Collar{usual, usual}, "acrylic", []int{0, 1, 2, 3}, ""},
	{"four bends, the middle too short", []float64{60, 30, 10, 30, 60}, 15, steps.Tool{}, [2]steps.Collar{usual, usual}, "petg", nil, "bends 2 and 3"},
	{"six bends", []float64{40, 20, 25, 30, 25, 20, 40}, 15, steps.Tool{}, [2]steps.Collar{usual, usual}, "petg", []int{0, 1, 2, 3, 4, 5}, ""},
	// a bender that holds 30 and draws 10
	{"held on leg A", []float64{60, 15, 60}, 15, steps.Tool{Held: 30, Drawn: 10}, [2]steps.Collar{}, "copper", []int{0, 1}, ""},
	{"leg B too short to hold: bend 2 first", []float64{60, 15, 12}, 0, steps.Tool{Held: 30, Drawn: 10}, [2]steps.Collar{}, "copper", []int{1, 0}, ""},
	{"leg A too short to hold: bend 1 first", []float64{12, 15, 60}, 0, steps.Tool{Held: 30, Drawn: 10}, [2]steps.Collar{}, "copper", []int{0, 1}, ""},
	{"both legs too short to hold", []float64{12, 15, 12}, 0, steps.Tool{Held: 30, Drawn: 10}, [2]steps.Collar{}, "copper", nil, "bends 1 and 2"},
	{"both legs short, the middle holds", []float64{12, 30, 12}, 0, steps.Tool{Held: 30, Drawn: 10}, [2]steps.Collar{}, "copper", []int{0, 1}, ""},
	{"three bends, the middle one must be made first or last", []float64{60, 15, 15, 60}, 0, steps.Tool{Held: 30, Drawn: 10}, [2]steps.Collar{}, "copper", nil, ""},
	{"three bends, short in the middle and at B", []float64{60, 15, 15, 12}, 0, steps.Tool{Held: 30, Drawn: 10}, [2]steps.Collar{}, "copper", []int{2, 1, 0}, ""},
	{"three bends, only from A", []float64{12, 15, 15, 60}, 0, steps.Tool{Held: 30, Drawn: 10}, [2]steps.Collar{}, "copper", []int{0, 1, 2}, ""},
	{"four bends, short ends, long middle", []float64{12, 15, 40, 15, 12}, 0, steps.Tool{Held: 30, Drawn: 10}, [2]steps.Collar{}, "copper", nil, ""},
	{"four bends, short all along", []float64{12, 15, 15, 15, 12}, 0, steps.Tool{Held: 30, Drawn: 10}, [2]steps.Collar{}, "copper", nil, "bends 1, 2, 3 and 4"},
	{"four bends, one long straight in the third place", []float64{12, 15, 15, 40, 12}, 0, steps.Tool{Held: 30, Drawn: 10}, [2]steps.Collar{}, "copper", nil, ""},
	{"a straight shorter than what is drawn", []float64{60, 9, 60}, 0, steps.Tool{Held: 30, Drawn: 10}, [2]steps.Collar{}, "copper", nil, "bends 1 and 2"},
	{"a collar takes the hold of leg B", []float64{60, 15, 31}, 15, steps.Tool{Held: 30, Drawn: 10}, [2]steps.Collar{{}, usual}, "copper", []int{1, 0}, ""},
	{"a collar leaves leg B its hold", []float64{60, 15, 31}, 20, steps.Tool{Held: 30, Drawn: 10}, [2]steps.Collar{{}, usual}, "copper", []int{0, 1}, ""},
	{"a collar takes the hold of leg A, from A", []float64{26, 15, 60}, 10, steps.Tool{Held: 30, Drawn: 10}, [2]steps.Collar{usual, usual}, "copper", []int{0, 1}, ""},
	{"collars take the hold of both legs", []float64{26, 15, 26}, 10, steps.Tool{Held: 30, Drawn: 10}, [2]steps.Collar{usual, usual}, "copper", nil, "collar"},
	{"one bend held on A, collars on both", []float64{26, 26}, 24, steps.Tool{Held: 30, Drawn: 10}, [2]steps.Collar{usual, usual}, "copper", []int{0}, ""},
	{"one bend, neither side holds beside its collar", []float64{26, 26}, 23, steps.Tool{Held: 30, Drawn: 10}, [2]steps.Collar{usual, usual}, "copper", nil, "collar A"},
	{"long collar on A, leg long enough", []float64{70, 25, 30}, 15, steps.Tool{}, [2]steps.Collar{{Length: 50, Insertion: 15}, usual}, "petg", []int{0, 1}, ""},
	{"long collar on A, leg not long enough", []float64{64, 25, 30}, 15, steps.Tool{}, [2]steps.Collar{{Length: 50, Insertion: 15}, usual}, "petg", []int{0, 1}, ""},
	{"a collar that needs the whole blank to go on: before any bend", []float64{26, 15, 60}, 10, steps.Tool{Held: 10, Drawn: 10}, [2]steps.Collar{{Length: 20, Insertion: 50}, {}}, "copper", nil, ""},
	{"a deep insertion: the collar goes on while the tube is straight", []float64{26, 5, 60}, 15, steps.Tool{Held: 5, Drawn: 5}, [2]steps.Collar{{Length: 20, Insertion: 60}, {}}, "copper", nil, ""},
}

func TestOrderOfWorkIsWhatTheSimulationFinds(t *testing.T) {
	for _, tc := range orderCases {
		j := job(t, tc.straights, tc.trim, 20, steps.Collar{})
		j.Tool, j.Collars, j.Material = tc.tool, tc.collars, tc.material
		w := steps.Plan(j)
		hold(t, tc.name, j, w)
		if tc.fault != "" && (w.Fault == nil || !strings.Contains(w.Fault.Error(), tc.fault)) {
			t.Errorf("%s: fault %v, want %q in it", tc.name, w.Fault, tc.fault)
		}
		if tc.order != nil && (w.Fault != nil || !slices.Equal(w.Order, tc.order)) {
			t.Errorf("%s: order %v (%v), want %v", tc.name, w.Order, w.Fault, tc.order)
		}
	}
	if len(orderCases) < 40 {
		t.Errorf("%d cases, want 40", len(orderCases))
	}
}

// hold compares a plan of work with the simulation, which tries all orders.
func hold(t *testing.T, name string, j steps.Job, w steps.Work) {
	t.Helper()
	b := newBench(j)
	possible := b.possible()
	switch {
	case possible && w.Fault != nil:
		t.Errorf("%s: the simulation finds an order; got %v", name, w.Fault)
	case !possible && w.Fault == nil:
		t.Errorf("%s: no order can be done, got %v", name, w.Order)
	case possible && !b.follow(w):
		t.Errorf("%s: order %v with collars %v cannot be done", name, w.Order, w.Ons)
	}
}

func TestOrderOfWorkOnRandomTubes(t *testing.T) {
	faults, notFromA := 0, 0
	const seeds = 2000
	for seed := range uint64(seeds) {
		rnd := rand.New(rand.NewPCG(seed, 3))
		straights := make([]float64, 2+rnd.IntN(4))
		for i := range straights {
			straights[i] = float64(8 + rnd.IntN(50))
		}
		j := job(t, straights, float64(rnd.IntN(20)), 20, steps.Collar{})
		j.Tool = steps.Tool{Held: float64(10 + rnd.IntN(25)), Drawn: float64(5 + rnd.IntN(10))}
		j.Material = []string{"petg", "copper"}[rnd.IntN(2)]
		for end := range j.Collars {
			if rnd.IntN(3) > 0 {
				j.Collars[end] = steps.Collar{Length: float64(8 + rnd.IntN(20)), Insertion: float64(8 + rnd.IntN(60))}
			}
		}
		w := steps.Plan(j)
		hold(t, fmt.Sprintf("seed %d: straights %v trim %v tool %v collars %v %s", seed, straights, j.Tube.Tube.Trim, j.Tool, j.Collars, j.Material), j, w)
		if w.Fault != nil {
			faults++
		} else if !slices.IsSorted(w.Order) {
			notFromA++
		}
		if t.Failed() {
			return
		}
	}
	if faults < seeds/20 || faults > seeds*19/20 || notFromA < seeds/100 {
		t.Errorf("of %d tubes %d have no order and %d are not bent from A: the tubes are too much alike", seeds, faults, notFromA)
	}
	t.Logf("%d random tubes (seeds 0 to %d): %d without an order, %d not from A", seeds, seeds-1, faults, notFromA)
}

// What a fault says helps: with that much more trim there is an order.
func TestLongerTrimHelpsAsTold(t *testing.T) {
	told := 0
	for _, tc := range orderCases {
		j := job(t, tc.straights, tc.trim, 20, steps.Collar{})
		j.Tool, j.Collars, j.Material = tc.tool, tc.collars, tc.material
		var e *steps.CollarError
		if w := steps.Plan(j); !errors.As(w.Fault, &e) || e.Why != steps.NoGrip {
			continue
		}
		told++
		longer := job(t, tc.straights, tc.trim+e.Shortfall(), 20, steps.Collar{})
		longer.Tool, longer.Collars, longer.Material = tc.tool, tc.collars, tc.material
		if w := steps.Plan(longer); w.Fault != nil {
			t.Errorf("%s: with %.1f mm more trim still %v", tc.name, e.Shortfall(), w.Fault)
		}
	}
	if told < 4 {
		t.Errorf("only %d cases tell of more trim", told)
	}
}
