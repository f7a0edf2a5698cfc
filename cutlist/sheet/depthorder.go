package sheet

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"
)

// space is an upright box of the machine, mm.
type space struct{ lo, hi mgl64.Vec3 }

// spaceOf is the box around points that reach this far in every direction.
func spaceOf(reach float64, points ...mgl64.Vec3) space {
	s := space{mgl64.Vec3{math.Inf(1), math.Inf(1), math.Inf(1)}, mgl64.Vec3{math.Inf(-1), math.Inf(-1), math.Inf(-1)}}
	around := mgl64.Vec3{reach, reach, reach}
	for _, p := range points {
		s = s.with(p.Sub(around)).with(p.Add(around))
	}
	return s
}

// with is the box grown around a point.
func (s space) with(p mgl64.Vec3) space {
	for i := range p {
		s.lo[i], s.hi[i] = math.Min(s.lo[i], p[i]), math.Max(s.hi[i], p[i])
	}
	return s
}

// spaceOfCylinder is the box around a cylinder with flat ends: a disc square to
// a unit axis reaches radius·√(1 − axis²) along each direction.
func spaceOfCylinder(from, to, axis mgl64.Vec3, radius float64) space {
	var reach mgl64.Vec3
	for i, a := range axis {
		reach[i] = radius * math.Sqrt(math.Max(0, 1-a*a))
	}
	return spaceOf(0, from.Sub(reach), from.Add(reach), to.Sub(reach), to.Add(reach))
}

// meetsBy is how far two things may reach into each other and still be told
// apart, mm: a tube rests on what it touches.
const meetsBy = 0.1

// inFront reports which of two things that cover each other on the page is the
// nearer: above 0 the first, below 0 the second. Where an axis parts them the
// one on the reader's side of it is; a line of sight cannot meet them the other
// way round. Things that reach into each other go by their nearest points.
func (v view) inFront(a, b *painted) int {
	told := 0
	for axis, t := range v.toward {
		if math.Abs(t) <= noise {
			continue
		}
		side := 0
		switch {
		case a.space.lo[axis] >= b.space.hi[axis]-meetsBy:
			side = 1
		case b.space.lo[axis] >= a.space.hi[axis]-meetsBy:
			side = -1
		}
		if t < 0 {
			side = -side
		}
		if side*told < 0 {
			return 0 // they only touch on the page
		}
		if side != 0 {
			told = side
		}
	}
	if gap := math.Round((a.near - b.near) / sameDepth); told == 0 && gap != 0 {
		return int(math.Copysign(1, gap))
	}
	return told
}

// obliquely sorts what is painted so that each thing comes after all that it
// covers. Where things cover each other in a ring the order before decides.
func (v view) obliquely(all []painted) []painted {
	backToFront(all)
	behind := make([][]int, len(all)) // what each thing covers
	for i := range all {
		for k := range i {
			if !all[i].box.meets(all[k].box) {
				continue
			}
			switch v.inFront(&all[i], &all[k]) {
			case 1:
				behind[i] = append(behind[i], k)
			case -1:
				behind[k] = append(behind[k], i)
			}
		}
	}
	out := make([]painted, 0, len(all))
	done := make([]bool, len(all))
	var put func(i int)
	put = func(i int) {
		if done[i] {
			return
		}
		done[i] = true
		for _, k := range behind[i] {
			put(k)
		}
		out = append(out, all[i])
	}
	for i := range all {
		put(i)
	}
	return slices.Clip(out)
}

// oblique reports whether the view looks along none of the machine's axes.
func (v view) oblique() bool {
	for _, t := range v.toward {
		if math.Abs(t) > 1-noise {
			return false
		}
	}
	return true
}

// along reports whether a step runs along one of the machine's axes.
func along(step mgl64.Vec3) bool {
	n := 0
	for _, c := range step {
		if math.Abs(c) > noise {
			n++
		}
	}
	return n == 1
}

// spaceOfStretch is the box around a stretch of tube: it ends flat where it
// runs along an axis, so that the stretches of one tube do not meet.
func spaceOfStretch(points []mgl64.Vec3, radius float64) space {
	first, last := points[0], points[len(points)-1]
	if step := last.Sub(first); step.Len() > noise && along(step) && len(points) == 2 {
		return spaceOfCylinder(first, last, step.Normalize(), radius)
	}
	return spaceOf(radius, points...)
}
