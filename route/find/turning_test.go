package find

import (
	"strings"
	"testing"

	"tubewright/route"
)

// TestFixedElbowNeedsRoomToGoRound: a fixed elbow on a port that faces +x turns
// the way up. Its arm lies 20 mm off the port's axis with a radius of 9.5, so by
// hand it sweeps x from 104.5 to 123.5 out to 20 mm (√(20² + 9.5²) = 22.1 at its
// edge). A post there stops it, however well the elbow would lie in the end, and
// stops no rotary one.
func TestFixedElbowNeedsRoomToGoRound(t *testing.T) {
	fixed := route.Fitting{
		Name: "elbow-fixed", Kind: route.Elbow, Thread: "G1/4", Turn: 90, Legs: [2]float64{14, 20},
		Rolls: []float64{0, 90, 180, -90}, Body: 19, Price: 5,
	}
	rotary := fixed
	rotary.Name, rotary.Rotary = "elbow-rotary", true
	// the post ends this far below the port's axis and begins at x
	post := func(x, below float64) []route.Part {
		return []route.Part{box("post", v(x, 40, 98), v(x+5, 100-below, 102))}
	}
	for _, c := range []struct {
		name  string
		fit   route.Fitting
		parts []route.Part
		want  bool
	}{
		{"nothing near", fixed, nil, true},
		{"a post out of reach", fixed, post(110, 23), true},
		{"a post within reach, 7.5 from where it will lie", fixed, post(110, 17), false},
		{"the same beside a rotary one", rotary, post(110, 17), true},
		{"a post past the arm", fixed, post(124, 17), true},
	} {
		plan := between(v(100, 100, 100), v(1, 0, 0), v(114, 300, 100), v(0, -1, 0), c.parts...)
		plan.Fittings = append(plan.Fittings, c.fit)
		plan.Runs[0].Way = route.Straight
		s := solved(t, plan)
		if got := len(s.Ways) > 0; got != c.want {
			t.Errorf("%s: %v, want a straight: %v (problem %v)", c.name, names(s.Ways), c.want, s.Problem)
		}
		if !c.want && (s.Problem == nil || !strings.Contains(s.Problem.Error(), "post")) {
			t.Errorf("%s: the problem %v does not name the post", c.name, s.Problem)
		}
	}
}
