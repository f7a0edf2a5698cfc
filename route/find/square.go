package find

import (
	"context"
	"math"
	"slices"
)

const (
	// mostGoals is how many routes the first search gives: the best and others.
	mostGoals = 3
	// moreSteps bounds the states looked at for the others.
	moreSteps = 800
)

// shortest finds the best route over the lattice as it stands that costs less
// than the bound and keeps every limit, and on request some others. Lengths and
// bends seldom bind, so it first looks without counting them; where the best
// route breaks a limit it looks again with labels that are dearer but shorter.
// That first route is given too when nothing keeps the limits, so that the hunt
// can say what it lacks.
func (q *quest) shortest(ctx context.Context, others bool) ([]found, error) {
	q.prepare()
	q.search.limited = false
	got, err := q.cheapest(ctx, others)
	if err != nil || len(got) == 0 || got[0].within {
		return got, err
	}
	q.search.again()
	q.search.limited = true
	kept, err := q.cheapest(ctx, others)
	if len(kept) == 0 {
		return got[:1], err
	}
	return kept, err
}

// cheapest is A* (Hart, Nilsson and Raphael 1968) over the labels; the estimate
// never says too much, and a state met again at less cost is opened again.
func (q *quest) cheapest(ctx context.Context, others bool) ([]found, error) {
	q.begin()
	s := q.search
	s.cut = false
	var got []found
	last, back := q.effort.steps(s.bound < math.MaxInt64), q.firstBackward()
	for step := 0; s.open.len() > 0 && step < last && !q.effort.over(); step++ {
		q.effort.spent++
		if q.halt.halted() {
			return nil, ctx.Err()
		}
		if step == back && len(got) == 0 && !s.limited {
			if shut, err := q.shutIn(ctx, back); shut || err != nil {
				return nil, err
			}
			back *= nextBackward
		}
		e := s.open.pop()
		if e.label >= 0 {
			q.goOn(e)
			continue
		}
		f := q.foundAt(&s.homes[-1-e.label])
		if len(got) == 0 || f.within {
			got = append(got, f)
		}
		if len(got) == mostGoals || !others || !f.within {
			return got, nil
		}
		last = min(last, step+moreSteps)
	}
	s.cut = s.open.len() > 0
	return got, nil
}

// goOn follows a label: straight on to the next crossing, and round each of the
// four bends to where the tube may bend again.
func (q *quest) goOn(e entry) {
	s := q.search
	from := &s.labels[e.label] // it stays as it is, wherever the labels move
	if !s.limited && s.heads[from.state].label != e.label {
		return // a better one has taken its place
	}
	n, via := from.node(), int(from.via)
	q.straightOn(e.label, from, &n)
	if via < len(q.via) && q.grid.at(n).Sub(q.via[via]).Len() <= sameLine {
		via++
	}
	for out := range 6 {
		if out>>1 != int(from.heading>>1) {
			q.turn(e.label, from, &n, out, via)
		}
	}
}

// straightOn lengthens a straight to the next crossing.
func (q *quest) straightOn(at int32, from *label, n *node) {
	s := q.search
	d := int(from.heading)
	axis, sense := d>>1, d&1
	here := n[axis]
	next := here + 1 - 2*sense
	if next < 0 || next >= s.size[axis] {
		return
	}
	l, x := q.line(n, axis), q.grid[axis]
	r := q.radius * sign(d)
	if q.looked != nil {
		q.lookStep(l, &l.lookedOn, *n, d, x[here]-r, x[next]-r)
	}
	if l.on[sense]>>here&1 == 0 {
		q.blame(l, x[here]-r, x[next]-r)
		return
	}
	via, toll := int(from.via), int64(0)
	if via < len(q.via) {
		via = q.passes(*n, d, via, x[here]-r, x[next]-r)
	}
	if q.tolls != nil {
		toll = q.tollAlong(*n, axis, x[here]-r, x[next]-r)
	}
	state := from.state + int32((next-here)*s.stride[axis]*6*s.vias+via-int(from.via))
	q.reach(at, from, state, next, d, via, toll)
}

// turn goes round a bend and on to where the tube may bend again, or home.
func (q *quest) turn(at int32, from *label, n *node, out, via int) {
	s := q.search
	if q.leadsHome(n, out) {
		q.home(at, from, *n, out, via)
	}
	axis, sense := out>>1, out&1
	here := n[axis]
	next := int(s.jump[out][here])
	if next < 0 {
		return
	}
	l, x := q.line(n, axis), q.grid[axis]
	r := q.radius * sign(out)
	if q.looked != nil {
		q.lookStep(l, &l.lookedJump, *n, out, x[here]+r, x[next]-r)
	}
	if l.jump[sense]>>here&1 == 0 {
		q.blame(l, x[here]+r, x[next]-r)
		return
	}
	if via < len(q.via) {
		via = q.passes(*n, out, via, x[here]+r, x[next]-r)
	}
	state := int32(((int(from.crossing)+(next-here)*s.stride[axis])*6+out)*s.vias + via)
	// the cheap question before the dear one: does the bend lead to anything new?
	if s.knows(state, from.cost+q.cornerKey+s.axes[axis].far(uint8(here), next)) {
		return
	}
	if !q.bendsAt(int(from.crossing), n, int(from.heading), out) {
		return
	}
	toll := int64(0)
	if q.tolls != nil {
		toll = q.tollBend(*n, int(from.heading), out) + q.tollAlong(*n, axis, x[here]+r, x[next]-r)
	}
	q.reach(at, from, state, next, out, via, toll)
}

// knows reports whether a state is reached at most at a cost already; where
// lengths and bends count too that says nothing.
func (s *search) knows(state int32, cost int64) bool {
	h := &s.heads[state]
	return h.stamp == s.pass && !s.limited && h.cost <= cost
}

// reach opens a label on a line that a straight leads to, after a bend when it has
// another heading than the label before, unless another of its state betters it or
// it can no longer lead to what is looked for.
func (q *quest) reach(parent int32, from *label, state int32, to, heading, via int, toll int64) {
	s := q.search
	axis := heading >> 1
	r, here := &s.axes[axis], from.at[axis]
	cost, length, bends := from.cost+r.far(here, to)+toll, from.length+abs(r.length[to]-r.length[here]), from.bends
	if heading != int(from.heading) {
		cost, length, bends = cost+q.cornerKey, length-q.cornerSaves, bends+1
	}
	h := &s.heads[state]
	known := h.stamp == s.pass
	if known && !s.limited && h.cost <= cost {
		return
	}
	at := len(s.labels)
	if at == cap(s.labels) {
		s.labels = slices.Grow(s.labels, at+64)
	}
	s.labels = s.labels[:at+1]
	l := &s.labels[at] // written in place: a copy would wait for its parts
	l.cost, l.length, l.state, l.parent, l.next = cost, length, state, parent, -1
	l.crossing = from.crossing + int32((to-int(here))*s.stride[axis])
	l.at[0], l.at[1], l.at[2] = from.at[0], from.at[1], from.at[2]
	l.at[axis] = uint8(to)
	l.heading, l.via, l.bends = uint8(heading), uint8(via), bends
	total := cost + q.least(l)
	if total >= s.bound || s.limited && !s.keeps(q, h, known, l) {
		s.labels = s.labels[:at]
		return
	}
	*h = head{cost, s.pass, int32(at)}
	s.push(total, cost, int32(at))
}

// keeps puts a label before the others of its state, where lengths and bends
// count; false when one of them betters it or it comes home no more.
func (s *search) keeps(q *quest, h *head, known bool, l *label) bool {
	if !known {
		return q.mayFit(l)
	}
	if s.bettered(h.label, l) || !q.mayFit(l) {
		return false
	}
	l.next = h.label
	return true
}

// far is the price between two lines of one axis.
func (r *ruler) far(from uint8, to int) int64 { return abs(r.price[to] - r.price[from]) }

func abs(x int64) int64 {
	return max(x, -x)
}

// bettered reports whether a label of a list is as good in everything that counts.
func (s *search) bettered(first int32, l *label) bool {
	for i := first; i >= 0; i = s.labels[i].next {
		if h := &s.labels[i]; h.cost <= l.cost && h.length <= l.length && h.bends <= l.bends {
			return true
		}
	}
	return false
}

func (s *search) push(total, cost int64, label int32) {
	s.seq++
	s.open.push(entry{total, cost, label, s.seq})
}

// bendsAt is bendClear with a memory.
func (q *quest) bendsAt(crossing int, n *node, in, out int) bool {
	s := q.search
	c := &s.corners[crossing]
	if bit := uint16(1) << bendBit[in^1][out]; c.stamp == s.stamp && c.clear&bit != 0 {
		return true
	}
	if c.stamp != s.stamp {
		*c = corner{stamp: s.stamp, looks: s.looks}
		q.look(q.grid.at(*n), q.grid.at(*n), q.radius)
	}
	if c.looks != s.looks {
		c.looks, c.blamed[1] = s.looks, 0
	}
	bit := uint16(1) << bendBit[in^1][out]
	if c.known&bit == 0 || c.clear&bit == 0 && c.blamed[s.back]&bit == 0 {
		c.known |= bit
		c.blamed[s.back] |= bit
		if q.bendClear(*n, in, out) {
			c.clear |= bit
		}
	}
	return c.clear&bit != 0
}

// bendBit numbers the twelve bends at a corner by the headings of their two legs
// away from it, whichever comes first.
var bendBit = bendBits()

func bendBits() (bits [6][6]uint8) {
	next := uint8(0)
	for a := range 6 {
		for b := range a {
			if a/2 != b/2 {
				bits[a][b], bits[b][a] = next, next
				next++
			}
		}
	}
	return bits
}
