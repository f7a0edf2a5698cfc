package route_test

import (
	"testing"

	"tubewright/route"
)

func TestText(t *testing.T) {
	tests := []struct {
		units      route.Units
		mm         float64
		text, unit string
	}{
		{route.Millimetres, 273.265, "273.3", "273.3 mm"},
		{route.Millimetres, -0.04, "0.0", "0.0 mm"},
		{route.Millimetres, -3.25, "-3.3", "-3.3 mm"},
		{"", 1, "1.0", "1.0 mm"},
		{route.Inches, 25.4, "1.000", "1.000 in"},
		{route.Inches, 8 * 25.4 / 16, "0.500", "0.500 in"},
		{route.Inches, -0.001, "0.000", "0.000 in"},
		{route.Inches, 273.265, "10.758", "10.758 in"},
	}
	for _, c := range tests {
		if got := c.units.Text(c.mm); got != c.text {
			t.Errorf("%q.Text(%v) = %q, want %q", c.units, c.mm, got, c.text)
		}
		if got := c.units.TextUnit(c.mm); got != c.unit {
			t.Errorf("%q.TextUnit(%v) = %q, want %q", c.units, c.mm, got, c.unit)
		}
	}
}

func TestDegrees(t *testing.T) {
	for a, want := range map[float64]string{92.35: "92.4°", -0.01: "0.0°", -179.96: "-180.0°", 90: "90.0°"} {
		if got := route.Degrees(a); got != want {
			t.Errorf("Degrees(%v) = %q, want %q", a, got, want)
		}
	}
}

func TestFactor(t *testing.T) {
	if f := route.Inches.Factor(); f != 25.4 {
		t.Errorf("an inch is %v mm, want exactly 25.4", f)
	}
	if route.Millimetres.Factor() != 1 || route.Units("").Factor() != 1 {
		t.Error("a millimetre is 1 mm, and so is a plan that says nothing")
	}
}
