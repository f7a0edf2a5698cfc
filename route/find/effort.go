package find

const (
	// mostSteps bounds the states of one search; a search that long has met a
	// maze no tube goes through.
	mostSteps = 30000
	// betterSteps bounds the states of a search for something cheaper than is
	// already known.
	betterSteps = 8000
	// harderSteps bounds the states of one search from a pair of chains with a
	// fitting more than need be. There are many such pairs, and where one of them
	// helps its first route is found within a tenth of this (crowded cases of 12
	// runs among 60 parts); a search that goes on is shut in.
	harderSteps = 2000
	// mostHarder bounds the states of all searches from such pairs for one run:
	// beyond it a run that is shut in on all sides would take many seconds.
	mostHarder = 120000
)

// effort counts and bounds what a run's square searches may cost: states, not
// time, so that the answer is the same on every machine.
type effort struct {
	spent  int // states looked at
	harder int // at most this many by now; 0: no pairs with a fitting more yet
}

// steps is how many states the next search may look at.
func (e *effort) steps(bounded bool) int {
	switch {
	case e.harder == 0 && bounded:
		return betterSteps
	case e.harder == 0:
		return mostSteps
	case bounded:
		return min(betterSteps, e.harder-e.spent)
	}
	return min(harderSteps, e.harder-e.spent)
}

// over reports whether the pairs with a fitting more have had their share.
func (e *effort) over() bool { return e.harder > 0 && e.spent >= e.harder }
