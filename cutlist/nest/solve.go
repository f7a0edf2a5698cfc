package nest

import "context"

// Options bound the work of [Solve]. The zero value stops after a fixed amount
// of it, so that the same job gives the same result on every machine.
type Options struct {
	// Seconds stops the search after a time. What is found then hangs on the
	// machine's speed; 0: no limit of time.
	Seconds float64
	// Budget stops the search after so many steps, about a thousand million
	// a second; 0: DefaultBudget, or no limit where Seconds is set.
	Budget int
	// Progress, when set, hears of every better bound or plan: costs as in Result.
	Progress func(bound, incumbent int)
}

const (
	// DefaultBudget of steps is at most about ten seconds of work.
	DefaultBudget = 8_000_000_000
	// smallBudget is for a job of few pieces and several kinds of bar, where
	// nobody says how long to go on: nearly all of them are done long before.
	smallBudget = 150_000_000
	// severalBudget is for a larger job of several kinds, whose searches find
	// little after their first seconds.
	severalBudget = 1_000_000_000
)

// Solve finds the best plan for a job. Errors are *NumberError (joined),
// *TooManyError, *TooLongError, *TooFewError, which comes with a plan for all
// other pieces, or the context's, which comes with the best plan so far.
func Solve(ctx context.Context, job Job, opt Options) (Result, error) {
	if err := job.check(); err != nil {
		return Result{}, err
	}
	if err := job.tooLong(); err != nil {
		return Result{}, err
	}
	if len(job.Pieces) == 0 {
		return Result{Proven: true}, nil
	}
	m := newMeter(ctx, opt)
	s := job.search(m, progress(opt.Progress))
	if s.best == nil {
		return job.partial(m, s.closed())
	}
	return job.answer(s), ctx.Err()
}

// search runs the search for a job's cheapest plan, then for the longest
// remnant among plans of that cost.
func (j Job) search(m *meter, told func(bound, incumbent int)) *search {
	s := newSearch(newTask(j), m)
	s.told = func(floor, limit int) { told(floor/s.scale, limit/s.scale) }
	if s.byTable(j.KeepOver) {
		return s
	}
	s.meter = m.small(s.task)
	s.run()
	m.after(s.meter)
	s.meter = m
	if s.best != nil {
		s.lengthenRemnant(j.KeepOver)
	}
	return s
}

func progress(tell func(bound, incumbent int)) func(int, int) {
	if tell == nil {
		return func(int, int) {}
	}
	return tell
}

func (j Job) answer(s *search) Result {
	r := j.result(s.task, s.best)
	r.Bound = min(r.Cost, s.floor/s.scale)
	r.Proven = r.Bound == r.Cost
	r.Certificate = s.certificate()
	return r
}
