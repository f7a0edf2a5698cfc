// Package cutlist makes of a solved plan what one takes to the bench and to
// the shop: pieces, bars to cut them from, and what to buy.
//
// Lengths are millimetres, angles degrees, whatever the plan's file counts in.
package cutlist

import (
	"tubewright/bends"
	"tubewright/bends/budget"
	"tubewright/bends/steps"
	"tubewright/cutlist/measure"
	"tubewright/cutlist/nest"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
	"tubewright/route/insert"
	"tubewright/route/made"
	"tubewright/route/mend"
)

// List is the whole answer to a plan.
type List struct {
	Plan     route.Plan
	Draft    bool
	Reasons  []Reason        // what is only typical, in a sensible order to measure; empty unless Draft
	Measure  []measure.Thing // the same with all numbers and how to take each
	Tubes    []Tube          // one for each run with a way, in the plan's order
	Bars     []Bar           // offcuts first, in sawing order
	Sawn     []made.Bar      // what tries at tubes were sawn from already, in the plan's order
	Spares   []Spare         // one for each kind of tube to saw, by name; none where the plan counts its spares itself
	Proof    []Proof         // one for each kind of tube, by name
	Buy      []Item
	Findings []check.Finding // gravest first
	// Offers are the ways out of each finding that were tried, the least first;
	// nil where nobody looked. See [List.Mended].
	Offers [][]mend.Offer
	// PutIn says in which order the tubes go in, and how; nil where nobody asked.
	// See [List.WithPutIn].
	PutIn *insert.Report
}

// Reason is a number that is only typical, and the runs that rest on it.
type Reason struct {
	What string // "socket-16: stop, insertion and collar"
	How  string // how to measure it, one sentence
	Runs []string
}

// Tube is one run's tube, ready for the bench.
type Tube struct {
	Letter string // A, B, ... Z, AA, ... by the place in the plan: the same in the window and on paper
	Run    string
	Way    find.Way
	Cut    bends.Cut
	Bench  bends.Bench
	Budget budget.Budget   // how it will come out by the plan's errors
	Steps  []steps.Step    // its order of work at the bench, in the plan's units
	Tries  []route.Attempt // at making it, the first one first
	Made   int             // how many of the plan's machines have theirs; above 0 the tube is a fact
}

// Bar is one length of tube and the pieces sawn from it.
type Bar struct {
	Tube   string
	Length float64
	From   string // "stock" or "offcut"
	Price  float64
	Pieces []Piece
	Left   float64 // after the last cut, mm
	Keep   bool    // Left is worth keeping
}

// Piece is one piece sawn from a bar.
type Piece struct {
	Run     string
	Machine int // counts from 1 up to the plan's Build
	Spare   bool
	Length  float64 // blank, mm
}

// Proof says how good the bars of one kind of tube are.
type Proof struct {
	Tube        string
	Cost, Bound float64 // money where stock has prices, else number of bars
	Priced      bool    // they are money
	Proven      bool
	Uncut       int // pieces the limits on the stock leave over; cost and bound are of the others
}

// Words say how good the bars are, the same in lists, on sheets and in the
// window: "38.70, the cheapest possible: proven".
func (p Proof) Words() string {
	v := nest.Verdict{Cost: int(p.Cost), Bound: int(p.Bound), Priced: p.Priced, Proven: p.Proven, Uncut: p.Uncut}
	if p.Priced {
		v.Cost, v.Bound = hundredths(p.Cost), hundredths(p.Bound)
	}
	return v.Words()
}

// Item is a line of the buying list.
type Item struct {
	Item   string  // a fitting's name, or a tube's with its length: "petg-16-12 500 mm"
	Tube   string  // of a bar to buy; "" for a fitting
	Length float64 // of a bar to buy, mm
	Need   int
	OnHand int
	Buy    int
	Each   float64 // price of one; 0: not known
	Price  float64 // of what is bought
	Note   string
}
