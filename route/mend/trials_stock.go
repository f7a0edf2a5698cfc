package mend

import (
	"math"

	"tubewright/route"
)

// stockStep is what lengths on sale are multiples of, mm and inches (common practice).
const (
	stockStep     = 100
	stockStepInch = 4 * route.Inch
)

// longer lists a bar that holds the blank of a run.
func longer(h *hunt) (ladders [][]Change) {
	for _, r := range h.runs() {
		tube, ok := h.plan.TubeOf(r)
		if !ok {
			continue
		}
		step := float64(stockStep)
		if h.plan.Units == route.Inches {
			step = stockStepInch
		}
		need := h.longestBar(tube.Name) + h.finding.Measure
		ladders = append(ladders, each(AddStock{tube.Name, math.Ceil(need/step) * step})...)
	}
	return ladders
}

// longestBar is the longest bar or offcut the plan lists of a tube, mm.
func (h *hunt) longestBar(tube string) (longest float64) {
	for _, s := range h.plan.Stock {
		if s.Tube == tube {
			longest = max(longest, s.Length)
		}
	}
	for _, o := range h.plan.Offcuts {
		for _, l := range o.Lengths {
			if o.Tube == tube {
				longest = max(longest, l)
			}
		}
	}
	return longest
}

// limits buys more bars than the plan allows, one by one up to one a piece uncut.
func limits(h *hunt) (ladders [][]Change) {
	for _, s := range h.plan.Stock {
		if s.Most == 0 || !h.usesTube(s.Tube) {
			continue
		}
		var ladder []Change
		for more := 1; more <= int(h.finding.Measure); more++ {
			ladder = append(ladder, LiftLimit{s.Tube, s.Length, s.Most + more, s.Most})
		}
		ladders = append(ladders, ladder)
	}
	return ladders
}

func (h *hunt) usesTube(name string) bool {
	for _, r := range h.runs() {
		if tube, ok := h.plan.TubeOf(r); ok && tube.Name == name {
			return true
		}
	}
	return false
}
