package find

import (
	"fmt"

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
	s.socket, ok = sc.socketFor(tube.OD, port.Thread)
	if !ok {
		return nil, fmt.Errorf("no socket takes a %.1f mm tube on %s (thread %q): describe one under fittings", tube.OD, ref, port.Thread)
	}
	s.kit = sc.kitFor(port.Thread)
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
