package loop_test

import (
	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/route"
	"tubewright/route/find"
)

type vec = mgl64.Vec3

// part is a part with ports at these heights; "in" and "out" flow as they say,
// and every port is linked to the first.
func part(name string, y float64, ports ...string) route.Part {
	p := route.Part{Name: name, At: vec{0, y, 0}}
	for i, n := range ports {
		flow := route.Any
		switch n {
		case "in":
			flow = route.In
		case "out":
			flow = route.Out
		}
		p.Ports = append(p.Ports, route.Port{Name: n, At: vec{float64(i) * 40, 0, 0}, Facing: vec{0, 0, 1}, Flow: flow})
		if i > 0 {
			p.Passages = append(p.Passages, [2]string{ports[0], n})
		}
	}
	return p
}

// ref reads "pump.out".
func ref(s string) route.PortRef {
	for i := range s {
		if s[i] == '.' {
			return route.PortRef{Part: s[:i], Port: s[i+1:]}
		}
	}
	return route.PortRef{Part: s}
}

// join adds runs named a, b, c...: "pump.out", "block.in", ...
func join(p route.Plan, ends ...string) route.Plan {
	p.Tube = "t"
	p.Tubes = []route.Tube{{Name: "t", Material: "petg", Tube: bends.Tube{OD: 16, ID: 10}}}
	for i := 0; i < len(ends); i += 2 {
		p.Runs = append(p.Runs, route.Run{Name: string(rune('a' + len(p.Runs))), From: ref(ends[i]), To: ref(ends[i+1])})
	}
	return p
}

// ring is a pump, a block and a radiator in a closed loop.
func ring() route.Plan {
	return join(route.Plan{Parts: []route.Part{
		part("pump", 20, "in", "out", "fill"), part("block", 100, "in", "out"), part("rad", 200, "low", "high"),
	}}, "pump.out", "block.in", "block.out", "rad.low", "rad.high", "pump.in")
}

// solved gives a run a straight tube between two points.
func solved(p route.Plan, run string, corners ...vec) find.Solved {
	r, _ := p.FindRun(run)
	f := bends.Formed{Corners: corners, Straights: []float64{corners[1].Sub(corners[0]).Len()}}
	f.Developed = f.Straights[0]
	tube, _ := p.FindTube("t")
	return find.Solved{Run: r, Ways: []find.Way{{Run: run, Tube: tube, Formed: f}}}
}
