package mend

import (
	"fmt"

	"tubewright/route"
)

// SwapPorts exchanges what ends on two ports: every run on the one goes to the
// other.
type SwapPorts struct{ A, B route.PortRef }

// Apply gives the plan with the ends exchanged. Fittings stay with their run.
func (s SwapPorts) Apply(plan route.Plan) (route.Plan, error) {
	for _, ref := range []route.PortRef{s.A, s.B} {
		if _, ok := plan.FindPort(ref); !ok {
			return route.Plan{}, &MissingError{"port", ref.String()}
		}
	}
	plan = plan.Clone()
	for i := range plan.Runs {
		for _, ref := range []*route.PortRef{&plan.Runs[i].From, &plan.Runs[i].To} {
			switch *ref {
			case s.A:
				*ref = s.B
			case s.B:
				*ref = s.A
			}
		}
	}
	return plan, nil
}

// Words is "Swap the runs on pump.in and pump.out.".
func (s SwapPorts) Words(route.Units) string {
	return fmt.Sprintf("Swap the runs on %s and %s.", s.A, s.B)
}

// Kind is "swap-ports".
func (SwapPorts) Kind() string { return "swap-ports" }

func (SwapPorts) work() float64 { return swapWork }

// UsePort lets a run end on another port.
type UsePort struct {
	Run  string
	End  int // From or To
	Port route.PortRef
}

// Apply gives the plan with the run's end moved.
func (u UsePort) Apply(plan route.Plan) (route.Plan, error) {
	if _, ok := plan.FindPort(u.Port); !ok {
		return route.Plan{}, &MissingError{"port", u.Port.String()}
	}
	return onRun(plan, u.Run, func(r *route.Run) { *portAt(r, u.End) = u.Port })
}

// Words is "Let run feed begin on pump.spare.".
func (u UsePort) Words(route.Units) string {
	verb := "begin"
	if u.End == To {
		verb = "end"
	}
	return fmt.Sprintf("Let run %s %s on %s.", u.Run, verb, u.Port)
}

// Kind is "use-port".
func (UsePort) Kind() string { return "use-port" }

func (UsePort) work() float64 { return portWork }

// AddRun joins two ports by a new run.
type AddRun struct {
	Name     string
	From, To route.PortRef
}

// Apply gives the plan with the run added at its end.
func (a AddRun) Apply(plan route.Plan) (route.Plan, error) {
	for _, ref := range []route.PortRef{a.From, a.To} {
		if _, ok := plan.FindPort(ref); !ok {
			return route.Plan{}, &MissingError{"port", ref.String()}
		}
	}
	plan = plan.Clone()
	plan.Runs = append(plan.Runs, route.Run{Name: a.Name, From: a.From, To: a.To})
	return plan, nil
}

// Words is "Join pump.out to block.in with a run.".
func (a AddRun) Words(route.Units) string {
	return fmt.Sprintf("Join %s to %s with a run.", a.From, a.To)
}

// Kind is "add-run".
func (AddRun) Kind() string { return "add-run" }

func (AddRun) work() float64 { return runWork }
