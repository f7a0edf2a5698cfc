package check

import (
	"errors"
	"fmt"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/route"
	"tubewright/route/find"
)

// checkForming tells of runs without a way and of drawn paths the bends refuse.
func (r *referee) checkForming(sol find.Solution) {
	for _, s := range sol.Runs {
		if _, ok := s.Way(); ok {
			continue
		}
		if faults := bendFaults(s.Problem); len(faults) > 0 {
			for _, err := range faults {
				r.tellFault(s.Run.Name, "drawn path", s.Run.Via, err)
			}
			continue
		}
		r.tellNoWay(s)
	}
}

// reform forms a run's tube afresh from its corners and radii, and tells of
// what the bends refuse.
func (r *referee) reform(run *laidRun) {
	var radii []float64
	for _, b := range run.formed.Bends {
		radii = append(radii, b.Radius)
	}
	formed, err := bends.Form(run.tube.Tube, bends.Path{Corners: run.formed.Corners, Radii: radii})
	if err == nil {
		run.formed = formed
		return
	}
	inner := run.formed.Corners
	if n := len(inner); n > 2 {
		inner = inner[1 : n-1]
	}
	for _, fault := range errorsOf(err) {
		r.tellFault(run.name, "tube", inner, fault)
	}
}

// bendFaults lists the faults the bends find in a path; nil when an error says
// something else.
func bendFaults(err error) []error {
	var faults bends.Faults
	if errors.As(err, &faults) {
		return faults
	}
	return nil
}

func errorsOf(err error) []error {
	if faults := bendFaults(err); faults != nil {
		return faults
	}
	return []error{err}
}

// fault is what there is to say about a refusal of the bends.
type fault struct {
	what, fix string
	measure   float64
	unit      string
	corner    int // the corner to look at, from 0 after the first stop
}

// tellFault adds a finding for one refusal. corners are those between the stops.
func (r *referee) tellFault(run, path string, corners []mgl64.Vec3, err error) {
	x := r.explain(err)
	f := Finding{
		Code: CannotForm, Runs: []string{run}, Measure: x.measure, Unit: x.unit,
		What: fmt.Sprintf("The %s of run %s cannot be formed: %s.", path, run, x.what), Fix: x.fix,
	}
	if n := len(corners); n > 0 {
		f = f.at(corners[min(x.corner, n-1)])
	}
	r.tell(f)
}

// explain puts a refusal of the bends in the plan's units.
func (r *referee) explain(err error) fault {
	var (
		short   *bends.ShortStraightError
		overlap *bends.OverlapError
		tight   *bends.TightRadiusError
		uturn   *bends.UTurnError
		stiff   *bends.CannotBendError
	)
	switch {
	case errors.As(err, &short):
		return r.explainShort(short)
	case errors.As(err, &overlap):
		return fault{
			fmt.Sprintf("its bends take %s of straight %d, which is only %s from corner to corner", r.length(overlap.Setbacks), overlap.Straight+1, r.length(overlap.Leg)),
			fmt.Sprintf("Make that leg %s longer, or bend with a smaller radius.", r.enough(overlap.Shortfall()+overlap.Least)),
			-overlap.Shortfall(), "mm", max(0, overlap.Straight-1),
		}
	case errors.As(err, &tight):
		return fault{
			fmt.Sprintf("bend %d has a radius of %s, and the tube takes no less than %s", tight.Bend+1, r.length(tight.Radius), r.length(tight.Need)),
			fmt.Sprintf("Use a former of %s or more.", r.enough(tight.Need)), -tight.Shortfall(), "mm", tight.Bend,
		}
	case errors.As(err, &uturn):
		return fault{
			fmt.Sprintf("bend %d turns %s, more than the %s one corner can hold", uturn.Bend+1, route.Degrees(uturn.Turn), route.Degrees(bends.MostTurn)),
			"Make it two bends with a corner between.", uturn.Turn, "deg", uturn.Bend,
		}
	case errors.As(err, &stiff):
		return fault{
			fmt.Sprintf("bend %d turns %s, and this tube cannot be bent", stiff.Bend+1, route.Degrees(stiff.Turn)),
			"Keep the run straight, turn it with elbows, or take another tube.", stiff.Turn, "deg", stiff.Bend,
		}
	}
	return fault{what: err.Error(), fix: "Change the run's corners or its tube."}
}

func (r *referee) explainShort(e *bends.ShortStraightError) fault {
	why := "the former needs %s between two bends"
	if e.AtEnd() {
		why = "an end needs %s for insertion, collar and grip"
	}
	return fault{
		fmt.Sprintf("straight %d is %s long, and "+why, e.Straight+1, r.length(e.Have), r.length(e.Need)),
		fmt.Sprintf("Make it %s longer: move its corner out, or the port it starts from.", r.enough(e.Shortfall())),
		-e.Shortfall(), "mm", max(0, e.Straight-1),
	}
}

// tellNoWay adds the finding for a run that has no way.
func (r *referee) tellNoWay(s find.Solved) {
	f := Finding{
		Code: NoWay, Runs: []string{s.Run.Name}, Unit: "mm",
		What: fmt.Sprintf("Run %s has no way from %s to %s.", s.Run.Name, s.Run.From, s.Run.To),
		Fix:  "Move one of its parts, give it other fittings or a via point, or take a tube with a smaller radius.",
	}
	var none *find.NoWayError
	if errors.As(s.Problem, &none) {
		r.explainNoWay(&f, none)
	} else if s.Problem != nil {
		f.What = fmt.Sprintf("Run %s has no way: %s.", s.Run.Name, strings.TrimSuffix(s.Problem.Error(), "."))
	}
	if p, ok := r.port(s.Run.From); ok {
		f = f.at(p.Frame.At)
	}
	r.tell(f)
}

// explainNoWay adds what came nearest and what is in its way.
func (r *referee) explainNoWay(f *Finding, e *find.NoWayError) {
	if e.Fix != "" {
		f.Fix = e.Fix
	}
	if e.Cause != nil {
		f.What = fmt.Sprintf("Run %s has no way: %s.", e.Run, strings.TrimSuffix(e.Cause.Error(), "."))
		return
	}
	if e.Nearest == "" {
		return
	}
	f.Measure = -e.Short
	short := r.length(e.Short)
	why := "it runs into itself by " + short
	switch _, part := r.plan.FindPart(e.Way); {
	case e.Way == "":
		why = "a straight is " + short + " too short to form"
	case e.Way == "the case":
		why = "it passes a wall of the case by " + short
	case e.ByRun:
		why = fmt.Sprintf("run %s is %s too near", e.Way, short)
		f.Runs = append(f.Runs, e.Way)
	case part:
		why = fmt.Sprintf("part %s is %s too near", e.Way, short)
		f.Parts = append(f.Parts, e.Way)
	}
	f.What = fmt.Sprintf("Run %s has no way; the nearest, %s, fails because %s.", e.Run, e.Nearest, why)
}

// tellUnlaid adds the finding for a way whose fittings the plan cannot lay.
func (r *referee) tellUnlaid(run string, err error) {
	r.tell(Finding{
		Code: NoWay, Runs: []string{run},
		What: fmt.Sprintf("Run %s cannot be put together: %s.", run, err),
		Fix:  "Solve the plan again, or correct the run's fittings.",
	})
}
