package bends

import (
	"fmt"
	"math"
	"slices"
)

// TubeError says that a tube's number is no size.
type TubeError struct {
	Field string
	Value float64
}

func (e *TubeError) Error() string {
	return fmt.Sprintf("the tube's %s is %v: it must be a number from 0 to %g, and the bore less than the outside", e.Field, e.Value, mostSize)
}

// PathError says that a path has too few corners or a wrong count of radii.
type PathError struct{ Corners, Radii int }

func (e *PathError) Error() string {
	if e.Corners < 2 {
		return fmt.Sprintf("a path of %d corners joins nothing: give both ends", e.Corners)
	}
	return fmt.Sprintf("a path of %d corners has %d between its ends but %d radii: give one for each, or none at all",
		e.Corners, e.Corners-2, e.Radii)
}

// CornerError says that a corner has a coordinate that is no number.
type CornerError struct {
	Corner int // counts from 0 at the first stop
	Value  float64
}

func (e *CornerError) Error() string {
	return fmt.Sprintf("corner %d has a coordinate %v: it must be a number within %g", e.Corner+1, e.Value, mostSize)
}

// SameCornerError says that two corners in turn are one point.
type SameCornerError struct{ Corner int } // the first of the two, counts from 0

func (e *SameCornerError) Error() string {
	return fmt.Sprintf("corners %d and %d are the same point: remove one", e.Corner+1, e.Corner+2)
}

// RadiusError says that the radius asked for at a corner is no radius.
type RadiusError struct {
	Corner int // counts from 0 at the first stop
	Radius float64
}

func (e *RadiusError) Error() string {
	return fmt.Sprintf("corner %d asks for radius %v: it must be a number above 0, at most %g", e.Corner+1, e.Radius, mostSize)
}

// unusable lists the numbers nothing can be worked out from.
func unusable(t Tube, p Path) Faults {
	faults := t.faults()
	if len(p.Corners) < 2 || (p.Radii != nil && len(p.Radii) != len(p.Corners)-2) {
		faults = append(faults, &PathError{len(p.Corners), len(p.Radii)})
	}
	faults = append(faults, p.cornerFaults()...)
	for i, r := range p.Radii {
		if !usable(r) || r <= 0 {
			faults = append(faults, &RadiusError{i + 1, r})
		}
	}
	return faults
}

// faults lists the tube's numbers that are no sizes.
func (t Tube) faults() (faults Faults) {
	for _, f := range [...]TubeError{
		{"outside diameter", t.OD},
		{"bore", t.ID},
		{"radius", t.Radius},
		{"least radius", t.LeastRadius},
		{"straight between bends", t.StraightBetween},
		{"straight at an end", t.StraightEnd},
		{"springback in degrees", t.Springback.Degrees},
		{"springback in percent", t.Springback.Percent},
		{"trim", t.Trim},
	} {
		if !usable(f.Value) || f.Value < 0 {
			faults = append(faults, &TubeError{f.Field, f.Value})
		}
	}
	if t.ID > 0 && t.ID >= t.OD {
		faults = append(faults, &TubeError{"bore", t.ID})
	}
	return faults
}

// cornerFaults lists corners that are no points and neighbours that are one.
func (p Path) cornerFaults() (faults Faults) {
	for i, c := range p.Corners {
		if bad := slices.IndexFunc(c[:], func(v float64) bool { return !usable(v) }); bad >= 0 {
			faults = append(faults, &CornerError{i, c[bad]})
		} else if i > 0 && c.Sub(p.Corners[i-1]).Len() <= sameSpot {
			faults = append(faults, &SameCornerError{i - 1})
		}
	}
	return faults
}

// mostSize is the largest number taken for a size, mm: a kilometre. Far beyond
// it sums of squares overflow.
const mostSize = 1e6

// usable reports whether v is a number of a size that can be reckoned with.
func usable(v float64) bool { return math.Abs(v) <= mostSize }
