package find

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/route/clear"
)

// Room to screw a fitting in. A rotary offset or elbow has a thread that turns
// inside its body (common practice): the body is held as it will lie while its
// base is screwed in, so it needs no more room than it takes. A fixed one is one
// piece. It goes round as a whole about the axis of the port or fitting it stands
// on, several times, before it comes to rest at one of its rolls; so what of it
// lies off that axis must be able to go all the way round. Sockets, extenders
// and all else are round about their own axis and need nothing.
//
// Chains are put on from the port outward. While a fitting goes round, the parts
// are there, the case, and the fittings of its chain below the one it stands on; it
// may touch them, not enter them (a gap of 0 is enough: it passes but once). Other runs and what
// comes after it are not there yet.

const (
	// turnSteps is at how many rolls a fitting that goes round is looked at.
	turnSteps = 90
	// turnSag is how far between two of these rolls a body may reach beyond both,
	// mm: with a body of radius r and its far end R from the axis, the union of two
	// steps dips by r − √(r² − (R·sin 2°)²) below the envelope; 0.06 for the largest
	// of the catalogue (r 10, R 32).
	turnSag = 0.07
)

// noTurnRoom is what a fixed fitting of a chain runs into while it is screwed in.
func (h *hunt) noTurnRoom(s *side, b *build) *hit {
	f := b.root
	var worst *hit
	for i := range b.steps {
		step := &b.steps[i]
		if turns(step.fit) && step.fit.Kind != route.Tee && !step.fit.Rotary {
			if worst = worse(worst, h.sweepHits(s, b, i, f)); h.enough(worst) {
				return worst
			}
		}
		f = f.Past(step.fit, step.roll)
	}
	return worst
}

// sweep is a fitting that goes round near its port, where nothing of its own chain
// but what it stands on is in its way. Many chains begin with the same one.
type sweep struct {
	from      route.Frame
	fit       *route.Fitting
	part      int  // that carries the port
	first     bool // it stands on this part
	measuring bool
}

// sweepHits is what the arm of one fitting runs into on its way round.
func (h *hunt) sweepHits(s *side, b *build, i int, f route.Frame) *hit {
	if i >= 2 {
		return h.goRound(s, b, i, f)
	}
	key := sweep{f, b.steps[i].fit, s.part, i == 0, h.measuring}
	at, known := h.sweeps[key]
	if !known {
		if h.sweeps == nil {
			h.sweeps = map[sweep]*hit{}
		}
		if at = h.goRound(s, b, i, f); !h.halt.stopped() {
			h.sweeps[key] = at
		}
	}
	return at
}

func (h *hunt) goRound(s *side, b *build, i int, f route.Frame) *hit {
	around := newLimb(envelope(f, b.steps[i].fit))
	h.looked.at(around.lo, around.hi, turnSag+margin)
	near := h.within(&around)
	below := limbsBelow(b, i)
	if len(near) == 0 && h.outside(&around) == nil && !anyNear(&around, below) {
		return nil
	}
	var worst *hit
	for k := range turnSteps {
		arm := newLimb(armOf(f, b.steps[i].fit, float64(k)*360/turnSteps))
		worst = worse(worst, h.outside(&arm))
		for _, p := range near {
			need := turnSag
			if h.parts[p].part == s.part && i == 0 {
				need = -margin // it stands on this part and may touch it
			}
			worst = worse(worst, h.hitOn(&arm, &h.parts[p], need, false, worst))
		}
		if anyNear(&arm, below) {
			worst = worse(worst, &hit{what: "itself", short: 1})
		}
		if h.enough(worst) || h.halt.halted() {
			return worst
		}
	}
	return worst
}

// within numbers the solids of parts near a limb.
func (h *hunt) within(l *limb) (near []int) {
	for i := range h.parts {
		if s := &h.parts[i]; l.tooNear(s.shape, &s.lo, &s.hi, turnSag) {
			near = append(near, i)
		}
	}
	return near
}

// limbsBelow are the bodies of the fittings below one of a chain but for the one
// it stands on.
func limbsBelow(b *build, i int) []limb {
	if i < 2 {
		return nil
	}
	all := b.room()
	for n := range all {
		if b.of[n] == i-1 {
			return all[:n]
		}
	}
	return all
}

func anyNear(l *limb, list []limb) bool {
	for i := range list {
		if l.tooNear(list[i].shape, &list[i].lo, &list[i].hi, -margin) {
			return true
		}
	}
	return false
}

// armOf is the part of a fixed fitting that lies off its axis, at a roll.
func armOf(f route.Frame, fit *route.Fitting, roll float64) clear.Shape {
	from := f.Ahead(fit.Legs[0])
	if fit.Kind == route.Offset {
		from = f.Ahead(fit.Length / 2).Add(f.Side(roll).Mul(fit.Sideways))
	}
	return clear.Cylinder{From: from, To: f.Past(fit, roll).At, Radius: fit.Body / 2}
}

// envelope is a cylinder about the axis that holds the arm at every roll.
func envelope(f route.Frame, fit *route.Fitting) clear.Shape {
	arm := armOf(f, fit, 0).(clear.Cylinder)
	way, _ := unit(arm.To.Sub(arm.From))
	along := way.Dot(f.Dir)
	rim := arm.Radius * math.Sqrt(max(0, 1-along*along)) // how far the ends' rims reach along the axis
	lo, hi, out := math.Inf(1), math.Inf(-1), 0.0
	for _, p := range []mgl64.Vec3{arm.From, arm.To} {
		at := p.Sub(f.At)
		lo, hi = min(lo, at.Dot(f.Dir)-rim), max(hi, at.Dot(f.Dir)+rim)
		out = max(out, math.Hypot(aside(at, f.Dir).Len()+arm.Radius*math.Abs(along), arm.Radius))
	}
	return clear.Cylinder{From: f.Ahead(lo), To: f.Ahead(hi), Radius: out}
}
