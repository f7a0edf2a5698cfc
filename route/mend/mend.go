// Package mend looks for the smallest change to a plan that settles a finding:
// move a part 6 mm, use a 28 mm former, swap two ports.
//
// A change is offered only after it has been tried: the plan is changed, solved
// afresh and checked afresh, and the finding is gone, no error has come or
// become worse, and no loop has come open. The plan itself is never written to.
//
// How long to look is counted in steps of work, not in seconds, so the same
// plan gets the same offers on every machine. Lengths are millimetres in the
// case's frame.
package mend

import (
	"context"

	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
)

// Offer is a change that was tried and settles the finding.
type Offer struct {
	Change Change
	Words  string  // the change as an order, in the plan's units
	Cost   float64 // by the table in cost.go, mm of tube
	// Least says that no smaller step of the same change settles it: of a move,
	// that no part moved with it by fewer whole steps along any axis does; of a
	// former, that none of the larger radii between does. False where the search
	// ended first, and for changes that have no smaller steps.
	Least bool
	// Settles are the other errors that go with the finding.
	Settles []check.Finding
	// Brings are warnings that come with the change.
	Brings   []check.Finding
	Plan     route.Plan    // with the change made
	Solution find.Solution // of that plan
}

// Obstacle is what stands in the way.
type Obstacle struct {
	Runs  []string
	Parts []string
	What  string // one sentence; empty where the finding says it already
}

// Advice is what there is to say about a finding.
type Advice struct {
	InTheWay Obstacle
	Offers   []Offer // the least first; empty where none was found
	// Whole says that the search came to its end. Otherwise it was given up after
	// the allowed effort, and there may be more, or smaller, ways out.
	Whole bool
}

// Search is how to look for ways out. The zero value is a good one.
type Search struct {
	Offers   int     // at most so many are kept; 0: DefaultOffers
	Effort   int     // steps of work to spend; 0: DefaultEffort
	Step     float64 // of moves, mm; 0: 1 mm, or 0.05 in where the plan counts in inches
	Farthest float64 // a move goes, mm, unless the finding asks for more; 0: DefaultFarthest
	// Progress, when given, hears of the steps spent, of those allowed.
	Progress func(spent, allowed int)
	// Solve stands in for find.Solve, and Judge for check.Findings: to remember
	// what is solved already, or to judge by more than the plan's geometry.
	Solve func(context.Context, route.Plan) (find.Solution, error)
	Judge func(context.Context, route.Plan, find.Solution) ([]check.Finding, error)
}

const (
	// DefaultOffers is what fits beside a finding in the window.
	DefaultOffers = 5
	// DefaultEffort is what a person waits for who asked: about ten seconds.
	DefaultEffort = 100000
	// QuickEffort is for a look that nobody asked for: about a third of a second.
	QuickEffort = 3000
	// DefaultFarthest is how far a part is moved, mm: beyond it one plans anew.
	DefaultFarthest = 40
)

// Offers looks for ways out of a finding with the usual effort: those tried and
// found good, the least first. The error is the context's.
func Offers(ctx context.Context, plan route.Plan, sol find.Solution, f check.Finding) ([]Offer, error) {
	advice, err := Search{}.Advise(ctx, plan, sol, f)
	return advice.Offers, err
}

// Can reports whether there are changes to try for a kind of finding at all.
func Can(code check.Code) bool {
	_, ok := remedies[code]
	return ok
}

// Advise looks for ways out of a finding of a plan as solved. Errors are the
// context's, or those of Solve and Judge.
func (o Search) Advise(ctx context.Context, plan route.Plan, sol find.Solution, f check.Finding) (Advice, error) {
	h := newHunt(ctx, o, plan, sol, f)
	if err := h.look(); err != nil {
		return Advice{}, err
	}
	return Advice{InTheWay: h.obstacle, Offers: h.kept, Whole: h.left >= 0}, nil
}
