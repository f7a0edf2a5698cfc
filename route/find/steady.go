package find

import (
	"slices"

	"tubewright/route"
)

// sameCorner is how far a corner may lie off and the tube still be the same, mm:
// far below what a bench can do.
const sameCorner = 0.01

// Steady gives a plan, solved before and after a change, in which the runs that
// the change does not touch keep the way they had: a run whose way is another
// now, while the one before is still among those found, picks that one. It names
// the runs that do. Runs of touched are free; so is one that already picks.
func Steady(plan route.Plan, was, now Solution, touched []string) (route.Plan, []string) {
	var kept []string
	plan = plan.Clone()
	for _, before := range was.Runs {
		name := before.Run.Name
		i := slices.IndexFunc(plan.Runs, func(r route.Run) bool { return r.Name == name })
		if i < 0 || slices.Contains(touched, name) || plan.Runs[i].Pick != "" || fixedPath(plan.Runs[i]) {
			continue
		}
		had, ok := before.Way()
		n := slices.IndexFunc(now.Runs, func(s Solved) bool { return s.Run.Name == name })
		if !ok || n < 0 {
			continue
		}
		has, some := now.Runs[n].Way()
		if some && alikeTubes(had, has) {
			continue
		}
		if k := slices.IndexFunc(now.Runs[n].Ways, func(w Way) bool { return alikeTubes(had, w) }); k >= 0 {
			plan.Runs[i].Pick = now.Runs[n].Ways[k].Name
			kept = append(kept, name)
		}
	}
	return plan, kept
}

// alikeTubes reports whether two ways are the same tube between the same fittings.
func alikeTubes(a, b Way) bool {
	if len(a.Formed.Corners) != len(b.Formed.Corners) || !sameChain(a.Start.Bodies, b.Start.Bodies) || !sameChain(a.End.Bodies, b.End.Bodies) {
		return false
	}
	for i, c := range a.Formed.Corners {
		if c.Sub(b.Formed.Corners[i]).Len() > sameCorner {
			return false
		}
	}
	return true
}
