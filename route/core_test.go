package route_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/route/clear"
)

// noise is what rounding leaves of lengths below a metre, mm.
const noise = 1e-9

func near(t *testing.T, what string, got, want mgl64.Vec3) {
	t.Helper()
	if !(got.Sub(want).Len() <= noise) {
		t.Errorf("%s = %v, want %v", what, got, want)
	}
}

func nearFrame(t *testing.T, what string, got, want route.Frame) {
	t.Helper()
	near(t, what+": place", got.At, want.At)
	near(t, what+": direction", got.Dir, want.Dir)
	near(t, what+": reference", got.Ref, want.Ref)
}

func TestTurnedIsAboutFixedAxesInOrder(t *testing.T) {
	x, y, z := mgl64.Vec3{1, 0, 0}, mgl64.Vec3{0, 1, 0}, mgl64.Vec3{0, 0, 1}
	tests := []struct {
		turn, of, want mgl64.Vec3
		source         string
	}{
		{mgl64.Vec3{}, x, x, "no turn"},
		{mgl64.Vec3{90, 0, 0}, y, z, "right hand about x: y goes to z"},
		{mgl64.Vec3{0, 90, 0}, z, x, "about y: z goes to x"},
		{mgl64.Vec3{0, 0, 90}, x, y, "about z: x goes to y"},
		{mgl64.Vec3{90, 90, 0}, y, x, "about x y goes to z, then about y z goes to x; the other order leaves y at z"},
		{mgl64.Vec3{90, 0, 90}, z, x, "about x z goes to −y, then about z −y goes to x"},
		{mgl64.Vec3{0, 0, -90}, x, y.Mul(-1), "a negative turn"},
		{mgl64.Vec3{0, 180, 450}, x, y.Mul(-1), "about y x goes to −x, then a quarter and a whole turn about z"},
	}
	for _, c := range tests {
		if got := route.Turned(c.turn).Mul3x1(c.of); got != c.want {
			t.Errorf("Turned(%v) of %v = %v, want exactly %v (%s)", c.turn, c.of, got, c.want, c.source)
		}
	}
}

func TestTurnedAgreesWithTheLibrary(t *testing.T) {
	for seed := range uint64(100) {
		r := rand.New(rand.NewPCG(seed, 1))
		a := mgl64.Vec3{r.Float64()*720 - 360, r.Float64()*720 - 360, r.Float64()*720 - 360}
		rad := a.Mul(math.Pi / 180)
		want := mgl64.Rotate3DZ(rad[2]).Mul3(mgl64.Rotate3DY(rad[1])).Mul3(mgl64.Rotate3DX(rad[0]))
		got := route.Turned(a)
		for i := range got {
			if math.Abs(got[i]-want[i]) > noise {
				t.Fatalf("seed %d: Turned(%v) = %v, want %v", seed, a, got, want)
			}
		}
	}
}

func TestSinCos(t *testing.T) {
	for _, c := range []struct{ degrees, sin, cos float64 }{
		{0, 0, 1}, {90, 1, 0}, {180, 0, -1}, {270, -1, 0}, {-90, -1, 0}, {-180, 0, -1}, {-360, 0, 1}, {810, 1, 0},
	} {
		if s, k := route.SinCos(c.degrees); s != c.sin || k != c.cos {
			t.Errorf("SinCos(%v) = %v, %v, want exactly %v, %v", c.degrees, s, k, c.sin, c.cos)
		}
	}
	s, k := route.SinCos(-30)
	if math.Abs(s+0.5) > noise || math.Abs(k-math.Sqrt(3)/2) > noise {
		t.Errorf("SinCos(-30) = %v, %v, want −1/2 and √3/2", s, k)
	}
}

// TestSinCosGoesRound: an angle is brought into a turn as by two divisions, bit
// for bit, next to the quarter turns too.
func TestSinCosGoesRound(t *testing.T) {
	const seed = 52
	r := rand.New(rand.NewPCG(seed, 1))
	for range 20000 {
		a := 90 * float64(r.IntN(17)-8)
		for range r.IntN(3) {
			a = math.Nextafter(a, 1000*(r.Float64()-0.5))
		}
		if r.IntN(2) == 0 {
			a += (r.Float64() - 0.5) * math.Pow(10, float64(r.IntN(18)-15))
		}
		want := [2]float64{}
		want[0], want[1] = math.Sincos(a * math.Pi / 180)
		switch math.Mod(math.Mod(a, 360)+360, 360) {
		case 0:
			want = [2]float64{0, 1}
		case 90:
			want = [2]float64{1, 0}
		case 180:
			want = [2]float64{0, -1}
		case 270:
			want = [2]float64{-1, 0}
		}
		if s, c := route.SinCos(a); s != want[0] || c != want[1] {
			t.Fatalf("seed %d: SinCos(%v) = %v, %v, want %v", seed, a, s, c, want)
		}
	}
}

func TestPlace(t *testing.T) {
	part := route.Part{
		Name: "block", At: mgl64.Vec3{100, 50, 20}, Turn: mgl64.Vec3{0, 0, 90},
		Solids: []route.Solid{
			{Box: true, From: mgl64.Vec3{0, 0, 0}, To: mgl64.Vec3{40, 10, 6}},
			{Box: true, From: mgl64.Vec3{40, 10, 6}, To: mgl64.Vec3{0, 0, 0}},
			{From: mgl64.Vec3{5, 0, 0}, To: mgl64.Vec3{5, 30, 0}, Radius: 3},
		},
		Ports:     []route.Port{{Name: "in", At: mgl64.Vec3{40, 5, 3}, Facing: mgl64.Vec3{1, 0, 0}, Thread: "G1/4", Flow: route.In}},
		KnownFrom: route.Measured,
	}
	plan := route.Plan{Parts: []route.Part{{Name: "other"}, part}}
	placed := plan.PlaceAll()
	if len(placed) != 2 || placed[1].Part.Name != "block" || len(placed[0].Solids) != 0 {
		t.Fatalf("PlaceAll gives %d parts, want other and block", len(placed))
	}
	for i, s := range placed[1].Solids[:2] {
		box, ok := s.(clear.Box)
		if !ok || box.Half != (mgl64.Vec3{20, 5, 3}) {
			t.Fatalf("solid %d is %v, want a box of half 20, 5, 3", i, s)
		}
		near(t, "centre: (20, 5, 3) turned to (−5, 20, 3) and moved", box.Centre, mgl64.Vec3{95, 70, 23})
		near(t, "the box's own x", box.Axes.Col(0), mgl64.Vec3{0, 1, 0})
	}
	can, ok := placed[1].Solids[2].(clear.Cylinder)
	if !ok || can.Radius != 3 {
		t.Fatalf("solid 2 is %v, want a cylinder of radius 3", placed[1].Solids[2])
	}
	near(t, "axis from (5, 0, 0)", can.From, mgl64.Vec3{100, 55, 20})
	near(t, "axis to (5, 30, 0)", can.To, mgl64.Vec3{70, 55, 20})

	port, ok := plan.FindPort(route.PortRef{Part: "block", Port: "in"})
	if !ok || port.Thread != "G1/4" || port.Flow != route.In || port.KnownFrom != route.Measured {
		t.Fatalf("FindPort = %+v, %v; the part vouches for its port", port, ok)
	}
	nearFrame(t, "port", port.Frame, route.Frame{
		At: mgl64.Vec3{95, 90, 23}, Dir: mgl64.Vec3{0, 1, 0}, Ref: mgl64.Vec3{-1, 0, 0},
	})
}

func TestWholeTakesWhatThePartLeavesOut(t *testing.T) {
	kind := route.Part{
		Name: "pump", Solids: []route.Solid{{Radius: 1}}, Passages: [][2]string{{"in", "out"}},
		Metals: []string{"brass"}, Volume: 0.2, KnownFrom: route.Drawing,
		Ports: []route.Port{{Name: "in", Flow: route.In}, {Name: "out", Flow: route.Out, KnownFrom: route.Typical}},
	}
	plan := route.Plan{Catalogue: &route.Catalogue{Parts: []route.Part{kind}}}

	all := plan.Whole(route.Part{Name: "p", Kind: "pump"})
	if all.Name != "p" || len(all.Solids) != 1 || len(all.Passages) != 1 || all.Metals[0] != "brass" || all.Volume != 0.2 {
		t.Errorf("an empty part takes all of its kind, got %+v", all)
	}
	if all.Ports[0].KnownFrom != route.Drawing || all.Ports[1].KnownFrom != route.Typical {
		t.Errorf("ports are known from %q and %q, want the kind's drawing and the port's own typical",
			all.Ports[0].KnownFrom, all.Ports[1].KnownFrom)
	}
	own := plan.Whole(route.Part{
		Kind: "pump", KnownFrom: route.Measured,
		Solids: []route.Solid{{Radius: 7}, {Radius: 8}}, Passages: [][2]string{{"a", "b"}, {"b", "c"}},
		Metals: []string{"steel"}, Volume: 0.5,
		Ports: []route.Port{{Name: "fill"}, {Name: "out", Flow: route.Any}},
	})
	if len(own.Solids) != 2 || len(own.Passages) != 2 || own.Metals[0] != "steel" || own.Volume != 0.5 {
		t.Errorf("a part's own lists replace the kind's, got %+v", own)
	}
	names, flows := "", ""
	for _, p := range own.Ports {
		names += p.Name + " "
		flows += string(p.Flow) + " "
	}
	if names != "in out fill " || flows != "in any  " || own.Ports[0].KnownFrom != route.Measured {
		t.Errorf("ports are %q of flow %q, want the kind's in, out replaced in its place, fill after them", names, flows)
	}
	if kind.Ports[1].Flow != route.Out || kind.Ports[0].KnownFrom != "" {
		t.Errorf("the catalogue's ports became %+v", kind.Ports)
	}
	if got := plan.Whole(route.Part{Name: "q", Kind: "nobody"}); got.Kind != "nobody" || len(got.Solids) != 0 {
		t.Errorf("a part of no known kind stays as it is, got %+v", got)
	}
}

func TestKnownFrom(t *testing.T) {
	for k, firm := range map[route.KnownFrom]bool{"": false, route.Typical: false, route.Drawing: true, route.Measured: true, "hearsay": false} {
		if k.Firm() != firm {
			t.Errorf("%q is firm: %v, want %v", k, k.Firm(), firm)
		}
	}
}

func TestDefaultsAreThePlanFormats(t *testing.T) {
	d := route.Defaults()
	want := route.Weigh{Bend: 60, OddBend: 100, Millimetre: 1, Fitting: 80, Price: 10, Tidy: 90, Miss: 20}
	if d.Weigh != want || d.Clear != 4 || d.Saw != (route.Saw{Kerf: 1, Square: 2}) || d.KeepOver != 120 || d.Build != 1 ||
		d.Errors != (route.Errors{Port: 1, Cut: 0.5, Turn: 1.5, Roll: 2, Facing: 0.5}) || d.Spares != (route.Spares{Chance: 90}) || d.Units != route.Millimetres {
		t.Errorf("Defaults() = %+v, want the plan format's example", d)
	}
}
