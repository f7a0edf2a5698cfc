// Package find joins two ports: it lists the ways a run can be made, best
// first, and solves all runs of a plan.
//
// Lengths are millimetres, angles degrees, in the case's frame. Every way it
// gives can be formed and passes the clearance check of package
// tubewright/route/clear. The same plan always gives the same answer.
package find

import (
	"tubewright/bends"
	"tubewright/route"
)

// Way is one way to make a run.
type Way struct {
	Run    string
	Name   string // "straight", "one bend", "offset bend", ...; unique among a run's ways
	Tube   route.Tube
	Start  route.Laid // chain on the run's From port, rolls settled; ends in a socket
	End    route.Laid // the same at its To port
	Formed bends.Formed
	Ends   bends.Ends
	Cost   float64 // in mm of tube, by the plan's Weigh
	Price  float64 // of the fittings, in the plan's money; those without a price count 0
	Seals  int     // threaded joints and sockets that can leak
	Miss   Miss    // what the sockets' give must take up
	Chance float64 // that it seats at the first try by the plan's errors, 0 to 1
	Clash  string  // the run it would come too near to as all are chosen; empty: none
	Reason string  // one plain line
}

// Fittings counts the fittings of both chains.
func (w Way) Fittings() int { return len(w.Start.Bodies) + len(w.End.Bodies) }

// Miss is how far the tube's end stands from true in the worse socket.
type Miss struct{ Sideways, Degrees float64 } // mm, degrees

// Solved is one run with the ways found for it.
type Solved struct {
	Run    route.Run
	Ways   []Way // best first; empty when Problem says why
	Chosen int   // index into Ways; −1 when there is none
	// Drawn means that the person drew the path or fixed it: the one way stands
	// even where it collides, and the checks say so.
	Drawn   bool
	Problem error // why there is no way: a *NoWayError, or what the bends refuse of a drawn path
}

// Way gives the chosen way.
func (s Solved) Way() (Way, bool) {
	if s.Chosen < 0 || s.Chosen >= len(s.Ways) {
		return Way{}, false
	}
	return s.Ways[s.Chosen], true
}

// Solution is a plan's runs, in the plan's order.
type Solution struct{ Runs []Solved }
