package mend

import (
	"cmp"
	"math"
	"slices"

	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
)

// each makes each change a ladder of its own.
func each(list ...Change) (ladders [][]Change) {
	for _, c := range list {
		ladders = append(ladders, []Change{c})
	}
	return ladders
}

// runs are those the finding is about, and those in the way.
func (h *hunt) runs() (list []route.Run) {
	names := slices.Concat(h.finding.Runs, h.obstacle.Runs)
	for _, r := range h.plan.Runs {
		if slices.Contains(names, r.Name) {
			list = append(list, r)
		}
	}
	return list
}

// asked takes back what is asked of the runs: via points, fittings, a drawing.
func asked(h *hunt) (ladders [][]Change) {
	for _, r := range h.runs() {
		if r.Pick != "" {
			ladders = append(ladders, each(PickWay{r.Name, ""})...)
		}
		if len(r.Via) > 0 && r.Way != route.Drawn {
			ladders = append(ladders, each(DropVia{r.Name})...)
		}
		for end := range 2 {
			if *chainAt(&r, end) != nil {
				ladders = append(ladders, each(UseChain{Run: r.Name, End: end, On: *portAt(&r, end)})...)
			}
		}
		if bound(r) {
			ladders = append(ladders, each(HandBack{r.Name})...)
		}
	}
	return ladders
}

// bound reports whether more is asked of a run than to join its ports.
func bound(r route.Run) bool {
	free := r.Way == "" || r.Way == route.Auto
	return !free || len(r.Via) > 0 || r.Start != nil || r.End != nil || r.Pick != ""
}

// picks takes the other ways that are listed for the runs.
func picks(h *hunt) (ladders [][]Change) {
	for _, r := range h.runs() {
		for _, s := range h.sol.Runs {
			if s.Run.Name != r.Name || r.Way == route.Drawn {
				continue
			}
			for n, w := range s.Ways {
				if n != s.Chosen {
					ladders = append(ladders, each(PickWay{r.Name, w.Name})...)
				}
			}
		}
	}
	return ladders
}

// mostExtenders is how many extenders are tried on a port, the shortest first.
const mostExtenders = 4

// extended puts an extender under the socket, where no other fittings are asked for.
func extended(h *hunt) (ladders [][]Change) {
	for _, r := range h.runs() {
		for end := range 2 {
			port, socket, ok := h.socketAt(r, end)
			if !ok || len(*chainAt(&r, end)) > 1 {
				continue
			}
			var ladder []Change
			for _, f := range h.extenders(port.Thread, socket.Thread) {
				chain := route.Chain{{Fitting: f.Name}, {Fitting: socket.Name}}
				ladder = append(ladder, UseChain{r.Name, end, chain, port.Ref})
			}
			ladders = append(ladders, ladder)
		}
	}
	return ladders
}

// extenders lists the shortest extenders that go between two threads.
func (h *hunt) extenders(on, under string) (list []route.Fitting) {
	for _, f := range h.plan.AllFittings() {
		if f.Kind == route.Extender && route.SameThread(f.Thread, on) && route.SameThread(f.Thread, under) {
			list = append(list, f)
		}
	}
	slices.SortStableFunc(list, func(a, b route.Fitting) int { return cmp.Compare(a.Length, b.Length) })
	return list[:min(len(list), mostExtenders)]
}

// socketAt is the port at a run's end and the socket that goes on it.
func (h *hunt) socketAt(r route.Run, end int) (route.PlacedPort, route.Fitting, bool) {
	port, ok := h.plan.FindPort(*portAt(&r, end))
	tube, has := h.plan.TubeOf(r)
	if !ok || !has {
		return port, route.Fitting{}, false
	}
	socket, ok := h.plan.SocketFor(tube.OD, port.Thread)
	return port, socket, ok
}

// sockets puts other sockets that take the run's tube on its ports.
func sockets(h *hunt) (ladders [][]Change) {
	for _, r := range h.runs() {
		tube, _ := h.plan.TubeOf(r)
		for end := range 2 {
			port, ok := h.plan.FindPort(*portAt(&r, end))
			for _, f := range h.plan.AllFittings() {
				if ok && f.Kind == route.Socket && route.SameSize(f.OD, tube.OD) && route.SameThread(f.Thread, port.Thread) {
					ladders = append(ladders, each(UseChain{r.Name, end, route.Chain{{Fitting: f.Name}}, port.Ref})...)
				}
			}
		}
	}
	return ladders
}

// tighter bends the runs' tubes on smaller formers, in whole steps down to the
// least the tube takes.
func tighter(h *hunt) (ladders [][]Change) {
	var seen []string
	for _, r := range h.runs() {
		tube, ok := h.plan.TubeOf(r)
		if !ok || tube.LeastRadius <= 0 || slices.Contains(seen, tube.Name) {
			continue
		}
		seen = append(seen, tube.Name)
		var ladder []Change
		for n := math.Ceil(tube.Radius/h.Step) - 1; n*h.Step > tube.LeastRadius; n-- {
			ladder = append(ladder, Former{tube.Name, n * h.Step, tube.Radius})
		}
		if tube.Radius > tube.LeastRadius {
			ladder = append(ladder, Former{tube.Name, tube.LeastRadius, tube.Radius})
		}
		ladders = append(ladders, ladder)
	}
	return ladders
}

// mostTubes is how many other tubes are tried for a run, the likest first.
const mostTubes = 4

// tubes makes the runs of another tube: one that bends tighter, or where metals
// do not go together one of another material.
func tubes(h *hunt) (ladders [][]Change) {
	for _, r := range h.runs() {
		now, ok := h.plan.TubeOf(r)
		if !ok {
			continue
		}
		var list []route.Tube
		for _, t := range allTubes(h.plan) {
			if t.Name != now.Name && h.helps(now, t) {
				list = append(list, t)
			}
		}
		slices.SortStableFunc(list, func(a, b route.Tube) int {
			return cmp.Or(cmp.Compare(unlike(now, a), unlike(now, b)), cmp.Compare(math.Abs(a.OD-now.OD), math.Abs(b.OD-now.OD)))
		})
		for _, t := range list[:min(len(list), mostTubes)] {
			ladders = append(ladders, each(UseTube{r.Name, t.Name})...)
		}
	}
	return ladders
}

// helps reports whether a tube could be better against the finding.
func (h *hunt) helps(now, t route.Tube) bool {
	switch h.finding.Code {
	case check.MixedMetals:
		return t.Material != now.Material
	case check.MixedSizes:
		return !route.SameSize(t.OD, now.OD)
	}
	return t.Radius > 0 && (now.Radius == 0 || t.Radius < now.Radius)
}

// unlike is 1 for a tube of another material.
func unlike(a, b route.Tube) int {
	if a.Material != b.Material {
		return 1
	}
	return 0
}

// allTubes lists every tube the plan may use, its own first.
func allTubes(plan route.Plan) []route.Tube {
	all := slices.Clone(plan.Tubes)
	if plan.Catalogue == nil {
		return all
	}
	for _, t := range plan.Catalogue.Tubes {
		if !slices.ContainsFunc(plan.Tubes, func(own route.Tube) bool { return own.Name == t.Name }) {
			all = append(all, t)
		}
	}
	return all
}

// taps puts a tee or a valve under a socket of the run's loop, on the ports
// nearest in height to where the loop wants opening.
func taps(h *hunt) (ladders [][]Change) {
	type place struct {
		run route.Run
		end int
		off float64
	}
	var places []place
	for _, r := range h.plan.Runs {
		for end := range 2 {
			if port, socket, ok := h.socketAt(r, end); ok && socket.Name != "" && len(*chainAt(&r, end)) < 2 {
				places = append(places, place{r, end, math.Abs(port.Frame.At[1] - h.finding.At[1])})
			}
		}
	}
	slices.SortStableFunc(places, func(a, b place) int { return cmp.Compare(costKey(a.off), costKey(b.off)) })
	for _, p := range places[:min(len(places), mostTaps)] {
		port, socket, _ := h.socketAt(p.run, p.end)
		for _, f := range h.plan.AllFittings() {
			if (f.Kind == route.Tee || f.Kind == route.Valve) && route.SameThread(f.Thread, port.Thread) {
				chain := route.Chain{{Fitting: f.Name}, {Fitting: socket.Name}}
				ladders = append(ladders, each(UseChain{p.run.Name, p.end, chain, port.Ref})...)
			}
		}
	}
	return ladders
}

// mostTaps is how many ports a tee or a valve is tried on.
const mostTaps = 4

// solvedRun is a run's answer in the plan as it is.
func (h *hunt) solvedRun(name string) (find.Solved, bool) {
	i := slices.IndexFunc(h.sol.Runs, func(s find.Solved) bool { return s.Run.Name == name })
	if i < 0 {
		return find.Solved{}, false
	}
	return h.sol.Runs[i], true
}
