package route_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/route/clear"
)

// shelf holds one fitting of each kind with sizes that tell them apart.
var shelf = []route.Fitting{
	{Name: "socket", Kind: route.Socket, Stop: 6, OD: 16, Collar: route.Collar{OD: 24, Length: 20}},
	{Name: "extender", Kind: route.Extender, Length: 15, Body: 20},
	{Name: "offset", Kind: route.Offset, Length: 22, Sideways: 15, Body: 20, Rotary: true},
	{Name: "elbow", Kind: route.Elbow, Turn: 90, Legs: [2]float64{14, 12}, Body: 20, Rotary: true},
	{Name: "half", Kind: route.Elbow, Turn: 45, Legs: [2]float64{10, 20}, Body: 18, Rotary: true},
	{Name: "tee", Kind: route.Tee, Length: 30, Side: 13, Body: 20},
	{Name: "valve", Kind: route.Valve, Length: 40, Body: 22},
	{Name: "coupler", Kind: route.Coupler, Length: 11, Body: 20},
	{Name: "plug", Kind: route.Plug, Length: 5, Body: 18},
}

func named(t *testing.T, name string) route.Fitting {
	t.Helper()
	f, ok := route.Plan{Fittings: shelf}.FindFitting(name)
	if !ok {
		t.Fatalf("no fitting %q", name)
	}
	return f
}

func TestNewFrame(t *testing.T) {
	tests := []struct {
		facing, dir, ref mgl64.Vec3
		source           string
	}{
		{mgl64.Vec3{1, 0, 0}, mgl64.Vec3{1, 0, 0}, mgl64.Vec3{0, 1, 0}, "+y is square to +x"},
		{mgl64.Vec3{0, 0, -2}, mgl64.Vec3{0, 0, -1}, mgl64.Vec3{0, 1, 0}, "any length of facing"},
		{mgl64.Vec3{0, 1, 0}, mgl64.Vec3{0, 1, 0}, mgl64.Vec3{0, 0, 1}, "along y, z serves"},
		{mgl64.Vec3{0, -1, 0}, mgl64.Vec3{0, -1, 0}, mgl64.Vec3{0, 0, 1}, "along −y, z serves"},
		{mgl64.Vec3{0.8, 0.6, 0}, mgl64.Vec3{0.8, 0.6, 0}, mgl64.Vec3{-0.6, 0.8, 0}, "3-4-5: the part of y square to it"},
		{mgl64.Vec3{0, 0.96, 0.28}, mgl64.Vec3{0, 0.96, 0.28}, mgl64.Vec3{0, -0.28, 0.96}, "7-24-25, steep: the part of z"},
	}
	for _, c := range tests {
		at := mgl64.Vec3{1, 2, 3}
		nearFrame(t, c.source, route.NewFrame(at, c.facing), route.Frame{At: at, Dir: c.dir, Ref: c.ref})
	}
}

func TestPast(t *testing.T) {
	x, y, z := mgl64.Vec3{1, 0, 0}, mgl64.Vec3{0, 1, 0}, mgl64.Vec3{0, 0, 1}
	h := math.Sqrt2 / 2
	start := route.NewFrame(mgl64.Vec3{10, 20, 30}, x)
	tests := []struct {
		fitting string
		roll    float64
		want    route.Frame
		source  string
	}{
		{"socket", 0, route.Frame{At: mgl64.Vec3{16, 20, 30}, Dir: x, Ref: y}, "the stop, 6 ahead"},
		{"extender", 77, route.Frame{At: mgl64.Vec3{25, 20, 30}, Dir: x, Ref: y}, "15 ahead; a roll means nothing"},
		{"tee", 0, route.Frame{At: mgl64.Vec3{40, 20, 30}, Dir: x, Ref: y}, "30 ahead"},
		{"valve", 0, route.Frame{At: mgl64.Vec3{50, 20, 30}, Dir: x, Ref: y}, "40 ahead"},
		{"coupler", 0, route.Frame{At: mgl64.Vec3{21, 20, 30}, Dir: x, Ref: y}, "11 ahead"},
		{"plug", 0, start, "the way ends"},
		{"offset", 0, route.Frame{At: mgl64.Vec3{32, 35, 30}, Dir: x, Ref: y}, "22 ahead, 15 toward the reference"},
		{"offset", 90, route.Frame{At: mgl64.Vec3{32, 20, 45}, Dir: x, Ref: y}, "right hand about x: y goes to z"},
		{"offset", 30, route.Frame{At: mgl64.Vec3{32, 20 + 15*math.Sqrt(3)/2, 37.5}, Dir: x, Ref: y}, "15·cos 30°, 15·sin 30°"},
		{"elbow", 0, route.Frame{At: mgl64.Vec3{24, 32, 30}, Dir: y, Ref: x.Mul(-1)}, "14 along x, 12 along y; y itself turns to −x"},
		{"elbow", 90, route.Frame{At: mgl64.Vec3{24, 20, 42}, Dir: z, Ref: y}, "toward z, about −y, which leaves y"},
		{"elbow", -90, route.Frame{At: mgl64.Vec3{24, 20, 18}, Dir: z.Mul(-1), Ref: y}, "toward −z"},
		{
			"half", 0,
			route.Frame{At: mgl64.Vec3{20 + 20*h, 20 + 20*h, 30}, Dir: mgl64.Vec3{h, h, 0}, Ref: mgl64.Vec3{-h, h, 0}},
			"10 along x, 20 up at 45°",
		},
	}
	for _, c := range tests {
		fit := named(t, c.fitting)
		nearFrame(t, c.fitting+": "+c.source, start.Past(&fit, c.roll), c.want)
	}
}

// port is a port at a frame of a plan with the shelf above.
func port(at, facing mgl64.Vec3) route.PlacedPort {
	return route.PlacedPort{Ref: route.PortRef{Part: "pump", Port: "out"}, Frame: route.NewFrame(at, facing)}
}

func TestLay(t *testing.T) {
	plan := route.Plan{Fittings: shelf}
	laid, err := plan.Lay(port(mgl64.Vec3{10, 20, 30}, mgl64.Vec3{1, 0, 0}), route.Chain{
		{Fitting: "extender"}, {Fitting: "elbow"}, {Fitting: "offset", Roll: 180, Rolled: true}, {Fitting: "socket"},
	})
	if err != nil {
		t.Fatal(err)
	}
	// 10+15+14 = 39 along x, then 12 up; the elbow turns the reference to −x, so
	// the offset at half a turn goes 15 toward +x and 22 up; the stop is 6 on.
	nearFrame(t, "stop", laid.Stop, route.Frame{At: mgl64.Vec3{54, 60, 30}, Dir: mgl64.Vec3{0, 1, 0}, Ref: mgl64.Vec3{-1, 0, 0}})
	if laid.Socket.Name != "socket" || len(laid.Bodies) != 4 || laid.Bodies[2].Roll != 180 {
		t.Errorf("laid %d bodies with socket %q", len(laid.Bodies), laid.Socket.Name)
	}
	near(t, "the offset stands on the elbow", laid.Bodies[2].From.At, mgl64.Vec3{39, 32, 30})
}

func TestLayNothingAndPlug(t *testing.T) {
	plan := route.Plan{Fittings: shelf}
	at := port(mgl64.Vec3{1, 2, 3}, mgl64.Vec3{0, 0, 1})
	bare, err := plan.Lay(at, nil)
	if err != nil || len(bare.Bodies) != 0 || bare.Stop != at.Frame {
		t.Errorf("an empty chain is the port itself, got %+v, %v", bare, err)
	}
	shut, err := plan.Lay(at, route.Chain{{Fitting: "plug"}})
	if err != nil || shut.Socket.Name != "" || shut.Stop != at.Frame {
		t.Errorf("a plug holds no tube, got %+v, %v", shut, err)
	}
}

func TestLayRefuses(t *testing.T) {
	plan := route.Plan{Fittings: shelf}
	tests := []struct {
		name  string
		chain route.Chain
		step  int
		text  string
	}{
		{"unknown", route.Chain{{Fitting: "gromit"}}, 0, `fittings on pump.out: step 1: there is no fitting "gromit"`},
		{"socket inside", route.Chain{{Fitting: "socket"}, {Fitting: "socket"}}, 0, "fittings on pump.out: step 1: a socket or a plug goes last, and nothing else does"},
		{"open end", route.Chain{{Fitting: "extender"}}, 0, "fittings on pump.out: step 1: a socket or a plug goes last, and nothing else does"},
		{"plug inside", route.Chain{{Fitting: "extender"}, {Fitting: "plug"}, {Fitting: "socket"}}, 1, "fittings on pump.out: step 2: a socket or a plug goes last, and nothing else does"},
	}
	for _, c := range tests {
		_, err := plan.Lay(port(mgl64.Vec3{}, mgl64.Vec3{1, 0, 0}), c.chain)
		var wrong *route.ChainError
		if !errors.As(err, &wrong) || wrong.Step != c.step || err.Error() != c.text {
			t.Errorf("%s: Lay = %v, want step %d: %s", c.name, err, c.step, c.text)
		}
	}
}

func TestRoom(t *testing.T) {
	start := route.NewFrame(mgl64.Vec3{}, mgl64.Vec3{1, 0, 0})
	p := func(x, y, z float64) mgl64.Vec3 { return mgl64.Vec3{x, y, z} }
	tests := []struct {
		fitting string
		roll    float64
		want    []clear.Shape
	}{
		{"socket", 0, []clear.Shape{clear.Cylinder{To: p(20, 0, 0), Radius: 12}}},
		{"extender", 0, []clear.Shape{clear.Cylinder{To: p(15, 0, 0), Radius: 10}}},
		{"valve", 0, []clear.Shape{clear.Cylinder{To: p(40, 0, 0), Radius: 11}}},
		{"coupler", 0, []clear.Shape{clear.Cylinder{To: p(11, 0, 0), Radius: 10}}},
		{"plug", 0, []clear.Shape{clear.Cylinder{To: p(5, 0, 0), Radius: 9}}},
		{"tee", 90, []clear.Shape{clear.Cylinder{To: p(30, 0, 0), Radius: 10}, clear.Cylinder{From: p(15, 0, 0), To: p(15, 0, 13), Radius: 10}}},
		{"offset", 0, []clear.Shape{
			clear.Cylinder{To: p(11, 0, 0), Radius: 10},
			clear.Rod{From: p(11, 0, 0), To: p(11, 15, 0), Radius: 10},
			clear.Cylinder{From: p(11, 15, 0), To: p(22, 15, 0), Radius: 10},
		}},
		{"elbow", 90, []clear.Shape{
			clear.Cylinder{To: p(14, 0, 0), Radius: 10},
			clear.Rod{From: p(14, 0, 0), To: p(14, 0, 0), Radius: 10},
			clear.Cylinder{From: p(14, 0, 0), To: p(14, 0, 12), Radius: 10},
		}},
	}
	for _, c := range tests {
		fit := named(t, c.fitting)
		got := route.Room(start, &fit, c.roll)
		if len(got) != len(c.want) {
			t.Fatalf("%s takes %d shapes, want %d", c.fitting, len(got), len(c.want))
		}
		for i := range got {
			sameShape(t, c.fitting, got[i], c.want[i])
		}
	}
}

// sameShape compares the kinds a fitting's room is made of.
func sameShape(t *testing.T, what string, got, want clear.Shape) {
	t.Helper()
	from, to, radius, kind := axisOf(got)
	wantFrom, wantTo, wantRadius, wantKind := axisOf(want)
	if kind != wantKind || math.Abs(radius-wantRadius) > noise {
		t.Errorf("%s: %T of radius %v, want %T of %v", what, got, radius, want, wantRadius)
	}
	near(t, what+": from", from, wantFrom)
	near(t, what+": to", to, wantTo)
}

func axisOf(s clear.Shape) (from, to mgl64.Vec3, radius float64, kind string) {
	switch s := s.(type) {
	case clear.Cylinder:
		return s.From, s.To, s.Radius, "cylinder"
	case clear.Rod:
		return s.From, s.To, s.Radius, "rod"
	}
	return mgl64.Vec3{}, mgl64.Vec3{}, 0, "neither"
}

// A law: a chain laid on the port of a part that is turned and moved is the
// chain laid on the part at home, turned and moved.
func TestChainMovesWithItsPart(t *testing.T) {
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 2))
		part := route.Part{Name: "p", Ports: []route.Port{{Name: "a", At: anyPoint(r), Facing: anyPoint(r)}}}
		chain := anyChain(r)
		home := layOn(t, part, chain)
		part.At, part.Turn = anyPoint(r), anyPoint(r).Mul(4)
		moved := layOn(t, part, chain)
		turn := route.Turned(part.Turn)
		carried := func(p mgl64.Vec3) mgl64.Vec3 { return turn.Mul3x1(p).Add(part.At) }
		nearFrame(t, "stop", moved.Stop, route.Frame{
			At: carried(home.Stop.At), Dir: turn.Mul3x1(home.Stop.Dir), Ref: turn.Mul3x1(home.Stop.Ref),
		})
		for i, body := range home.Bodies {
			for j, shape := range body.Shapes {
				from, to, _, _ := axisOf(shape)
				gotFrom, gotTo, _, _ := axisOf(moved.Bodies[i].Shapes[j])
				near(t, "body from", gotFrom, carried(from))
				near(t, "body to", gotTo, carried(to))
			}
		}
		if t.Failed() {
			t.Fatalf("seed %d, chain %v", seed, chain)
		}
	}
}

// A law: frames stay unit and square, and a chain's length is the fittings'.
func TestChainKeepsItsFrame(t *testing.T) {
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 3))
		part := route.Part{Name: "p", Ports: []route.Port{{Name: "a", At: anyPoint(r), Facing: anyPoint(r)}}}
		laid := layOn(t, part, anyChain(r))
		s := laid.Stop
		if math.Abs(s.Dir.Len()-1) > noise || math.Abs(s.Ref.Len()-1) > noise || math.Abs(s.Dir.Dot(s.Ref)) > noise {
			t.Fatalf("seed %d: frame %+v is not unit and square", seed, s)
		}
		for i, body := range laid.Bodies[1:] {
			_, to, _, _ := axisOf(laid.Bodies[i].Shapes[len(laid.Bodies[i].Shapes)-1])
			if to.Sub(body.From.At).Len() > noise {
				t.Fatalf("seed %d: body %d ends at %v, the next stands at %v", seed, i, to, body.From.At)
			}
		}
	}
}

func anyPoint(r *rand.Rand) mgl64.Vec3 {
	return mgl64.Vec3{r.Float64()*200 - 100, r.Float64()*200 - 100, r.Float64()*200 - 100}
}

// anyChain is up to four fittings that lead on, and a socket.
func anyChain(r *rand.Rand) (chain route.Chain) {
	on := []string{"extender", "offset", "elbow", "half", "valve", "coupler"}
	for range r.IntN(5) {
		chain = append(chain, route.Step{Fitting: on[r.IntN(len(on))], Roll: r.Float64() * 360, Rolled: true})
	}
	return append(chain, route.Step{Fitting: "socket"})
}

func layOn(t *testing.T, part route.Part, chain route.Chain) route.Laid {
	t.Helper()
	plan := route.Plan{Fittings: shelf, Parts: []route.Part{part}}
	at, ok := plan.FindPort(route.PortRef{Part: "p", Port: "a"})
	if !ok {
		t.Fatal("the port is gone")
	}
	laid, err := plan.Lay(at, chain)
	if err != nil {
		t.Fatal(err)
	}
	return laid
}
