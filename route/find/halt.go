package find

import "context"

// halt lets a solve stop soon after its context is done. Whatever takes long counts
// what it does and asks halted; once that is true every loop ends as if it had
// come to its end. What was found by then is of no use, and nothing that outlives
// the solve may remember it. A look at the context changes no answer. The nil halt
// is never done.
type halt struct {
	ctx  context.Context
	work int // done so far, in units of about a microsecond
	due  int // how much work it takes until the next look at the context
	done bool
}

// lookEvery is how much work is done between two looks at the context: some tenths
// of a millisecond mostly, of which a look takes too little to be measured.
const lookEvery = 64

// did counts work that is done between two questions of halted.
func (h *halt) did(work int) {
	if h != nil {
		h.work += work
	}
}

// halted counts one step of a loop and reports whether the solve is to be given up.
func (h *halt) halted() bool {
	if h == nil {
		return false
	}
	if h.work++; h.work >= h.due && !h.done {
		h.due = h.work + lookEvery
		h.done = h.ctx.Err() != nil
	}
	return h.done
}

// stopped reports whether halted has said so already: without a look, for those who
// are about to remember something.
func (h *halt) stopped() bool { return h != nil && h.done }
