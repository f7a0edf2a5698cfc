package find

// accept lays what is in hand and offers it with every pair of sockets: where
// an offset and extenders stand in one stretch, in either order.
func (s *straightener) accept() {
	if s.tooDear(s.inHand()) || s.trailing && !s.trails() {
		return
	}
	for _, orders := range [][2]bool{{false, false}, {true, false}, {false, true}, {true, true}} {
		if orders[0] && !s.mixed(0) || orders[1] && !s.mixed(1) {
			continue
		}
		a, b := s.laidOut(0, orders[0]), s.laidOut(1, orders[1])
		for _, first := range s.a.sockets {
			for _, last := range s.b.sockets {
				s.line(a.with(first, 0), b.with(last, 0))
			}
		}
	}
}

// trails reports whether an extender stands where it closes nothing.
func (s *straightener) trails() bool {
	for end, p := range s.picks {
		if p.slot == s.arms[end].n && len(p.lift.fits) > 0 {
			return true
		}
	}
	return false
}

// mixed reports whether extenders and an offset stand in one stretch of an end.
func (s *straightener) mixed(end int) bool {
	for i := range s.swings[:s.offsets] {
		if w := &s.swings[i]; w.end == end && w.slot == s.picks[end].slot && len(s.picks[end].lift.fits) > 0 {
			return true
		}
	}
	return false
}

// laidOut is the chain of one end without its socket; offsets stand before or
// behind the extenders of their stretch.
func (s *straightener) laidOut(end int, offsetsFirst bool) *build {
	a, b := s.arms[end], s.sides[end].bare()
	for slot := range a.n + 1 {
		if offsetsFirst {
			s.offsetOn(b, end, slot)
		}
		if p := s.picks[end]; p.slot == slot {
			for _, f := range p.lift.fits {
				b.add(f, 0)
			}
		}
		if !offsetsFirst {
			s.offsetOn(b, end, slot)
		}
		if slot < a.n {
			b.add(a.elbows[slot], a.rolls[slot])
		}
	}
	return b
}

func (s *straightener) offsetOn(b *build, end, slot int) {
	for i := range s.swings[:s.offsets] {
		w := &s.swings[i]
		if w.end != end || w.slot != slot {
			continue
		}
		roll := w.roll
		if w.fit.Rotary {
			roll, _ = rollToward(b.frame, w.side)
		}
		b.add(w.fit, roll)
	}
}
