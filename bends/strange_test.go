package bends_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"tubewright/bends"
)

// strange draws numbers that meet each other often and mean nothing at times.
func strange(t *rapid.T, name string) float64 {
	return rapid.SampledFrom([]float64{
		0, 0, 1, 20, 20, 50, 100, 100, 200, 1000, 100 + 1e-9, -50, -100,
		1e-7, 1e-3, 1e6, 1e-300, 1e200, -1e308, math.Inf(1), math.NaN(),
	}).Draw(t, name)
}

func drawStrange(t *rapid.T) (bends.Tube, bends.Path) {
	tube := bends.Tube{Radius: 20, StraightBetween: 5}
	if rapid.IntRange(0, 9).Draw(t, "odd tube") == 0 {
		tube = bends.Tube{
			OD: strange(t, "od"), ID: strange(t, "id"), Radius: strange(t, "radius"), StraightEnd: strange(t, "end"),
			Trim: strange(t, "trim"), Springback: bends.Springback{Percent: strange(t, "percent")},
		}
	}
	var path bends.Path
	for range rapid.IntRange(0, 6).Draw(t, "corners") {
		path.Corners = append(path.Corners, mgl64.Vec3{strange(t, "x"), strange(t, "y"), strange(t, "z")})
	}
	if rapid.Bool().Draw(t, "radii") {
		for range rapid.IntRange(0, 5).Draw(t, "count") {
			path.Radii = append(path.Radii, strange(t, "r"))
		}
	}
	return tube, path
}

// Whatever comes in, Form gives faults that say something or a tube of numbers.
func TestFormOfAnything(t *testing.T) {
	formed := 0
	rapid.Check(t, func(t *rapid.T) {
		tube, path := drawStrange(t)
		f, err := bends.Form(tube, path)
		if err == nil {
			formed++
			allNumbers(t, f)
			return
		}
		var faults bends.Faults
		if !errors.As(err, &faults) || len(faults) == 0 || strings.Contains(err.Error(), "%!") {
			t.Fatalf("Form(%v, %v) = %v", tube, path, err)
		}
		for _, fault := range faults {
			if fault == nil || fault.Error() == "" {
				t.Fatalf("Form(%v, %v) has an empty fault in %v", tube, path, err)
			}
		}
	})
	if formed == 0 {
		t.Error("no path drawn could be formed, so nothing was seen of those")
	}
}

// allNumbers checks that whatever is worked out of a formed tube is a number.
func allNumbers(t *rapid.T, f bends.Formed) {
	t.Helper()
	numbers := append([]float64{f.Developed, f.Cut(bends.Ends{}, 2).Blank}, f.Straights...)
	for _, b := range f.Bench(bends.Ends{}).Bends {
		numbers = append(numbers, b.Turn, b.Roll, b.FromA.Start, b.FromB.End, b.Back.Before, b.Back.After, b.Wrap, b.FormTo, b.Heat,
			b.OuterWall, b.InnerWall)
	}
	for _, p := range f.Pieces() {
		numbers = append(numbers, p.To[0], p.To[1], p.To[2], p.Centre[0], p.Centre[1], p.Centre[2])
	}
	for _, c := range bends.Corners(f.Table()) {
		numbers = append(numbers, c[:]...)
	}
	for i, v := range numbers {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			t.Fatalf("number %d of %+v is %v", i, f, v)
		}
	}
	for _, s := range f.Straights {
		if s < 0 {
			t.Fatalf("straights %v", f.Straights)
		}
	}
}
