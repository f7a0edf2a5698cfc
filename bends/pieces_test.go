package bends_test

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"tubewright/bends"
)

func TestPiecesJoinUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := formTable(t, drawTable(t), drawMotion(t))
		pieces := f.Pieces()
		if len(pieces) != 2*len(f.Bends)+1 || pieces[0].Start != 0 || off(pieces[len(pieces)-1].End, f.Developed) {
			t.Fatalf("%d pieces for %d bends", len(pieces), len(f.Bends))
		}
		for i, p := range pieces {
			from, _ := p.At(p.Start)
			to, way := p.At(p.End)
			sameCorners(t, []mgl64.Vec3{from, to}, []mgl64.Vec3{p.From, p.To})
			if i == 0 {
				continue
			}
			before, dir := pieces[i-1].At(pieces[i-1].End)
			_, on := p.At(p.Start)
			sameCorners(t, []mgl64.Vec3{from, on}, []mgl64.Vec3{before, dir})
			if (p.Radius > 0) != (i%2 == 1) || off(way.Len(), 1) {
				t.Fatalf("piece %d has radius %v and leaves along %v", i, p.Radius, way)
			}
		}
	})
}

// The slow way round: walk along the tube in small steps. The steps must add up
// to the developed length and each must go where the direction said.
func TestAtWalksTheDevelopedLength(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := formTable(t, drawTable(t), drawMotion(t))
		const steps = 2000
		last, way := f.At(0)
		walked := 0.0
		for i := 1; i <= steps; i++ {
			p, dir := f.At(f.Developed * float64(i) / steps)
			step := p.Sub(last)
			// A chord leaves the arc by half its angle: at most 2 mm of radius 28.
			if ahead := step.Normalize().Dot(way); ahead < 0.99 {
				t.Fatalf("step %d goes along %v, not %v", i, step, way)
			}
			walked += step.Len()
			last, way = p, dir
		}
		// A chord of a mm is short of its arc of radius 28 by a³/24r² < 1e-4 mm.
		if short := f.Developed - walked; short < -near || short > 0.3 {
			t.Fatalf("walked %v of %v", walked, f.Developed)
		}
	})
}

func TestAtBeyondTheEnds(t *testing.T) {
	f := formed(t, 20, mgl64.Vec3{-20, 0, 0}, mgl64.Vec3{}, mgl64.Vec3{0, 40, 0}, mgl64.Vec3{20, 40, 0})
	for _, c := range []struct {
		s          float64
		point, dir mgl64.Vec3
	}{
		{-5, mgl64.Vec3{-20, 0, 0}, mgl64.Vec3{1, 0, 0}},
		{0, mgl64.Vec3{-20, 0, 0}, mgl64.Vec3{1, 0, 0}},
		{5 * math.Pi, mgl64.Vec3{-20 + 10*math.Sqrt2, 20 - 10*math.Sqrt2, 0}, mgl64.Vec3{math.Sqrt2 / 2, math.Sqrt2 / 2, 0}},
		{10 * math.Pi, mgl64.Vec3{0, 20, 0}, mgl64.Vec3{0, 1, 0}},
		{900, mgl64.Vec3{20, 40, 0}, mgl64.Vec3{1, 0, 0}},
	} {
		point, dir := f.At(c.s)
		samePoint(t, "point", point, c.point)
		samePoint(t, "direction", dir, c.dir)
	}
}

func TestStraightWithoutLengthHasNoDirection(t *testing.T) {
	f := formed(t, 20, mgl64.Vec3{-20, 0, 0}, mgl64.Vec3{}, mgl64.Vec3{0, 40, 0}, mgl64.Vec3{20, 40, 0})
	p := f.Pieces()[2]
	point, dir := p.At(p.Start)
	samePoint(t, "point", point, mgl64.Vec3{0, 20, 0})
	samePoint(t, "direction", dir, mgl64.Vec3{})
}

func TestGain(t *testing.T) {
	same(t, "gain", "2·32 − 32·π/2", bends.Gain(32, 90), 64-16*math.Pi)
}
