// Package made keeps what was made at the bench as facts of the plan: it
// records tries at a tube, takes the bar they were sawn from off the shelf and
// puts what is left back, and says how a tube that is there sits between its
// ports as they are now known.
//
// Lengths are millimetres and angles degrees, in the case's frame. Plans are
// values: nothing here writes to the plan it is given.
package made

import (
	"fmt"
	"math"
	"slices"

	"tubewright/route"
)

// sameBar is how far two lengths may differ and still be one bar, mm: finer
// than anybody measures a bar.
const sameBar = 0.05

// EntryError says what is wrong with a try as it was entered.
type EntryError struct {
	Run, What, Fix string
}

func (e *EntryError) Error() string { return fmt.Sprintf("run %q: %s", e.Run, e.What) }

// Record adds a try to a run. Where it names the bar it was sawn from, an
// offcut of that length is taken off the shelf, and what the saw leaves of the
// bar goes there when it is worth keeping. A blank that is not given is what
// the cut list asks for such a tube: the cut, a trim at each end of a bent one,
// and what squares the ends. Errors are of type *EntryError.
func Record(plan route.Plan, run string, try route.Attempt) (route.Plan, error) {
	i := slices.IndexFunc(plan.Runs, func(r route.Run) bool { return r.Name == run })
	if i < 0 {
		return plan, &EntryError{run, "there is no such run", "Name a run of the plan."}
	}
	tube, ok := plan.TubeOf(plan.Runs[i])
	if !ok {
		return plan, &EntryError{run, "it has no tube that is described", "Give the run a tube."}
	}
	if try.Blank == 0 && try.Cut > 0 {
		try.Blank = tube.Blank(try.Cut, plan.Saw.Square, len(try.Corners) > 2)
	}
	if err := sound(run, try); err != nil {
		return plan, err
	}
	try = written(try)
	if !try.Fits { // how it was to be made is no fact
		try.Corners, try.Start, try.End, try.Radius = nil, nil, nil, 0
	}
	plan = plan.Clone()
	plan.Runs[i].Made = append(plan.Runs[i].Made, try)
	if try.CutFrom > 0 {
		plan.Offcuts = resawn(plan, tube.Name, try)
	}
	return plan, nil
}

// written is a try as a file should hold it: lengths to a hundredth of a
// millimetre, corners to a ten-thousandth, so that they stay where they are.
func written(try route.Attempt) route.Attempt {
	try.Cut, try.Blank = math.Round(try.Cut*100)/100, math.Round(try.Blank*100)/100
	try.Corners = slices.Clone(try.Corners)
	for i := range try.Corners {
		for k, v := range try.Corners[i] {
			try.Corners[i][k] = math.Round(v*1e4)/1e4 + 0
		}
	}
	return try
}

// sound refuses what cannot be.
func sound(run string, try route.Attempt) error {
	for _, v := range []float64{try.Cut, try.Blank, try.CutFrom, try.Radius} {
		if v < 0 || math.IsNaN(v) || math.IsInf(v, 0) {
			return &EntryError{run, fmt.Sprintf("%g is no length", v), "Give lengths of 0 or more."}
		}
	}
	switch {
	case try.CutFrom > 0 && try.Blank > try.CutFrom+sameBar:
		return &EntryError{
			run, fmt.Sprintf("a blank of %.1f mm does not come out of a bar of %.1f mm", try.Blank, try.CutFrom),
			"Give the length the bar had before it was sawn.",
		}
	case try.Fits && (try.Cut == 0 || len(try.Corners) < 2 || len(try.Start) == 0 || len(try.End) == 0):
		return &EntryError{
			run, "a tube that fits needs its finished length and the way it was made",
			"Give the length, and solve the plan so that the way is known.",
		}
	}
	return nil
}

// Remnant is what a try left of its bar, mm; 0 when it names no bar. The saw
// takes its kerf unless the blank ends at the bar's end.
func Remnant(plan route.Plan, try route.Attempt) float64 {
	if try.CutFrom == 0 {
		return 0
	}
	return max(0, math.Round((try.CutFrom-try.Blank-plan.Saw.Kerf)*100)/100)
}

// resawn is the shelf after a try.
func resawn(plan route.Plan, tube string, try route.Attempt) []route.Offcuts {
	shelf := plan.Offcuts
	at := slices.IndexFunc(shelf, func(o route.Offcuts) bool { return o.Tube == tube })
	if at < 0 {
		shelf = append(shelf, route.Offcuts{Tube: tube})
		at = len(shelf) - 1
	}
	lengths := shelf[at].Lengths
	if n := slices.IndexFunc(lengths, func(l float64) bool { return math.Abs(l-try.CutFrom) <= sameBar }); n >= 0 {
		lengths = slices.Delete(lengths, n, n+1)
	}
	if left := Remnant(plan, try); left > 0 && left >= plan.KeepOver {
		lengths = append(lengths, left)
	}
	shelf[at].Lengths = lengths
	if len(lengths) == 0 {
		return slices.Delete(shelf, at, at+1)
	}
	return shelf
}

// Forget takes the last try of a run back, so that its tube is searched and cut
// again. The bar it was sawn from stays sawn: the shelf is not touched.
func Forget(plan route.Plan, run string) (route.Plan, error) {
	i := slices.IndexFunc(plan.Runs, func(r route.Run) bool { return r.Name == run })
	if i < 0 || len(plan.Runs[i].Made) == 0 {
		return plan, &EntryError{run, "there is no try to take back", "Name a run with a try."}
	}
	plan = plan.Clone()
	plan.Runs[i].Made = plan.Runs[i].Made[:len(plan.Runs[i].Made)-1]
	return plan, nil
}

// Fail says of the tube that holds a run that it fits no longer, and why: the
// try stays in the history, and the run is searched and cut again.
func Fail(plan route.Plan, run, wrong string) (route.Plan, error) {
	i := slices.IndexFunc(plan.Runs, func(r route.Run) bool { return r.Name == run })
	if i < 0 {
		return plan, &EntryError{run, "there is no such run", "Name a run of the plan."}
	}
	if _, ok := plan.Runs[i].AsMade(); !ok {
		return plan, &EntryError{run, "no tube of it is made", "Record a try first."}
	}
	plan = plan.Clone()
	last := &plan.Runs[i].Made[len(plan.Runs[i].Made)-1]
	last.Fits, last.Wrong = false, wrong
	return plan, nil
}

// Bar is a bar of stock that tries were sawn from.
type Bar struct {
	Tube   string
	Length float64
	Run    string // whose blank came out of it first
	Blank  float64
	Left   float64 // after that first cut
	Fits   bool    // what came of it
}

// Sawn lists the tries that name the bar they were sawn from, in the plan's
// order: tubes that fit and failed ones alike, for both used tube up.
func Sawn(plan route.Plan) (bars []Bar) {
	for _, r := range plan.Runs {
		tube, _ := plan.TubeOf(r)
		for _, a := range r.Made {
			if a.CutFrom > 0 {
				bars = append(bars, Bar{tube.Name, a.CutFrom, r.Name, a.Blank, Remnant(plan, a), a.Fits})
			}
		}
	}
	return bars
}

// Used counts the bars of stock of a length that tries were sawn from. A try
// sawn from the remnant of another was not sawn from stock: its bar has the
// remnant's length.
func Used(plan route.Plan, tube string, length float64) (n int) {
	for _, b := range Sawn(plan) {
		if b.Tube == tube && math.Abs(b.Length-length) <= sameBar {
			n++
		}
	}
	return n
}
