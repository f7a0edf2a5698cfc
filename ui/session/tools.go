package session

import (
	"tubewright/cutlist"
	"tubewright/route/find"
)

// NewTools gives the real solver and builder, with goroutines of their own.
// dispatch must run tasks on the session's goroutine.
func NewTools(dispatch func(task func())) Tools {
	return Tools{
		Solve: find.Solve, Build: cutlist.Build, Advise: cutlist.Offers,
		Go:       func(work func()) { go work() },
		Dispatch: dispatch,
	}
}
