package bends

// faults lists what stands against forming, bends first.
func (f Formed) faults() (faults Faults) {
	for i, b := range f.Bends {
		if err := f.bendFault(i, b); err != nil {
			faults = append(faults, err)
		}
	}
	for j := range f.Straights {
		if err := f.straightFault(j); err != nil {
			faults = append(faults, err)
		}
	}
	return faults
}

func (f Formed) bendFault(i int, b Bend) error {
	switch {
	case f.Tube.Radius == 0:
		return &CannotBendError{i, b.Turn}
	case b.Turn > MostTurn:
		return &UTurnError{i, b.Turn}
	case b.Radius < f.Tube.leastRadius()-slack:
		return &TightRadiusError{i, b.Radius, f.Tube.leastRadius()}
	}
	return nil
}

// leastInside is the least radius of the inside of a bend, mm: at 0 the inside
// would be a point and its wall without bound. Real tubes are refused long before.
const leastInside = 0.01

// leastRadius is what the tube says, and in any case enough for the inside of
// the bend not to cross itself.
func (t Tube) leastRadius() float64 {
	if t.OD == 0 {
		return t.LeastRadius
	}
	return max(t.LeastRadius, t.OD/2+leastInside)
}

// straightFault judges one straight. Beside a bend that no corner can hold, or
// on a tube that cannot be bent at all, its length means nothing.
func (f Formed) straightFault(j int) error {
	if f.unbounded(j-1) || f.unbounded(j) {
		return nil
	}
	have, need := f.Straights[j], f.need(j)
	switch {
	case have < 0:
		return &OverlapError{j, len(f.Bends), f.legLength(j), f.setbacks(j), need}
	case have < need-slack:
		return &ShortStraightError{j, len(f.Bends), have, need}
	}
	return nil
}

// need is the least a straight must have.
func (f Formed) need(j int) float64 {
	if j == 0 || j == len(f.Bends) {
		return f.Tube.StraightEnd
	}
	return f.Tube.StraightBetween
}

// unbounded reports whether there is a bend i whose setback means nothing.
func (f Formed) unbounded(i int) bool {
	return i >= 0 && i < len(f.Bends) && (f.Tube.Radius == 0 || f.Bends[i].Turn > MostTurn)
}
