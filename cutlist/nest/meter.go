package nest

import (
	"context"
	"time"
)

// meter counts the work done and says when to stop.
type meter struct {
	ctx      context.Context
	steps    int // one is roughly a nanosecond's work
	limit    int // 0: none
	deadline time.Time
	look     int // steps at which to look at the clock and the context again
	over     bool
}

// lookEvery so many steps the clock and the context are asked: a few
// milliseconds, so that a stop is felt at once and the asking costs nothing.
const lookEvery = 4_000_000

func newMeter(ctx context.Context, opt Options) *meter {
	m := &meter{ctx: ctx, limit: opt.Budget, over: ctx.Err() != nil}
	if opt.Seconds > 0 {
		m.deadline = time.Now().Add(time.Duration(opt.Seconds * float64(time.Second)))
	} else if m.limit == 0 {
		m.limit = DefaultBudget
	}
	return m
}

// spend counts n steps and reports whether to go on.
func (m *meter) spend(n int) bool {
	m.steps += n
	if m.over || m.limit > 0 && m.steps > m.limit {
		m.over = true
		return false
	}
	if m.steps >= m.look {
		m.look = m.steps + lookEvery
		m.over = m.ctx.Err() != nil || !m.deadline.IsZero() && time.Now().After(m.deadline)
	}
	return !m.over
}

// within gives a meter that stops after n more steps, or when m does.
func (m *meter) within(n int) *meter {
	part := *m
	if part.limit == 0 || part.steps+n < part.limit {
		part.limit = part.steps + n
	}
	return &part
}

// after takes over what a part of m has spent.
func (m *meter) after(part *meter) {
	m.steps, m.look = part.steps, part.look
	m.spend(0)
}

// small gives the meter for a task's search: less than m where no time was asked
// for and there are several kinds of bar, and less still for few pieces.
func (m *meter) small(t task) *meter {
	switch {
	case !m.deadline.IsZero() || len(t.bars) < 2:
		return m
	case t.pieces() <= mostForRemnant:
		return m.within(smallBudget)
	}
	return m.within(severalBudget)
}
