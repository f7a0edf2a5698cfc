package check

import (
	"fmt"
	"math"

	"tubewright/bends"
	"tubewright/bends/trial"
	"tubewright/route"
)

// squareTurn is the turn at which springback is compared, degrees.
const squareTurn = 90

// checkTrials tells of a tube in use whose own test bends do not bear out the
// radius or the springback it states. The stated ones are used.
func (r *referee) checkTrials() {
	var kinds []route.Tube
	for _, run := range r.plan.Runs {
		t, ok := r.plan.TubeOf(run)
		if !ok || len(t.TestBends) == 0 || has(kinds, t.Name) {
			continue
		}
		kinds = append(kinds, t)
		if f, err := t.Tried(r.plan.Errors); err == nil {
			r.checkTrial(t, f)
		}
	}
}

func has(kinds []route.Tube, name string) bool {
	for _, k := range kinds {
		if k.Name == name {
			return true
		}
	}
	return false
}

func (r *referee) checkTrial(t route.Tube, f trial.Fitted) {
	runs := r.runsOf(t.Name)
	if !f.Radius.Holds(t.Radius) {
		off := math.Abs(t.Radius - f.Radius.At)
		r.tell(Finding{
			Code: TrialDiffers, Runs: runs, Measure: off, Unit: "mm",
			What: fmt.Sprintf("Tube %s states a radius of %s; its test bends say %s, 95 times in 100 from %s to %s.",
				t.Name, r.length(t.Radius), r.length(f.Radius.At), r.length(f.Radius.Low), r.length(f.Radius.High)),
			Fix: fmt.Sprintf("Take the radius of %s from the test bends, or bend one more and measure again.", r.length(f.Radius.At)),
		})
	}
	stated, says := opening(t.Springback), f.Opens(squareTurn)
	if !says.Holds(stated) {
		r.tell(Finding{
			Code: TrialDiffers, Runs: runs, Measure: math.Abs(stated - says.At), Unit: "deg",
			What: fmt.Sprintf("Tube %s states that a bend of 90° opens by %s; its test bends say %s, 95 times in 100 from %s to %s.",
				t.Name, route.Degrees(stated), route.Degrees(says.At), route.Degrees(max(says.Low, 0)), route.Degrees(says.High)),
			Fix: "Take the springback from the test bends, or bend one more and measure again.",
		})
	}
}

func opening(s bends.Springback) float64 { return s.FormTo(squareTurn) - squareTurn }

// runsOf lists the runs made of a tube.
func (r *referee) runsOf(tube string) (list []string) {
	for _, run := range r.plan.Runs {
		if t, ok := r.plan.TubeOf(run); ok && t.Name == tube {
			list = append(list, run.Name)
		}
	}
	return list
}
