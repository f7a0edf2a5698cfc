package find

import (
	"slices"
)

// tolls lets a quest cross other runs at a price: their room is not closed to it,
// but costs so much each time a route enters it. Whether two runs really come too
// near is asked when the route is formed.
type tolls struct {
	rooms *quest  // the same lattice among the rooms of other runs
	payer *search // the search that pays; one that looks back from the end does not
	of    []int   // of each room its run
	price []int64 // of each run, in steps of sameCost
	paid  []bool  // of each run: room for an answer
}

// crossing lets the quest cross others at their price.
func (q *quest) crossing(a *across) {
	s := searches.Get().(*search)
	s.rooms, s.of = a.rooms(s.rooms[:0], s.of[:0], q.frame, q.keep, q.halt)
	q.tolls = &tolls{
		rooms: &quest{walls: s.rooms, radius: q.radius, halt: q.halt, search: s},
		of:    s.of, price: a.price, paid: make([]bool, len(a.price)),
	}
}

// pays reports whether the search in hand pays tolls.
func (q *quest) pays() bool { return q.tolls != nil && q.tolls.payer == q.search }

// openTolls makes the rooms ready for the lattice as it stands.
func (q *quest) openTolls() {
	t := q.tolls
	if t == nil || t.payer != nil && t.payer != q.search {
		return
	}
	r, s := t.rooms, t.rooms.search
	r.grid, t.payer = q.grid, q.search
	s.ground = &s.own
	s.size, s.stride = q.search.size, q.search.stride
	s.ground.wipe()
	s.near.build(r)
}

// close gives the working room back.
func (t *tolls) close() { searches.Put(t.rooms.search) }

// along is what a stretch of a straight costs: each run whose room it enters. What
// it begins in was entered before.
func (t *tolls) along(n node, axis int, from, to float64) int64 {
	l := t.line(n, axis)
	sum := int64(0)
	for _, s := range t.rooms.search.spans[l.from:l.to] {
		if s.lo >= from && s.lo < to || s.hi <= from && s.hi > to {
			sum += t.price[t.of[s.wall]]
			t.rooms.walls[s.wall].blocked++
		}
	}
	return sum
}

// line gives the spans of a line: one for each run that is entered, not for each
// of its rooms.
func (t *tolls) line(n node, axis int) *line {
	s := t.rooms.search
	l := s.lineAt(&n, axis)
	if l.stamp == s.stamp {
		return l
	}
	*l = line{stamp: s.stamp, from: int32(len(s.spans))}
	at := t.rooms.grid.at(n)
	for w, word := range s.near.along(n, axis) {
		for word != 0 {
			i := 64*w + nextBit(&word)
			t.rooms.halt.did(1)
			s.spans = t.rooms.walls[i].spans(s.spans, at, axis, int32(i))
		}
	}
	list := s.spans[l.from:]
	sortSpans(list)
	s.spans = s.spans[:int(l.from)+len(t.joined(list))]
	l.to = int32(len(s.spans))
	return l
}

// joined makes spans of one run that overlap into one, in place.
func (t *tolls) joined(list []span) []span {
	out := list[:0]
	for _, s := range list {
		n := slices.IndexFunc(out, func(o span) bool { return t.of[o.wall] == t.of[s.wall] && o.hi >= s.lo-sameSpot })
		if n < 0 {
			out = append(out, s)
			continue
		}
		out[n].hi = max(out[n].hi, s.hi)
	}
	return out
}

// bend is what the bend at a crossing costs: each run whose room it enters and
// the straight before it has not.
func (t *tolls) bend(n node, in, out int) int64 {
	corner, u, v := t.rooms.grid.at(n), heading(out).Mul(-1), heading(in)
	r := t.rooms.radius
	from, to := corner.Sub(v.Mul(r)), corner.Sub(u.Mul(r))
	centre := from.Sub(u.Mul(r))
	sum := int64(0)
	for i, word := range t.rooms.search.near.around(n) {
		for word != 0 {
			at := 64*i + nextBit(&word)
			w, run := &t.rooms.walls[at], t.of[at]
			if t.paid[run] || w.beyond(from, to, corner) || w.cornerGap(centre, from, to, in/2, out/2, r) >= w.keep-sameSpot {
				continue
			}
			t.paid[run] = true
			if !t.holds(n, in/2, run, from[in/2]) {
				sum += t.price[run]
				w.blocked++
			}
		}
	}
	clear(t.paid)
	return sum
}

// holds reports whether a place on a line is in the room of a run.
func (t *tolls) holds(n node, axis, run int, x float64) bool {
	l := t.line(n, axis)
	return slices.ContainsFunc(t.rooms.search.spans[l.from:l.to], func(s span) bool {
		return t.of[s.wall] == run && s.lo < x+sameSpot && s.hi > x-sameSpot
	})
}

// refine lines up with the rooms that were paid for most often; false when there
// is none that is new.
func (t *tolls) refine(q *quest) bool {
	var order []int
	for i := range t.rooms.walls {
		if w := &t.rooms.walls[i]; w.blocked > 0 && !w.lined {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(i, j int) int { return t.rooms.walls[j].blocked - t.rooms.walls[i].blocked })
	for _, i := range order[:min(len(order), perRound)] {
		w := &t.rooms.walls[i]
		w.lined = true
		for axis := range 3 {
			for _, x := range []float64{w.lo[axis] - w.keep, w.hi[axis] + w.keep} {
				if !q.room.boxed || x >= q.room.lo[axis]-sameLine && x <= q.room.hi[axis]+sameLine {
					q.grid.add(axis, x)
				}
			}
		}
	}
	return len(order) > 0
}

// tollAlong is what a stretch of a line of the lattice costs.
func (q *quest) tollAlong(n node, axis int, from, to float64) int64 {
	if !q.pays() {
		return 0
	}
	return q.tolls.along(n, axis, from, to)
}

// tollBend is what a bend costs.
func (q *quest) tollBend(n node, in, out int) int64 {
	if !q.pays() {
		return 0
	}
	return q.tolls.bend(n, in, out)
}
