package steps_test

import (
	"tubewright/bends/steps"
)

// bench is a plain simulation of one tube at the bench, written apart from the
// package: bends are made one at a time, collars are rings that slide on
// straights. It counts along the squared blank.
type bench struct {
	start, end []float64 // of each bend
	length     float64   // of the blank
	trim       float64
	tool       steps.Tool
	ringGap    float64
	rings      [2]steps.Collar
}

// off says that a ring is not on the tube.
const off = -1

// tubeState is which bends are made and where each ring is: the gap between two
// bends it is in, counting from end A, whether or not those are made yet.
type tubeState struct {
	made uint
	gap  [2]int
}

func newBench(j steps.Job) *bench {
	b := &bench{length: j.Cut.Aim + 2*j.Tube.Tube.Trim, trim: j.Tube.Tube.Trim, tool: j.Tool, rings: j.Collars}
	if b.tool == (steps.Tool{}) {
		b.tool = steps.Tool{Held: j.Tube.Tube.StraightBetween, Drawn: j.Tube.Tube.StraightBetween}
	}
	if j.Material == "petg" || j.Material == "acrylic" {
		b.ringGap = j.Tube.Tube.OD
	}
	for _, m := range j.Bench.Bends {
		b.start, b.end = append(b.start, m.BlankA.Start), append(b.end, m.BlankA.End)
	}
	return b
}

// straight is the straight a place is on, as the tube is now: from where to where,
// and the bends made at its ends (−1 and n: the tube's ends).
func (b *bench) straight(s tubeState, gap int) (from, to float64, left, right int) {
	left, right = gap-1, gap
	for left >= 0 && s.made&(1<<left) == 0 {
		left--
	}
	for right < len(b.start) && s.made&(1<<right) == 0 {
		right++
	}
	from, to = 0, b.length
	if left >= 0 {
		from = b.end[left]
	}
	if right < len(b.start) {
		to = b.start[right]
	}
	return from, to, left, right
}

// slideOn puts a ring on over an end, if the straight there takes it: the trim
// is for the saw and does not count.
func (b *bench) slideOn(s tubeState, ring, end int) (tubeState, bool) {
	gap := end * len(b.start)
	from, to, left, right := b.straight(s, gap)
	room := to - from
	if left < 0 {
		room -= b.trim
	}
	if right == len(b.start) {
		room -= b.trim
	}
	for other := range 2 {
		if other != ring && s.gap[other] != off {
			if _, _, l, r := b.straight(s, s.gap[other]); l == left && r == right {
				room -= b.rings[other].Length
			}
		}
	}
	if room < b.rings[ring].Length+b.rings[ring].Insertion-1e-6 {
		return s, false
	}
	s.gap[ring] = gap
	return s, true
}

// make makes a bend and gives every way the tube may be then: rings on its
// straight are to the left or to the right of it.
func (b *bench) make(s tubeState, i int) (after []tubeState) {
	from, to, left, _ := b.straight(s, i)
	for sides := range 4 { // bit of a ring: it is to the right
		next, bare, beside, fine := s, [2]float64{b.start[i] - from, to - b.end[i]}, [2]bool{}, true
		for ring := range 2 {
			right := sides >> ring & 1
			here := false
			if s.gap[ring] != off {
				_, _, l, _ := b.straight(s, s.gap[ring])
				here = l == left
			}
			if !here {
				fine = fine && right == 0
				continue
			}
			bare[right] -= b.rings[ring].Length
			beside[right] = true
			next.gap[ring] = i + right
		}
		next.made |= 1 << i
		if fine && b.holds(bare, beside) {
			after = append(after, next)
		}
	}
	return after
}

// holds tries to hold the tube on either side of the bend.
func (b *bench) holds(bare [2]float64, beside [2]bool) bool {
	fits := func(side int, need float64) bool {
		if beside[side] {
			need = max(need, b.ringGap)
		}
		return bare[side] >= need-1e-6
	}
	return fits(0, b.tool.Held) && fits(1, b.tool.Drawn) || fits(0, b.tool.Drawn) && fits(1, b.tool.Held)
}

// done reports whether all is made and each ring stands on its finished leg.
func (b *bench) done(s tubeState) bool {
	n := len(b.start)
	legs := [2]float64{b.start[0] - b.trim, b.length - b.end[n-1] - b.trim}
	for ring, c := range b.rings {
		if c.Length > 0 && (s.gap[ring] != ring*n || legs[ring] < c.Length-1e-6) {
			return false
		}
	}
	return s.made == 1<<n-1
}

// possible tries everything in every order.
func (b *bench) possible() bool {
	seen := map[tubeState]bool{}
	open := []tubeState{{gap: [2]int{off, off}}}
	for len(open) > 0 {
		s := open[len(open)-1]
		open = open[:len(open)-1]
		if seen[s] {
			continue
		}
		seen[s] = true
		if b.done(s) {
			return true
		}
		for ring, c := range b.rings {
			if c.Length > 0 && s.gap[ring] == off {
				for end := range 2 {
					if next, ok := b.slideOn(s, ring, end); ok {
						open = append(open, next)
					}
				}
			}
		}
		for i := range b.start {
			if s.made&(1<<i) == 0 {
				open = append(open, b.make(s, i)...)
			}
		}
	}
	return false
}

// follow does what a list of work says and reports whether it can be done.
func (b *bench) follow(w steps.Work) bool {
	states := []tubeState{{gap: [2]int{off, off}}}
	for n, i := range w.Order {
		turn := [2]int{0, 1}
		if w.BFirst {
			turn = [2]int{1, 0}
		}
		for _, ring := range turn {
			on := w.Ons[ring]
			atOnce := n == 0 && on.Before == i
			if atOnce || on.Before == i && i == ring*(len(b.start)-1) {
				states = b.put(states, ring)
			}
		}
		var after []tubeState
		for _, s := range states {
			after = append(after, b.make(s, i)...)
		}
		states = after
	}
	for ring, c := range b.rings {
		if c.Length > 0 && w.Ons[ring].Before < 0 {
			states = b.put(states, ring)
		}
	}
	for _, s := range states {
		if b.done(s) {
			return true
		}
	}
	return false
}

func (b *bench) put(states []tubeState, ring int) (after []tubeState) {
	for _, s := range states {
		if next, ok := b.slideOn(s, ring, ring); ok {
			after = append(after, next)
		}
	}
	return after
}
