package bends

import (
	"errors"
	"fmt"
	"math"
)

// Faults is everything that stands against a path, bends first and then
// straights, each in the order of the path. It unwraps to its elements.
type Faults []error

// Error writes one fault a line.
func (f Faults) Error() string { return errors.Join(f...).Error() }

// Unwrap gives the faults to errors.Is and errors.As.
func (f Faults) Unwrap() []error { return f }

// CannotBendError says that a tube that cannot be bent was asked to.
type CannotBendError struct {
	Bend int     // counts from 0
	Turn float64 // degrees
}

func (e *CannotBendError) Error() string {
	return fmt.Sprintf("bend %d turns %.1f degrees, but this tube cannot be bent: keep the run straight or turn it with fittings",
		e.Bend+1, e.Turn)
}

// TightRadiusError says that a bend is tighter than its tube can take.
type TightRadiusError struct {
	Bend         int     // counts from 0
	Radius, Need float64 // to the centreline, mm
}

// Shortfall is how much the radius lacks, mm.
func (e *TightRadiusError) Shortfall() float64 { return e.Need - e.Radius }

func (e *TightRadiusError) Error() string {
	return fmt.Sprintf("bend %d has radius %.2f mm, the tube needs %.2f mm: %s mm short; use a larger former",
		e.Bend+1, e.Radius, e.Need, lacking(e.Shortfall()))
}

// UTurnError says that a bend turns further than a corner can hold.
type UTurnError struct {
	Bend int     // counts from 0
	Turn float64 // degrees
}

func (e *UTurnError) Error() string {
	return fmt.Sprintf("bend %d turns %.1f degrees, more than one corner can hold (%d): make it two bends",
		e.Bend+1, e.Turn, MostTurn)
}

// OverlapError says that a leg is too short even for the bends at its ends.
type OverlapError struct {
	Straight int     // counts from 0 at the first stop
	Bends    int     // in the whole tube
	Leg      float64 // corner to corner, mm
	Setbacks float64 // what the bends at its ends take of it, mm
	Least    float64 // straight that must be left besides, mm
}

// Shortfall is by how much the bends overlap each other or the tube's end, mm.
func (e *OverlapError) Shortfall() float64 { return e.Setbacks - e.Leg }

func (e *OverlapError) Error() string {
	what := fmt.Sprintf("bends %d and %d overlap", e.Straight, e.Straight+1)
	switch e.Straight {
	case 0:
		what = "bend 1 reaches past the tube's first end"
	case e.Bends:
		what = fmt.Sprintf("bend %d reaches past the tube's last end", e.Bends)
	}
	return fmt.Sprintf("straight %d: %s by %s mm; make its leg %s mm longer, or bend with a smaller radius",
		e.Straight+1, what, lacking(e.Shortfall()), lacking(e.Shortfall()+e.Least))
}

// ShortStraightError says that a straight is shorter than the former needs
// between two bends, or than an end needs for insertion, collar and grip.
type ShortStraightError struct {
	Straight   int     // counts from 0 at the first stop
	Bends      int     // in the whole tube
	Have, Need float64 // mm
}

// Shortfall is how much the straight lacks, mm.
func (e *ShortStraightError) Shortfall() float64 { return e.Need - e.Have }

// AtEnd reports whether the straight holds an end of the tube.
func (e *ShortStraightError) AtEnd() bool { return e.Straight == 0 || e.Straight == e.Bends }

func (e *ShortStraightError) Error() string {
	why := "the former needs %.2f mm between two bends"
	if e.AtEnd() {
		why = "an end needs %.2f mm for insertion, collar and grip"
	}
	return fmt.Sprintf("straight %d is %.2f mm long, "+why+": %s mm short",
		e.Straight+1, e.Have, e.Need, lacking(e.Shortfall()))
}

// lacking writes a shortfall rounded up to a hundredth, so that adding what is
// written is enough.
func lacking(mm float64) string { return fmt.Sprintf("%.2f", math.Ceil(mm*100-slack)/100) }
