package find

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

type vec = mgl64.Vec3

const (
	// sameSpot is rounding noise, mm: near 1 m one float64 step is 1e-13 mm, so
	// ten thousand roundings stay below it. Points this close are one.
	sameSpot = 1e-6
	// sameWay is rounding noise between unit directions: at the end of a 1 m
	// leg it moves a point by 1e-6 mm.
	sameWay = 1e-9
	// nearParallel is the sine below which two rays count as parallel when bends
	// between them are placed (0.06°). Corners stay on both rays all the same;
	// only the turns differ, by less than any former can set.
	nearParallel = 1e-3
	perDegree    = math.Pi / 180
)

// ray is where a chain lets its tube go: the stop, and the way it leaves.
type ray struct{ at, dir vec }

func (r ray) ahead(d float64) vec { return r.at.Add(r.dir.Mul(d)) }

// aside is the part of v square to a unit direction.
func aside(v, dir vec) vec { return v.Sub(dir.Mul(v.Dot(dir))) }

// unit gives v at length 1; false when v has no length to speak of.
func unit(v vec) (vec, bool) {
	length := v.Len()
	if length <= sameSpot {
		return vec{}, false
	}
	return v.Mul(1 / length), true
}

// degreesBetween is the angle between two unit directions, steady near 0 and 180.
func degreesBetween(a, b vec) float64 {
	return math.Atan2(a.Cross(b).Len(), a.Dot(b)) / perDegree
}

// closest gives how far along each ray the two lines come nearest, and how far
// apart they are there; false when the rays are parallel.
func closest(a, b ray) (s, t, gap float64, ok bool) {
	n := a.dir.Cross(b.dir)
	n2 := n.Dot(n)
	if n2 < nearParallel*nearParallel {
		return 0, 0, 0, false
	}
	w := b.at.Sub(a.at)
	s = w.Cross(b.dir).Dot(n) / n2
	t = w.Cross(a.dir).Dot(n) / n2
	return s, t, math.Abs(w.Dot(n)) / math.Sqrt(n2), true
}

// wholeRoll is how near a roll in degrees must come to a whole one to be meant
// so: rolls then read well and right angles stay exact.
const wholeRoll = 1e-7

// rollToward is the roll, in degrees in (−180, 180], at which a frame's Side
// points along the part of v square to its way; false when there is none.
func rollToward(f route.Frame, v vec) (float64, bool) {
	side, ok := unit(aside(v, f.Dir))
	if !ok {
		return 0, false
	}
	roll := math.Atan2(f.Dir.Cross(f.Ref).Dot(side), f.Ref.Dot(side)) / perDegree
	return tidyRoll(roll), true
}

// tidyRoll brings a roll into (−180, 180] and snaps it to whole degrees.
func tidyRoll(roll float64) float64 {
	roll = math.Mod(roll, 360)
	if whole := math.Round(roll); math.Abs(roll-whole) < wholeRoll {
		roll = whole
	}
	switch {
	case roll > 180:
		roll -= 360
	case roll <= -180:
		roll += 360
	}
	return roll + 0 // turns −0 into 0
}
