package find

import (
	"context"
	"errors"
	"math"
	"reflect"
	"slices"
)

// moved is what differs between two scenes that are otherwise the same.
type moved struct {
	from  *past
	parts []bool // which of them
	swap  swap
}

// swap is solids that are gone, those that stand instead, and a box about all.
type swap struct {
	old, now []solid
	around   bounds
}

// noSwap is nothing gone and nothing new.
func noSwap() swap {
	far := vec{math.Inf(1), math.Inf(1), math.Inf(1)}
	return swap{around: bounds{far, far.Mul(-1)}}
}

func (s *swap) add(old, now []solid) {
	s.old, s.now = append(s.old, old...), append(s.now, now...)
	for _, list := range [2][]solid{old, now} {
		for i := range list {
			for k := range list[i].lo {
				s.around.lo[k] = min(s.around.lo[k], list[i].lo[k])
				s.around.hi[k] = max(s.around.hi[k], list[i].hi[k])
			}
		}
	}
}

// touches reports whether some of the solids, gone or new, meets a box.
func (s *swap) touches(b *bounds) bool {
	meets := func(o solid) bool { return b.meets(&bounds{o.lo, o.hi}) }
	return b.meets(&s.around) && (slices.ContainsFunc(s.old, meets) || slices.ContainsFunc(s.now, meets))
}

// movedFrom compares a past with a scene; false when more than the place of
// parts differs.
func movedFrom(p *past, sc *scene) (moved, bool) {
	m := moved{from: p, parts: make([]bool, len(sc.placed)), swap: noSwap()}
	if len(p.scene.placed) != len(sc.placed) || !slices.Equal(p.scene.first, sc.first) || !sc.sameBut(p.scene) {
		return m, false
	}
	for i := range sc.placed {
		if !reflect.DeepEqual(sc.placed[i], p.scene.placed[i]) {
			m.parts[i] = true
			m.swap.add(p.scene.solidsOf(i), sc.solidsOf(i))
		}
	}
	return m, true
}

// carry takes up what was found for a run before some parts moved, when its
// searches asked nothing that is answered otherwise now and neither of its ends
// is on one of these parts: they would find the same. Its home is searched again
// only if a brief search asks for it.
func (t *table) carry(ctx context.Context, i int, reserved []solid) {
	run := t.plan.Runs[i]
	_, a, ok := t.port(run.From)
	_, b, good := t.port(run.To)
	if !ok || !good {
		return
	}
	for n := len(t.moves) - 1; n >= 0; n-- {
		m := &t.moves[n]
		if m.parts[a] || m.parts[b] {
			continue
		}
		for k := range m.from.runs {
			if r := &m.from.runs[k]; sameRun(r.run, run) && len(r.reserved) == len(reserved) {
				t.rows[i].asked = t.carried(ctx, m, r, reserved)
				if t.rows[i].homeless = len(t.rows[i].asked) > 0; t.rows[i].homeless {
					return
				}
			}
		}
	}
}

// carried are the searches for a run's list that would find the same now.
func (t *table) carried(ctx context.Context, m *moved, r *pastRun, reserved []solid) (list []asked) {
	c := change{scene: t.scene, halt: t.halt, parts: &m.swap, runs: noSwap(), reserved: reserved}
	for n := range reserved {
		if reserved[n] != r.reserved[n] {
			c.runs.add(r.reserved[n:n+1], reserved[n:n+1])
		}
	}
	for _, a := range r.asked {
		if a.looked == nil || a.looked.full || !settled(a.err) {
			continue
		}
		if len(a.others) > 0 {
			a.others = reserved
		}
		if a.looked = c.askAgain(ctx, &a); a.looked != nil {
			list = append(list, a)
		}
	}
	return list
}

// settled reports whether an answer is complete: what a run without a way lacks
// is measured when it is told.
func settled(err error) bool {
	var none *NoWayError
	return err == nil || errors.As(err, &none) && none.hunt == nil
}

// change is what stands otherwise around a run than when it was searched.
type change struct {
	*scene   // as it is now
	halt     *halt
	parts    *swap
	runs     swap // what the ports of other runs need
	reserved []solid
}

// askAgain gives what a search would look at now; nil when not all is answered
// as it was.
func (c *change) askAgain(ctx context.Context, a *asked) *looked {
	if slices.ContainsFunc(a.looked.boxes, func(b bounds) bool { return c.parts.touches(&b) || c.runs.touches(&b) }) {
		return nil
	}
	for i := range a.looked.asks {
		if c.halt.halted() || !c.sameAnswer(&a.looked.asks[i]) {
			return nil
		}
	}
	now := *a.looked
	for i := range now.quests {
		q := &now.quests[i]
		if !slices.ContainsFunc(q.looked.boxes, func(b bounds) bool { return c.parts.touches(&b) || c.runs.touches(&b) }) {
			continue
		}
		again, ok := c.inquire(ctx, q, a.others)
		if !ok {
			return nil
		}
		if &now.quests[0] == &a.looked.quests[0] {
			now.quests = slices.Clone(now.quests)
		}
		now.quests[i] = again
	}
	return &now
}

// sameAnswer reports whether the guard would answer a question as before: where
// nothing was too near nothing new is, and where something was it still is, or
// something new.
func (c *change) sameAnswer(a *ask) bool {
	s := c.parts
	if a.runs {
		s = &c.runs
	}
	gap := c.plan.Clear
	if b := wider(a.limb.lo, a.limb.hi, gap+lookSpare); !b.meets(&s.around) {
		return true
	}
	near := func(o solid) bool { return a.limb.tooNear(o.shape, &o.lo, &o.hi, gap) }
	if slices.ContainsFunc(s.now, near) {
		return a.hit
	}
	return !a.hit || !slices.ContainsFunc(s.old, near)
}

// inquire searches a square search again; false when it comes out otherwise.
func (c *change) inquire(ctx context.Context, was *inquiry, others []solid) (inquiry, bool) {
	now := *was
	h := *was.asker
	h.scene, h.others, h.effort, h.halt = c.scene, others, was.before, c.halt
	q := h.quest(was.frame, was.start, was.end)
	defer q.free()
	now.looked = looked{}
	q.looked = &now.looked
	got, err := q.routes(ctx, was.best)
	same := err == nil && !now.looked.full && h.effort == was.after && slices.EqualFunc(got, was.got, sameFound)
	return now, same
}

func sameFound(f, g found) bool {
	return f.cost == g.cost && f.within == g.within && slices.Equal(f.corners, g.corners)
}
