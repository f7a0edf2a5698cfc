package bends_test

import (
	"errors"
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
)

var offsetRows = []group{
	{travelOf, "OB-001 OB-002 OB-003 OB-005 OB-006 OB-008 OB-009 OB-011 OB-012 OB-013 OB-015 OB-016 OB-018 OB-020 " +
		"OB-034 OB-036 OB-037 OB-041 OB-069 OB-071 OB-073"},
	{shrinkOf, "OB-021 OB-023 OB-024 OB-025 OB-027 OB-028 OB-029 OB-030 OB-031 OB-035"},
	{runOf, "OB-040 OB-070 OB-072 OB-074"},
	{markDistance, "OB-039"},
	{saddleAhead, "OB-043 OB-045 OB-049 OB-051"},
	{saddleOuter, "OB-044 OB-046 OB-050 OB-052 OB-055"},
	{saddleCentre, "OB-056"},
	{trueOffset, "OB-057 OB-060 OB-065"},
	{rollingTravel, "OB-058 OB-061 OB-066"},
	{riseOf, "OB-059"},
	{lessTakeOff, "OB-062"},
	{spaceDistance, "OB-067"},
	{offsetStraight, "OB-079"},
	{smallestOffset, "OB-081"},
	{bentShrink, "OB-083"},
	{rollAngle, "OB-084"},
	{crossing, "OB-085"},
}

// sharp is a bend radius small enough to be a mitre beside every row's sizes.
const sharp = 1e-9

// zigzag is a tube of equal straights of 1 between these turns, each to the
// other side than the one before, in the xy plane: what the bench table says of
// it turned into corners.
func zigzag(t *testing.T, turns ...float64) bends.Formed {
	t.Helper()
	table := bends.Table{Last: 1}
	for _, turn := range turns {
		table.Rows = append(table.Rows, bends.Row{Length: 1, Roll: 180, Turn: turn, Radius: sharp})
	}
	return formed(t, sharp, bends.Corners(table)...)
}

// step is how far the leg between two bends of a zigzag goes along the tube's
// first leg, how far aside, and how far in all.
func step(f bends.Formed) (run, height, travel float64) {
	d := f.Corners[2].Sub(f.Corners[1])
	return d[0], math.Abs(d[1]), leg(f, 1)
}

// offset is the row's offset: an offset of its angle scaled to its height, or to
// a height of 1 in a table of constants.
func offset(t *testing.T, in inputs) (run, travel float64) {
	t.Helper()
	turn, high := in.turn(t), 1.0
	if in["offset"] != "" {
		high = in.num(t, "offset")
	}
	run, height, travel := step(zigzag(t, turn, turn))
	return run / height * high, travel / height * high
}

func travelOf(t *testing.T, in inputs) float64 { _, travel := offset(t, in); return travel }
func runOf(t *testing.T, in inputs) float64    { run, _ := offset(t, in); return run }
func shrinkOf(t *testing.T, in inputs) float64 { run, travel := offset(t, in); return travel - run }

// bent is an offset of the row's height in the xy plane with bends of its radius.
func bent(t *testing.T, in inputs) (bends.Formed, error) {
	t.Helper()
	high, r := in.num(t, "offset"), in.num(t, "R")
	run := high / math.Tan(in.turn(t)*math.Pi/180)
	corners := []mgl64.Vec3{{-200, 0, 0}, {}, {run, high, 0}, {run + 200, high, 0}}
	return bends.Form(bends.Tube{Radius: r}, bends.Path{Corners: corners})
}

func bentOffset(t *testing.T, in inputs) bends.Formed {
	t.Helper()
	f, err := bent(t, in)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func markDistance(t *testing.T, in inputs) float64 {
	f := bentOffset(t, in)
	return f.Bends[1].Start - f.Bends[0].Start
}

func offsetStraight(t *testing.T, in inputs) float64 { return bentOffset(t, in).Straights[1] }

func bentShrink(t *testing.T, in inputs) float64 {
	f := bentOffset(t, in)
	return f.Developed - (f.Corners[3][0] - f.Corners[0][0])
}

// smallestOffset is the height at which the refusal of a far too small offset
// would be lifted.
func smallestOffset(t *testing.T, in inputs) float64 {
	in["offset"] = "1"
	_, err := bent(t, in)
	var overlap *bends.OverlapError
	if !errors.As(err, &overlap) {
		t.Fatalf("Form of an offset of 1 = %v, want an overlap", err)
	}
	return overlap.Setbacks / overlap.Leg // the height grows with the leg
}

// saddle is a three-bend saddle of the row's depth: 45 degrees in the middle,
// 22.5 outside. It gives the leg between two bends and how far that goes ahead.
func saddle(t *testing.T, in inputs) (run, travel float64) {
	t.Helper()
	deep := 1.0
	if in["depth"] != "" {
		deep = in.num(t, "depth")
	}
	run, height, travel := step(zigzag(t, 22.5, 45, 22.5))
	return run / height * deep, travel / height * deep
}

func saddleOuter(t *testing.T, in inputs) float64 { _, travel := saddle(t, in); return travel }
func saddleAhead(t *testing.T, in inputs) float64 { run, travel := saddle(t, in); return travel - run }

func saddleCentre(t *testing.T, in inputs) float64 {
	return in.num(t, "distance_to_obstruction") + saddleAhead(t, in)
}

// rolling is a rolling offset of the row's rise (y) and roll (z) that goes this
// far ahead, out of a leg that comes down from above.
func rolling(t *testing.T, in inputs, run float64) bends.Formed {
	t.Helper()
	return formed(t, sharp, mgl64.Vec3{0, 100, 0}, mgl64.Vec3{}, mgl64.Vec3{100, 0, 0},
		mgl64.Vec3{100 + run, in.num(t, "rise"), in.num(t, "roll")})
}

// trueOffset is how far the travel goes aside, by its length and turn.
func trueOffset(t *testing.T, in inputs) float64 {
	f := rolling(t, in, 10)
	return leg(f, 2) * math.Sin(f.Bends[1].Turn*math.Pi/180)
}

func rollingTravel(t *testing.T, in inputs) float64 {
	f := rolling(t, in, trueOffset(t, in)/math.Tan(in.turn(t)*math.Pi/180))
	if got := f.Bends[1].Turn; math.Abs(got-in.turn(t)) > noise {
		t.Errorf("the rolling offset turns %v, want %v", got, in.turn(t))
	}
	return leg(f, 2)
}

func rollAngle(t *testing.T, in inputs) float64 { return rolling(t, in, 10).Bends[1].Roll }

func riseOf(t *testing.T, in inputs) float64 {
	return formed(t, 0, mgl64.Vec3{0, in.num(t, "lower"), 0}, mgl64.Vec3{0, in.num(t, "upper"), 0}).Developed
}

// lessTakeOff is the straight left of a travel between two 45 degree bends whose
// setbacks are the fittings' take-offs.
func lessTakeOff(t *testing.T, in inputs) float64 {
	travel, off := in.num(t, "travel"), in.list(t, "takeoff")
	perRadius := oneBend(t, 1, 45).Bends[0].Setback
	aside := travel / math.Sqrt2
	f, err := bends.Form(bends.Tube{Radius: 1}, bends.Path{
		Corners: []mgl64.Vec3{{-200, 0, 0}, {}, {aside, aside, 0}, {aside + 200, aside, 0}},
		Radii:   []float64{off[0] / perRadius, off[1] / perRadius},
	})
	if err != nil {
		t.Fatal(err)
	}
	return f.Straights[1]
}

func spaceDistance(t *testing.T, in inputs) float64 {
	return formed(t, 0, mgl64.Vec3{}, mgl64.Vec3{in.num(t, "run"), in.num(t, "vertical"), in.num(t, "horizontal")}).Developed
}

// crossing goes y along one tube and z along both axes of the other's 45 degree leg.
func crossing(t *testing.T, in inputs) float64 {
	y, z := in.num(t, "y"), in.num(t, "z")
	return formed(t, 0, mgl64.Vec3{}, mgl64.Vec3{z, y, z}).Developed
}
