package find

import (
	"fmt"
	"slices"

	"tubewright/route"
)

// newSide makes one end of a run ready. The error says what is missing.
func (sc *scene) newSide(ref route.PortRef, chain route.Chain, tube route.Tube) (*side, error) {
	port, part, ok := sc.port(ref)
	if !ok {
		return nil, fmt.Errorf("there is no port %s", ref)
	}
	s := &side{port: port, part: part}
	if chain != nil {
		return s, sc.give(s, chain)
	}
	s.sockets = sc.socketsFor(tube.OD, port.Thread)
	if len(s.sockets) == 0 {
		return nil, fmt.Errorf("no socket takes a %.1f mm tube on %s (thread %q): describe one under fittings", tube.OD, ref, port.Thread)
	}
	s.socket = s.sockets[0]
	r := sc.kitFor(port.Thread)
	s.kit, s.lifts = r.kit, &r.lifts
	s.plain = s.closed(s.bare())
	return s, nil
}

// give sets a chain the plan prescribes.
func (sc *scene) give(s *side, chain route.Chain) error {
	if _, err := sc.plan.Lay(s.port, chain); err != nil {
		return err
	}
	s.plain = s.bare()
	s.given = make([]givenStep, len(chain))
	for i, step := range chain {
		fit, ok := sc.fitting(step.Fitting)
		if !ok {
			return &route.ChainError{Port: s.port.Ref, Step: i, What: fmt.Sprintf("there is no fitting %q", step.Fitting)}
		}
		g := givenStep{fit, step.Roll, step.Rolled || !turns(fit)}
		if !g.rolled && !fit.Rotary {
			g.roll = fixedRolls(fit)[0]
		}
		s.given[i] = g
		s.plain = s.plain.with(fit, g.roll)
	}
	if len(chain) == 0 || s.plain.socket().Kind != route.Socket {
		return &route.ChainError{Port: s.port.Ref, Step: max(0, len(chain)-1), What: "a run's chain ends in a socket"}
	}
	return nil
}

// mostSockets bounds the sockets tried on one port.
const mostSockets = 4

// socketsFor lists the sockets that take a tube of this outside diameter and
// fit the thread, in the plan's order; of those that hold alike only the cheapest.
func (sc *scene) socketsFor(od float64, thread string) kits {
	var list kits
	for i := range sc.fittings {
		f := &sc.fittings[i]
		if f.Kind != route.Socket || !route.SameSize(f.OD, od) || !route.SameThread(f.Thread, thread) {
			continue
		}
		if j := slices.IndexFunc(list, func(g *route.Fitting) bool { return holdsAlike(f, g) }); j >= 0 {
			if f.Price < list[j].Price {
				list[j] = f
			}
		} else if len(list) < mostSockets {
			list = append(list, f)
		}
	}
	return list
}

// holdsAlike reports whether two sockets hold a tube alike, so that only the
// price tells them apart.
func holdsAlike(f, g *route.Fitting) bool {
	return f.Stop == g.Stop && f.Insertion == g.Insertion && f.SeatGap == g.SeatGap && f.Collar == g.Collar && f.Give == g.Give
}
