package find

import (
	"math"
	"testing"

	"tubewright/route"
)

// TestExtenderLinesUpACorner: one port faces up, the other away from it 29 mm
// higher. An elbow behind an extender of 15 (15 + 14 = 29) turns the way level
// with it, and one square bend joins them; without the extender the bend is an
// odd one, or three are needed.
func TestExtenderLinesUpACorner(t *testing.T) {
	plan := between(v(100, 100, 100), v(0, 1, 0), v(300, 129, 300), v(0, 0, -1))
	for _, f := range extras() {
		if f.Name == "extender-15" || f.Name == "elbow-90" {
			plan.Fittings = append(plan.Fittings, f)
		}
	}
	plan.Weigh = route.Weigh{Bend: 300, OddBend: 500, Millimetre: 1, Fitting: 10, Price: 30}
	w := chosen(t, plan)
	if w.Name != "one elbow, one extender and one bend" || len(w.Formed.Bends) != 1 || !isTurn(w.Formed.Bends[0].Turn, 90) {
		t.Fatalf("chosen is %q with bends %+v", w.Name, w.Formed.Bends)
	}
	// from x 100 + 12 + 6 to 300, and from z 100 to 300 − 6, less two setbacks of 32
	if want := 182 + 194 - 64 + 16*math.Pi; !near(w.Formed.Developed, want, rounding) {
		t.Errorf("the tube is %.4f long, by hand %.4f", w.Formed.Developed, want)
	}
	checkEnds(t, plan, w)
}

// TestMixesAreNotForNothing: where fittings cost what they do, a bend or two are
// not replaced by two fittings and a bend.
func TestMixesAreNotForNothing(t *testing.T) {
	for _, w := range solved(t, withExtras(worked())).Ways {
		if w.Fittings() > 3 && len(w.Formed.Bends) > 0 {
			t.Errorf("%q is listed beside one bend", w.Name)
		}
	}
}

// TestTwoElbowsAndABendRoundAPost: both ports look at a wall so near that no bend
// fits before it, and stand so that no straight joins two elbows: an elbow on
// each and a bend between are the way.
func TestTwoElbowsAndABendRoundAPost(t *testing.T) {
	plan := withExtras(between(v(100, 100, 100), v(1, 0, 0), v(300, 300, 100), v(0, -1, 0),
		box("wall-a", v(150, 60, 60), v(155, 140, 140)), box("wall-b", v(260, 245, 60), v(340, 250, 140))))
	plan.Runs[0].Way = route.Bent
	s := solved(t, plan)
	if len(s.Ways) == 0 {
		t.Fatalf("no way: %v", s.Problem)
	}
	for _, w := range s.Ways {
		if w.Fittings() < 4 {
			t.Errorf("%q has %d fittings, and yet a wall 50 mm ahead of each port", w.Name, w.Fittings())
		}
		checkEnds(t, plan, w)
	}
}
