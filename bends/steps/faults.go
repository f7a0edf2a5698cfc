package steps

import "fmt"

// Why is what a collar has no room for.
type Why int

// What a collar may have no room for.
const (
	NoGrip  Why = iota // beside it, while its bend is made: more trim helps
	NoLeg              // to stand on its finished leg
	NoStart            // to go on over its end even while the tube is straight
)

// CollarError says that a collar that must be on before its bend has no room.
type CollarError struct {
	End        string // "A" or "B"
	Bend       int    // the end's bend, counting from 1 at end A
	Why        Why
	Have, Need float64 // of straight, mm
}

// Shortfall is how much straight is lacking, mm.
func (e *CollarError) Shortfall() float64 { return e.Need - e.Have }

func (e *CollarError) Error() string {
	switch e.Why {
	case NoLeg:
		return fmt.Sprintf("collar %s is %.1f mm long and its finished leg %.1f mm: %.1f mm short; make the leg longer",
			e.End, e.Need, e.Have, e.Shortfall())
	case NoStart:
		return fmt.Sprintf("collar %s has %.1f mm of straight to go on over, and takes %.1f mm with its insertion: %.1f mm short; make the tube longer",
			e.End, e.Have, e.Need, e.Shortfall())
	case NoGrip:
	}
	return fmt.Sprintf("collar %s must be on before bend %d, and beside it the end has %.1f mm where collar and grip need %.1f mm: "+
		"leave %.1f mm more on end %s and trim it off afterwards", e.End, e.Bend, e.Have, e.Need, e.Shortfall(), e.End)
}

// NoOrderError says that some bends leave each other no room, whichever of them
// is made last.
type NoOrderError struct {
	Bends      []int // that stand in each other's way, counting from 1 at end A
	Last       int   // the one of them that lacks least when made last
	Have, Need float64
}

// Shortfall is what the bend that lacks least still lacks, mm.
func (e *NoOrderError) Shortfall() float64 { return e.Need - e.Have }

func (e *NoOrderError) Error() string {
	return fmt.Sprintf("no order of the bends leaves the former room: of bends %s, bend %d lacks least when made last, "+
		"with %.1f mm of bare straight beside it where %.1f mm are needed: %.1f mm short; lengthen that straight or take a former that needs less",
		numbered(e.Bends), e.Last, e.Have, e.Need, e.Shortfall())
}

// numbered writes numbers as a list: "1, 2 and 4".
func numbered(list []int) (s string) {
	for i, n := range list {
		switch {
		case i == 0:
		case i == len(list)-1:
			s += " and "
		default:
			s += ", "
		}
		s += fmt.Sprint(n)
	}
	return s
}
