package check_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
)

type vec = mgl64.Vec3

// scene is a plan with the corners of its tubes worked out by hand.
type scene struct {
	plan    route.Plan
	corners [][]vec // of each run, from stop to stop
	problem []error // of each run, in place of a way
}

// sound is the plan format's worked example, twice, as a closed loop: from
// (100, 100, 50) facing +x to (250, 250, 50) facing −y by one bend, and back by
// the same at z 150. Stops 6 mm on, so D = 274.265 each. Nothing is wrong but
// the two spare ports, which drain and fill it.
func sound() *scene {
	s := &scene{plan: route.Defaults()}
	s.plan.Case, s.plan.Tube = vec{430, 300, 400}, "petg-16-12"
	s.plan.Tubes = []route.Tube{{Name: "petg-16-12", Material: "petg", Tube: bends.Tube{
		OD: 16, ID: 12, Radius: 32, LeastRadius: 28, StraightBetween: 20, StraightEnd: 26,
	}}}
	s.plan.Fittings = []route.Fitting{
		{
			Name: "socket-16", Kind: route.Socket, OD: 16, Thread: "G1/4", Stop: 6, Insertion: route.Insertion{Full: 12, Least: 9},
			SeatGap: 0.5, Collar: route.Collar{OD: 24, Length: 20}, Give: route.Give{Sideways: 0.3, Degrees: 1},
		},
		{Name: "extender-15", Kind: route.Extender, Thread: "G1/4", Length: 15, Body: 20},
	}
	s.add(route.Part{
		Name: "pump", Solids: box(vec{60, 80, 30}, vec{100, 120, 170}), Passages: [][2]string{{"in", "out"}, {"in", "drain"}},
		Ports: []route.Port{
			port("out", vec{100, 100, 50}, vec{1, 0, 0}, route.Out),
			port("in", vec{100, 100, 150}, vec{1, 0, 0}, route.In),
			port("drain", vec{80, 80, 100}, vec{0, -1, 0}, route.Any),
		},
	})
	s.add(route.Part{
		Name: "block", Solids: box(vec{230, 250, 30}, vec{270, 290, 170}), Passages: [][2]string{{"in", "out"}, {"in", "fill"}},
		Ports: []route.Port{
			port("in", vec{250, 250, 50}, vec{0, -1, 0}, route.In),
			port("out", vec{250, 250, 150}, vec{0, -1, 0}, route.Out),
			port("fill", vec{250, 290, 100}, vec{0, 1, 0}, route.Any),
		},
	})
	s.run("a", "pump.out", "block.in", vec{106, 100, 50}, vec{250, 100, 50}, vec{250, 244, 50})
	s.run("b", "pump.in", "block.out", vec{106, 100, 150}, vec{250, 100, 150}, vec{250, 244, 150})
	return s
}

func box(from, to vec) []route.Solid { return []route.Solid{{Box: true, From: from, To: to}} }

func port(name string, at, facing vec, flow route.Flow) route.Port {
	return route.Port{Name: name, At: at, Facing: facing, Thread: "G1/4", Flow: flow}
}

func ref(s string) route.PortRef {
	part, name, _ := strings.Cut(s, ".")
	return route.PortRef{Part: part, Port: name}
}

func (s *scene) add(p route.Part) { s.plan.Parts = append(s.plan.Parts, p) }

func (s *scene) run(name, from, to string, corners ...vec) {
	s.plan.Runs = append(s.plan.Runs, route.Run{
		Name: name, From: ref(from), To: ref(to),
		Start: route.Chain{{Fitting: "socket-16"}}, End: route.Chain{{Fitting: "socket-16"}},
	})
	s.corners = append(s.corners, corners)
	s.problem = append(s.problem, nil)
}

// part gives a part of the scene to change.
func (s *scene) part(name string) *route.Part {
	i := slices.IndexFunc(s.plan.Parts, func(p route.Part) bool { return p.Name == name })
	return &s.plan.Parts[i]
}

// findings lets the referee read the scene.
func (s *scene) findings(t testing.TB) []check.Finding {
	t.Helper()
	return check.Findings(s.plan, s.solution(t))
}

func (s *scene) solution(t testing.TB) (sol find.Solution) {
	t.Helper()
	for i, run := range s.plan.Runs {
		if s.problem[i] != nil {
			sol.Runs = append(sol.Runs, find.Solved{Run: run, Chosen: -1, Problem: s.problem[i]})
			continue
		}
		sol.Runs = append(sol.Runs, find.Solved{Run: run, Ways: []find.Way{s.way(t, run, s.corners[i])}})
	}
	return sol
}

func (s *scene) way(t testing.TB, run route.Run, corners []vec) find.Way {
	t.Helper()
	tube, _ := s.plan.TubeOf(run)
	soft := tube.Tube // forms whatever the referee is to judge
	soft.StraightEnd, soft.StraightBetween, soft.LeastRadius = 0, 0, 0
	formed, err := bends.Form(soft, bends.Path{Corners: corners})
	if err != nil {
		t.Fatal(err)
	}
	return find.Way{Run: run.Name, Tube: tube, Formed: formed, Start: s.lay(t, run.From, run.Start), End: s.lay(t, run.To, run.End)}
}

func (s *scene) lay(t testing.TB, at route.PortRef, chain route.Chain) route.Laid {
	t.Helper()
	p, ok := s.plan.FindPort(at)
	if !ok {
		t.Fatalf("no port %s", at)
	}
	laid, err := s.plan.Lay(p, chain)
	if err != nil {
		t.Fatal(err)
	}
	return laid
}

// told writes findings for a failure.
func told(list []check.Finding) string {
	var b strings.Builder
	for _, f := range list {
		fmt.Fprintf(&b, "\n\t%s %s %v %v %.4f %s: %s %s", f.Severity, f.Code, f.Runs, f.Parts, f.Measure, f.Unit, f.What, f.Fix)
	}
	return b.String()
}
