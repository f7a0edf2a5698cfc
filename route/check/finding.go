// Package check is the referee over a solved plan: it lists what is wrong or
// wants a look, each with its measure and a way out. It measures with package
// tubewright/route/clear from the finished tubes and fittings alone and takes
// nothing on the word of the search that found them.
//
// Search and referee come to their distances by different paths. The search
// asks clear.Farther, a yes or no that ends early, of whole swept pieces and of
// obstacles it has grown or cut; the referee asks clear.Between, which measures
// to the end, of the shapes of every fitting and of the tube as it was formed,
// its ends cut flat. Each path is held against brute force in package clear.
package check

import "github.com/go-gl/mathgl/mgl64"

// Severity says how much a finding matters.
type Severity string

// From the gravest to the lightest.
const (
	Error   Severity = "error"   // do not cut
	Warning Severity = "warning" // cut only if you know better
	Note    Severity = "note"    // good to know
)

// Code names a kind of finding, the same for ever: "tube-hits-part".
type Code string

// The kinds of finding. Those of the stock are found by package tubewright/cutlist.
const (
	TubeHitsPart    Code = "tube-hits-part"    // tube, collar or fitting nearer to a part than allowed
	TubeHitsTube    Code = "tube-hits-tube"    // two runs' tubes
	CollarHits      Code = "collar-hits"       // collar or fitting of a run against another run's
	PartHitsPart    Code = "part-hits-part"    // one solid stands in another
	PartOutsideCase Code = "part-outside-case" // past a wall of the case
	TubeOutsideCase Code = "tube-outside-case" // tube, collar or fitting
	CannotForm      Code = "cannot-form"       // a drawn path that bends refuses
	NoWay           Code = "no-way"            // nothing found for a run
	WindowMissed    Code = "window-missed"     // the sockets leave no safe window of lengths
	StockTooShort   Code = "stock-too-short"   // no bar is as long as a run's blank
	StockTooFew     Code = "stock-too-few"     // limits on stock leave pieces uncut
	StockAssumed    Code = "stock-assumed"     // the plan lists no stock for a tube
	PortTwice       Code = "port-twice"        // two runs on one port
	PortOpen        Code = "port-open"         // needs a plug; noted
	MixedSizes      Code = "mixed-sizes"       // a socket does not take the run's tube
	MixedThreads    Code = "mixed-threads"     // a fitting does not go with what it stands on
	CannotScrewIn   Code = "cannot-screw-in"   // a fitting in one piece has no room to turn
	CannotBePutIn   Code = "cannot-be-put-in"  // a piece that no slide brings into its sockets; found by package insert
	InOrderOnly     Code = "in-order-only"     // tubes that go in only in some orders; the same
	ServiceBlocked  Code = "service-blocked"   // a tube that others keep in; the same
	LoopOpen        Code = "loop-open"         // the coolant has no way round
	PumpBackwards   Code = "pump-backwards"    // a run joins outlet to outlet or inlet to inlet
	NoDrain         Code = "no-drain"          // nothing to open at the low point
	NoFill          Code = "no-fill"           // nothing to open at the high point
	TrialDiffers    Code = "trial-differs"     // a tube's test bends do not bear out what it states; noted
	MixedMetals     Code = "mixed-metals"      // metals of one loop too far apart by the anodic index
)

// Finding is one thing to settle.
type Finding struct {
	Code     Code     `json:"code"`
	Severity Severity `json:"severity"`
	Runs     []string `json:"runs"`
	Parts    []string `json:"parts"`
	Measure  float64  `json:"measure"` // gap, excess or shortfall; below 0 is an overlap
	Unit     string   `json:"unit"`    // "mm", "deg", "V" or ""
	What     string   `json:"what"`    // one sentence with names and numbers
	Fix      string   `json:"fix"`     // one sentence: a way out
	// At is where to look, mm in the case's frame; Placed says that it counts.
	At     [3]float64 `json:"-"`
	Placed bool       `json:"-"`
	// Move is the way out that Fix tells, in numbers, where it is to move a part;
	// nil where it is another.
	Move *Move `json:"move,omitempty"`
	// Least is the shortest move in any direction, where one is known and is
	// shorter than Move; else nil.
	Least *Move `json:"least,omitempty"`
}

// Move is a way out in numbers: shift a part. Fix rounds the same up to what a
// rule can be read to.
type Move struct {
	Part string     `json:"part"`
	By   mgl64.Vec3 `json:"by"` // mm, in the case's frame
	// Free says that the part then stands inside the case and in no other part.
	// Whether every run still finds a way is for a new solve to say.
	Free bool `json:"free"`
}
