package bends_test

import (
	"slices"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"tubewright/bends"
)

// Reversed must be what forming the corners from the other end gives.
func TestReversedIsTheTubeFromItsOtherEnd(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := formTable(t, drawTable(t), drawMotion(t))
		path := bends.Path{Corners: slices.Clone(f.Corners)}
		for _, b := range f.Bends {
			path.Radii = append(path.Radii, b.Radius)
		}
		slices.Reverse(path.Corners)
		slices.Reverse(path.Radii)
		want, err := bends.Form(plastic, path)
		if err != nil {
			t.Fatal(err)
		}
		sameTube(t, f.Reversed(), want)
		sameTube(t, f.Reversed().Reversed(), f)
	})
}

func sameTube(t *rapid.T, got, want bends.Formed) {
	t.Helper()
	sameCorners(t, got.Corners, want.Corners)
	if off(got.Developed, want.Developed) || len(got.Bends) != len(want.Bends) {
		t.Fatalf("%v long with %d bends, want %v with %d", got.Developed, len(got.Bends), want.Developed, len(want.Bends))
	}
	for i, w := range want.Bends {
		g := got.Bends[i]
		if off(g.Turn, w.Turn) || off(g.Roll, w.Roll) || off(g.Start, w.Start) || off(g.Middle, w.Middle) || off(g.End, w.End) ||
			off(g.Radius, w.Radius) || off(g.Setback, w.Setback) || off(g.Arc, w.Arc) {
			t.Fatalf("bend %d is %+v, want %+v", i+1, g, w)
		}
	}
	for j, w := range want.Straights {
		if off(got.Straights[j], w) {
			t.Fatalf("straights are %v, want %v", got.Straights, want.Straights)
		}
	}
}

// The bench table from end B is that of the reversed tube from end A.
func TestBenchFromTheOtherEnd(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := formTable(t, drawTable(t), drawMotion(t))
		ends := bends.Ends{SeatGap: [2]float64{0.5, 1.5}, Play: [2]float64{2, 3}}
		turned := bends.Ends{SeatGap: [2]float64{1.5, 0.5}, Play: [2]float64{3, 2}}
		here, there := f.Bench(ends).Bends, f.Reversed().Bench(turned).Bends
		for i, h := range here {
			r := there[len(there)-1-i]
			if off(h.FromB.Start, r.FromA.End) || off(h.FromB.Middle, r.FromA.Middle) || off(h.FromB.End, r.FromA.Start) ||
				off(h.BlankB.Start, r.BlankA.End) || off(h.Back.Before, r.Back.After) || off(h.Back.After, r.Back.Before) {
				t.Fatalf("bend %d is %+v, from the other end %+v", i+1, h, r)
			}
		}
		if c, d := f.Cut(ends, 2), f.Reversed().Cut(turned, 2); off(c.Aim, d.Aim) || off(c.Shortest, d.Shortest) || off(c.Blank, d.Blank) {
			t.Fatalf("cut to %v, from the other end to %v", c, d)
		}
	})
}

// A hand-made tube: three bends to +90 and then to the side.
func TestReversedRolls(t *testing.T) {
	f := formed(t, 20, mgl64.Vec3{-100, 0, 0}, mgl64.Vec3{}, mgl64.Vec3{0, 100, 0}, mgl64.Vec3{0, 100, 100}, mgl64.Vec3{0, 200, 100})
	r := f.Reversed()
	sameList(t, "rolls", "+x +y +z: a right-hand quarter; +y +z +y: to the other side",
		[]float64{f.Bends[0].Roll, f.Bends[1].Roll, f.Bends[2].Roll}, []float64{0, 90, 180})
	sameList(t, "rolls from the other end", "the same hands met in the other order",
		[]float64{r.Bends[0].Roll, r.Bends[1].Roll, r.Bends[2].Roll}, []float64{0, 180, 90})
}
