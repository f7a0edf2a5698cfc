package session

import (
	"context"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/find"
)

// NewTools gives the real solver and builder, with goroutines of their own.
// dispatch must run tasks on the session's goroutine.
func NewTools(dispatch func(task func())) Tools {
	return Tools{
		Solver: remembering, Build: cutlist.Build, Advise: cutlist.Offers,
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
