package trial_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"tubewright/bends"
	"tubewright/bends/trial"
)

// sound is a bend without any scatter.
func sound(former float64, as trial.Bend) trial.Bend {
	return usual.bend(rand.New(rand.NewPCG(0, 0)), former, as)
}

func with(b trial.Bend, change func(*trial.Bend)) trial.Bend {
	change(&b)
	return b
}

// is reports whether an error is of a type.
func is[T error](err error) bool {
	var e T
	return errors.As(err, &e)
}

func TestRefuses(t *testing.T) {
	good := sound(92.35, fromMarks)
	for _, tt := range []struct {
		name string
		list []trial.Bend
		is   func(error) bool
		says []string
	}{
		{"nothing", nil, is[*trial.NoBendsError], []string{"bend one piece"}},
		{"no angle", []trial.Bend{with(good, func(b *trial.Bend) { b.After = 0 })}, is[*trial.NumberError], []string{"test bend 1", "turn it keeps"}},
		{"not a number", []trial.Bend{good, with(good, func(b *trial.Bend) { b.Legs[1] = math.NaN() })}, is[*trial.NumberError], []string{"test bend 2", "second leg", "NaN"}},
		{"infinite mark", []trial.Bend{with(good, func(b *trial.Bend) { b.Marks[1] = math.Inf(1) })}, is[*trial.NumberError], []string{"a mark"}},
		{"a strange word", []trial.Bend{with(good, func(b *trial.Bend) { b.To = "inside" })}, is[*trial.WordError], []string{`"inside"`, "back or centre"}},
		{"another", []trial.Bend{with(good, func(b *trial.Bend) { b.From = "middle" })}, is[*trial.WordError], []string{`"middle"`}},
		{"no blank", []trial.Bend{with(good, func(b *trial.Bend) { b.From = trial.Ends })}, is[*trial.MissingError], []string{"ends", "length of the piece"}},
		{"no marks", []trial.Bend{with(good, func(b *trial.Bend) { b.Marks = [2]float64{} })}, is[*trial.MissingError], []string{"two marks"}},
		{"marks the wrong way round", []trial.Bend{with(good, func(b *trial.Bend) { b.Marks = [2]float64{180, 20} })}, is[*trial.MarksError], []string{"180 and 20", "out of order"}},
		{"marks off the piece", []trial.Bend{with(good, func(b *trial.Bend) { b.Blank = 150 })}, is[*trial.MarksError], []string{"150 mm", "same end"}},
		{"angles swapped", []trial.Bend{with(good, func(b *trial.Bend) { b.Former, b.After = 90, 96 })}, is[*trial.BentBackError], []string{"96.00", "90.00"}},
		{"angle between the legs", []trial.Bend{with(good, func(b *trial.Bend) { b.Former, b.After = 122, 60 })}, is[*trial.OpenedError], []string{"62.00", "turn (0 is straight)"}},
		{"legs to the inside", []trial.Bend{with(good, func(b *trial.Bend) { b.Legs[0] -= 16; b.Legs[1] -= 16 })}, is[*trial.RadiusError], []string{"mixed up"}},
		{"centreline typed as back", []trial.Bend{with(sound(92.35, toCentre), func(b *trial.Bend) { b.To = trial.Back })}, is[*trial.RadiusError], []string{"fit with legs measured to the centrelines"}},
		{"mark in the bend", []trial.Bend{with(good, func(b *trial.Bend) { b.Legs[0] -= 80; b.Legs[1] += 80 })}, is[*trial.LegError], []string{"leg 1", "farther out"}},
		{"one bend unlike the others", []trial.Bend{good, good, with(good, func(b *trial.Bend) { b.Legs[1] += 10 })}, is[*trial.ResidualError], []string{"test bend 3", "mm off"}},
		{"back typed as centreline", []trial.Bend{good, good, good, with(good, func(b *trial.Bend) { b.To = trial.Centre })}, is[*trial.ResidualError], []string{"test bend 4", "mixed up; it would fit with legs measured to the back"}},
		{"springback unlike the others", []trial.Bend{good, good, good, with(good, func(b *trial.Bend) { b.Former += 15 })}, is[*trial.ResidualError], []string{"test bend 4", "angles are mixed up"}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, err := trial.Fit(16, tt.list, trial.Options{})
			if err == nil || !tt.is(err) {
				t.Fatalf("got %T: %v", err, err)
			}
			if which, named := trial.Which(err), strings.Contains(err.Error(), "test bend "); named != (which >= 0) || named && !strings.Contains(err.Error(), fmt.Sprintf("test bend %d:", which+1)) {
				t.Errorf("%q is about test bend %d", err, which+1)
			}
			for _, s := range tt.says {
				if !strings.Contains(err.Error(), s) {
					t.Errorf("%q does not say %q", err, s)
				}
			}
		})
	}
}

func TestRefusesTubeAndHand(t *testing.T) {
	good := []trial.Bend{sound(92.35, fromMarks)}
	for _, od := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if _, err := trial.Fit(od, good, trial.Options{}); !is[*trial.NumberError](err) {
			t.Errorf("outside diameter %v: %v", od, err)
		}
	}
	if _, err := trial.Fit(16, good, trial.Options{Sigmas: trial.Sigmas{Length: -1}}); !is[*trial.NumberError](err) {
		t.Errorf("a negative standard deviation: %v", err)
	}
}

// A bend that seems to have closed a little is scatter: no springback, not one
// below nothing.
func TestSpringbackIsNeverBelowNothing(t *testing.T) {
	b := workshop{od: 16, radius: 32}.bend(rand.New(rand.NewPCG(0, 0)), 90, fromEnds)
	b.Former = 89
	f, err := trial.Fit(16, []trial.Bend{b}, trial.Options{})
	if err != nil || f.Springback != (bends.Springback{}) || f.Bends[0].Opened != -1 {
		t.Errorf("springback %+v, opened %v, %v; want none, −1, none", f.Springback, f.Bends, err)
	}
}

// A hand that reads worse says so: the same bends, twice the sigmas.
func TestIntervalsGrowWithTheHand(t *testing.T) {
	list := []trial.Bend{sound(92.35, fromMarks), sound(60, fromEnds)}
	one, err := trial.Fit(16, list, trial.Options{Sigmas: trial.Sigmas{Length: 0.5}})
	if err != nil {
		t.Fatal(err)
	}
	two, err := trial.Fit(16, list, trial.Options{Sigmas: trial.Sigmas{Length: 1, Angle: 1, Turn: 3}})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "twice the sigmas", two.Radius.Sigma, 2*one.Radius.Sigma)
	near(t, "twice the springback's", two.Opens(90).Sigma, 2*one.Opens(90).Sigma)
	if !one.Stated || len(one.Unsure) != 0 {
		t.Errorf("stated %v, unsure %q", one.Stated, one.Unsure)
	}
}

// A small turn gains next to nothing, and the fit says so.
func TestSmallTurnIsUnsure(t *testing.T) {
	f, err := trial.Fit(16, []trial.Bend{sound(25, fromMarks)}, trial.Options{})
	if err != nil || f.Radius.Sigma < 20 || !strings.Contains(strings.Join(f.Unsure, " "), "gain too little") {
		t.Errorf("radius known to %.1f mm, unsure %q, %v", f.Radius.Sigma, f.Unsure, err)
	}
}
