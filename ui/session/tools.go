package session

import (
	"context"
	"time"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/find"
	"tubewright/route/insert"
)

// NewTools gives the real solver and builder, with goroutines of their own.
// dispatch must run tasks on the session's goroutine.
func NewTools(dispatch func(task func())) Tools {
	return Tools{
		Solver: remembering, Build: cutlist.Build, Advise: cutlist.Offers,
		Insertion: func() Insertion { return new(insert.Memory) }, Rest: rest,
		Go:       func(work func()) { go work() },
		Dispatch: dispatch,
	}
}

// remembering gives a solver that remembers what it searched of one open plan. Its
// answers are those of [find.Solve]; a solve that was told to stop may still hold
// the memory for a moment while the next one waits for it off the session's
// goroutine.
func remembering() func(context.Context, route.Plan) (find.Solution, error) {
	return new(find.Memory).Solve
}

// pause is how long a plan rests before it is looked how its tubes go in: longer
// than between two presses of a key that is held, or two clicks in a row.
const pause = 400 * time.Millisecond

// rest waits for the pause to pass; sooner when the context ends.
func rest(ctx context.Context) {
	t := time.NewTimer(pause)
	defer t.Stop()
	select {
	case <-t.C:
	case <-ctx.Done():
	}
}
