// Package board draws a plan and lets a person take hold of it: a renderer
// that needs no graphics card, and the widget around it.
//
// Lengths are millimetres in the case's frame (x right, y up, z toward whoever
// stands at the open side), angles degrees, and screen places pixels from the
// upper left corner, x right and y down. The package decides nothing about a
// plan: it shows what it is given and reports what the person wants.
package board

import (
	"fyne.io/fyne/v2"
	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// Look is one of the four ways to look at the case.
type Look int

// The looks, in the order of their keys 1 to 4.
const (
	Side      Look = iota // through the open side, from +z: x right, y up
	Above                 // from +y: x right, z down the screen
	Front                 // from +x: z left, y up
	Turntable             // turned by dragging, in perspective or parallel
)

// Looks lists the four in the order of their keys.
func Looks() []Look { return []Look{Side, Above, Front, Turntable} }

// String gives the look's name as the window writes it.
func (l Look) String() string {
	switch l {
	case Above:
		return "From above"
	case Front:
		return "From the front"
	case Turntable:
		return "Turntable"
	default:
		return "Through the side"
	}
}

// Flat reports whether the look shows one plane of the case without perspective.
func (l Look) Flat() bool { return l != Turntable }

// TargetKind says what sort of thing a [Target] is.
type TargetKind int

// The kinds of target.
const (
	Nothing TargetKind = iota
	OnPart
	OnRun
	OnPort
	OnFinding
)

// Whole is the Piece of a target that means a run as such, or its fittings.
const Whole = -1

// Target is a thing that can be pointed at and chosen. Targets compare with ==.
type Target struct {
	Kind    TargetKind
	Part    string        // OnPart
	Run     string        // OnRun
	Piece   int           // OnRun: 2i is straight i of the tube, 2i+1 bend i, [Whole] the run
	Port    route.PortRef // OnPort
	Finding int           // OnFinding: index into the list's findings
}

// PartTarget is the part called name.
func PartTarget(name string) Target { return Target{Kind: OnPart, Part: name} }

// RunTarget is the run called name as a whole.
func RunTarget(name string) Target { return Target{Kind: OnRun, Run: name, Piece: Whole} }

// PortTarget is a port.
func PortTarget(ref route.PortRef) Target { return Target{Kind: OnPort, Port: ref} }

// FindingTarget is the finding at index i of the list's findings.
func FindingTarget(i int) Target { return Target{Kind: OnFinding, Finding: i} }

// Same reports whether two targets are one thing when single pieces of a tube
// do not matter.
func (t Target) Same(o Target) bool {
	if t.Kind == OnRun && o.Kind == OnRun {
		return t.Run == o.Run
	}
	return t == o
}

// Quality says how much time a picture may take.
type Quality int

// The qualities of a picture.
const (
	Quick Quality = iota // for every frame while something moves
	Fine                 // supersampled, for a picture that stands still
)

// Callbacks are what the board reports. Each may be nil. All are called on the
// UI goroutine, at most once per frame while something is dragged.
type Callbacks struct {
	// OnSelect tells what was clicked; Nothing deselects.
	OnSelect func(Target)
	// OnMove tells how far a part has been dragged since the drag began. done
	// ends the drag; by is then final, and zero when the person gave it up.
	OnMove func(part string, by mgl64.Vec3, done bool)
	// OnNudge tells a step of the arrow keys.
	OnNudge func(part string, by mgl64.Vec3)
	// OnTurn asks to turn a part about a unit axis of the case.
	OnTurn func(part string, axis mgl64.Vec3, degrees float64)
	// OnHover tells what is under the pointer in words; "" when nothing is.
	OnHover func(text string)
	// OnLook tells that another look became the large one.
	OnLook func(Look)
	// OnJoin asks for a run between two ports after a drag from one to the other.
	OnJoin func(from, to route.PortRef)
	// CanJoin gives the reason why a port cannot be joined to another; "" when
	// it can. Nil: the board's own rule (see [Scene.WhyNot]).
	CanJoin func(from, to route.PortRef) string
	// OnPath tells the inner corners a run has after a straight or a corner of
	// it was dragged, or a corner added by a double click or taken away by
	// Delete. done ends the drag; via is nil when the person gave it up.
	OnPath func(run string, via []mgl64.Vec3, done bool)
	// OnUnder tells how far a picture has been dragged since the drag began, along
	// the look's two axes, mm. done ends the drag; by is then final.
	OnUnder func(index int, by [2]float64, done bool)
	// OnMeasure tells in words how to use the measuring tool, or what to point at,
	// when it is taken in hand, and each measure taken; "" when it is put away.
	OnMeasure func(text string)
	// OnDelete tells that Delete was pressed with something chosen.
	OnDelete func(Target)
	// OnKey and OnRune get the keys and letters that mean nothing to the board.
	OnKey  func(*fyne.KeyEvent)
	OnRune func(rune)
	// OnMenu asks for a menu on the right mouse button, at a place on the canvas.
	OnMenu func(at Target, x, y float32)
}
