package find

import (
	"context"
	"math"

	"tubewright/route"
)

// Mixes are bends behind chains of more than one fitting: two at one end, or up
// to two at both. One fitting at either end has been tried with everything
// before; a second one pays where it saves bends that cost more, and helps where
// nothing else goes.

const (
	// mostMixes bounds the pairs of chains that bends are tried between, the
	// cheapest first.
	mostMixes = 160
	// mixedPairs bounds the pairs that square routes are searched between.
	mixedPairs = 16
	// mixedExtra is how many fittings besides sockets a mix has at most.
	mixedExtra = 4
)

// mixes offers bends behind pairs of chains with two fittings and more, as long
// as they may still beat the best there is.
func (h *hunt) mixes(ctx context.Context) error {
	if h.a.given != nil || h.b.given != nil || len(h.run.Via) > 0 {
		return nil
	}
	below := min(h.below, h.bestClear())
	for extra := 2; extra <= mixedExtra; extra++ {
		if h.leastMix(extra) >= below || extra > 2 && (below < anyCost || h.brief) {
			return nil
		}
		known := h.known()
		for _, p := range h.mixPairs(extra, below) {
			if err := ctx.Err(); err != nil {
				return err
			}
			h.mixed(p.start, p.end, known)
		}
		below = min(below, h.bestClear())
	}
	return nil
}

// mixedSquares searches square routes behind two fittings more than need be: for
// a run that has no way otherwise.
func (h *hunt) mixedSquares(ctx context.Context) error {
	if h.a.given != nil || h.b.given != nil {
		return nil
	}
	best, looked := h.below, 0
	for _, p := range h.mixPairs(2, best) {
		if h.pairKey(p) >= best || h.effort.over() || looked == mixedPairs {
			break
		}
		if !h.stand(p.start, p.end) {
			continue
		}
		looked++
		if err := h.squares(ctx, p.start, p.end, best); err != nil {
			return err
		}
		best = min(best, h.bestClear())
	}
	return nil
}

// leastMix is what a mix of this many fittings costs at least: one of them turns
// the way or moves it aside, there is one bend, and the tube is no shorter than
// what is left between the ports once all fittings reach toward each other.
func (h *hunt) leastMix(extra int) int64 {
	turning, each, sockets, reach := math.Inf(1), math.Inf(1), 0.0, 0.0
	for _, s := range []*side{h.a, h.b} {
		turning = min(turning, s.least(route.Elbow), s.least(route.Offset))
		each = min(each, turning, s.least(route.Extender))
		sockets += s.socket.Price
		reach = max(reach, s.reach())
	}
	if math.IsInf(turning, 1) {
		return anyCost // no fitting to mix with
	}
	w := h.plan.Weigh
	apart := h.b.port.Frame.At.Sub(h.a.port.Frame.At).Len() - h.a.socket.Stop - h.b.socket.Stop - float64(extra)*reach
	return costKey(w.Bend + w.Price*(sockets+turning+float64(extra-1)*each) + w.Fitting*float64(extra) +
		w.Millimetre*max(apart, 2*h.tube.StraightEnd))
}

// reach is how far the longest fitting of the kit brings the way.
func (s *side) reach() float64 {
	most := 0.0
	for _, kind := range mixKinds {
		for _, f := range s.kit[kind] {
			most = max(most, f.Length+f.Sideways, f.Legs[0]+f.Legs[1])
		}
	}
	return most
}

// mixKinds are the kinds of fitting that a bend may stand behind.
var mixKinds = []kindOf{route.Extender, route.Elbow, route.Offset}

// mixPairs lists pairs of chains with this many fittings besides sockets, the
// cheapest first, that may cost less than the bound.
func (h *hunt) mixPairs(extra int, below int64) []chainPair {
	if h.mixStarts[0] == nil {
		h.mixStarts, h.mixEnds = h.a.stocked(h.b.plain.ray()), h.b.stocked(h.a.plain.ray())
	}
	best := cheapestPairs{most: mostMixes}
	for first := max(0, extra-2); first <= min(2, extra); first++ {
		ends := h.mixEnds[extra-first]
		prices := h.chainCosts(ends)
		for _, start := range h.mixStarts[first] {
			h.halt.did(len(ends) / 32)
			if h.halt.halted() {
				return nil
			}
			price := chainCost(h.plan.Weigh, start)
			for i, end := range ends {
				p, key := chainPair{start, end}, costKey(price+prices[i])
				if best.wants(key) && h.leastOf(p, key) < below {
					best.add(p, key)
				}
			}
		}
	}
	return best.inOrder()
}

func (h *hunt) chainCosts(list []*build) []float64 {
	costs := make([]float64, len(list))
	for i, b := range list {
		costs[i] = chainCost(h.plan.Weigh, b)
	}
	return costs
}

// leastOf is what a pair of chains that costs this much costs at least with one
// bend: the tube is no shorter than the way from stop to stop less what the
// bend's corner takes off.
func (h *hunt) leastOf(p chainPair, key int64) int64 {
	w := h.plan.Weigh
	return key + costKey(w.Bend+w.Millimetre*p.end.frame.At.Sub(p.start.frame.At).Len())
}

// stocked lists the chains of an end by how many fittings stand before the
// socket: none, one, two.
func (s *side) stocked(target ray) (list [3][]*build) {
	list[0] = []*build{s.plain}
	for _, kind := range mixKinds {
		for _, fit := range s.kit[kind] {
			for _, roll := range rollsOf(fit, s.port.Frame, target) {
				b := s.bare().add(fit, roll)
				list[1] = append(list[1], b.with(s.socket, 0))
				if kind != route.Extender {
					list[2] = s.secondOn(list[2], b, target)
				}
			}
		}
	}
	list[2] = s.liftedElbows(list[2], target)
	ranked(list[1])
	ranked(list[2])
	return list
}

// secondOn adds an elbow or an offset behind a first one, at the rolls that bring
// the way into one plane with the target's.
func (s *side) secondOn(list []*build, b *build, target ray) []*build {
	for _, kind := range []kindOf{route.Elbow, route.Offset} {
		for _, fit := range s.kit[kind] {
			if !fit.Rotary {
				continue
			}
			for _, roll := range coplanarRolls(fit, b.frame, target) {
				list = append(list, s.closed(b.with(fit, roll)))
			}
		}
	}
	return list
}

// liftedElbows adds elbows behind an extender: of the length that lines a corner
// up, so that one bend joins an elbow set square, or at the roll that does.
func (s *side) liftedElbows(list []*build, target ray) []*build {
	lifts := s.liftsUpTo(1)
	for _, fit := range s.kit[route.Elbow] {
		for _, roll := range rollsOf(fit, s.port.Frame, target) {
			for _, l := range s.lining(fit, roll, target, lifts) {
				list = append(list, s.closed(s.bare().add(l.fits[0], 0).add(fit, roll)))
			}
		}
		for i := range lifts[1:] {
			b := s.bare().with(lifts[i+1].fits[0], 0)
			for _, roll := range coplanarRolls(fit, b.frame, target) {
				if fit.Rotary {
					list = append(list, s.closed(b.with(fit, roll)))
				}
			}
		}
	}
	return list
}

// lining gives the extenders that bring an elbow's way out into one plane with the
// target's line: where v is that way and n = v×target, the corner must move along
// the port's way p until (target − corner)·n = 0.
func (s *side) lining(fit *route.Fitting, roll float64, target ray, lifts []lift) []lift {
	f := s.port.Frame
	out := f.Past(fit, roll)
	n, ok := unit(out.Dir.Cross(target.dir))
	slope := f.Dir.Dot(n)
	if !ok || math.Abs(slope) <= nearParallel {
		return nil
	}
	by, slack := target.at.Sub(out.At).Dot(n)/slope, s.socket.Give.Sideways/math.Abs(slope)
	return liftsBetween(lifts[1:], by-slack-sameSpot, by+slack+sameSpot)
}
