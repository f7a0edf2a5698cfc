package session

import (
	"fmt"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// editRun changes one run of the plan.
func (s *Session) editRun(name, run string, change func(*route.Run)) error {
	i := slices.IndexFunc(s.history.plan().Runs, func(r route.Run) bool { return r.Name == run })
	if i < 0 {
		return &MissingError{"run", run}
	}
	return s.Edit(name, func(p route.Plan) route.Plan {
		change(&p.Runs[i])
		return p
	})
}

// ChooseWay keeps one of the ways found for a run, by its name.
func (s *Session) ChooseWay(run, way string) error {
	if r, ok := s.history.plan().FindRun(run); ok && r.Pick == way {
		return nil
	}
	return s.editRun(fmt.Sprintf("Choose %s for %s", way, run), run, func(r *route.Run) { r.Pick = way })
}

// FreeWay lets the best way be taken for a run again.
func (s *Session) FreeWay(run string) error {
	return s.editRun("Take the best way for "+run, run, func(r *route.Run) { r.Pick = "" })
}

// AddRun asks for a run between two ports and gives the name it got.
func (s *Session) AddRun(from, to route.PortRef) (string, error) {
	plan := s.history.plan()
	for _, ref := range []route.PortRef{from, to} {
		if _, ok := plan.FindPort(ref); !ok {
			return "", &MissingError{"port", ref.String()}
		}
	}
	name := freeName(from.Part+"-to-"+to.Part, func(n string) bool { _, taken := plan.FindRun(n); return taken })
	return name, s.Edit("Join "+from.String()+" to "+to.String(), func(p route.Plan) route.Plan {
		p.Runs = append(p.Runs, route.Run{Name: name, From: from, To: to})
		return p
	})
}

// RemoveRun takes a run out of the plan.
func (s *Session) RemoveRun(run string) error {
	if _, ok := s.history.plan().FindRun(run); !ok {
		return &MissingError{"run", run}
	}
	return s.Edit("Remove "+run, func(p route.Plan) route.Plan {
		p.Runs = slices.DeleteFunc(p.Runs, func(r route.Run) bool { return r.Name == run })
		return p
	})
}

// DrawRun gives a run a path of the person's own: the inner corners of its
// tube. It stays as drawn until HandBack.
func (s *Session) DrawRun(run string, via []mgl64.Vec3) error {
	corners := slices.Clone(via)
	for i := range corners {
		corners[i] = tidy(corners[i])
	}
	settled := s.settledChains(run)
	return s.editRun("Draw "+run, run, func(r *route.Run) {
		r.Via, r.Way = corners, route.Drawn
		if settled[0] != nil && r.Start == nil {
			r.Start = settled[0]
		}
		if settled[1] != nil && r.End == nil {
			r.End = settled[1]
		}
	})
}

// settledChains are the fittings a run stands on now, with their rolls: a
// drawn path goes from where these hold the tube.
func (s *Session) settledChains(run string) (chains [2]route.Chain) {
	for _, solved := range s.answer.solution.Runs {
		if w, ok := solved.Way(); ok && solved.Run.Name == run {
			chains = [2]route.Chain{chainOf(w.Start), chainOf(w.End)}
		}
	}
	return chains
}

func chainOf(laid route.Laid) route.Chain {
	chain := make(route.Chain, len(laid.Bodies))
	for i, b := range laid.Bodies {
		turns := b.Fitting.Kind == route.Offset || b.Fitting.Kind == route.Elbow
		chain[i] = route.Step{Fitting: b.Fitting.Name, Roll: b.Roll, Rolled: turns}
	}
	return chain
}

// HandBack lets the program find the way of a drawn run again, with fittings
// of its choice.
func (s *Session) HandBack(run string) error {
	return s.editRun("Hand back "+run, run, func(r *route.Run) {
		r.Via, r.Way, r.Start, r.End = nil, route.Auto, nil, nil
	})
}
