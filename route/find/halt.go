package find

import "context"

// halt lets the loops of geometry, which are handed no context, stop soon after
// it is done.
type halt struct {
	ctx   context.Context // of the search in hand; nil: never done
	asked int
	done  bool
}

// halted reports whether the search in hand is to be given up: what it has found
// so far is then of no use. It looks at the context every so often.
func (h *hunt) halted() bool {
	if h.halt.asked++; h.halt.ctx != nil && !h.halt.done && h.halt.asked%checkEvery == 0 {
		h.halt.done = h.halt.ctx.Err() != nil
	}
	return h.halt.done
}
