package ui

import (
	"errors"
	"math"
	"strings"
	"testing"

	"tubewright/route"
)

func TestParseLength(t *testing.T) {
	for _, row := range []struct {
		text  string
		units route.Units
		want  float64 // mm
	}{
		{"12.5", route.Millimetres, 12.5},
		{"12,5", route.Millimetres, 12.5},
		{" 12 ", route.Millimetres, 12},
		{".5", route.Millimetres, 0.5},
		{"5.", route.Millimetres, 5},
		{"-3", route.Millimetres, -3},
		{"−3", route.Millimetres, -3},
		{"+3", route.Millimetres, 3},
		{"-0", route.Millimetres, 0},
		{"1/2 in", route.Millimetres, 12.7},
		{"1 1/2 in", route.Millimetres, 38.1},
		{`3/4"`, route.Millimetres, 19.05},
		{"3 cm", route.Millimetres, 30},
		{"3cm", route.Millimetres, 30},
		{"0.2 M", route.Millimetres, 200},
		{"120+15", route.Millimetres, 135},
		{"120 - 15", route.Millimetres, 105},
		{"1 in + 1 cm - 5", route.Millimetres, 30.4},
		{"2", route.Inches, 50.8},
		{"2 mm", route.Inches, 2},
		{"1/4", route.Inches, 6.35},
		{"10000", route.Millimetres, 10000},
	} {
		got, err := parseLength(row.text, row.units)
		if err != nil || math.Abs(got-row.want) > 1e-9 || math.Signbit(got) != math.Signbit(row.want) {
			t.Errorf("parseLength(%q, %s) = %v, %v; want %v", row.text, row.units, got, err, row.want)
		}
	}
}

func TestParseLengthSaysWhatIsWrong(t *testing.T) {
	for _, row := range []struct{ text, says string }{
		{"", "no number"},
		{"   ", "no number"},
		{"abc", `"abc" is not a number`},
		{"12x", `"x" is not a unit`},
		{"12 furlongs", "Use mm, cm, m or in"},
		{"1.234,5", "two decimal marks"},
		{"12..5", "two decimal marks"},
		{"120+", "missing at the end"},
		{"120++3", `"+3" is not a number`},
		{"1/0", "divided by 0"},
		{"1/", "missing at the end"},
		{"12 13", "two numbers"},
		{"12 mm 13", "does not belong there"},
		{"12*3", "does not belong there"},
		{"10000.1", "too large"},
		{"1 km", `"km" is not a unit`},
		{"NaN", "not a number"},
		{"inf", "not a number"},
		{"1e3", `"e" is not a unit`},
		{strings.Repeat("9", 400), "too large"},
		{"90°", `"°" is not a unit`},
	} {
		got, err := parseLength(row.text, route.Millimetres)
		var wrong *NumberError
		if !errors.As(err, &wrong) || !strings.Contains(err.Error(), row.says) {
			t.Errorf("parseLength(%q) = %v, %v; want an error saying %q", row.text, got, err, row.says)
		}
	}
}

func TestParseAngle(t *testing.T) {
	for text, want := range map[string]float64{"90": 90, "22,5°": 22.5, "45+45": 90, "-90 deg": -90, "1/2": 0.5} {
		if got, err := parseAngle(text); err != nil || got != want {
			t.Errorf("parseAngle(%q) = %v, %v; want %v", text, got, err, want)
		}
	}
	if _, err := parseAngle("3 mm"); err == nil || !strings.Contains(err.Error(), "degrees") {
		t.Errorf("parseAngle(3 mm) gave %v, want a word about degrees", err)
	}
}

func FuzzParseLength(f *testing.F) {
	for _, seed := range []string{"12.5", "1 1/2 in", "120+15", "−3 cm", `"`, "1/"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		got, err := parseLength(text, route.Millimetres)
		if err == nil && (math.IsNaN(got) || math.Abs(got) > farthest) {
			t.Errorf("parseLength(%q) = %v without an error", text, got)
		}
	})
}
