package bends_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
)

// ell is a right angle with legs of these lengths.
func ell(a, b float64) []mgl64.Vec3 { return []mgl64.Vec3{{-a, 0, 0}, {}, {0, b, 0}} }

func TestFormRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	glass := bends.Tube{OD: 16, ID: 12, StraightEnd: 26}
	tests := []struct {
		name    string
		tube    bends.Tube
		corners []mgl64.Vec3
		radii   []float64
		want    []string // a piece of each fault's text, in order
	}{
		{"nothing", plastic, nil, nil, []string{"0 corners joins nothing"}},
		{"one corner", plastic, []mgl64.Vec3{{1, 2, 3}}, nil, []string{"1 corners joins nothing"}},
		{"NaN", plastic, []mgl64.Vec3{{}, {nan, 0, 0}, {100, 0, inf}}, nil, []string{"corner 2 has a coordinate NaN", "corner 3 has a coordinate +Inf"}},
		{"beyond reckoning", bends.Tube{Radius: 1e200}, []mgl64.Vec3{{-1e308, 0, 0}, {1e308, 0, 0}}, nil, []string{"radius is 1e+200: it must be a number from 0 to 1e+06", "corner 1 has a coordinate -1e+308", "corner 2 has a coordinate 1e+308"}},
		{"twice the same", plastic, []mgl64.Vec3{{}, {}, {100, 0, 0}, {100, 0, 1e-7}}, nil, []string{"corners 1 and 2 are the same", "corners 3 and 4 are the same"}},
		{"radii short", plastic, ell(100, 100), []float64{}, []string{"1 between its ends but 0 radii"}},
		{"radii over", plastic, ell(100, 100), []float64{32, 32}, []string{"but 2 radii"}},
		{"no radius", plastic, []mgl64.Vec3{{-100, 0, 0}, {}, {0, 100, 0}, {0, 100, 100}}, []float64{0, nan}, []string{"corner 2 asks for radius 0", "corner 3 asks for radius NaN"}},
		{"no tube", bends.Tube{OD: inf, ID: -1, Trim: nan}, ell(100, 100), nil, []string{"outside diameter is +Inf", "bore is -1", "trim is NaN"}},
		{"bore as wide as the tube", bends.Tube{OD: 12, ID: 12}, ell(100, 100), nil, []string{"bore is 12"}},
		{"springback of nothing known", bends.Tube{Springback: bends.Springback{Degrees: nan, Percent: -2}}, ell(9, 9), nil, []string{"springback in degrees is NaN", "springback in percent is -2"}},
		{"glass", glass, ell(100, 5), nil, []string{"bend 1 turns 90.0 degrees, but this tube cannot be bent"}},
		{"glass with a radius asked for", glass, ell(100, 100), []float64{40}, []string{"cannot be bent"}},
		{"glass too short", glass, []mgl64.Vec3{{}, {20, 0, 0}}, nil, []string{"straight 1 is 20.00 mm long, an end needs 26.00 mm for insertion, collar and grip: 6.00 mm short"}},
		{"too tight", plastic, ell(100, 100), []float64{27.5}, []string{"bend 1 has radius 27.50 mm, the tube needs 28.00 mm: 0.50 mm short; use a larger former"}},
		{"inside of the bend turned over", bends.Tube{OD: 16, ID: 12, Radius: 7}, ell(100, 100), nil, []string{"the tube needs 8.01 mm: 1.01 mm short"}},
		{"there and back", plastic, []mgl64.Vec3{{}, {200, 0, 0}, {50, 0, 0}}, nil, []string{"bend 1 turns 180.0 degrees, more than one corner can hold (179): make it two bends"}},
		{"there and back to the same point", plastic, []mgl64.Vec3{{}, {200, 0, 0}, {}, {0, 200, 0}}, nil, []string{"bend 1 turns 180.0 degrees"}},
		{"all but there and back", plastic, []mgl64.Vec3{{}, {9000, 0, 0}, {0, 90, 0}}, nil, []string{"bend 1 turns 179.4 degrees"}},
		{"first end", plastic, ell(57.994, 58), nil, []string{"straight 1 is 25.99 mm long, an end needs 26.00 mm for insertion, collar and grip: 0.01 mm short"}},
		{"last end", plastic, ell(58, 57), nil, []string{"straight 2 is 25.00 mm long, an end needs"}},
		{"between", plastic, []mgl64.Vec3{{-100, 0, 0}, {}, {0, 83, 0}, {0, 83, 100}}, nil, []string{"straight 2 is 19.00 mm long, the former needs 20.00 mm between two bends: 1.00 mm short"}},
		{"overlap", plastic, []mgl64.Vec3{{-100, 0, 0}, {}, {0, 60, 0}, {0, 60, 100}}, nil, []string{"straight 2: bends 1 and 2 overlap by 4.00 mm; make its leg 24.00 mm longer, or bend with a smaller radius"}},
		{"past the first end", plastic, ell(30, 100), nil, []string{"straight 1: bend 1 reaches past the tube's first end by 2.00 mm; make its leg 28.00 mm longer"}},
		{"past the last end", plastic, []mgl64.Vec3{{-100, 0, 0}, {}, {0, 100, 0}, {0, 100, 30}}, nil, []string{"straight 3: bend 2 reaches past the tube's last end by 2.00 mm"}},
		{
			"all at once", plastic,
			[]mgl64.Vec3{{-40, 0, 0}, {}, {0, 60, 0}, {0, 60, 100}, {0, 60, -50}},
			[]float64{20, 32, 32},
			[]string{"bend 1 has radius 20.00", "bend 3 turns 180.0", "straight 1 is 20.00", "straight 2 is 8.00"},
		},
	}
	for _, c := range tests {
		t.Run(c.name, func(t *testing.T) {
			f, err := bends.Form(c.tube, bends.Path{Corners: c.corners, Radii: c.radii})
			if len(f.Bends)+len(f.Straights) != 0 {
				t.Errorf("a refused path gives the tube %v", f)
			}
			sameFaults(t, err, c.want)
		})
	}
}

func sameFaults(t *testing.T, err error, want []string) {
	t.Helper()
	var faults bends.Faults
	if !errors.As(err, &faults) || len(faults) != len(want) {
		t.Fatalf("Form gives %d faults:\n%v\nwant %q", len(faults), err, want)
	}
	for i, w := range want {
		if !strings.Contains(faults[i].Error(), w) {
			t.Errorf("fault %d is\n%q, want\n%q", i, faults[i], w)
		}
	}
}

func TestFaultsCarryTheirNumbers(t *testing.T) {
	_, err := bends.Form(plastic, bends.Path{
		Corners: []mgl64.Vec3{{-100, 0, 0}, {}, {0, 60, 0}, {0, 60, 57}},
		Radii:   []float64{32, 27},
	})
	var tight *bends.TightRadiusError
	if !errors.As(err, &tight) || tight.Bend != 1 || tight.Shortfall() != 1 {
		t.Errorf("got %+v, want bend 1 (from 0) short of 1 mm", tight)
	}
	var short *bends.ShortStraightError
	if !errors.As(err, &short) || short.Straight != 1 || short.AtEnd() || math.Abs(short.Shortfall()-19) > near {
		t.Errorf("got %+v, want straight 1 (from 0) between bends, 60 − 32 − 27 = 1 of 20 mm", short)
	}
	var overlap *bends.OverlapError
	if errors.As(err, &overlap) {
		t.Errorf("got %v, want no overlap", overlap)
	}
}

// What an error says must be enough: a leg made longer by what is written forms.
func TestShortfallIsEnough(t *testing.T) {
	for _, middle := range []float64{1, 33.337, 60, 83.9999} {
		path := func(more float64) []mgl64.Vec3 {
			return []mgl64.Vec3{{-100, 0, 0}, {}, {0, middle + more, 0}, {0, middle + more, 100}}
		}
		_, err := bends.Form(plastic, bends.Path{Corners: path(0)})
		if err == nil {
			t.Errorf("a middle leg of %v is taken", middle)
			continue
		}
		more := wayOut(t, err)
		if _, err := bends.Form(plastic, bends.Path{Corners: path(more)}); err != nil {
			t.Errorf("a middle leg of %v made longer by %v: %v", middle, more, err)
		}
		if _, err := bends.Form(plastic, bends.Path{Corners: path(more - 0.011)}); err == nil {
			t.Errorf("a middle leg of %v needs less than %v more", middle, more)
		}
	}
}

// wayOut reads the lengthening out of the last number of an error's text.
func wayOut(t *testing.T, err error) (mm float64) {
	t.Helper()
	text := err.Error()
	_, after, found := strings.Cut(text, "make its leg ")
	if !found {
		_, after, found = strings.Cut(text, "bends: ")
	}
	if _, scan := fmt.Sscanf(after, "%f mm", &mm); !found || scan != nil {
		t.Fatalf("no lengthening in %q", text)
	}
	return mm
}
