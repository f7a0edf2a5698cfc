package find

import (
	"math"
	"slices"

	"tubewright/bends"
)

// Sliding bends are a last resort. Legs along the axes and half-way between two
// of them, with bends of 45 and 90 degrees, join two ports by two or three bends
// with one freedom left: how far along the bends stand. Where the legs between are
// too short for right angles no square route leads to them, and what is worked out
// in closed form stands at the ends of the stretch in which they may slide.

const (
	// slides is at how many places of that stretch the bends are looked at.
	slides = 33
	// mostSliding bounds the tubes that are looked at for one run, cheapest first;
	// a brief search has a share of it, as of its states.
	mostSliding = 4000
)

// sliding is the making of such tubes between two chains.
type sliding struct {
	*hunt
	start, end *build
	open       [2]float64 // how far the first and the last straight may reach, mm
	list       []idea
}

// slidingBends gives the cheapest such tube between the plain chains that is clear.
func (h *hunt) slidingBends() []Way {
	if len(h.starts) == 0 || len(h.run.Via) > 0 {
		return nil
	}
	s := &sliding{hunt: h, start: h.starts[0], end: h.ends[0]}
	s.openings()
	for _, m := range h.frames(s.start, s.end) {
		s.throughFrame(m)
	}
	slices.SortStableFunc(s.list, byCost)
	for n := range s.list[:min(len(s.list), h.effort.share(mostSliding))] {
		i := &s.list[n]
		if i.key >= h.below || h.halt.halted() {
			return nil
		}
		if h.stands(i) {
			return []Way{h.way(*i, i.test.formed)}
		}
	}
	return nil
}

// openings measures how far the tube may run straight from either end.
func (s *sliding) openings() {
	far := s.farthest()
	for n, b := range []*build{s.start, s.end} {
		exempt := fromStart
		if n == 1 {
			exempt = fromEnd
		}
		m := portAxes(b.frame)
		q := s.quest(m, s.start, s.end)
		q.looked = s.looked
		s.open[n], _ = q.clearRun(m.in(b.frame.At), axisOf(m.in(b.frame.Dir)), far, exempt)
	}
}

// farthest is the longest leg worth looking at, mm.
func (s *sliding) farthest() float64 {
	if c := s.plan.Case; c != (vec{}) {
		return c.Len()
	}
	return reachOver * (s.end.frame.At.Sub(s.start.frame.At).Len() + 2*s.tube.Radius)
}

// throughFrame goes through the ways of one leg and of two between the ends.
func (s *sliding) throughFrame(m axes) {
	ways := evenWays(m)
	first, last := s.start.frame.Dir, s.end.frame.Dir.Mul(-1)
	for _, u := range ways {
		if standardTurn(first, u) == 0 {
			continue
		}
		s.along(first, u, last)
		for _, v := range ways {
			if s.halt.halted() {
				return
			}
			s.along(first, u, v, last)
		}
	}
}

// evenWays are the directions along the axes of a frame and half-way between two.
func evenWays(m axes) (list []vec) {
	for x := -1.0; x <= 1; x++ {
		for y := -1.0; y <= 1; y++ {
			for z := -1.0; z <= 1; z++ {
				if n := x*x + y*y + z*z; n == 1 || n == 2 {
					list = append(list, m.out(vec{x, y, z}.Mul(1/math.Sqrt(n))))
				}
			}
		}
	}
	return list
}

// standardTurn is the turn between two ways if it is one that formers mark; else 0.
func standardTurn(u, v vec) float64 {
	turn := degreesBetween(u, v)
	for _, standard := range []float64{45, 90} {
		if isTurn(turn, standard) {
			return standard
		}
	}
	return 0
}

// along takes in the tubes whose legs have these ways.
func (s *sliding) along(ways ...vec) {
	var least, most [4]float64
	if !s.bounds(ways, least[:], most[:]) {
		return
	}
	from, by, ok := freedom(ways, s.end.frame.At.Sub(s.start.frame.At))
	if !ok {
		return
	}
	lo, hi := math.Inf(-1), math.Inf(1)
	for i := range ways {
		a, b := least[i]-from[i], most[i]-from[i]
		switch {
		case by[i] > sameWay:
			lo, hi = max(lo, a/by[i]), min(hi, b/by[i])
		case by[i] < -sameWay:
			lo, hi = max(lo, b/by[i]), min(hi, a/by[i])
		case a > 0 || b < 0:
			return
		}
	}
	if lo <= hi {
		s.slide(ways, from, by, lo, hi)
	}
}

// bounds gives how long each leg must be and may be, from corner to corner; false
// when a turn is none that formers mark.
func (s *sliding) bounds(ways []vec, least, most []float64) bool {
	t, last := &s.tube.Tube, len(ways)-1
	for i := range ways {
		least[i], most[i] = t.StraightBetween, s.farthest()
	}
	least[0], least[last] = t.StraightEnd, t.StraightEnd
	most[0], most[last] = s.open[0], s.open[1]
	for i := range last {
		turn := standardTurn(ways[i], ways[i+1])
		if turn == 0 {
			return false
		}
		back := bends.Setback(t.Radius, turn)
		least[i], least[i+1] = least[i]+back, least[i+1]+back
		most[i], most[i+1] = most[i]+back, most[i+1]+back
	}
	return true
}

// slide takes in the tubes at some places of the stretch in which the bends slide.
func (s *sliding) slide(ways []vec, from, by [4]float64, lo, hi float64) {
	s.halt.did(slides)
	for n := range slides {
		t := lo + (hi-lo)*float64(n)/(slides-1)
		at, corners := s.start.frame.At, make([]vec, 0, len(ways)-1)
		for i := range ways[1:] {
			at = at.Add(ways[i].Mul(from[i] + t*by[i]))
			corners = append(corners, at)
		}
		if i, ok := s.drawUp(s.start, s.end, corners); ok {
			s.list = append(s.list, i)
		}
		if hi-lo <= sameSpot {
			return
		}
	}
}

// freedom solves for the lengths of legs of these ways that lead from one end to the
// other: from + t·by for any t, by Gauss and Jordan's elimination. False when there
// is no such set of lengths, but one, or more than one freedom.
func freedom(ways []vec, w vec) (from, by [4]float64, ok bool) {
	var rows [3][5]float64
	k := len(ways)
	for r := range 3 {
		for i := range ways {
			rows[r][i] = ways[i][r]
		}
		rows[r][k] = w[r]
	}
	var pivots []int
	free := -1
	for c := range k {
		if pivot(&rows, len(pivots), c) {
			pivots = append(pivots, c)
		} else if free >= 0 {
			return from, by, false
		} else {
			free = c
		}
	}
	for _, row := range rows[len(pivots):] {
		if math.Abs(row[k]) > sameSpot {
			return from, by, false
		}
	}
	if free < 0 {
		return from, by, false
	}
	by[free] = 1
	for r, c := range pivots {
		from[c], by[c] = rows[r][k], -rows[r][free]
	}
	return from, by, true
}

// pivot makes a column 1 in one row and 0 in the others, with the largest of that row
// and those below it; false when it is nothing there.
func pivot(rows *[3][5]float64, r, c int) bool {
	best := r
	for n := r; n < len(rows); n++ {
		if math.Abs(rows[n][c]) > math.Abs(rows[best][c]) {
			best = n
		}
	}
	if r == len(rows) || math.Abs(rows[best][c]) < nearParallel {
		return false
	}
	rows[r], rows[best] = rows[best], rows[r]
	for i, p := 0, rows[r][c]; i < 5; i++ {
		rows[r][i] /= p
	}
	for n := range rows {
		if f := rows[n][c]; n != r && f != 0 {
			for i := range 5 {
				rows[n][i] -= f * rows[r][i]
			}
		}
	}
	return true
}
