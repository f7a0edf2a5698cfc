package insert_test

import (
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/route"
	"tubewright/route/find"
)

type vec = mgl64.Vec3

// scene is a plan whose tubes are drawn by hand.
type scene struct {
	plan    route.Plan
	corners [][]vec // inner corners of each run
}

// empty is a bench without a case: tube of 16 mm, sockets with a stop of 6, 12 mm
// deep, collars of 24 by 20 mm, seat gaps of 0.5.
func empty() *scene {
	s := &scene{plan: route.Defaults()}
	s.plan.Tube = "petg"
	s.plan.Tubes = []route.Tube{{Name: "petg", Material: "petg", Tube: bends.Tube{OD: 16, ID: 12, Radius: 32}}}
	s.plan.Fittings = []route.Fitting{{
		Name: "socket", Kind: route.Socket, OD: 16, Stop: 6, Insertion: route.Insertion{Full: 12, Least: 9}, SeatGap: 0.5,
		Collar: route.Collar{OD: 24, Length: 20}, Give: route.Give{Sideways: 0.3, Degrees: 1},
	}}
	return s
}

// cube is a part of 40 mm with a port in the middle of one face: at is the port.
func (s *scene) cube(name string, at, facing vec) *scene {
	middle := at.Sub(facing.Mul(20))
	return s.part(name, []route.Solid{boxed(middle.Sub(vec{20, 20, 20}), middle.Add(vec{20, 20, 20}))}, at, facing)
}

func (s *scene) part(name string, solids []route.Solid, at, facing vec) *scene {
	p := route.Part{Name: name, Solids: solids}
	if facing != (vec{}) {
		p.Ports = []route.Port{{Name: "p", At: at, Facing: facing}}
	}
	s.plan.Parts = append(s.plan.Parts, p)
	return s
}

func boxed(from, to vec) route.Solid { return route.Solid{Box: true, From: from, To: to} }

// run joins two cubes through corners.
func (s *scene) run(name, from, to string, corners ...vec) *scene {
	s.plan.Runs = append(s.plan.Runs, route.Run{
		Name: name, From: route.PortRef{Part: from, Port: "p"}, To: route.PortRef{Part: to, Port: "p"},
		Start: route.Chain{{Fitting: "socket"}}, End: route.Chain{{Fitting: "socket"}}, Way: route.Drawn,
	})
	s.corners = append(s.corners, corners)
	return s
}

func (s *scene) solve(t testing.TB) (route.Plan, find.Solution) {
	t.Helper()
	var sol find.Solution
	for i, r := range s.plan.Runs {
		w := find.Way{Run: r.Name, Tube: s.plan.Tubes[0], Start: s.lay(t, r.From, r.Start), End: s.lay(t, r.To, r.End)}
		f, err := bends.Form(w.Tube.Tube, bends.Path{Corners: append(append([]vec{w.Start.Stop.At}, s.corners[i]...), w.End.Stop.At)})
		if err != nil {
			t.Fatalf("%s: %v", r.Name, err)
		}
		w.Formed, w.Ends = f, bends.Ends{SeatGap: [2]float64{0.5, 0.5}, Play: [2]float64{3, 3}}
		sol.Runs = append(sol.Runs, find.Solved{Run: r, Ways: []find.Way{w}})
	}
	return s.plan, sol
}

func (s *scene) lay(t testing.TB, ref route.PortRef, chain route.Chain) route.Laid {
	t.Helper()
	port, ok := s.plan.FindPort(ref)
	if !ok {
		t.Fatalf("no port %s", ref)
	}
	laid, err := s.plan.Lay(port, chain)
	if err != nil {
		t.Fatal(err)
	}
	return laid
}

// facing are two cubes that face each other along x, this far apart, with a tube.
func facing(gap float64) *scene {
	return empty().cube("a", vec{0, 0, 0}, vec{1, 0, 0}).cube("b", vec{gap, 0, 0}, vec{-1, 0, 0}).run("r", "a", "b")
}

// elbow is a tube from a port facing +x round one corner to a port facing −y.
func elbow(x, y float64) *scene {
	return empty().cube("a", vec{0, 0, 0}, vec{1, 0, 0}).cube("b", vec{x, y, 0}, vec{0, -1, 0}).run("r", "a", "b", vec{x, 0, 0})
}

// loop is a tube between two ports that face the same way.
func loop(x, y float64) *scene {
	return empty().cube("a", vec{0, 0, 0}, vec{1, 0, 0}).cube("b", vec{0, y, 0}, vec{1, 0, 0}).run("r", "a", "b", vec{x, 0, 0}, vec{x, y, 0})
}

// offset is a tube between ports that face each other aside of each other.
func offset(x, y float64) *scene {
	return empty().cube("a", vec{0, 0, 0}, vec{1, 0, 0}).cube("b", vec{x, y, 0}, vec{-1, 0, 0}).run("r", "a", "b", vec{x / 2, 0, 0}, vec{x / 2, y, 0})
}

// holed adds a plate across x, thick, with a square hole about the x axis.
func (s *scene) holed(at, thick, hole float64) *scene {
	h, big := hole/2, 200.0
	return s.part("plate", []route.Solid{
		boxed(vec{at, h, -big}, vec{at + thick, big, big}), boxed(vec{at, -big, -big}, vec{at + thick, -h, big}),
		boxed(vec{at, -h, h}, vec{at + thick, h, big}), boxed(vec{at, -h, -big}, vec{at + thick, h, -h}),
	}, vec{}, vec{})
}

// slotted is the same with the hole open toward you.
func (s *scene) slotted(at, thick, hole float64) *scene {
	s.holed(at, thick, hole)
	p := &s.plan.Parts[len(s.plan.Parts)-1]
	p.Solids = append(p.Solids[:2:2], p.Solids[3])
	return s
}

// turned swaps the axes of the whole scene: x to y, y to z, z to x.
func (s *scene) turned() *scene {
	cyc := func(v vec) vec { return vec{v[2], v[0], v[1]} }
	for i := range s.plan.Parts {
		p := &s.plan.Parts[i]
		for k := range p.Solids {
			p.Solids[k].From, p.Solids[k].To = cyc(p.Solids[k].From), cyc(p.Solids[k].To)
		}
		for k := range p.Ports {
			p.Ports[k].At, p.Ports[k].Facing = cyc(p.Ports[k].At), cyc(p.Ports[k].Facing)
		}
	}
	for i := range s.corners {
		for k := range s.corners[i] {
			s.corners[i][k] = cyc(s.corners[i][k])
		}
	}
	return s
}

// beside adds a tube parallel to the x axis with its cubes, this far off in y and z.
func (s *scene) beside(gap, y, z float64) *scene {
	return s.cube("c", vec{0, y, z}, vec{1, 0, 0}).cube("d", vec{gap, y, z}, vec{-1, 0, 0}).run("s", "c", "d")
}

var told = strings.Contains
