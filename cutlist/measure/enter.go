package measure

import (
	"fmt"
	"math"
	"slices"

	"tubewright/route"
)

// EntryError says what is wrong with a number as it was entered.
type EntryError struct {
	Thing string
	Key   Key
	What  string
}

func (e *EntryError) Error() string { return fmt.Sprintf("%s: %s: %s", e.Thing, e.Key, e.What) }

// Doubt is a number that is taken but looks odd: it is far from what the plan had.
type Doubt struct {
	Key      Key
	Had, Has float64
}

const (
	// farPart and farOff are how far a measured number may be from the typical
	// one before it is worth a second look: both a quarter of it, and 1.5 mm or degrees.
	farPart = 0.25
	farOff  = 1.5
)

// Enter takes measured numbers of a fitting or a tube into the plan. When all of
// its numbers are there it is known from: measured; else it keeps its word and
// missing names what is left. Ports are taken by package survey, which holds
// them against their part. Errors are of type *EntryError.
func Enter(plan route.Plan, t Thing, values map[Key]float64) (out route.Plan, doubts []Doubt, missing []Key, err error) {
	for key, v := range values {
		if !slices.ContainsFunc(t.Numbers, func(n Number) bool { return n.Key == key }) {
			return plan, nil, nil, &EntryError{t.Name, key, "it has no such number"}
		}
		if math.IsNaN(v) || v < 0 || v > mostValue {
			return plan, nil, nil, &EntryError{t.Name, key, fmt.Sprintf("%g cannot be", v)}
		}
	}
	for _, n := range t.Numbers {
		v, ok := values[n.Key]
		switch {
		case !ok:
			missing = append(missing, n.Key)
		case math.Abs(v-n.Value) > math.Max(farOff, farPart*n.Value):
			doubts = append(doubts, Doubt{n.Key, n.Value, v})
		}
	}
	out = plan.Clone()
	switch t.Of {
	case Fitting:
		err = enterFitting(&out, t.Name, values, len(missing) == 0)
	case Tube:
		err = enterTube(&out, t.Name, values, len(missing) == 0)
	case Port, Place:
		err = &EntryError{t.Name, "", "ports are measured in the case: take a survey"}
	}
	if err != nil {
		return plan, nil, nil, err
	}
	return out, doubts, missing, nil
}

// mostValue is the largest number of a fitting or a tube, mm: ten metres.
const mostValue = 10_000

func enterFitting(plan *route.Plan, name string, values map[Key]float64, all bool) error {
	f := plan.OwnFitting(name)
	if f == nil {
		return &EntryError{name, "", "the plan has no such fitting"}
	}
	fields := map[Key]*float64{
		Stop: &f.Stop, Full: &f.Insertion.Full, Least: &f.Insertion.Least, CollarOD: &f.Collar.OD, CollarLength: &f.Collar.Length,
		Length: &f.Length, BodyOD: &f.Body, Sideways: &f.Sideways, LegIn: &f.Legs[0], LegOut: &f.Legs[1], Turn: &f.Turn, SideLeg: &f.Side,
	}
	put(fields, values)
	if f.Kind == route.Socket && f.Insertion.Least > f.Insertion.Full {
		return &EntryError{name, Least, fmt.Sprintf("%g is more than the full insertion of %g", f.Insertion.Least, f.Insertion.Full)}
	}
	if all {
		f.KnownFrom = route.Measured
	}
	return nil
}

func enterTube(plan *route.Plan, name string, values map[Key]float64, all bool) error {
	t := plan.OwnTube(name)
	if t == nil {
		return &EntryError{name, "", "the plan has no such tube"}
	}
	put(map[Key]*float64{
		OD: &t.OD, ID: &t.ID, Radius: &t.Radius, SpringDeg: &t.Springback.Degrees, SpringPart: &t.Springback.Percent,
		Between: &t.StraightBetween, AtEnd: &t.StraightEnd, Trim: &t.Trim,
	}, values)
	if t.ID >= t.OD {
		return &EntryError{name, ID, fmt.Sprintf("%g is not less than the outside diameter of %g", t.ID, t.OD)}
	}
	if all {
		t.KnownFrom = route.Measured
	}
	return nil
}

func put(fields map[Key]*float64, values map[Key]float64) {
	for key, v := range values {
		*fields[key] = v
	}
}
