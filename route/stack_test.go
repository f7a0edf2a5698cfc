package route_test

import (
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

var stackTests = []struct {
	name  string
	stack route.Stack
	lo    float64 // of all solids along z
	hi    float64
	count int
	at    mgl64.Vec3 // of the low port
	look  mgl64.Vec3
}{
	{
		"two 120 fans on the near side of 30",
		route.Stack{Fan: 120, Fans: 2, Thickness: 30, FanThickness: 25},
		0, 55, 2,
		mgl64.Vec3{263, 36, 30},
		mgl64.Vec3{0, 0, 1}, // 10 + 240 + 26 long, 13 from its end, 60 − 24 up
	},
	{
		"on both sides of 45, ports on the far face",
		route.Stack{Fan: 140, Fans: 3, Thickness: 45, FanThickness: 25, Sides: route.BothSides, Ports: route.FarFace},
		-25, 70, 3,
		mgl64.Vec3{443, 46, 0},
		mgl64.Vec3{0, 0, -1},
	},
	{
		"on the far side, room to breathe, ports at the end",
		route.Stack{Fan: 120, Fans: 1, Thickness: 60, FanThickness: 15, Sides: route.FarSide, KeepOut: 10, Ports: route.EndFace},
		-25, 60, 2,
		mgl64.Vec3{156, 36, 30},
		mgl64.Vec3{1, 0, 0},
	},
	{
		"without fans",
		route.Stack{Fan: 120, Fans: 1, Thickness: 30, Sides: route.NoSide},
		0, 30, 1,
		mgl64.Vec3{143, 36, 30},
		mgl64.Vec3{0, 0, 1},
	},
}

func TestWhatAStackIsMadeOf(t *testing.T) {
	for _, tt := range stackTests {
		t.Run(tt.name, func(t *testing.T) {
			whole := route.Plan{}.Whole(route.Part{Name: "r", Stack: tt.stack})
			lo, hi := whole.Solids[0].From[2], whole.Solids[0].To[2]
			for _, s := range whole.Solids {
				lo, hi = min(lo, s.From[2]), max(hi, s.To[2])
			}
			if lo != tt.lo || hi != tt.hi || len(whole.Solids) != tt.count || tt.stack.Depth() != hi-lo {
				t.Errorf("%d solids from z %v to %v, depth %v; want %d from %v to %v", len(whole.Solids), lo, hi, tt.stack.Depth(), tt.count, tt.lo, tt.hi)
			}
			if q := whole.Ports[0]; q.Name != "low" || q.At != tt.at || q.Facing != tt.look {
				t.Errorf("port %+v, want low at %v facing %v", q, tt.at, tt.look)
			}
			if whole.Ports[1].At.Sub(tt.at) != (mgl64.Vec3{0, 48, 0}) || len(whole.Passages) != 1 {
				t.Errorf("the other port is at %v, passages %v", whole.Ports[1].At, whole.Passages)
			}
		})
	}
}

// A part's own port replaces the stack's, others come on top.
func TestAStackKeepsThePartsOwnPorts(t *testing.T) {
	own := route.Part{
		Name: "r", Stack: stackTests[0].stack, Volume: 0.2, KnownFrom: route.Measured,
		Ports: []route.Port{{Name: "high", At: mgl64.Vec3{1, 2, 3}}, {Name: "fill"}},
	}
	whole := route.Plan{}.Whole(own)
	if len(whole.Ports) != 3 || whole.Ports[1].At != (mgl64.Vec3{1, 2, 3}) || whole.Ports[2].Name != "fill" || whole.Volume != 0.2 {
		t.Errorf("ports %+v, volume %v", whole.Ports, whole.Volume)
	}
	if whole.Ports[0].KnownFrom != route.Measured {
		t.Errorf("the part does not vouch for its port: %+v", whole.Ports[0])
	}
}
