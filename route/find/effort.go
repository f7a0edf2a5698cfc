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
	// briefly is by how much all these are divided while runs make room for each
	// other: there are many such searches, and what one of them misses another
	// run's move may open.
	briefly = 8
)

// effort counts and bounds what a run's square searches may cost: states, not
// time, so that the answer is the same on every machine.
type effort struct {
	spent  int  // states looked at
	harder int  // at most this many by now; 0: no pairs with a fitting more yet
	brief  bool // one of many searches
}

// steps is how many states the next search may look at.
func (e *effort) steps(bounded bool) int {
	switch {
	case e.harder == 0 && bounded:
		return e.share(betterSteps)
	case e.harder == 0:
		return e.share(mostSteps)
	case bounded:
		return min(e.share(betterSteps), e.harder-e.spent)
	}
	return min(e.share(harderSteps), e.harder-e.spent)
}

// share is how much of a bound this search may use.
func (e *effort) share(bound int) int {
	if e.brief {
		return bound / briefly
	}
	return bound
}

// goHarder opens the share of the pairs with a fitting more.
func (e *effort) goHarder() { e.harder = e.spent + e.share(mostHarder) }

// over reports whether the pairs with a fitting more have had their share.
func (e *effort) over() bool { return e.harder > 0 && e.spent >= e.harder }
