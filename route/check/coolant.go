package check

import (
	"fmt"
	"slices"

	"tubewright/route"
	"tubewright/route/find"
	"tubewright/route/loop"
)

// checkCoolant tells what is wrong with each loop of the plan.
func (r *referee) checkCoolant(sol find.Solution) {
	for _, l := range loop.Of(r.plan) {
		r.checkOpen(l)
		r.checkFlow(l)
		r.checkMetals(l)
		if l.Closed || l.Pump != "" { // of loose runs that are to become a loop all this is too early
			low, high := loop.Levels(r.plan, sol, l)
			r.checkLevel(l, low, NoDrain, "lowest", "above", "drain")
			r.checkLevel(l, high, NoFill, "highest", "below", "fill")
		}
	}
}

func (r *referee) checkOpen(l loop.Loop) {
	if l.Closed {
		return
	}
	var ends, parts []string
	for _, e := range l.Ends {
		ends = append(ends, e.String())
		parts = append(parts, e.Part)
	}
	f := Finding{Code: LoopOpen, Runs: l.Loose, Parts: parts, What: fmt.Sprintf("The coolant of %s has no way round.", runs(l.Loose))}
	if len(ends) > 0 {
		f.What = fmt.Sprintf("The coolant of %s has no way round: it stops at %s.", runs(l.Loose), list(ends))
	}
	f.Fix = r.wayRound(l.Ends)
	if len(l.Ends) > 0 {
		if p, ok := r.port(l.Ends[0]); ok {
			f = f.at(p.Frame.At)
		}
	}
	r.tell(f)
}

// wayRound says how the coolant could go on from where it stops: a port that
// has a run already wants a passage through its part, others a run.
func (r *referee) wayRound(ends []route.PortRef) string {
	var shut []string
	for _, e := range ends {
		if len(r.runsOn(e)) > 0 && !slices.Contains(shut, e.Part) {
			shut = append(shut, e.Part)
		}
	}
	switch {
	case len(shut) > 0:
		return fmt.Sprintf("Say under passages of %s which ports the coolant links inside.", list(shut))
	case len(ends) == 2 && ends[0].Part != ends[1].Part:
		return fmt.Sprintf("Join %s to %s with a run.", ends[0], ends[1])
	}
	return "Lead the coolant on from there with a run, or give the part the passage it has inside."
}

func runs(names []string) string {
	if len(names) == 1 {
		return "run " + names[0]
	}
	return "runs " + list(names)
}

// checkFlow tells of runs between two outlets or two inlets, and of parts the
// coolant goes through backwards.
func (r *referee) checkFlow(l loop.Loop) {
	for _, name := range l.Against {
		run, _ := r.plan.FindRun(name)
		r.tellAgainst(run)
	}
	for _, part := range l.Turned {
		for _, s := range l.Order {
			if s.Part == part {
				r.tellTurned(l, s)
			}
		}
	}
}

func (r *referee) tellAgainst(run route.Run) {
	from, _ := r.port(run.From)
	both, wanted := "outlets", route.In
	if from.Flow == route.In {
		both, wanted = "inlets", route.Out
	}
	fix := fmt.Sprintf("Join %s to a port that is not one of the %s.", run.From, both)
	if other, ok := r.portWith(run.To.Part, wanted); ok {
		fix = fmt.Sprintf("Join %s to %s instead.", run.From, other)
		if on := r.runsOn(other); len(on) > 0 {
			fix = fmt.Sprintf("Swap it at %s with %s: lead this one to %s and that one to %s.", run.To.Part, runs(on), other, run.To)
		}
	}
	r.tell(Finding{
		Code: PumpBackwards, Runs: []string{run.Name}, Parts: []string{run.From.Part, run.To.Part},
		What: fmt.Sprintf("Run %s joins %s to %s: both are %s.", run.Name, run.From, run.To, both), Fix: fix,
	}.at(from.Frame.At))
}

// portWith gives a part's first port of a flow.
func (r *referee) portWith(part string, flow route.Flow) (route.PortRef, bool) {
	for i := range r.parts {
		for _, p := range r.parts[i].ports {
			if p.Ref.Part == part && p.Flow == flow {
				return p.Ref, true
			}
		}
	}
	return route.PortRef{}, false
}

func (r *referee) tellTurned(l loop.Loop, s loop.Stop) {
	in, out := route.PortRef{Part: s.Part, Port: s.In}, route.PortRef{Part: s.Part, Port: s.Out}
	f := Finding{
		Code: PumpBackwards, Runs: append(r.runsOn(in), r.runsOn(out)...), Parts: []string{s.Part},
		What: fmt.Sprintf("Going round from %s, the coolant enters %s at %s and leaves it at %s: the wrong way.", l.Order[0].Part, s.Part, in, out),
		Fix:  fmt.Sprintf("Swap the runs on %s and %s.", in, out),
	}
	if p, ok := r.port(in); ok {
		f = f.at(p.Frame.At)
	}
	r.tell(f)
}

// checkLevel tells of a loop that cannot be opened at its lowest or highest place.
func (r *referee) checkLevel(l loop.Loop, level loop.Level, code Code, place, way, does string) {
	if level.Served() {
		return
	}
	nearest, unit := "and it has no port, tee or valve to open", "" // and so nothing to measure to
	if level.Opening != "" {
		unit = "mm"
		nearest = fmt.Sprintf("and the nearest to open, %s, is %s %s", level.Opening, r.length(level.Off), way)
	}
	r.tell(Finding{
		Code: code, Runs: l.Runs, Measure: level.Off, Unit: unit,
		What: fmt.Sprintf("The %s place of the loop is on %s, %s up, %s.", place, level.Where, r.length(level.At[1]), nearest),
		Fix: fmt.Sprintf("Put a tee or a valve within %s of it, or lead the loop past a spare port there, to %s it.",
			r.length(loop.Reach), does),
	}.at(level.At))
}

func (r *referee) checkMetals(l loop.Loop) {
	clash, found := loop.Worst(r.plan, l)
	if !found {
		return
	}
	f := Finding{
		Code: MixedMetals, Measure: clash.Volts, Unit: "V",
		What: fmt.Sprintf("The loop joins %s (%s) and %s (%s), %.2f V apart by the anodic index; in the wet %.2f V is the most.",
			clash.Noble.Name, metalAt(clash.Noble), clash.Base.Name, metalAt(clash.Base), clash.Volts, loop.WetLimit),
		Fix: fmt.Sprintf("Replace what is of %s, which is eaten away, by one of copper, brass or nickel, or the other way about.", clash.Base.Name),
	}
	for _, m := range []loop.Metal{clash.Noble, clash.Base} {
		if m.Part != "" {
			f.Parts = append(f.Parts, m.Part)
		} else {
			f.Runs = append(f.Runs, m.Run)
		}
	}
	r.tell(f)
}

func metalAt(m loop.Metal) string {
	if m.Part != "" {
		return m.Part
	}
	return "the tube of run " + m.Run
}
