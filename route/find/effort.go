package find

import "math"

const (
	// mostSteps bounds the states of one search; a search that long has met a
	// maze no tube goes through.
	mostSteps = 30000
	// betterSteps bounds the states of a search for something cheaper than is
	// already known.
	betterSteps = 6000
	// harderSteps bounds the states of one search from a pair of chains with a
	// fitting more than need be, and harderRounds how often its lattice is refined
	// for a first route. There are many such pairs, and where one of them helps its
	// first route is found within these (200 crowded plans of 4 to 10 runs); a search
	// that goes on is shut in.
	harderSteps  = 1500
	harderRounds = 2
	// mostHarder bounds the states of all searches from such pairs for one run:
	// what is found beyond it has six bends and more.
	mostHarder = 8000
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
	case e.harder > 0:
		return min(e.share(harderSteps), e.left())
	case bounded:
		return e.share(betterSteps)
	}
	return e.share(mostSteps)
}

// rounds is how often a lattice may be refined for a first route.
func (e *effort) rounds() int {
	if e.harder > 0 {
		return harderRounds
	}
	return mostRounds
}

// left is how many states may still be looked at.
func (e *effort) left() int {
	if e.harder == 0 {
		return math.MaxInt
	}
	return e.harder - e.spent
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
func (e *effort) over() bool { return e.left() <= 0 }
