package check

import (
	"fmt"
	"slices"

	"tubewright/route"
)

// checkPorts tells of ports with two runs and of ports with none.
func (r *referee) checkPorts() {
	for i := range r.parts {
		for _, p := range r.parts[i].ports {
			switch on := r.runsOn(p.Ref); {
			case len(on) > 1:
				r.tellTwice(p, on)
			case len(on) == 0:
				r.tellOpen(p)
			}
		}
	}
}

// runsOn names the runs that end on a port; twice if both ends do.
func (r *referee) runsOn(ref route.PortRef) (on []string) {
	for _, run := range r.plan.Runs {
		if run.From == ref {
			on = append(on, run.Name)
		}
		if run.To == ref {
			on = append(on, run.Name)
		}
	}
	return on
}

func (r *referee) tellTwice(p route.PlacedPort, on []string) {
	what := fmt.Sprintf("Port %s is used by runs %s.", p.Ref, list(on))
	if on = slices.Compact(on); len(on) == 1 {
		what = fmt.Sprintf("Run %s begins and ends on port %s.", on[0], p.Ref)
	}
	fix := fmt.Sprintf("Give all but one of them another port; %s has none free.", p.Ref.Part)
	if free := r.freePorts(p.Ref.Part); len(free) > 0 {
		fix = fmt.Sprintf("Give all but one of them another port: %s.", alternatives(free))
	}
	r.tell(Finding{Code: PortTwice, Runs: on, Parts: []string{p.Ref.Part}, What: what, Fix: fix}.at(p.Frame.At))
}

func (r *referee) freePorts(part string) (free []string) {
	for i := range r.parts {
		for _, p := range r.parts[i].ports {
			if p.Ref.Part == part && len(r.runsOn(p.Ref)) == 0 {
				free = append(free, p.Ref.String())
			}
		}
	}
	return free
}

func alternatives(names []string) string {
	if n := len(names); n > 1 {
		return list(names[:n-1]) + " or " + names[n-1]
	}
	return names[0]
}

func (r *referee) tellOpen(p route.PlacedPort) {
	r.tell(Finding{
		Code: PortOpen, Parts: []string{p.Ref.Part},
		What: fmt.Sprintf("Port %s has no run.", p.Ref),
		Fix:  "Close it with the plug on the buying list, or join it with a run.",
	}.at(p.Frame.At))
}
