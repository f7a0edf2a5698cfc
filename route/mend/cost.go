package mend

import (
	"cmp"
	"math"
	"slices"
)

// What a change costs, in millimetres of tube as the plan's weights count. The
// figures are ours: they say that shifting a part a little is less trouble than
// buying a former, and that nobody should squeeze the clearance before all else
// has been tried. To them comes what the runs' ways cost more than before, by
// the plan's own weights, and toWarn for each warning the change brings.
const (
	pickWork     = 10   // choose from a list
	moveWork     = 20   // loosen, shift, fasten
	moveRate     = 2    // for each mm along an axis
	mountedWork  = 60   // more, when the part leans on one that stays
	portWork     = 30   // another port of the same part
	freeWork     = 30   // forget prescribed fittings
	swapWork     = 40   // two ports
	chainWork    = 40   // other fittings; their price counts in the way
	dropWork     = 40   // forget drawn corners
	handBackWork = 60   // forget a drawing
	runWork      = 80   // a tube more
	stockWork    = 100  // find a shop that sells it
	limitWork    = 50   // buy more bars
	limitRate    = 50   // for each
	formerWork   = 120  // buy or make a former
	formerRate   = 5    // for each mm its radius is off: tighter bends are harder
	turnWork     = 150  // turn a part: its mounting, its cables
	tubeWork     = 200  // another kind of tube, and all that goes with it
	clearWork    = 2000 // a compromise
	toWarn       = 200  // a new warning
)

// sameCost is how close two costs may be and still be one, mm of tube: a tie is
// broken by the kind of change and its words, never by the last bit.
const sameCost = 1e-3

// kinds is the order of changes that cost the same.
var kinds = []string{
	"pick-way", "move", "use-port", "swap-ports", "use-chain", "drop-via", "hand-back",
	"add-run", "add-stock", "lift-limit", "former", "turn", "use-tube", "clear",
}

// compareOffers orders offers by cost, then kind, then words.
func compareOffers(a, b Offer) int {
	return cmp.Or(
		cmp.Compare(costKey(a.Cost), costKey(b.Cost)),
		cmp.Compare(slices.Index(kinds, a.Change.Kind()), slices.Index(kinds, b.Change.Kind())),
		cmp.Compare(a.Words, b.Words),
	)
}

func costKey(cost float64) int64 { return int64(math.Round(cost / sameCost)) }
