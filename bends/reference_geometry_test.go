package bends_test

import (
	"errors"
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
)

var geometryRows = []group{
	{unitArc, "BG-001 BG-002"},
	{shopArc, "BG-003 BG-019"},
	{arcOf, "BG-004 BG-005 BG-006 BG-013 BG-015 BG-043 BG-065 BG-071 BG-074"},
	{gainOf, "BG-007 BG-010 BG-023"},
	{ratioOfGainRule, "BG-012"},
	{concentricRadius, "BG-016"},
	{stubStraight, "BG-017"},
	{legStraight, "BG-018"},
	{shopCut, "BG-020"},
	{backCut, "BG-021"},
	{gainFactor, "BG-024 BG-026 BG-027 BG-029 BG-030 BG-032 BG-033 BG-035 BG-036 BG-037 BG-039 BG-040 BG-041"},
	{setbackOf, "BG-042 BG-045 BG-046 BG-047 BG-049 BG-050 BG-052 BG-053 BG-054 BG-055 BG-057 BG-058 BG-059 " +
		"BG-061 BG-062 BG-080 BG-081 BG-083 BG-085"},
	{returnBend, "BG-063"},
	{arcDifference, "BG-064"},
	{chordOf, "BG-066 BG-072 BG-075"},
	{sagittaOf, "BG-067 BG-073 BG-076"},
	{insertedCut, "BG-086"},
	{touchingLeg, "BG-088"},
	{insertedStart, "BG-089"},
}

// oneBend forms a corner of a turn in degrees with room to spare.
func oneBend(t *testing.T, radius, turn float64) bends.Formed {
	t.Helper()
	long := 10*radius + 2*bends.Setback(radius, turn)
	sin, cos := math.Sincos(turn * math.Pi / 180)
	return formed(t, radius, mgl64.Vec3{-long, 0, 0}, mgl64.Vec3{}, mgl64.Vec3{long * cos, long * sin, 0})
}

// bend is the bend of the row's radius and turn.
func (in inputs) bend(t *testing.T) bends.Formed {
	t.Helper()
	return oneBend(t, in.radius(t), in.turn(t))
}

// radius is the row's, or what it says of it as a multiple of the diameter.
func (in inputs) radius(t *testing.T) float64 {
	t.Helper()
	if _, given := in["R"]; given {
		return in.num(t, "R")
	}
	return in.num(t, "OD") * in.num(t, "R_over_OD")
}

// turn is the row's; rows that leave it out are about right angles.
func (in inputs) turn(t *testing.T) float64 {
	t.Helper()
	if _, given := in["angle"]; given {
		return in.num(t, "angle")
	}
	return 90
}

// gain is what a bend saves against the way over its corner.
func gain(f bends.Formed) float64 { return leg(f, 0) + leg(f, 1) - f.Developed }

func unitArc(t *testing.T, _ inputs) float64         { return oneBend(t, 1, 1).Bends[0].Arc }
func arcOf(t *testing.T, in inputs) float64          { return in.bend(t).Bends[0].Arc }
func setbackOf(t *testing.T, in inputs) float64      { return in.bend(t).Bends[0].Setback }
func gainOf(t *testing.T, in inputs) float64         { return gain(in.bend(t)) }
func gainFactor(t *testing.T, in inputs) float64     { return gain(oneBend(t, 1, in.turn(t))) }
func ratioOfGainRule(t *testing.T, _ inputs) float64 { return 1.5 / gain(oneBend(t, 1, 90)) }

// shopArc is the arc as the shop reckons it: with its factor (1.57 for a right
// angle, 0.0175 for a degree) in place of the exact one.
func shopArc(t *testing.T, in inputs) float64 {
	factor, exact := 0.0175, math.Pi/180
	if in["factor"] != "" {
		factor, exact = in.num(t, "factor"), math.Pi/2
	}
	return arcOf(t, in) * factor / exact
}

// concentricRadius is how far a tube beside the inner one stands from the
// centre of the inner one's bend.
func concentricRadius(t *testing.T, in inputs) float64 {
	f := oneBend(t, in.num(t, "OD")*in.num(t, "inner_R_over_OD"), 90)
	arc := f.Pieces()[1]
	return arc.From.Add(arc.U.Mul(in.num(t, "tube_spacing"))).Sub(arc.Centre).Len()
}

// backBend forms the right angle whose back stands at the row's stub and leg,
// and makes sure that the bench table gives just these back.
func backBend(t *testing.T, in inputs) bends.Formed {
	t.Helper()
	od, stub, end := in.num(t, "OD"), 48.0, 44.0
	if in["stub"] != "" {
		stub = in.num(t, "stub")
	}
	if in["leg"] != "" {
		end = in.num(t, "leg")
	}
	f := formedOf(t, bends.Tube{OD: od, Radius: in.num(t, "R")},
		mgl64.Vec3{-stub + od/2, 0, 0}, mgl64.Vec3{}, mgl64.Vec3{0, end - od/2, 0})
	back := f.Bench(bends.Ends{}).Bends[0].Back
	if math.Abs(back.Before-stub) > noise || math.Abs(back.After-end) > noise {
		t.Errorf("the back of the bend stands at %v, want %v and %v", back, stub, end)
	}
	return f
}

func stubStraight(t *testing.T, in inputs) float64 { return backBend(t, in).Straights[0] }
func legStraight(t *testing.T, in inputs) float64  { return backBend(t, in).Straights[1] }
func backCut(t *testing.T, in inputs) float64      { return backBend(t, in).Developed }

func shopCut(t *testing.T, in inputs) float64 {
	return stubStraight(t, in) + shopArc(t, in) + legStraight(t, in)
}

// returnBend is how far apart the legs of a U stand whose two right angles touch.
func returnBend(t *testing.T, in inputs) float64 {
	r := in.num(t, "R")
	corners := bends.Corners(bends.Table{
		Rows: []bends.Row{{Length: r, Turn: 90, Radius: r}, {Turn: 90, Radius: r}}, Last: r,
	})
	f := formed(t, r, corners...)
	if f.Straights[1] > noise {
		t.Errorf("%v left between two bends that touch", f.Straights[1])
	}
	return leg(f, 1)
}

// arcDifference is the way along the outside of a tube's bend less that along
// its inside, whatever the radius.
func arcDifference(t *testing.T, in inputs) float64 {
	half, r := in.num(t, "outside_diameter")/2, 20.0
	return oneBend(t, r+half, in.turn(t)).Bends[0].Arc - oneBend(t, r-half, in.turn(t)).Bends[0].Arc
}

func chordOf(t *testing.T, in inputs) float64 {
	arc := in.bend(t).Pieces()[1]
	return arc.To.Sub(arc.From).Len()
}

func sagittaOf(t *testing.T, in inputs) float64 {
	f := in.bend(t)
	arc := f.Pieces()[1]
	middle, _ := f.At(f.Bends[0].Middle)
	return middle.Sub(arc.From.Add(arc.To).Mul(0.5)).Len()
}

// insertedCut is the length of a tube whose ends go on into their sockets.
func insertedCut(t *testing.T, in inputs) float64 {
	legs, in2, r := in.list(t, "segments"), in.list(t, "insertion"), in.num(t, "R")
	return formed(t, r, mgl64.Vec3{-legs[0] - in2[0], 0, 0}, mgl64.Vec3{},
		mgl64.Vec3{0, legs[1], 0}, mgl64.Vec3{legs[2] + in2[1], legs[1], 0}).Developed
}

// touchingLeg is the leg that the refusal of a far too short one asks for.
func touchingLeg(t *testing.T, in inputs) float64 {
	turns, r := in.list(t, "angles"), in.num(t, "R")
	sin, cos := math.Sincos(turns[1] * math.Pi / 180)
	corners := []mgl64.Vec3{{-200, 0, 0}, {}, {0, 1, 0}, {-200 * sin, 1 + 200*cos, 0}}
	_, err := bends.Form(bends.Tube{Radius: r}, bends.Path{Corners: corners})
	var overlap *bends.OverlapError
	if !errors.As(err, &overlap) {
		t.Fatalf("Form(%v) = %v, want an overlap", corners, err)
	}
	return overlap.Leg + overlap.Shortfall()
}

func insertedStart(t *testing.T, in inputs) float64 {
	long := in.num(t, "first_segment") + in.num(t, "insertion")
	return formed(t, in.num(t, "R"), mgl64.Vec3{-long, 0, 0}, mgl64.Vec3{}, mgl64.Vec3{0, long, 0}).Bends[0].Start
}
