package find

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"tubewright/route"
)

// NoWayError says that a run cannot be made, and why.
type NoWayError struct {
	Run     string
	Tried   []string // names of the ways looked at, nearest first
	Nearest string   // the way that came nearest; "" when nothing could be tried
	Way     string   // what is in its way: a part, a run, "the case", "itself"; "" when it cannot be formed
	ByRun   bool     // Way is a run
	Short   float64  // mm missing
	Cause   error    // what kept the search from starting, when that is the reason
	Fix     string   // a way out, in the plan's units
	Units   route.Units
	Looked  int // states the searches for square routes looked at before they gave up

	hunt *hunt // to measure with; nil once told
	// alone says that other runs played no part: without them nothing else is found.
	alone bool
}

func (e *NoWayError) Error() string {
	if e.Cause != nil {
		return fmt.Sprintf("run %q: no way: %v. %s", e.Run, e.Cause, e.Fix)
	}
	if e.Nearest == "" {
		return fmt.Sprintf("run %q: no way from port to port. %s", e.Run, e.Fix)
	}
	return fmt.Sprintf("run %q: no way among %s; nearest was %s: %s. %s",
		e.Run, strings.Join(e.Tried, ", "), e.Nearest, e.lacking(), e.Fix)
}

// Unwrap gives the cause.
func (e *NoWayError) Unwrap() error { return e.Cause }

func (e *NoWayError) lacking() string {
	short := e.Units.TextUnit(e.Short)
	switch {
	case e.Way == "":
		return fmt.Sprintf("a straight is %s too short to form", short)
	case e.ByRun:
		return fmt.Sprintf("run %q is %s too near", e.Way, short)
	case e.Way == "the case":
		return fmt.Sprintf("it passes a wall of the case by %s", short)
	case e.Way == "itself":
		return fmt.Sprintf("it runs into itself by %s", short)
	}
	return fmt.Sprintf("part %q is %s too near", e.Way, short)
}

// ConflictError says that a run has ways clear of all parts, but none clear of
// another run. The best such way is kept, and the checks report what it hits.
type ConflictError struct {
	Run, With string
	Name      string  // of the way kept
	Short     float64 // mm missing
	Units     route.Units
}

func (e *ConflictError) Error() string {
	return fmt.Sprintf("run %q: every way comes too near to run %q; %q is kept and lacks %s there. Move a part by that much, give one of the two a via point, or choose another way for %q",
		e.Run, e.With, e.Name, e.Units.TextUnit(e.Short), e.With)
}

// byItself reports whether a search found nothing and would find nothing without the
// other runs.
func byItself(err error) bool {
	var none *NoWayError
	return errors.As(err, &none) && none.alone
}

// shortfaller is an error of package bends that says how much is missing.
type shortfaller interface {
	error
	Shortfall() float64
}

// shortfall is the most that a refusal of package bends lacks, mm; infinite
// when it is not a matter of length.
func shortfall(err error) float64 {
	var many interface{ Unwrap() []error }
	if !errors.As(err, &many) {
		return math.Inf(1)
	}
	worst := 0.0
	for _, one := range many.Unwrap() {
		var s shortfaller
		if !errors.As(one, &s) {
			return math.Inf(1)
		}
		worst = max(worst, s.Shortfall())
	}
	return worst
}

// noWay says that a hunt found nothing. What came nearest is measured when it is
// told: depths take long, and most hunts without a way are not the last word.
func (h *hunt) noWay() *NoWayError {
	return &NoWayError{Run: h.run.Name, Fix: h.dry(), Units: h.plan.Units, Looked: h.effort.spent, hunt: h, alone: !h.minded}
}

// told completes an error that is about to leave the package with what was
// tried and what came nearest. Other errors, and none, pass as they are.
func (t *table) told(err error) error {
	var e *NoWayError
	if errors.As(err, &e) && e.hunt != nil {
		e.hunt.halt = t.halt
		if e.hunt.measureAll(); t.halt.stopped() {
			return err
		}
		e.tell(e.hunt.missed)
		e.hunt = nil
	}
	return err
}

func (e *NoWayError) tell(all []missed) {
	sortMissed(all)
	for _, m := range all {
		e.Tried = append(e.Tried, m.name)
	}
	if len(all) == 0 || math.IsInf(all[0].hit.short, 1) {
		return
	}
	near := all[0]
	e.Nearest, e.Way, e.ByRun, e.Short = near.name, near.hit.what, near.hit.run, near.hit.short
	e.Fix = wayOut(near.hit, e.Units)
}

// mostMeasured is how many variants of a name are measured to find the nearest.
const mostMeasured = 4

// measureAll finds out what the cheapest ways of each name lack.
func (h *hunt) measureAll() {
	h.measuring = true
	for _, f := range h.families {
		for _, i := range f.ideas[:min(len(f.ideas), mostMeasured)] {
			_, at := h.try(i)
			if h.halt.halted() {
				return
			}
			if at != nil {
				h.note(f.name, *at)
			}
		}
	}
}

// dry is the advice when not one way could even be drawn.
func (h *hunt) dry() string {
	switch {
	case h.tube.Radius == 0:
		return "Move one of the two parts until the ports stand in line, or take a tube that can be bent."
	case h.run.Way == route.Straight:
		return "Move one of the two parts until the ports stand in line, or let the tube be bent."
	case h.run.Start != nil || h.run.End != nil:
		return "Leave out the prescribed fittings, or move one of the two parts."
	}
	return "Move one of the two parts, or take away what is asked of the run."
}

func wayOut(at hit, u route.Units) string {
	by := atLeast(at.short, u)
	switch {
	case at.what == "":
		return fmt.Sprintf("Move one of the two parts by at least %s, or use a tube with a smaller radius.", by)
	case at.what == "the case":
		return fmt.Sprintf("Move the ports away from the wall by at least %s.", by)
	case at.what == "itself":
		return fmt.Sprintf("Move the two ports apart by at least %s, or use a tube with a smaller radius.", by)
	case at.run:
		return fmt.Sprintf("Give run %s another way, or move a part by at least %s.", at.what, by)
	}
	return fmt.Sprintf("Move part %s, or a port, by at least %s.", at.what, by)
}

// atLeast writes a length in the units, rounded up to what they write.
func atLeast(mm float64, u route.Units) string {
	step := 0.1
	if u == route.Inches {
		step = route.Inch / 1000
	}
	return u.TextUnit(math.Ceil(mm/step-sameSpot) * step)
}
