// Package route holds the plan as values: the case, the parts in it and their
// ports, the fittings, the runs asked for, and what the person weighs. It lays
// fittings on ports and says where everything stands in the case.
//
// Lengths are millimetres, angles degrees and volumes litres. Stand at the open
// side of the case: x runs right, y up, z toward you; the origin is the lower,
// left, far inner corner; right handed.
//
// A plan is a value. An edit makes a new plan (see [Plan.Clone]); nothing that
// solves, checks or draws a plan writes to it.
package route

import (
	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/bends/trial"
)

// Units is what a plan's file counts lengths in. Inside, all is millimetres.
type Units string

// The two units a file may use.
const (
	Millimetres Units = "mm"
	Inches      Units = "in"
)

// Inch is one inch in millimetres, exact by definition of the inch (1959).
const Inch = 25.4

// Factor is how many millimetres one of the units is.
func (u Units) Factor() float64 {
	if u == Inches {
		return Inch
	}
	return 1
}

// KnownFrom says who vouches for a number. A tube that rests on a number that
// is only Typical is a draft.
type KnownFrom string

// From the weakest to the strongest. The empty value counts as Typical.
const (
	Typical  KnownFrom = "typical"
	Drawing  KnownFrom = "drawing"
	Measured KnownFrom = "measured"
)

// Firm reports whether a tube may be cut on the number's word.
func (k KnownFrom) Firm() bool { return k == Drawing || k == Measured }

// Plan is one machine. Slices keep the order of the file.
type Plan struct {
	Name      string
	Units     Units      // of the file it came from and goes to
	Case      mgl64.Vec3 // the free space, mm
	Tube      string     // default tube of the runs
	Clear     float64    // least gap between a tube or collar and anything it does not join, mm
	Tubes     []Tube     // the plan's own, or changed catalogue entries (already merged)
	Fittings  []Fitting
	Parts     []Part
	Runs      []Run
	Weigh     Weigh
	Errors    Errors
	Stock     []Stock
	Offcuts   []Offcuts
	Saw       Saw
	KeepOver  float64 // an offcut shorter than this is waste, mm
	Spares    Spares
	Build     int // how many of this machine
	OnHand    []OnHand
	Pictures  []Picture
	Catalogue *Catalogue // never written to; nil is an empty one
}

// Catalogue is what every plan may name without describing it.
type Catalogue struct {
	Tubes    []Tube
	Fittings []Fitting
	Parts    []Part // At and Turn are zero
}

// Tube is a tube one can buy, with the former one bends it on.
type Tube struct {
	Name     string
	Material string
	bends.Tube
	KnownFrom KnownFrom
	TestBends []trial.Bend // what Radius and Springback were worked out from, as typed, lengths in mm; see [Tube.Tried]
}

// FittingKind says how a fitting moves a ray on.
type FittingKind string

// The kinds of fitting.
const (
	Socket   FittingKind = "socket"
	Extender FittingKind = "extender"
	Offset   FittingKind = "offset"
	Elbow    FittingKind = "elbow"
	Tee      FittingKind = "tee"
	Valve    FittingKind = "valve"
	Coupler  FittingKind = "coupler"
	Plug     FittingKind = "plug"
)

// Fitting is one kind of fitting one can buy. Which fields count hangs on Kind.
type Fitting struct {
	Name      string
	Kind      FittingKind
	Thread    string
	OD        float64    // socket, coupler: tube it takes, mm
	Stop      float64    // socket: from the port's face to where the tube's end rests when fully home, mm
	Insertion Insertion  // socket
	SeatGap   float64    // socket: left between the tube's end and the stop when cut to the aim, mm
	Collar    Collar     // socket, coupler: what stands round the tube, from the port's face outward
	Bore      float64    // mm; 0: not known
	Give      Give       // socket
	Length    float64    // extender, offset, tee, valve, coupler: along the way, mm
	Sideways  float64    // offset: how far the way moves aside, mm
	Turn      float64    // elbow: degrees
	Legs      [2]float64 // elbow: in and out, mm to the corner
	Rotary    bool       // offset, elbow: turns freely while fitted
	Rolls     []float64  // fixed offset or elbow: the rolls it can take, degrees; empty: 0 only
	Side      float64    // tee: from the way to the face of its side port, mm
	Body      float64    // outside diameter of the body, mm
	Price     float64    // 0: not known
	KnownFrom KnownFrom
}

// Insertion is how deep a socket takes its tube, mm: fully home and the least that is safe.
type Insertion struct{ Full, Least float64 }

// Play is how far the tube may stand back from the stop and still be safe, mm.
func (i Insertion) Play() float64 { return i.Full - i.Least }

// Collar is the ring around the tube at a socket, mm.
type Collar struct{ OD, Length float64 }

// Give is how far a tube may stand aside or askew in a socket.
type Give struct{ Sideways, Degrees float64 }

// Part is a thing in the case. A part with a Kind takes solids, ports,
// passages, metals and volume from the catalogue; what it lists itself goes
// first (a port of the same name replaces the catalogue's, a list of solids
// replaces the whole list).
type Part struct {
	Name      string
	Kind      string     // a catalogue part; empty: a part of the plan's own
	At        mgl64.Vec3 // where the part's own origin goes, mm
	Turn      mgl64.Vec3 // degrees about x, then y, then z (fixed axes)
	Stack     Stack      // a radiator with fans, in place of solids and ports
	Solids    []Solid
	Ports     []Port
	Passages  [][2]string // which ports the coolant links inside the part
	Metals    []string
	Volume    float64   // litres inside
	KnownFrom KnownFrom // of the place and of each port that says nothing itself
}

// Solid is a box or a cylinder in the part's own frame.
type Solid struct {
	Box      bool
	From, To mgl64.Vec3 // box: lower and upper corner; cylinder: ends of the axis
	Radius   float64    // cylinder
}

// Flow says which way the coolant goes through a port.
type Flow string

// The ways coolant may go through a port. The empty value counts as Any.
const (
	In  Flow = "in"
	Out Flow = "out"
	Any Flow = "any"
)

// Port is a threaded hole in a part.
type Port struct {
	Name      string
	At        mgl64.Vec3 // centre of its face, in the part's frame, mm
	Facing    mgl64.Vec3 // unit, out of the part
	Thread    string
	Flow      Flow
	KnownFrom KnownFrom
}

// PortRef names a port of a part.
type PortRef struct{ Part, Port string }

// String gives the name as plans write it: "pump.out".
func (r PortRef) String() string { return r.Part + "." + r.Port }

// WayKind says how a run may be made.
type WayKind string

// The ways a run may ask for. The empty value counts as Auto.
const (
	Auto     WayKind = "auto"
	Straight WayKind = "straight"
	Bent     WayKind = "bent"
	Drawn    WayKind = "drawn" // Via is the whole path between the chains' ends
)

// Run asks for a tube from port to port.
type Run struct {
	Name       string
	From, To   PortRef
	Tube       string // empty: the plan's
	Via        []mgl64.Vec3
	Start, End Chain // fittings from the port outward; nil: chosen for you
	Way        WayKind
	Pick       string    // name of the way to take when it is among those found; empty: the first
	Made       []Attempt // tries at making its tube, the first one first
}

// Chain is fittings on a port, from the port outward.
type Chain []Step

// Step is one fitting of a chain. Roll counts only for offsets and elbows.
type Step struct {
	Fitting string
	Roll    float64 // degrees about the way, from the frame's reference; see [Frame]
	Rolled  bool    // Roll is given or settled; false: free to choose
}

// Weigh is what a good run is to the person, in millimetres of tube. Tidy is what
// each untidy thing costs: a leg aslant, a bend in an odd plane, a tube almost in
// line with its neighbour. Miss is what a lost blank costs besides: a way that
// seats at the first try with a chance c costs Miss·(1/c − 1) more.
type Weigh struct{ Bend, OddBend, Millimetre, Fitting, Price, Tidy, Miss float64 }

// Errors is the person's own hand: one standard deviation of each. Facing is how
// far the facing of a port is off, about each of two axes.
type Errors struct{ Port, Cut, Turn, Roll, Facing float64 } // mm, mm, degrees, degrees, degrees

// Stock is a length one can buy.
type Stock struct {
	Tube          string
	Length, Price float64
	Most          int // 0: as many as you like
}

// Offcuts are lengths of a tube already on the shelf, mm.
type Offcuts struct {
	Tube    string
	Lengths []float64
}

// Saw is what cutting costs in length, mm: lost per cut, and added once per piece to square its ends.
type Saw struct{ Kerf, Square float64 }

// Spares is how many extra blanks of the longest bent and straight tube of each
// kind to cut: the counts stated, and where Chance is not 0 at least as many as
// make the chance, in percent, that all tubes of the kind get finished.
type Spares struct {
	Bent, Straight int
	Chance         float64 // percent; 0: only the counts
}

// OnHand counts an item already on the shelf.
type OnHand struct {
	Item  string
	Count int
}
