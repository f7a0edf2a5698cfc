package find

import (
	"context"
	"math"
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
	for step := 0; len(s.open) > 0 && step < last && !q.effort.over(); step++ {
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
	s.cut = len(s.open) > 0
	return got, nil
}

// goOn follows a label: straight on to the next crossing, and round each of the
// four bends to where the tube may bend again.
func (q *quest) goOn(e entry) {
	s := q.search
	l := &s.labels[e.label]
	if l.done || l.cost != e.cost {
		return // a better one has taken its place
	}
	l.done = true
	from := *l
	q.straightOn(e.label, &from)
	via := int(from.via)
	n := from.node()
	if via < len(q.via) && q.grid.at(n).Sub(q.via[via]).Len() <= sameLine {
		via++
	}
	for out := range 6 {
		if out>>1 != int(from.heading>>1) {
			q.turn(e.label, &from, n, out, via)
		}
	}
}

// straightOn lengthens a straight to the next crossing.
func (q *quest) straightOn(at int32, from *label) {
	d := int(from.heading)
	axis, sense := d>>1, d&1
	n := from.node()
	next := n
	next[axis] += 1 - 2*sense
	if next[axis] < 0 || next[axis] >= q.search.size[axis] {
		return
	}
	l := q.line(n, axis)
	q.lookStep(l, &l.lookedOn, n, d, q.grid[axis][n[axis]]-q.radius*sign(d), q.grid[axis][next[axis]]-q.radius*sign(d))
	if l.on[sense]>>n[axis]&1 == 0 {
		r := q.radius * sign(d)
		q.blame(l, q.grid[axis][n[axis]]-r, q.grid[axis][next[axis]]-r)
		return
	}
	r := -q.radius * sign(d)
	via := q.passed(n, d, int(from.via), q.grid[axis][n[axis]]+r, q.grid[axis][next[axis]]+r)
	q.reach(at, from, next, d, via, 0, q.tollAlong(n, axis, q.grid[axis][n[axis]]+r, q.grid[axis][next[axis]]+r))
}

// turn goes round a bend and on to where the tube may bend again, or home.
func (q *quest) turn(at int32, from *label, n node, out, via int) {
	s := q.search
	axis, sense := out>>1, out&1
	if q.leadsHome(n, out) {
		q.home(at, from, n, out, via)
	}
	here := n[axis]
	next := int(s.jump[out][here])
	if next < 0 {
		return
	}
	l := q.line(n, axis)
	q.lookStep(l, &l.lookedJump, n, out, q.grid[axis][here]+q.radius*sign(out), q.grid[axis][next]-q.radius*sign(out))
	if l.jump[sense]>>here&1 == 0 {
		q.blame(l, q.grid[axis][here]+q.radius*sign(out), q.grid[axis][next]-q.radius*sign(out))
		return
	}
	if len(q.via) > 0 {
		via = q.passed(n, out, via, q.grid[axis][here]+q.radius*sign(out), q.grid[axis][next]-q.radius*sign(out))
	}
	r := &s.axes[axis]
	cost := from.cost + q.cornerKey + abs(r.price[next]-r.price[here])
	crossing := int(from.state) / (6 * s.vias)
	state := int32(((crossing+(next-here)*s.stride[axis])*6+out)*s.vias + via)
	// the cheap question before the dear one: does the bend lead to anything new?
	if h := &s.heads[state]; h.stamp == s.pass && !s.limited && s.labels[h.label].cost <= cost {
		return
	}
	if q.bendsAt(crossing, n, int(from.heading), out) {
		toll := q.tollBend(n, int(from.heading), out) + q.tollAlong(n, axis, q.grid[axis][here]+q.radius*sign(out), q.grid[axis][next]-q.radius*sign(out))
		n[axis] = next
		q.reach(at, from, n, out, via, 1, toll)
	}
}

// far is the price between two lines of one axis.
func (r *ruler) far(from uint8, to int) int64 { return abs(r.price[to] - r.price[from]) }

// reach opens a label at a crossing, bent by so many bends since the label before,
// for a toll.
func (q *quest) reach(at int32, from *label, to node, heading, via, bent int, toll int64) {
	s := q.search
	axis := heading >> 1
	r := &s.axes[axis]
	l := label{
		cost:   from.cost + r.far(from.at[axis], to[axis]) + int64(bent)*q.cornerKey + toll,
		length: from.length + abs(r.length[to[axis]]-r.length[from.at[axis]]) - int64(bent)*q.cornerSaves,
		state:  s.state(to, heading, via), parent: at, next: -1,
		at: [3]uint8{uint8(to[0]), uint8(to[1]), uint8(to[2])}, heading: uint8(heading), via: uint8(via), bends: from.bends + uint8(bent),
	}
	q.open(&l)
}

func abs(x int64) int64 {
	if x < 0 {
		return -x
	}
	return x
}

// open puts a label in the queue unless another of its state betters it or it
// can no longer lead to what is looked for.
func (q *quest) open(l *label) {
	s := q.search
	h := &s.heads[l.state]
	known := h.stamp == s.pass
	if known && s.bettered(h.label, l) {
		return
	}
	total := l.cost + q.least(l)
	if total >= s.bound || s.limited && !q.mayFit(l) {
		return
	}
	at := int32(len(s.labels))
	switch {
	case known && !s.limited && !s.labels[h.label].done:
		at = h.label
		s.labels[at] = *l
	case known && s.limited:
		l.next = h.label
		fallthrough
	default:
		s.labels = append(s.labels, *l)
	}
	*h = head{s.pass, at}
	s.push(total, l.cost, at)
}

// bettered reports whether a label of the list is as good in everything that counts.
func (s *search) bettered(first int32, l *label) bool {
	if !s.limited {
		return s.labels[first].cost <= l.cost
	}
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
func (q *quest) bendsAt(crossing int, n node, in, out int) bool {
	s := q.search
	c := &s.corners[crossing]
	if c.stamp != s.stamp {
		*c = corner{stamp: s.stamp, looks: s.looks}
		q.look(q.grid.at(n), q.grid.at(n), q.radius)
	}
	if c.looks != s.looks {
		c.looks, c.blamed[1] = s.looks, 0
	}
	bit := uint16(1) << bendBit[in^1][out]
	if c.known&bit == 0 || c.clear&bit == 0 && c.blamed[s.back]&bit == 0 {
		c.known |= bit
		c.blamed[s.back] |= bit
		if q.bendClear(n, in, out) {
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
