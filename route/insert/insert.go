// Package insert asks whether each finished tube can be brought into place, by
// what slides, and in which order the tubes of a machine go in.
//
// A piece is the formed tube with its two loose collars. Each of its sockets
// either stays on its port, and then the tube's end slides into it by the full
// insertion along the port's way, or is unscrewed, pushed home on the tube's end
// and carried with it, to be screwed in when the piece is in place. Sockets are
// round, so what stands beside them does not hinder the turning; fittings below
// a socket stay where they are. The piece slides on straight lines, without
// turning; it may touch what it passes. It comes in through the case's open side.
//
// The search goes backward, from the finished place out of the case. A slide is
// clear only when that is certain: between two looks the piece moves no further
// than the gap last measured, or than the tangent of the gap allows, which is a
// convex function of the way gone for convex shapes (Rockafellar, Convex
// Analysis, 1970: from memory).
//
// "Impossible" is only said where a cage is proven: a box of slides around the
// finished place on whose whole surface the piece stands in something, so that no
// path of slides, however crooked, leads out; and where trials with the piece
// turned a little do not find room either. Else it is "not decided".
//
// Limits: the length of a socket's thread is not in a plan and is not counted
// unless [Options] says it; a hand that bends a long leg aside, parts loosened on
// their screws, and pieces turned on their way in are not looked at.
//
// Lengths are millimetres, angles degrees, in the case's frame.
package insert

import (
	"context"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/route/find"
)

// Verdict is what is known of putting a piece in.
type Verdict string

// The verdicts.
const (
	Possible   Verdict = "possible"
	Impossible Verdict = "impossible"
	Undecided  Verdict = "not decided"
)

// Options change what is asked. The zero value counts no thread and lets sockets
// be unscrewed.
type Options struct {
	Thread float64 // how far a socket must come out of its port to be off its thread, mm
	Stay   bool    // the sockets stay on their ports
}

// Slide is one straight move of the piece, mm.
type Slide struct {
	By   mgl64.Vec3
	Long float64
}

// Result is the answer for one run.
type Result struct {
	Run     string
	At      mgl64.Vec3 // the middle of its tube where it stands, mm
	Verdict Verdict
	Off     [2]bool // sockets at From and To that are unscrewed for it
	Slides  []Slide // in the order of putting in
	// Play is how far the tube can shift between its two stops when both ports
	// face each other, for the sockets' threads to start in, mm; InLine says so.
	Play   float64
	InLine bool
	// Blocker is what is in the way most: "part plate", "run a", "the sockets";
	// Short is by how much, mm. Of an impossible run.
	Blocker string
	Short   float64
	Words   string // the motion, or why not, in one or more sentences
}

const (
	// passing is how deep the piece may press on something on its way, mm: what
	// parts may overlap in the checks (their sizes are not known better).
	passing = 0.05
	// noise is rounding, mm.
	noise = 1e-9
)

// Run asks about one run of a solved plan when the runs in has says true for
// are in their places. ok is false when there is no such run with a way.
func Run(plan route.Plan, sol find.Solution, run string, has func(run string) bool, o Options) (r Result, ok bool) {
	m := newMachine(context.Background(), plan, sol, o)
	for i := range m.runs {
		if m.runs[i].name == run {
			return m.sure(i, func(k int) bool { return has(m.runs[k].name) }), true
		}
	}
	return Result{}, false
}
