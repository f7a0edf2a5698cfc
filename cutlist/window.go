package cutlist

import (
	"fmt"
	"slices"

	"tubewright/route"
	"tubewright/route/check"
)

// missedWindows tells of tubes whose sockets leave no safe length to cut, where
// the checks of the plan have not done so already.
func missedWindows(plan route.Plan, l List) []check.Finding {
	var list []check.Finding
	for _, t := range l.Tubes {
		told := slices.ContainsFunc(l.Findings, func(f check.Finding) bool {
			return f.Code == check.WindowMissed && slices.Contains(f.Runs, t.Run)
		})
		if told {
			continue
		}
		if f, missed := missedWindow(plan, t); missed {
			list = append(list, f)
		}
	}
	return list
}

// missedWindow compares in hundredths: finer than any saw, coarser than rounding.
func missedWindow(plan route.Plan, t Tube) (check.Finding, bool) {
	text := plan.Units.TextUnit
	f := check.Finding{
		Code: check.WindowMissed, Severity: check.Error, Runs: []string{t.Run}, Parts: []string{}, Unit: "mm",
	}
	switch aim, shortest := hundredths(t.Cut.Aim), hundredths(t.Cut.Shortest); {
	case aim <= 0:
		f.Measure = t.Cut.Aim
		f.What = fmt.Sprintf("run %q leaves its tube a length of %s", t.Run, text(t.Cut.Aim))
		f.Fix = "Move the two ports apart, or join them with fittings alone."
	case shortest > aim:
		f.Measure = t.Cut.Aim - t.Cut.Shortest
		f.What = fmt.Sprintf("the tube of run %q aims at %s but must be at least %s to be held safely",
			t.Run, text(t.Cut.Aim), text(t.Cut.Shortest))
		f.Fix = "Lessen the seat gap of its sockets, or choose sockets that take the tube deeper."
	default:
		return check.Finding{}, false
	}
	return f, true
}
