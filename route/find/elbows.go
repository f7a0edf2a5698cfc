package find

import (
	"cmp"
	"math"
	"slices"

	"tubewright/route"
)

// lift is a handful of extenders and how far they bring the port forward.
type lift struct {
	fits  kits
	total float64
}

// mostExtenders is how many extenders in a row the search uses: more make a
// stack that leaks and leans.
const mostExtenders = 2

// lifts lists every length that up to most extenders add up to, the cheapest
// way to each, the empty one first.
func (s *side) lifts(most int) []lift {
	list := []lift{{}}
	from := 0
	for range most {
		to := len(list)
		for _, l := range list[from:to] {
			for _, fit := range s.kit[route.Extender] {
				list = append(list, lift{append(l.fits[:len(l.fits):len(l.fits)], fit), l.total + fit.Length})
			}
		}
		from = to
	}
	return cheapestLifts(list)
}

// cheapestLifts keeps one lift of each total: the fewest fittings, then the
// lowest price.
func cheapestLifts(list []lift) []lift {
	slices.SortStableFunc(list, func(a, b lift) int {
		return cmp.Or(cmp.Compare(microns(a.total), microns(b.total)), cmp.Compare(len(a.fits), len(b.fits)), cmp.Compare(a.price(), b.price()))
	})
	return slices.CompactFunc(list, func(a, b lift) bool { return microns(a.total) == microns(b.total) })
}

func (l lift) price() float64 {
	sum := 0.0
	for _, f := range l.fits {
		sum += f.Price
	}
	return sum
}

// lifted puts the extenders of a lift on a port.
func (s *side) lifted(l lift) *build {
	b := s.bare()
	for _, f := range l.fits {
		b = b.with(f, 0)
	}
	return b
}

// oneElbow offers straights with an elbow at one end. The elbow must turn the
// way straight against the other port: its turn and roll are settled by that.
// What is then left aside is closed by extenders before the elbow and at most
// one offset at the other end.
func (h *hunt) oneElbow(s, other *side, swapped bool) {
	if s.given != nil || other.given != nil {
		return // givenLine has tried them
	}
	u := other.port.Frame.Dir.Mul(-1)
	lifts := s.lifts(mostExtenders)
	for _, fit := range s.kit[route.Elbow] {
		if math.Abs(degreesBetween(s.port.Frame.Dir, u)-fit.Turn) > looseFacing {
			continue
		}
		for _, l := range lifts {
			h.elbowed(s, other, s.lifted(l), fit, swapped)
		}
	}
}

// elbowed tries one elbow on a lifted port.
func (h *hunt) elbowed(s, other *side, b *build, fit *route.Fitting, swapped bool) {
	for _, roll := range elbowRolls(fit, b.frame, other.port.Frame.Dir.Mul(-1)) {
		turned := b.with(fit, roll)
		h.lineOf(s.closed(turned), other.plain, swapped)
		h.elbowAndOffset(s, other, turned, swapped)
	}
}

// elbowRolls are the rolls that bring an elbow's way out nearest to u.
func elbowRolls(fit *route.Fitting, f route.Frame, u vec) []float64 {
	if !fit.Rotary {
		return fixedRolls(fit)
	}
	if r, ok := rollToward(f, u); ok {
		return []float64{r}
	}
	return nil
}

// elbowAndOffset closes what an elbow leaves aside with one rotary offset
// between the elbow and the socket.
func (h *hunt) elbowAndOffset(s, other *side, b *build, swapped bool) {
	if !facing(b.frame.Dir, other.port.Frame.Dir) {
		return
	}
	miss := aside(other.port.Frame.At.Sub(b.frame.At), b.frame.Dir)
	g := s.socket.Give.Sideways + other.socket.Give.Sideways
	for _, fit := range s.kit[route.Offset] {
		if !fit.Rotary {
			continue
		}
		for _, sides := range closeWith(miss, b.frame, kits{fit}, g) {
			if c, ok := rolled(b, fit, sides[0], true); ok {
				h.lineOf(s.closed(c), other.plain, swapped)
			}
		}
	}
}

// lineOf is line with the ends put back in order.
func (h *hunt) lineOf(start, end *build, swapped bool) {
	if swapped {
		start, end = end, start
	}
	h.line(start, end)
}

// twoElbows offers straights with an elbow at each end. The tube lies along
// the line between the two elbows' corners, which only the extenders before
// them move; it will do when it makes each elbow's turn with its port.
func (h *hunt) twoElbows() {
	if h.a.given != nil || h.b.given != nil || len(h.a.kit[route.Elbow]) == 0 {
		return
	}
	starts, ends := h.a.lifts(mostExtenders), h.b.lifts(mostExtenders)
	apart := degreesBetween(h.a.port.Frame.Dir, h.b.port.Frame.Dir.Mul(-1))
	for _, first := range h.a.kit[route.Elbow] {
		for _, last := range h.b.kit[route.Elbow] {
			if !conesMeet(first.Turn, last.Turn, apart) {
				continue
			}
			for _, l := range starts {
				for _, m := range ends {
					if len(l.fits)+len(m.fits) <= mostExtenders {
						h.elbowPair(first, last, l, m)
					}
				}
			}
		}
	}
}

// conesMeet reports whether some direction makes the first turn with one
// direction and the second with another this many degrees apart: the three are
// the sides of a triangle on the sphere.
func conesMeet(first, second, apart float64) bool {
	least, most := max(first-second, second-first), min(first+second, 360-first-second)
	return apart >= least-looseFacing && apart <= most+looseFacing
}

// elbowPair tries one pair of elbows behind their extenders.
func (h *hunt) elbowPair(first, last *route.Fitting, l, m lift) {
	p, q := h.a.port.Frame, h.b.port.Frame
	u, ok := unit(q.Ahead(m.total + last.Legs[0]).Sub(p.Ahead(l.total + first.Legs[0])))
	if !ok || !turnsBy(first, p.Dir, u, h.a.socket) || !turnsBy(last, q.Dir, u.Mul(-1), h.b.socket) {
		return
	}
	a, b := h.a.lifted(l), h.b.lifted(m)
	for _, r := range elbowRolls(first, a.frame, u) {
		for _, s := range elbowRolls(last, b.frame, u.Mul(-1)) {
			h.line(h.a.closed(a.with(first, r)), h.b.closed(b.with(last, s)))
		}
	}
}

// turnsBy reports whether an elbow turns one way into another, within what the
// socket gives.
func turnsBy(fit *route.Fitting, from, to vec, socket *route.Fitting) bool {
	return math.Abs(degreesBetween(from, to)-fit.Turn) <= socket.Give.Degrees+sameWay
}
