package find_test

import (
	"context"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/route/find"
)

// Plans that once were solved wrongly; the name says what went wrong.
func TestRefereeRows(t *testing.T) {
	port := func(name string, at, facing mgl64.Vec3) route.Part {
		return route.Part{Name: name, At: at, Ports: []route.Port{{Name: "p", Facing: facing, Thread: "G1/4"}}}
	}
	tests := []struct {
		name  string
		parts []route.Part
	}{
		{
			"an offset bend between ports that face away from each other had its second corner behind the stop",
			[]route.Part{port("a", mgl64.Vec3{150, 260, 150}, mgl64.Vec3{0, 1, 0}), port("b", mgl64.Vec3{220, 210, 150}, mgl64.Vec3{0, -1, 0})},
		},
	}
	for _, c := range tests {
		t.Run(c.name, func(t *testing.T) {
			plan := route.Defaults()
			plan.Case, plan.Tube = mgl64.Vec3{500, 500, 300}, refereeTube.Name
			plan.Tubes, plan.Fittings, plan.Parts = []route.Tube{refereeTube}, refereeFittings, c.parts
			plan.Runs = []route.Run{{
				Name: "one", From: route.PortRef{Part: c.parts[0].Name, Port: "p"}, To: route.PortRef{Part: c.parts[1].Name, Port: "p"},
			}}
			ways, err := find.Ways(context.Background(), plan, "one")
			if err != nil || len(ways) == 0 {
				t.Fatalf("%d ways, %v", len(ways), err)
			}
			for _, w := range ways {
				if faults := judge(plan, plan.Runs[0], w).faults; len(faults) > 0 {
					t.Errorf("%q: %d faults, first %s", w.Name, len(faults), faults[0])
				}
			}
		})
	}
}
