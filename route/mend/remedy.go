package mend

import "tubewright/route/check"

// remedy says what may help against a kind of finding.
type remedy struct {
	// trials lists changes to try, each a ladder: of its rungs, from the least to
	// the most, the first that helps is the one offered.
	trials []func(*hunt) [][]Change
	moves  bool // shifting the parts it is about, and those its runs stand on
	roomy  bool // asking for less clearance, if nothing else helps
}

type trials = []func(*hunt) [][]Change

// remedies holds the kinds of finding we know changes for. The others are for
// the person alone: a port is left open or not, a price is known or not.
var remedies = map[check.Code]remedy{
	check.NoWay:           {trials: trials{asked, picks, ports, lined, tighter, tubes, turns}, moves: true, roomy: true},
	check.TubeHitsTube:    {trials: trials{asked, picks, ports, extended, tighter, tubes}, moves: true, roomy: true},
	check.CollarHits:      {trials: trials{asked, picks, ports, extended, sockets}, moves: true, roomy: true},
	check.TubeHitsPart:    {trials: trials{asked, picks, extended, tighter, tubes}, moves: true, roomy: true},
	check.TubeOutsideCase: {trials: trials{asked, picks, tighter}, moves: true},
	check.CannotForm:      {trials: trials{asked, tighter, tubes}, moves: true},
	check.WindowMissed:    {trials: trials{asked, picks, sockets}, moves: true},
	check.PartHitsPart:    {moves: true},
	check.PartOutsideCase: {trials: trials{turns}, moves: true},
	check.StockTooShort:   {trials: trials{picks, asked, longer}, moves: true},
	check.StockTooFew:     {trials: trials{limits}},
	check.PortTwice:       {trials: trials{freed}},
	check.MixedSizes:      {trials: trials{asked, sockets, tubes}},
	check.MixedThreads:    {trials: trials{asked, sockets}},
	check.PumpBackwards:   {trials: trials{ports}},
	check.MixedMetals:     {trials: trials{tubes}},
	check.LoopOpen:        {trials: trials{joined}},
	check.NoDrain:         {trials: trials{taps}},
	check.NoFill:          {trials: trials{taps}},
}
