package insert

import (
	"fmt"
	"strings"

	"tubewright/route"
	"tubewright/route/check"
)

// Findings are what an answer wants told beside the checks of package check.
func (r Report) Findings() (list []check.Finding) {
	tell := func(f check.Finding) {
		f.Severity, f.Parts = check.SeverityOf(f.Code), []string{}
		list = append(list, f)
	}
	for _, a := range r.In {
		if a.Verdict == Impossible {
			tell(check.Finding{
				Code: check.CannotBePutIn, Runs: []string{a.Run}, Measure: -a.Short, Unit: "mm",
				What: fmt.Sprintf("The piece of run %s cannot be slid into place. %s", a.Run, a.Words),
				Fix:  "Lead the run another way, or move " + movable(a.Blocker) + ". Turning the piece on its way in was tried a little, bending it aside not at all.",
			})
		}
	}
	matters := false
	for i, first := range r.First {
		if len(first) == 0 {
			continue
		}
		matters = true
		tell(check.Finding{
			Code: check.ServiceBlocked, Runs: append([]string{r.In[i].Run}, first...),
			What: fmt.Sprintf("With all tubes in, no way was found to take out the piece of run %s: %s must come out first.", r.In[i].Run, route.And(first)),
			Fix:  "Know it before you fill: to change this piece the other comes out too. A part or a bend moved aside may free it.",
		})
	}
	if matters {
		tell(check.Finding{
			Code: check.InOrderOnly, Runs: r.Order,
			What: fmt.Sprintf("The tubes do not go in in every order; this one goes: %s.", strings.Join(r.Order, ", ")),
			Fix:  "Put them in in that order; the sheets say how.",
		})
	}
	return list
}

func movable(blocker string) string {
	if blocker == "the sockets" {
		return "one of its parts, so that its ports do not face each other"
	}
	return "what is in the way"
}
