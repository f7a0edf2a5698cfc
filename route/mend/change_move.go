package mend

import (
	"fmt"
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// Move shifts parts by the same, in the case's frame. The first is the one it
// is about; the others are fixed to it and go with it.
type Move struct {
	Parts []string
	By    mgl64.Vec3 // mm
	// Mounted says that the first part leans on one that stays: whether it can be
	// fastened elsewhere is for the person to see.
	Mounted bool
}

// grains is how many steps of rounding a moved place has to the millimetre: far
// finer than what is written, so that files do not fill with the dust of
// floating point.
const grains = 1e6

// Apply gives the plan with the parts moved.
func (m Move) Apply(plan route.Plan) (route.Plan, error) {
	for _, name := range m.Parts {
		var err error
		if plan, err = onPart(plan, name, func(k *route.Part) { k.At = moved(k.At, m.By) }); err != nil {
			return route.Plan{}, err
		}
	}
	return plan, nil
}

func moved(at, by mgl64.Vec3) mgl64.Vec3 {
	for i := range at {
		if by[i] != 0 {
			at[i] = math.Round((at[i]+by[i])*grains)/grains + 0 // +0 turns −0 into 0
		}
	}
	return at
}

// Words is "Move pump 6 mm in +x.".
func (m Move) Words(units route.Units) string {
	if len(m.Parts) == 0 {
		return "Move nothing."
	}
	words := "Move " + m.Parts[0] + " " + shift(units, m.By)
	if rest := m.Parts[1:]; len(rest) > 0 {
		words += ", and " + list(rest) + " with it"
	}
	if m.Mounted {
		words += ", if it can be fastened there"
	}
	return words + "."
}

// Kind is "move".
func (Move) Kind() string { return "move" }

func (m Move) work() float64 {
	cost := moveWork + moveRate*(math.Abs(m.By[0])+math.Abs(m.By[1])+math.Abs(m.By[2]))
	if m.Mounted {
		cost += mountedWork
	}
	return cost
}

// Turn turns a part about an axis of the case through the middle of its solids,
// by the right-hand rule.
type Turn struct {
	Part    string
	Axis    int // 0 x, 1 y, 2 z
	Degrees float64
}

// Apply gives the plan with the part turned.
func (t Turn) Apply(plan route.Plan) (route.Plan, error) {
	part, ok := plan.FindPart(t.Part)
	if !ok {
		return route.Plan{}, &MissingError{"part", t.Part}
	}
	whole := plan.Whole(part)
	return onPart(plan, t.Part, func(k *route.Part) {
		var by mgl64.Vec3
		by[t.Axis] = t.Degrees
		before := route.Turned(k.Turn)
		k.Turn = angles(route.Turned(by).Mul3(before))
		mid := middle(whole.Solids)
		k.At = moved(k.At, before.Mul3x1(mid).Sub(route.Turned(k.Turn).Mul3x1(mid)))
	})
}

// middle is the middle of the box around solids, in their own frame.
func middle(solids []route.Solid) mgl64.Vec3 {
	if len(solids) == 0 {
		return mgl64.Vec3{}
	}
	lo, hi := solids[0].From, solids[0].From
	for _, s := range solids {
		for i := range lo {
			lo[i] = min(lo[i], s.From[i]-s.Radius, s.To[i]-s.Radius)
			hi[i] = max(hi[i], s.From[i]+s.Radius, s.To[i]+s.Radius)
		}
	}
	return lo.Add(hi).Mul(0.5)
}

// locked is how near to straight up or down the turned x axis may come before
// the turns about x and z are one and the same: rounding, about 1e-5 degrees.
const locked = 1e-12

// angles gives the turn about the fixed axes x, then y, then z, in degrees in
// (−180, 180], that [route.Turned] makes into the rotation m.
func angles(m mgl64.Mat3) mgl64.Vec3 {
	sin := -m.At(2, 0)
	if math.Abs(sin) > 1-locked {
		return inDegrees(0, math.Copysign(math.Pi/2, sin), math.Atan2(-m.At(0, 1), m.At(1, 1)))
	}
	return inDegrees(math.Atan2(m.At(2, 1), m.At(2, 2)), math.Asin(sin), math.Atan2(m.At(1, 0), m.At(0, 0)))
}

// turnGrains is how many steps of rounding a degree has: so that right angles
// come out as such.
const turnGrains = 1e9

func inDegrees(radians ...float64) (turn mgl64.Vec3) {
	for i, r := range radians {
		turn[i] = math.Round(mgl64.RadToDeg(r)*turnGrains) / turnGrains
		if turn[i] <= -180 {
			turn[i] += 360
		}
		turn[i] += 0
	}
	return turn
}

// Words is "Turn pump by 90° about y.".
func (t Turn) Words(route.Units) string {
	if t.Degrees == 180 {
		return fmt.Sprintf("Turn %s half round about %s.", t.Part, axes[t.Axis])
	}
	return fmt.Sprintf("Turn %s by %+.0f° about %s.", t.Part, t.Degrees, axes[t.Axis])
}

// Kind is "turn".
func (Turn) Kind() string { return "turn" }

func (Turn) work() float64 { return turnWork }
