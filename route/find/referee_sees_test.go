package find_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/route"
	"tubewright/route/find"
)

// A referee that sees nothing would pass everything: each row spoils a way that
// has no fault and names what must be seen.
func TestRefereeSees(t *testing.T) {
	block := func(at mgl64.Vec3) route.Part {
		half := mgl64.Vec3{10, 10, 10}
		return route.Part{Name: "block", At: at, Solids: []route.Solid{{Box: true, From: half.Mul(-1), To: half}}}
	}
	tests := []struct {
		name  string
		spoil func(*route.Plan, *find.Way)
		want  string // "" for no fault
	}{
		{"nothing", func(*route.Plan, *find.Way) {}, ""},
		{"a length", func(_ *route.Plan, w *find.Way) { w.Formed.Developed += 0.02 }, "walked"},
		{"a radius", func(_ *route.Plan, w *find.Way) { w.Formed.Bends[0].Radius = 27.9 }, "has a radius of 27.9"},
		{"an end", func(_ *route.Plan, w *find.Way) { w.Formed.Corners[0][2] += 0.001 }, "misses the stop at its start"},
		{"a corner", func(_ *route.Plan, w *find.Way) { w.Formed.Corners[1][2] += 0.001 }, "askew"},
		{"a long radius", func(_ *route.Plan, w *find.Way) { w.Formed.Bends[0].Radius = 119 }, "straight 1 is 25.0"},
		{"too much give", func(_ *route.Plan, w *find.Way) { w.Miss.Degrees = 1.1 }, "asks its sockets to give"},
		{"a part in the tube", func(p *route.Plan, _ *find.Way) { p.Parts = append(p.Parts, block(mgl64.Vec3{250, 180, 50})) }, "from block, needs 4"},
		{"a part 4 from the tube", func(p *route.Plan, _ *find.Way) { p.Parts = append(p.Parts, block(mgl64.Vec3{272, 180, 50})) }, ""},
		{"a part 3.9 from the tube", func(p *route.Plan, _ *find.Way) {
			p.Parts = append(p.Parts, block(mgl64.Vec3{271.9, 180, 50}))
		}, "the tube stands 3.9000 mm from block"},
		{"a part 3.9 from a collar", func(p *route.Plan, _ *find.Way) {
			p.Parts = append(p.Parts, block(mgl64.Vec3{110, 125.9, 50}))
		}, "fitting 1 on a stands 3.9"},
		{"a drum in the bend", func(p *route.Plan, _ *find.Way) {
			p.Parts = append(p.Parts, route.Part{Name: "drum", At: mgl64.Vec3{262, 88, 0}, Solids: []route.Solid{{To: mgl64.Vec3{0, 0, 90}, Radius: 20}}})
		}, "from drum"},
		{"its own part in the way", func(p *route.Plan, _ *find.Way) {
			p.Parts[0].Solids = append(p.Parts[0].Solids, route.Solid{Box: true, From: mgl64.Vec3{40, -50, -5}, To: mgl64.Vec3{60, -7.5, 5}})
		}, "the tube stands -0.5000 mm from a, needs 0"},
		{"its own part along the collar", func(p *route.Plan, _ *find.Way) {
			p.Parts[0].Solids = append(p.Parts[0].Solids, route.Solid{Box: true, From: mgl64.Vec3{0, -50, -5}, To: mgl64.Vec3{11.9, 0, 5}})
		}, ""},
		{"a low case", func(p *route.Plan, _ *find.Way) { p.Case[0] = 257.9 }, "from the case"},
	}
	for _, c := range tests {
		t.Run(c.name, func(t *testing.T) {
			plan, way := workedWay(t)
			c.spoil(&plan, &way)
			faults := judge(plan, plan.Runs[0], way).faults
			if !seen(faults, c.want) {
				t.Errorf("the referee sees %d faults %q, want %q", len(faults), faults[:min(2, len(faults))], c.want)
			}
		})
	}
}

func seen(faults []string, want string) bool {
	if want == "" {
		return len(faults) == 0
	}
	return slices.ContainsFunc(faults, func(f string) bool { return strings.Contains(f, want) })
}

// workedWay is the plan format's worked example with its one bend.
func workedWay(t *testing.T) (route.Plan, find.Way) {
	t.Helper()
	plan := route.Defaults()
	plan.Case, plan.Tube = mgl64.Vec3{400, 400, 100}, refereeTube.Name
	plan.Tubes, plan.Fittings = []route.Tube{refereeTube}, refereeFittings
	plan.Parts = []route.Part{
		{Name: "a", At: mgl64.Vec3{100, 100, 50}, Ports: []route.Port{{Name: "out", Facing: mgl64.Vec3{1, 0, 0}}}},
		{Name: "b", At: mgl64.Vec3{250, 250, 50}, Ports: []route.Port{{Name: "in", Facing: mgl64.Vec3{0, -1, 0}}}},
	}
	plan.Runs = []route.Run{{Name: "one", From: route.PortRef{Part: "a", Port: "out"}, To: route.PortRef{Part: "b", Port: "in"}}}
	way := find.Way{Run: "one", Name: "one bend", Tube: refereeTube}
	way.Start, way.End = layOn(t, plan, plan.Runs[0].From), layOn(t, plan, plan.Runs[0].To)
	formed, err := bends.Form(refereeTube.Tube, bends.Path{
		Corners: []mgl64.Vec3{{106, 100, 50}, {250, 100, 50}, {250, 244, 50}},
	})
	if err != nil {
		t.Fatal(err)
	}
	way.Formed = formed
	return plan, way
}

func layOn(t *testing.T, plan route.Plan, ref route.PortRef) route.Laid {
	t.Helper()
	port, ok := plan.FindPort(ref)
	if !ok {
		t.Fatalf("no port %s", ref)
	}
	laid, err := plan.Lay(port, route.Chain{{Fitting: "socket"}})
	if err != nil {
		t.Fatal(err)
	}
	return laid
}

// Two runs that cross 3.9 mm apart, and 4 mm apart.
func TestRefereeSeesTwoRuns(t *testing.T) {
	for _, c := range []struct {
		up   float64
		want string
	}{{20, ""}, {19.9, "the tube stands 3.9"}} {
		plan, way := workedWay(t)
		other := judge(plan, plan.Runs[0], way)
		other.run.Name = "two"
		for i := range other.path {
			other.path[i].at = other.path[i].at.Add(mgl64.Vec3{0, 0, c.up})
		}
		other.start, other.end = chainLaid{}, chainLaid{}
		j := judge(plan, plan.Runs[0], way)
		j.start, j.end = chainLaid{}, chainLaid{}
		j.against(other)
		if !seen(j.faults, c.want) {
			t.Errorf("%v apart: the referee sees %d faults, want %q", c.up, len(j.faults), c.want)
		}
	}
}
