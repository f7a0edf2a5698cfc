package bends

import "github.com/go-gl/mathgl/mgl64"

// Form turns a path into straights and bends. Corners without a turn are left
// out first. The error is of type [Faults] and holds everything that stands
// against the path, or first against the numbers themselves:
//
//   - [TubeError], [PathError], [CornerError], [SameCornerError], [RadiusError]:
//     numbers that mean nothing; the geometry is not looked at then
//   - [CannotBendError], [TightRadiusError], [UTurnError]: of a bend
//   - [OverlapError], [ShortStraightError]: of a straight
//
// A tube without a bend needs StraightEnd once: both of its ends are held by
// the same straight.
func Form(t Tube, p Path) (Formed, error) {
	if faults := unusable(t, p); len(faults) > 0 {
		return Formed{}, faults
	}
	corners, radii := merged(t, p)
	f := lay(t, corners, radii)
	if faults := f.faults(); len(faults) > 0 {
		return Formed{}, faults
	}
	return f, nil
}

// lay works out straights and bends without asking whether they can be formed.
func lay(t Tube, corners []mgl64.Vec3, radii []float64) Formed {
	f := Formed{
		Tube: t, Corners: corners,
		Straights: make([]float64, len(corners)-1),
		Bends:     make([]Bend, len(radii)),
	}
	f.turn(radii)
	f.measure()
	return f
}

// turn fills in what each bend is of itself.
func (f *Formed) turn(radii []float64) {
	var before mgl64.Vec3 // direction of the leg before the last one
	in := f.leg(0)
	for i, r := range radii {
		out := f.leg(i + 1)
		turn := turnBetween(in, out)
		f.Bends[i] = Bend{Turn: turn, Radius: r, Setback: Setback(r, turn), Arc: ArcLength(r, turn)}
		if i > 0 {
			f.Bends[i].Roll = rollBetween(before, in, out)
		}
		before, in = in, out
	}
}

// measure fills in the straights and where along the tube each bend lies.
func (f *Formed) measure() {
	s := 0.0
	for j := range f.Straights {
		f.Straights[j] = f.straight(j)
		s += f.Straights[j]
		if j < len(f.Bends) {
			b := &f.Bends[j]
			b.Start, b.Middle, b.End = s, s+b.Arc/2, s+b.Arc
			s = b.End
		}
	}
	f.Developed = s
}

// leg is the unit direction from one corner to the next.
func (f Formed) leg(j int) mgl64.Vec3 {
	d := f.Corners[j+1].Sub(f.Corners[j])
	return d.Mul(1 / d.Len())
}

// straight is what the setbacks leave of a leg; noise below zero is none.
func (f Formed) straight(j int) float64 {
	left := f.legLength(j) - f.setbacks(j)
	if left < 0 && left >= -slack {
		return 0
	}
	return left
}

// legLength is from corner to corner, mm.
func (f Formed) legLength(j int) float64 { return f.Corners[j+1].Sub(f.Corners[j]).Len() }

// setbacks is what the bends at both ends of a leg take of it, mm.
func (f Formed) setbacks(j int) float64 {
	sum := 0.0
	if j > 0 {
		sum += f.Bends[j-1].Setback
	}
	if j < len(f.Bends) {
		sum += f.Bends[j].Setback
	}
	return sum
}
