package check

import (
	"fmt"

	"tubewright/route"
)

// chainOn is a run's fittings on one of its ports: as solved, else as the plan
// gives them.
type chainOn struct {
	run      string
	tube     route.Tube
	port     route.PlacedPort
	fittings []route.Fitting
}

// chains lists the chains of all runs that have some.
func (r *referee) chains() (all []chainOn) {
	for _, run := range r.plan.Runs {
		tube, _ := r.plan.TubeOf(run)
		solved := r.laid(run.Name)
		for end, ref := range [2]route.PortRef{run.From, run.To} {
			port, ok := r.port(ref)
			if !ok {
				continue
			}
			c := chainOn{run: run.Name, tube: tube, port: port}
			if solved != nil {
				for _, b := range solved.ends[end].Bodies {
					c.fittings = append(c.fittings, b.Fitting)
				}
			} else {
				c.fittings = r.named([2]route.Chain{run.Start, run.End}[end])
			}
			all = append(all, c)
		}
	}
	return all
}

func (r *referee) laid(run string) *laidRun {
	for i := range r.runs {
		if r.runs[i].name == run {
			return &r.runs[i]
		}
	}
	return nil
}

func (r *referee) named(chain route.Chain) (list []route.Fitting) {
	for _, step := range chain {
		if f, ok := r.plan.FindFitting(step.Fitting); ok {
			list = append(list, f)
		}
	}
	return list
}

// checkSizes tells of sockets and couplers that do not take their run's tube.
func (r *referee) checkSizes() {
	for _, c := range r.chains() {
		for _, f := range c.fittings {
			holds := f.Kind == route.Socket || f.Kind == route.Coupler
			if holds && c.tube.OD > 0 && !route.SameSize(f.OD, c.tube.OD) {
				r.tellSize(c, f)
			}
		}
	}
}

func (r *referee) tellSize(c chainOn, f route.Fitting) {
	fix := fmt.Sprintf("Make the run of a tube of %s.", r.length(f.OD))
	if other, ok := r.plan.SocketFor(c.tube.OD, c.port.Thread); ok && f.Kind == route.Socket {
		fix = fmt.Sprintf("Put %s there, or make the run of a tube of %s.", other.Name, r.length(f.OD))
	}
	r.tell(Finding{
		Code: MixedSizes, Runs: []string{c.run}, Parts: []string{c.port.Ref.Part}, Measure: f.OD - c.tube.OD, Unit: "mm",
		What: fmt.Sprintf("The %s on %s takes tube of %s, and run %s is made of %s, %s.",
			f.Name, c.port.Ref, r.length(f.OD), c.run, c.tube.Name, r.length(c.tube.OD)),
		Fix: fix,
	}.at(c.port.Frame.At))
}

// checkThreads tells of fittings whose thread is not that of what they stand on.
func (r *referee) checkThreads() {
	for _, c := range r.chains() {
		thread, on := c.port.Thread, c.port.Ref.String()
		for _, f := range c.fittings {
			if !route.SameThread(f.Thread, thread) {
				r.tellThread(c, f, thread, on)
			}
			thread, on = f.Thread, "the "+f.Name
		}
	}
}

func (r *referee) tellThread(c chainOn, f route.Fitting, thread, on string) {
	r.tell(Finding{
		Code: MixedThreads, Runs: []string{c.run}, Parts: []string{c.port.Ref.Part},
		What: fmt.Sprintf("The %s of run %s has thread %s, and %s has %s.", f.Name, c.run, f.Thread, on, thread),
		Fix:  fmt.Sprintf("Take a fitting with thread %s, or correct the thread in the plan.", thread),
	}.at(c.port.Frame.At))
}
