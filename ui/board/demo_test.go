package board

import (
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
)

// v3 is short for a point.
func v3(x, y, z float64) mgl64.Vec3 { return mgl64.Vec3{x, y, z} }

func block(x0, y0, z0, x1, y1, z1 float64) route.Solid {
	return route.Solid{Box: true, From: v3(x0, y0, z0), To: v3(x1, y1, z1)}
}

func round(x0, y0, z0, x1, y1, z1, r float64) route.Solid {
	return route.Solid{From: v3(x0, y0, z0), To: v3(x1, y1, z1), Radius: r}
}

func port(name string, at, facing mgl64.Vec3, flow route.Flow) route.Port {
	return route.Port{Name: name, At: at, Facing: facing, Thread: "G1/4", Flow: flow}
}

// demoPlan is an invented machine with all kinds of shapes in it.
func demoPlan() route.Plan {
	p := route.Defaults()
	p.Name, p.Case, p.Tube = "Invented bench machine", v3(430, 200, 400), "petg-16-12"
	p.Tubes = []route.Tube{{Name: "petg-16-12", Material: "petg", Tube: bends.Tube{
		OD: 16, ID: 12, Radius: 32, LeastRadius: 28, StraightBetween: 20, StraightEnd: 26,
	}}}
	p.Fittings = []route.Fitting{
		{Name: "socket-16", Kind: route.Socket, OD: 16, Stop: 6, Insertion: route.Insertion{Full: 12, Least: 9}, Collar: route.Collar{OD: 24, Length: 20}},
		{Name: "extender-15", Kind: route.Extender, Length: 15, Body: 20},
	}
	p.Parts = demoParts()
	return p
}

func demoPlanWithoutParts() route.Plan {
	p := demoPlan()
	p.Parts = nil
	return p
}

func demoParts() []route.Part {
	up, right, left, near := v3(0, 1, 0), v3(1, 0, 0), v3(-1, 0, 0), v3(0, 0, 1)
	return []route.Part{
		{Name: "board", At: v3(70, 6, 30), Solids: []route.Solid{block(0, 0, 0, 244, 2, 305), block(4, 2, 200, 20, 14, 300), block(0, 2, 10, 22, 34, 50)}},
		{
			Name: "processor", At: v3(170, 8, 110),
			Solids: []route.Solid{block(0, 0, 0, 70, 6, 70), block(8, 6, 8, 62, 26, 62)},
			Ports:  []route.Port{port("in", v3(20, 26, 35), up, route.In), port("out", v3(50, 26, 35), up, route.Out)},
		},
		{
			Name: "memory", At: v3(262, 8, 80),
			Solids: []route.Solid{block(0, 0, 0, 6, 42, 133), block(10, 0, 0, 16, 42, 133), block(20, 0, 0, 26, 42, 133), block(30, 0, 0, 36, 42, 133)},
		},
		{
			Name: "card", At: v3(60, 12, 240),
			Solids: []route.Solid{block(0, 0, 0, 267, 108, 2), block(10, 8, 2, 230, 100, 20), block(35, 100, 2, 100, 108, 22)},
			Ports:  []route.Port{port("in", v3(50, 108, 12), up, route.Any), port("out", v3(85, 108, 12), up, route.Any)},
		},
		{
			Name: "regulators", At: v3(95, 8, 60),
			Solids: []route.Solid{block(0, 0, 0, 40, 14, 104)},
			Ports:  []route.Port{port("in", v3(20, 14, 85), up, route.Any), port("out", v3(20, 14, 18), up, route.Any)},
		},
		{
			Name: "radiator", At: v3(6, 30, 60),
			Solids: []route.Solid{
				block(0, 0, 0, 27, 120, 277), block(27, 0, 37, 52, 120, 156), block(27, 0, 158, 52, 120, 277),
				round(52, 60, 96, 53, 60, 96, 54), round(53, 60, 96, 55, 60, 96, 20), round(52, 60, 217, 53, 60, 217, 54), round(53, 60, 217, 55, 60, 217, 20),
			},
			Ports: []route.Port{port("in", v3(27, 95, 18), right, route.Any), port("out", v3(27, 25, 18), right, route.Any), port("spare", v3(13, 120, 18), up, route.Any)},
		},
		{
			Name: "sensor", At: v3(180, 140, 78),
			Solids: []route.Solid{block(0, 0, 0, 60, 24, 24), round(30, 12, 24, 30, 12, 28, 10)},
			Ports:  []route.Port{port("in", v3(0, 12, 12), left, route.Any), port("out", v3(60, 12, 12), right, route.Any)},
		},
		{
			Name: "pump", At: v3(380, 10, 90),
			Solids: []route.Solid{block(-34, -10, -34, 34, 0, 34), round(0, 0, 0, 0, 160, 0, 30), round(0, 0, 0, 0, 36, 0, 33), round(0, 152, 0, 0, 160, 0, 32)},
			Ports:  []route.Port{port("out", v3(0, 20, 33), near, route.Out), port("in", v3(-30, 142, 0), left, route.In), port("fill", v3(0, 160, 0), up, route.Any)},
		},
		{Name: "supply", At: v3(290, 0, 268), Solids: []route.Solid{block(0, 0, 0, 140, 86, 125), round(70, 86, 62, 70, 87, 62, 55)}},
	}
}

// demoRun is a run by the inner corners of its tube.
type demoRun struct {
	name     string
	from, to route.PortRef
	start    route.Chain
	corners  []mgl64.Vec3
}

func demoRuns() []demoRun {
	ref := func(part, port string) route.PortRef { return route.PortRef{Part: part, Port: port} }
	socket := route.Chain{{Fitting: "socket-16"}}
	return []demoRun{
		{"pump to card", ref("pump", "out"), ref("card", "in"), route.Chain{{Fitting: "extender-15"}, {Fitting: "socket-16"}}, []mgl64.Vec3{v3(380, 30, 206), v3(380, 186, 206), v3(110, 186, 252)}},
		{"card to processor", ref("card", "out"), ref("processor", "in"), socket, []mgl64.Vec3{v3(145, 186, 252), v3(190, 186, 145)}},
		{"processor to regulators", ref("processor", "out"), ref("regulators", "in"), socket, []mgl64.Vec3{v3(220, 105, 145), v3(115, 105, 145)}},
		{"regulators to radiator", ref("regulators", "out"), ref("radiator", "in"), socket, []mgl64.Vec3{v3(115, 125, 78)}},
		{"radiator to sensor", ref("radiator", "out"), ref("sensor", "in"), socket, []mgl64.Vec3{v3(88, 55, 78), v3(125, 152, 90)}},
		{"sensor to pump", ref("sensor", "out"), ref("pump", "in"), socket, nil},
	}
}

// demo is the invented machine with its tubes and three findings.
func demo(t testing.TB) (route.Plan, cutlist.List, find.Solution) {
	t.Helper()
	plan := demoPlan()
	var sol find.Solution
	for _, r := range demoRuns() {
		run := route.Run{Name: r.name, From: r.from, To: r.to}
		plan.Runs = append(plan.Runs, run)
		sol.Runs = append(sol.Runs, find.Solved{Run: run, Ways: []find.Way{demoWay(t, plan, r)}})
	}
	list := cutlist.List{Plan: plan, Findings: []check.Finding{
		{Code: check.TubeHitsTube, Severity: check.Error, Runs: []string{"regulators to radiator", "radiator to sensor"}, Measure: -9.4, Unit: "mm", What: "two tubes run through each other", At: v3(108, 112, 83), Placed: true},
		{Code: check.TubeHitsPart, Severity: check.Warning, Runs: []string{"pump to card"}, Parts: []string{"supply"}, Measure: 2.5, Unit: "mm", What: "the tube comes near the supply", At: v3(380, 60, 214), Placed: true},
		{Code: check.PortOpen, Severity: check.Note, Parts: []string{"pump"}, What: "pump.fill is open", At: v3(380, 170, 90), Placed: true},
	}}
	return plan, list, sol
}

func demoWay(t testing.TB, plan route.Plan, r demoRun) find.Way {
	t.Helper()
	start := demoLaid(t, plan, r.from, r.start)
	end := demoLaid(t, plan, r.to, route.Chain{{Fitting: "socket-16"}})
	corners := append([]mgl64.Vec3{start.Stop.At}, r.corners...)
	tube := plan.Tubes[0]
	formed, err := bends.Form(tube.Tube, bends.Path{Corners: append(corners, end.Stop.At)})
	if err != nil {
		t.Fatalf("demo run %q: %v", r.name, err)
	}
	return find.Way{Run: r.name, Name: "as drawn", Tube: tube, Start: start, End: end, Formed: formed}
}

func demoLaid(t testing.TB, plan route.Plan, ref route.PortRef, chain route.Chain) route.Laid {
	t.Helper()
	port, ok := plan.FindPort(ref)
	if !ok {
		t.Fatalf("demo: no port %s", ref)
	}
	laid, err := plan.Lay(port, chain)
	if err != nil {
		t.Fatal(err)
	}
	return laid
}

func demoScene(t testing.TB) *Scene {
	t.Helper()
	s := NewScene(demo(t))
	return &s
}
