package session

import (
	"fmt"
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// editPart changes one part of the plan.
func (s *Session) editPart(name, part, key string, change func(*route.Part)) error {
	i := slices.IndexFunc(s.history.plan().Parts, func(k route.Part) bool { return k.Name == part })
	if i < 0 {
		return &MissingError{"part", part}
	}
	return s.edit(name, key, func(p route.Plan) route.Plan {
		change(&p.Parts[i])
		return p
	})
}

// MovePart puts a part's origin at a place in the case, mm.
func (s *Session) MovePart(part string, at mgl64.Vec3) error {
	return s.editPart("Move "+part, part, "", func(k *route.Part) { k.At = tidy(at) })
}

// NudgePart shifts a part, mm. Nudges of one part in a row are one step of undo.
func (s *Session) NudgePart(part string, by mgl64.Vec3) error {
	return s.editPart("Nudge "+part, part, "nudge "+part, func(k *route.Part) { k.At = tidy(k.At.Add(by)) })
}

// SetPartNumbers gives a part its place in mm and its turn in degrees about
// the fixed axes x, then y, then z.
func (s *Session) SetPartNumbers(part string, at, turn mgl64.Vec3) error {
	old, ok := s.history.plan().FindPart(part)
	if ok && old.At == at && old.Turn == turn {
		return nil
	}
	name := "Move " + part
	if old.Turn != turn {
		name = "Turn " + part
	}
	return s.editPart(name, part, "", func(k *route.Part) { k.At, k.Turn = at, turn })
}

// TurnPart turns a part by degrees about an axis of the case (0 x, 1 y, 2 z)
// through the part's middle, by the right-hand rule.
func (s *Session) TurnPart(part string, axis int, degrees float64) error {
	plan := s.history.plan()
	return s.editPart("Turn "+part, part, "", func(k *route.Part) {
		*k = turned(plan.Whole(*k), *k, axis, degrees)
	})
}

// turned gives part after a turn about the middle of the solids of whole.
func turned(whole, part route.Part, axis int, degrees float64) route.Part {
	var by mgl64.Vec3
	by[axis] = degrees
	before := route.Turned(part.Turn)
	part.Turn = Angles(route.Turned(by).Mul3(before))
	after := route.Turned(part.Turn)
	mid := middle(whole.Solids)
	part.At = tidy(part.At.Add(before.Mul3x1(mid)).Sub(after.Mul3x1(mid)))
	return part
}

// middle is the middle of the box around solids, in their own frame. A
// cylinder counts with its radius on every side.
func middle(solids []route.Solid) mgl64.Vec3 {
	if len(solids) == 0 {
		return mgl64.Vec3{}
	}
	lo, hi := mgl64.Vec3{math.Inf(1), math.Inf(1), math.Inf(1)}, mgl64.Vec3{math.Inf(-1), math.Inf(-1), math.Inf(-1)}
	for _, s := range solids {
		for i := range 3 {
			lo[i] = min(lo[i], s.From[i]-s.Radius, s.To[i]-s.Radius)
			hi[i] = max(hi[i], s.From[i]+s.Radius, s.To[i]+s.Radius)
		}
	}
	return lo.Add(hi).Mul(0.5)
}

// grain is the step that places and turns of dragged and turned parts are
// rounded to: a thousandth of a millimetre or degree, far below any hand, so
// that files do not fill with the dust of floating point.
const grain = 1e-3

// tidy rounds to whole grains; it never gives −0.
func tidy(v mgl64.Vec3) mgl64.Vec3 {
	for i := range v {
		v[i] = math.Round(v[i]/grain)*grain + 0
		v[i] = math.Round(v[i]*1e6)/1e6 + 0
	}
	return v
}

// lock is how near to straight up or down the turned x axis may come before
// the turns about x and z are one and the same: rounding noise, about 1e-5 degrees.
const lock = 1e-12

// Angles gives the turn about the fixed axes x, then y, then z, in degrees in
// (−180, 180], that [route.Turned] makes into the rotation m. Where y is ±90
// and the other two act alike, the one about x is 0.
func Angles(m mgl64.Mat3) mgl64.Vec3 {
	sin := -m.At(2, 0)
	if math.Abs(sin) > 1-lock {
		return angles(0, math.Copysign(math.Pi/2, sin), math.Atan2(-m.At(0, 1), m.At(1, 1)))
	}
	return angles(math.Atan2(m.At(2, 1), m.At(2, 2)), math.Asin(sin), math.Atan2(m.At(1, 0), m.At(0, 0)))
}

func angles(radians ...float64) (turn mgl64.Vec3) {
	for i, r := range radians {
		turn[i] = math.Round(r*180/math.Pi*1e9) / 1e9
		if turn[i] <= -180 {
			turn[i] += 360
		}
		turn[i] += 0
	}
	return turn
}

// RemovePart takes a part out of the plan, and every run that ends on it.
func (s *Session) RemovePart(part string) error {
	if _, ok := s.history.plan().FindPart(part); !ok {
		return &MissingError{"part", part}
	}
	return s.Edit("Remove "+part, func(p route.Plan) route.Plan {
		p.Parts = slices.DeleteFunc(p.Parts, func(k route.Part) bool { return k.Name == part })
		p.Runs = slices.DeleteFunc(p.Runs, func(r route.Run) bool { return r.From.Part == part || r.To.Part == part })
		return p
	})
}

// AddPart puts a part of a kind of the catalogue in the middle of the case and
// gives the name it got.
func (s *Session) AddPart(kind string) (string, error) {
	plan := s.history.plan()
	k, ok := plan.FindKind(kind)
	if !ok {
		return "", &MissingError{"part in the catalogue called", kind}
	}
	name := freeName(kind, func(n string) bool { _, taken := plan.FindPart(n); return taken })
	at := tidy(plan.Case.Mul(0.5).Sub(middle(k.Solids)))
	return name, s.Edit("Add "+name, func(p route.Plan) route.Plan {
		p.Parts = append(p.Parts, route.Part{Name: name, Kind: kind, At: at})
		return p
	})
}

// AddOwnPart puts a part of the person's own, made of these solids, in the
// middle of the case and gives the name it got.
func (s *Session) AddOwnPart(base string, solids []route.Solid) (string, error) {
	plan := s.history.plan()
	name := freeName(base, func(n string) bool { _, taken := plan.FindPart(n); return taken })
	at := tidy(plan.Case.Mul(0.5).Sub(middle(solids)))
	return name, s.Edit("Add "+name, func(p route.Plan) route.Plan {
		p.Parts = append(p.Parts, route.Part{Name: name, At: at, Solids: slices.Clone(solids)})
		return p
	})
}

// freeName gives base, or base-2, base-3, ... when that is taken.
func freeName(base string, taken func(string) bool) string {
	name := base
	for n := 2; taken(name); n++ {
		name = fmt.Sprintf("%s-%d", base, n)
	}
	return name
}
