package insert

import (
	"fmt"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/route/check"
)

// Codes are the kinds of finding that a [Report] gives.
func Codes() []check.Code {
	return []check.Code{check.CannotBePutIn, check.InOrderOnly, check.ServiceBlocked}
}

// Findings are what an answer wants told beside the checks of package check.
func (r Report) Findings() (list []check.Finding) {
	tell := func(at mgl64.Vec3, f check.Finding) {
		f.Severity, f.Parts, f.At, f.Placed = check.SeverityOf(f.Code), []string{}, at, true
		list = append(list, f)
	}
	for _, a := range r.In {
		if a.Verdict == Impossible {
			tell(a.At, check.Finding{
				Code: check.CannotBePutIn, Runs: []string{a.Run}, Measure: -a.Short, Unit: "mm",
				What: fmt.Sprintf("The piece of run %s cannot be slid into place. %s", a.Run, a.Words),
				Fix:  "Lead the run another way, or move " + movable(a.Blocker) + ". Turning the piece on its way in was tried a little, bending it aside not at all.",
			})
		}
	}
	kept := -1 // the first run that others keep in
	for i, first := range r.First {
		if len(first) == 0 {
			continue
		}
		if kept < 0 {
			kept = i
		}
		tell(r.In[i].At, check.Finding{
			Code: check.ServiceBlocked, Runs: append([]string{r.In[i].Run}, first...),
			What: fmt.Sprintf("With all tubes in, no way was found to take out the piece of run %s: %s must come out first.", r.In[i].Run, route.And(first)),
			Fix:  "Know it before you fill: to change this piece the other comes out too. A part or a bend moved aside may free it.",
		})
	}
	if kept >= 0 {
		tell(r.In[kept].At, check.Finding{
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
