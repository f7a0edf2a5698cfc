package find

import (
	"math"

	"tubewright/bends"
)

// Looks are why people choose rigid tube, so they are part of the cost: each
// thing below that an eye would catch counts as weigh.tidy millimetres of tube.
//
// Of one run:
//
//	1    for each leg along no axis of the case and neither port's facing
//	     (½ when it lies half-way between two axes, as the legs of a 45 do)
//	1    for each bend whose plane is turned from the last one's by neither
//	     nothing, a quarter nor a half turn: it shows from every side
//
// Between two runs, for legs side by side (parallel, level with each other over
// at least sideBySide, no farther apart than neighbours mm):
//
//	1    for each pair almost but not quite in one plane of the case: off by
//	     less than nearPlane
//	1    for each pair after the first whose distance differs from the first's

// untidyOf counts what is untidy about one run's path between ports that face
// two ways.
func untidyOf(path []vec, first, final vec) float64 {
	sum := 0.0
	var before, dir vec
	legs := 0
	for i := 1; i < len(path); i++ {
		next, ok := unit(path[i].Sub(path[i-1]))
		if !ok {
			continue
		}
		sum += slant(next, first, final)
		if legs++; legs > 2 {
			sum += twist(before, dir, next)
		}
		before, dir = dir, next
	}
	return sum
}

// untidiness is untidyOf of a way. A straight tube lies as its sockets do, whatever
// they must give.
func (w *Way) untidiness() float64 {
	first, final := w.Start.Port.Frame.Dir, w.End.Port.Frame.Dir
	if len(w.Formed.Bends) == 0 {
		return slant(w.Start.Stop.Dir, first, final)
	}
	return untidyOf(w.Formed.Corners, first, final)
}

// slant is how untidy a leg of a direction is between ports that face two others:
// 0, ½ or 1.
func slant(dir, first, final vec) float64 {
	if along(dir, first) || along(dir, final) {
		return 0
	}
	least, middle, most := math.Abs(dir[0]), math.Abs(dir[1]), math.Abs(dir[2])
	if least > middle {
		least, middle = middle, least
	}
	if middle > most {
		middle, most = most, middle
	}
	if least > middle {
		least, middle = middle, least
	}
	switch {
	case middle <= evenWay:
		return 0
	case least <= evenWay && most-middle <= 2*evenWay:
		return 0.5
	}
	return 1
}

const (
	// evenWay is the sine of an angle no eye sees (0.1°, as for standard turns).
	evenWay = standardWithin * perDegree
	// sideBySide is how long two legs must be level with each other to be seen as
	// a pair, mm.
	sideBySide = 25
	// neighbours is how far apart two tubes may be, axis to axis and in diameters
	// of the thicker, and still be seen as a pair.
	neighbours = 4
	// nearPlane is how far out of a common plane two legs may be, in the same
	// diameters, and look like a mistake rather than a choice.
	nearPlane = 0.75
	// samePlane is how far out of a plane no eye sees, mm.
	samePlane = 0.5
)

// along reports whether two unit directions lie along one line.
func along(a, b vec) bool { return a.Cross(b).Len() <= evenWay }

// twist is 1 when the bend from the second direction to the third lies in a
// plane turned oddly from the one before, else 0.
func twist(first, second, third vec) float64 {
	m, ok := unit(first.Cross(second))
	n, good := unit(second.Cross(third))
	if !ok || !good {
		return 0
	}
	cos := math.Abs(m.Dot(n))
	if cos <= evenWay || m.Cross(n).Len() <= evenWay {
		return 0
	}
	return 1
}

// tidyPair is what two ways beside each other add to the cost by their looks,
// in steps of sameCost.
func (sc *scene) tidyPair(a, b *Way) int64 {
	return costKey(sc.plan.Weigh.Tidy * untidyBetween(&a.Formed, &b.Formed))
}

// untidyBetween counts what is untidy between two runs.
func untidyBetween(a, b *bends.Formed) float64 {
	sum, first := 0.0, -1.0
	od := max(a.Tube.OD, b.Tube.OD)
	for i := 1; i < len(a.Corners); i++ {
		for j := 1; j < len(b.Corners); j++ {
			p := legPair{a.Corners[i-1], a.Corners[i], b.Corners[j-1], b.Corners[j]}
			over, ok := p.beside(neighbours * od)
			if !ok {
				continue
			}
			if nearlyLevel(over, nearPlane*od) {
				sum++
			}
			apart := over.Len()
			switch {
			case first < 0:
				first = apart
			case math.Abs(apart-first) > samePlane:
				sum++
			}
		}
	}
	return sum
}

// legPair is a leg of each of two runs, from corner to corner.
type legPair struct{ a, b, c, d vec }

// beside gives the way across from the first leg to the second when they lie
// side by side no farther apart than most.
func (p *legPair) beside(most float64) (over vec, ok bool) {
	if p.apart(most) {
		return over, false
	}
	u, ok := unit(p.b.Sub(p.a))
	v, good := unit(p.d.Sub(p.c))
	if !ok || !good || !along(u, v) {
		return over, false
	}
	from, to := 0.0, p.b.Sub(p.a).Dot(u)
	s, t := p.c.Sub(p.a).Dot(u), p.d.Sub(p.a).Dot(u)
	if min(to, max(s, t))-max(from, min(s, t)) < sideBySide {
		return over, false
	}
	over = aside(p.c.Sub(p.a), u)
	return over, over.Len() <= most
}

// apart reports whether the bounds of two legs alone show that they lie farther
// apart than most. Legs side by side may lean from each other by evenWay.
func (p *legPair) apart(most float64) bool {
	for i := range 3 {
		most += evenWay * math.Abs(p.d[i]-p.c[i])
	}
	for i := range 3 {
		if min(p.a[i], p.b[i])-max(p.c[i], p.d[i]) > most+sameSpot || min(p.c[i], p.d[i])-max(p.a[i], p.b[i]) > most+sameSpot {
			return true
		}
	}
	return false
}

// nearlyLevel reports whether two legs this far across from each other are out
// of a common plane of the case by little enough to look like a mistake.
func nearlyLevel(over vec, within float64) bool {
	least := math.Inf(1)
	seen := 0
	for _, x := range over {
		if x = math.Abs(x); x > samePlane {
			seen++
			least = min(least, x)
		}
	}
	return seen > 1 && least < within
}
