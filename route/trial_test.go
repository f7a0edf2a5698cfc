package route_test

import (
	"math"
	"testing"

	"tubewright/bends"
	"tubewright/bends/trial"
	"tubewright/route"
)

// The figures of the comment of Flex, by a beam's own tables: PETG of 16/12 has I
// = π/64·(65536 − 20736) = 2199 mm⁴, so 5·300³/(12·2000·2199) = 2.56 mm.
func TestFlexByHand(t *testing.T) {
	petg := route.Tube{Material: "PETG", Tube: bends.Tube{OD: 16, ID: 12}}
	copper := route.Tube{Material: "copper", Tube: bends.Tube{OD: 15, ID: 13}}
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"petg aside", petg.Flex(300).Sideways, 2.558},
		{"petg askew", petg.Flex(300).Degrees, 0.7328},
		{"petg of half the length", petg.Flex(150).Sideways, 2.558 / 8},
		{"copper aside", copper.Flex(300).Sideways, 0.0888},
		{"glass", route.Tube{Material: "glass", Tube: petg.Tube}.Flex(300).Sideways, 0},
		{"a rod without sizes", route.Tube{Material: "petg"}.Flex(300).Sideways, 0},
	} {
		if math.Abs(c.got-c.want) > 0.001*max(1, c.want) {
			t.Errorf("%s: %.4f, want %.4f", c.what, c.got, c.want)
		}
	}
}

// A tube is known from its test bends; else from who vouches for it.
func TestDoubt(t *testing.T) {
	hand := route.Defaults().Errors
	tube := route.Tube{Tube: bends.Tube{OD: 16, ID: 12, Radius: 32}}
	typical := tube.Doubt(hand)
	tube.KnownFrom = route.Drawing
	firm := tube.Doubt(hand)
	if firm.Radius >= typical.Radius || firm.Springback[0][0] >= typical.Springback[0][0] {
		t.Errorf("from a drawing %+v, typical %+v", firm, typical)
	}
	bend := trial.Bend{Marks: [2]float64{40, 240}, From: trial.Marks, Former: 93, After: 90, Legs: [2]float64{115, 115}}
	tube.TestBends = []trial.Bend{bend}
	one := tube.Doubt(hand)
	if math.Abs(one.Radius-2.25) > 0.005 {
		t.Errorf("one test bend: %+v; want 2.25 mm (package trial, Worked by hand)", one)
	}
	tube.TestBends = []trial.Bend{bend, bend, bend, bend}
	if four := tube.Doubt(hand); math.Abs(four.Radius-one.Radius/2) > 0.001 {
		t.Errorf("four test bends know the radius to %.3f mm; want half of %.3f", four.Radius, one.Radius)
	}
	tube.TestBends[0].After = 170 // refused, so it says nothing
	if got := tube.Doubt(hand); got != firm {
		t.Errorf("bends that are refused: %+v, want %+v", got, firm)
	}
}

// A plan's copy has test bends of its own.
func TestCloneKeepsTestBendsApart(t *testing.T) {
	p := route.Plan{Tubes: []route.Tube{{TestBends: []trial.Bend{{After: 90}}}}}
	q := p.Clone()
	q.Tubes[0].TestBends[0].After = 45
	if p.Tubes[0].TestBends[0].After != 90 {
		t.Error("a copy changed the plan it was made of")
	}
}
