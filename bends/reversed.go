package bends

import "slices"

// Reversed is the same tube read from its other end. Lengths stay, marks are
// mirrored, and each roll goes to the bend that is now second of its two: the
// right-hand rule along the way back gives it the same sign, as a screw has the
// same hand from both of its ends.
func (f Formed) Reversed() Formed {
	f.Corners, f.Straights, f.Bends = slices.Clone(f.Corners), slices.Clone(f.Straights), slices.Clone(f.Bends)
	slices.Reverse(f.Corners)
	slices.Reverse(f.Straights)
	slices.Reverse(f.Bends)
	roll := 0.0
	for i := range f.Bends {
		b := &f.Bends[i]
		b.Start, b.Middle, b.End = f.Developed-b.End, f.Developed-b.Middle, f.Developed-b.Start
		b.Roll, roll = roll, b.Roll
	}
	return f
}
