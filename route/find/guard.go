package find

import (
	"math"

	"tubewright/route"
	"tubewright/route/clear"
)

// margin is what the search keeps over every gap asked for, mm, so that the
// checks' own rounding never takes back what was found.
const margin = 0.01

// hit is what a way runs into.
type hit struct {
	what  string  // the part or the run in the way, "the case", "itself"
	run   bool    // what is a run
	short float64 // gap missing, mm
}

// worse gives the hit that lacks more.
func worse(a, b *hit) *hit {
	if a == nil || b != nil && b.short > a.short {
		return b
	}
	return a
}

// limb is a piece of a run with its bounds.
type limb struct {
	shape  clear.Shape
	lo, hi vec
}

func newLimb(s clear.Shape) limb {
	lo, hi := s.Bounds()
	return limb{s, lo, hi}
}

// tooNear reports whether the gap between a limb and a shape is less than need.
func (l *limb) tooNear(s clear.Shape, lo, hi *vec, need float64) bool {
	need += margin
	for i := range lo {
		if l.lo[i]-hi[i] >= need || lo[i]-l.hi[i] >= need {
			return false
		}
	}
	return !clear.Farther(l.shape, s, need)
}

// mostShort is a bound on short that is quick to find: what the bounds lack, which
// part wholly when they are moved apart along an axis.
func (l *limb) mostShort(s *solid, need float64) float64 {
	depth := math.Inf(1)
	for i := range l.lo {
		depth = min(depth, l.hi[i]-s.lo[i], s.hi[i]-l.lo[i])
	}
	return need + margin + depth + max(clear.DepthError, clear.ArcDepthError)
}

// lacks is short where the hunt wants measures, else 1 for any lack.
func (h *hunt) lacks(l *limb, s clear.Shape, lo, hi *vec, need float64) float64 {
	if h.measuring {
		return h.halt.short(l, s, lo, hi, need)
	}
	if l.tooNear(s, lo, hi, need) {
		return 1
	}
	return 0
}

// outside is how far a limb sticks out of the case.
func (h *hunt) outside(l *limb) *hit {
	if h.plan.Case == (vec{}) {
		return nil
	}
	short := 0.0
	for i, size := range h.plan.Case {
		short = max(short, margin-l.lo[i], l.hi[i]-size+margin)
	}
	if short <= 0 {
		return nil
	}
	return &hit{what: "the case", short: short}
}

// enough reports whether a hit settles the matter: without measures any does.
func (h *hunt) enough(at *hit) bool { return at != nil && !h.measuring }

// against is the worst a limb runs into of the case and the parts, and while
// measuring of other runs too.
func (h *hunt) against(l *limb, keep keeping) *hit {
	worst := h.outside(l)
	if h.enough(worst) {
		return worst
	}
	lo, hi := l.within(h.plan.Clear + margin)
	h.index.Near(lo, hi, func(n int) bool {
		s := &h.parts[n]
		if gap := keep.from(s.part, h.plan.Clear); gap >= 0 {
			worst = worse(worst, h.hitOn(l, s, gap, false, worst))
		}
		return !h.enough(worst)
	})
	if !h.measuring {
		h.looked.asked(l, false, worst != nil)
	} else {
		h.looked.at(l.lo, l.hi, h.plan.Clear+margin)
		for i := range h.others {
			worst = worse(worst, h.hitOn(l, &h.others[i], h.plan.Clear, true, worst))
		}
	}
	return worst
}

// within is the limb's bounds and so much more on every side.
func (l *limb) within(more float64) (lo, hi vec) {
	for i := range lo {
		lo[i], hi[i] = l.lo[i]-more, l.hi[i]+more
	}
	return lo, hi
}

// hitOn is what a limb lacks to one solid; nil too when that is less than what is
// known.
func (h *hunt) hitOn(l *limb, s *solid, need float64, run bool, known *hit) *hit {
	if known != nil && l.mostShort(s, need) <= known.short {
		return nil
	}
	h.halt.did(1)
	switch short := h.lacks(l, s.shape, &s.lo, &s.hi, need); {
	case short <= 0:
		return nil
	case !h.measuring:
		return refused
	default:
		return &hit{what: s.name, run: run, short: short}
	}
}

// judge says what the bodies of a chain run into: the first stands on its part,
// the others may touch it, everything keeps clear of the rest, and what must go
// round while it is screwed in has room to.
func (h *hunt) judge(s *side, b *build) *hit {
	if !b.judged || h.measuring && !b.measured {
		verdict := h.onParts(s, b)
		if h.halt.stopped() {
			return refused
		}
		b.judged, b.measured, b.verdict = true, h.measuring, verdict
	}
	if b.verdict == nil && !h.measuring && h.crowdedChain(b) {
		return refused
	}
	return b.verdict
}

// crowdedChain is crowded of a chain's bodies, with a memory: a hunt stays among
// the same runs, and asks for each pair of chains.
func (h *hunt) crowdedChain(b *build) bool {
	if b.among != h {
		b.among, b.crowded = h, h.crowded(b.room())
	}
	return b.crowded
}

// refused stands for any hit where nothing is measured.
var refused = &hit{short: 1}

// onParts is judge of the case and the parts.
func (h *hunt) onParts(s *side, b *build) *hit {
	var worst *hit
	limbs := b.room()
	for n := range limbs {
		keep := keeping{own: [2]int{s.part, s.part}}
		if b.of[n] == 0 {
			keep.gap = -1
		}
		if worst = worse(worst, h.against(&limbs[n], keep)); h.enough(worst) {
			return worst
		}
	}
	return worse(worst, h.noTurnRoom(s, b))
}

// crowded reports whether some limb comes too near to another run.
func (h *hunt) crowded(limbs []limb) bool {
	for i := range limbs {
		h.halt.did(1 + len(h.others)/32)
		near := h.nearOther(&limbs[i])
		if h.looked.asked(&limbs[i], true, near); near {
			return true
		}
	}
	return false
}

func (h *hunt) nearOther(l *limb) bool {
	for n := range h.others {
		if s := &h.others[n]; l.tooNear(s.shape, &s.lo, &s.hi, h.plan.Clear) {
			h.minded = true
			return true
		}
	}
	return false
}

// keeping is how far a limb keeps from the parts that carry the run's ports, mm;
// below 0 they are left out.
type keeping struct {
	own [2]int
	gap float64
}

// from is how far to keep from a part, where it is the plan's gap from others.
func (k *keeping) from(part int, gap float64) float64 {
	if part == k.own[0] || part == k.own[1] {
		return k.gap
	}
	return gap
}

// room is what all bodies of the chain take; of says of each limb which body it is.
func (b *build) room() []limb {
	if b.limbs != nil {
		return b.limbs
	}
	f := b.root
	for i, s := range b.steps {
		b.limbs = addLimbs(b.limbs, route.Room(f, s.fit, s.roll))
		for len(b.of) < len(b.limbs) {
			b.of = append(b.of, i)
		}
		f = f.Past(s.fit, s.roll)
	}
	return b.limbs
}
