package bends_test

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
)

// hundredth is the rounding of the plan format's worked example.
const hundredth = 0.005

func rounded(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= hundredth) {
		t.Errorf("%s = %.4f, want %.2f (the plan format's worked example)", what, got, want)
	}
}

func TestBenchWorkedExample(t *testing.T) {
	f := formedOf(t, plastic, mgl64.Vec3{106, 100, 50}, mgl64.Vec3{250, 100, 50}, mgl64.Vec3{250, 244, 50})
	cut, bench := f.Cut(sockets, 2), f.Bench(sockets)
	rounded(t, "longest", cut.Longest, 274.27)
	rounded(t, "aim", cut.Aim, 273.27)
	rounded(t, "shortest", cut.Shortest, 268.27)
	rounded(t, "blank", cut.Blank, 305.27)
	sameList(t, "straights", "112 less the seat gap of 0.5", bench.Straights, []float64{111.5, 111.5})
	b := bench.Bends[0]
	rounded(t, "start", b.FromA.Start, 111.5)
	rounded(t, "middle", b.FromA.Middle, 136.63)
	rounded(t, "end", b.FromA.End, 161.77)
	rounded(t, "form to", b.FormTo, 92.35)
	rounded(t, "heat", b.Heat, 82.27)
	same(t, "from B", "symmetric: the bend's end is as far from B as its start from A", b.FromB.End, b.FromA.Start)
	same(t, "on the blank from A", "15 of trim", b.BlankA.Start, 126.5)
	same(t, "on the blank from B", "15 of trim", b.BlankB.End, 126.5)
	same(t, "outer wall", "2·32/(32+8)", b.OuterWall, 1.6)
	same(t, "inner wall", "2·32/(32−8)", b.InnerWall, 64.0/24)
	same(t, "back before", "111.5 + 32 + 8", b.Back.Before, 151.5)
	same(t, "back after", "111.5 + 32 + 8", b.Back.After, 151.5)
}

func TestCutOfAStraightTube(t *testing.T) {
	f := formedOf(t, plastic, mgl64.Vec3{}, mgl64.Vec3{150, 0, 0})
	ends := bends.Ends{SeatGap: [2]float64{0.5, 1}, Play: [2]float64{3, 4}}
	want := bends.Cut{Aim: 148.5, Shortest: 143, Longest: 150, Blank: 150.5}
	if got := f.Cut(ends, 2); got != want {
		t.Errorf("Cut = %+v, want %+v: no trims, squared once", got, want)
	}
	bench := f.Bench(ends)
	sameList(t, "straights", "less both seat gaps", bench.Straights, []float64{148.5})
}

// A wrap is the arc around the outside of the tube under the roll.
func TestWrapAndRoll(t *testing.T) {
	tests := []struct {
		name string
		last mgl64.Vec3
		roll float64
		wrap float64
	}{
		{"to the same side: a U", mgl64.Vec3{-100, 100, 0}, 0, 0},
		{"to the other side: a Z", mgl64.Vec3{100, 100, 0}, 180, 8 * math.Pi},
		{"a quarter by the right hand", mgl64.Vec3{0, 100, 100}, 90, 4 * math.Pi},
		{"a quarter by the left hand", mgl64.Vec3{0, 100, -100}, -90, -4 * math.Pi},
	}
	for _, c := range tests {
		t.Run(c.name, func(t *testing.T) {
			// +x, then +y: the bend's axis is +z. The thumb along +y takes +z to +x,
			// which is the axis of a turn from +y to +z.
			f := formedOf(t, plastic, mgl64.Vec3{-100, 0, 0}, mgl64.Vec3{}, mgl64.Vec3{0, 100, 0}, c.last)
			b := f.Bench(bends.Ends{}).Bends[1]
			same(t, "roll", c.name, b.Roll, c.roll)
			same(t, "wrap", "roll/360 of π·16", b.Wrap, c.wrap)
		})
	}
}

// The back of a bend, found the slow way: where the lines on the outsides of
// both legs cross in the plane of the bend.
func TestBackIsWhereTheOutsidesMeet(t *testing.T) {
	for _, turn := range []float64{10, 45, 60, 90, 120, 150} {
		sin, cos := math.Sincos(turn * math.Pi / 180)
		corner := mgl64.Vec3{250, 0, 0}
		f := formedOf(t, plastic, mgl64.Vec3{}, corner, corner.Add(mgl64.Vec3{300 * cos, 300 * sin, 0}))
		// The bend turns to +y, so its outside is 8 mm below the first leg and 8 mm
		// right of the second: there 8·(sin, −cos), and the crossing has y = −8.
		along := (-8 + 8*cos) / sin // of the second leg, beyond the corner
		meet := corner[0] + 8*sin + along*cos
		back := f.Bench(bends.Ends{}).Bends[0].Back
		same(t, "before", "crossing of the outside lines", back.Before, meet)
		same(t, "after", "the crossing seen along the second leg", back.After, 300-along)
	}
}

// Between two bends the back measure is the outside size of the leg.
func TestBackBetweenBends(t *testing.T) {
	for name, last := range map[string]mgl64.Vec3{"U": {-100, 100, 0}, "Z": {100, 100, 0}, "askew": {0, 100, 100}} {
		f := formedOf(t, plastic, mgl64.Vec3{-100, 0, 0}, mgl64.Vec3{}, mgl64.Vec3{0, 100, 0}, last)
		b := f.Bench(bends.Ends{}).Bends
		same(t, name+": after the first", "100 between centrelines and half a tube on each side", b[0].Back.After, 116)
		same(t, name+": before the second", "the same measure", b[1].Back.Before, 116)
		same(t, name+": before the first", "100 + 8", b[0].Back.Before, 108)
	}
}
