package find

import (
	"math"
	"slices"

	"tubewright/route"
)

// sameRoll is how close two rolls in degrees may be and still be one to try.
const sameRoll = 1e-3

// rollsOf lists the rolls worth trying for a fitting at a frame when the tube
// is to go to the target, in a fixed order.
func rollsOf(fit *route.Fitting, f route.Frame, target ray) []float64 {
	if !turns(fit) {
		return []float64{0}
	}
	if !fit.Rotary {
		return fixedRolls(fit)
	}
	var rolls []float64
	for _, v := range pointers(f, target) {
		if r, ok := rollToward(f, v); ok {
			rolls = addRoll(rolls, r)
		}
	}
	for _, r := range coplanarRolls(fit, f, target) {
		rolls = addRoll(rolls, r)
	}
	return rolls
}

// fixedRolls is what a fitting that cannot turn allows.
func fixedRolls(fit *route.Fitting) []float64 {
	if len(fit.Rolls) == 0 {
		return []float64{0}
	}
	return fit.Rolls
}

func addRoll(rolls []float64, r float64) []float64 {
	for _, have := range rolls {
		if math.Abs(tidyRoll(have-r)) < sameRoll {
			return rolls
		}
	}
	return append(rolls, r)
}

// pointers are the directions a fitting may sensibly turn to: toward the
// target, along and against its way, and the frame's own four.
func pointers(f route.Frame, target ray) []vec {
	toward := aside(target.at.Sub(f.At), f.Dir)
	across := f.Dir.Cross(f.Ref)
	return []vec{
		toward, target.dir.Mul(-1), target.dir,
		f.Ref, across, f.Ref.Mul(-1), across.Mul(-1), toward.Mul(-1),
	}
}

// coplanarRolls are the rolls that bring the way into one plane with the
// target's line, so that one bend can join them. For an elbow the way after it
// must lie in the plane of its corner and the line; an offset must shift the
// way by exactly what the two lines miss each other by.
func coplanarRolls(fit *route.Fitting, f route.Frame, target ray) []float64 {
	switch fit.Kind {
	case route.Elbow:
		n, ok := unit(target.at.Sub(f.Ahead(fit.Legs[0])).Cross(target.dir))
		s, c := route.SinCos(fit.Turn)
		if ok && s > sameWay {
			return rollsWhere(f, n, -c/s*f.Dir.Dot(n))
		}
	case route.Offset:
		if n, ok := unit(f.Dir.Cross(target.dir)); ok {
			return rollsWhere(f, n, target.at.Sub(f.At).Dot(n)/fit.Sideways)
		}
	case route.Socket, route.Extender, route.Tee, route.Valve, route.Coupler, route.Plug:
	}
	return nil
}

// rollsWhere solves Side(roll)·n = want: none, one or two rolls.
func rollsWhere(f route.Frame, n vec, want float64) []float64 {
	u, v := f.Ref.Dot(n), f.Dir.Cross(f.Ref).Dot(n)
	size := math.Hypot(u, v)
	if size <= sameWay || math.Abs(want) > size {
		return nil
	}
	mid, off := math.Atan2(v, u)/perDegree, math.Acos(want/size)/perDegree
	return addRoll([]float64{tidyRoll(mid + off)}, tidyRoll(mid-off))
}

// mostGiven bounds the rolls tried for a given chain with many free ones.
const mostGiven = 64

// givenBuilds are the given chain in every roll worth trying.
func (s *side) givenBuilds(target ray) []*build {
	builds := []*build{s.bare()}
	for _, g := range s.given {
		var next []*build
		for _, b := range builds {
			for _, r := range g.rolls(b.frame, target) {
				next = append(next, b.with(g.fit, r))
			}
		}
		builds = next[:min(len(next), mostGiven)]
	}
	return ranked(builds)
}

func (g givenStep) rolls(f route.Frame, target ray) []float64 {
	if g.rolled {
		return []float64{g.roll}
	}
	return rollsOf(g.fit, f, target)
}

// builds are the chains to bend from: the given one, or the socket alone and
// with one fitting before it.
func (s *side) builds(target ray) []*build {
	if s.given != nil {
		return s.givenBuilds(target)
	}
	list := []*build{s.plain}
	for _, kind := range []kindOf{route.Extender, route.Elbow, route.Offset} {
		for _, fit := range s.kit[kind] {
			list = append(list, s.oneFitting(fit, target)...)
		}
	}
	return ranked(list)
}

func (s *side) oneFitting(fit *route.Fitting, target ray) []*build {
	var list []*build
	for _, r := range rollsOf(fit, s.port.Frame, target) {
		list = append(list, s.closed(s.bare().add(fit, r)))
	}
	return list
}

// ranked numbers the chains, so that equal costs keep one order.
func ranked(list []*build) []*build {
	for i, b := range list {
		b.rank = i
	}
	return slices.Clip(list)
}
