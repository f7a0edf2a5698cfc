package nest

import "context"

// Options bound the work of [Solve]. The zero value stops after a fixed amount
// of it, so that the same job gives the same result on every machine.
type Options struct {
	// Seconds stops the search after a time. What is found then hangs on the
	// machine's speed; 0: no limit of time.
	Seconds float64
	// Budget stops the search after so many steps, about a hundred million a
	// second; 0: DefaultBudget, or no limit where Seconds is set.
	Budget int
	// Progress, when set, hears of every better bound or plan: costs as in Result.
	Progress func(bound, incumbent int)
}

// DefaultBudget of steps is a few seconds on a small computer.
const DefaultBudget = 400_000_000

// Solve finds the best plan for a job. Errors are *NumberError, *TooManyError
// (joined), *TooLongError, *TooFewError, which comes with a plan for all other
// pieces, or the context's, which comes with the best plan so far.
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
	t := newTask(job)
	plan, ok := t.greedy()
	if !ok {
		return Result{}, &TooFewError{Uncut: mergePieces(job.Pieces)}
	}
	return job.result(t, plan), ctx.Err()
}
