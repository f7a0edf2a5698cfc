package made_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/route"
	"tubewright/route/made"
)

type vec = mgl64.Vec3

// bench is the plan format's hand-worked run: stops (106, 100, 50) and (250,
// 244, 50), corner (250, 100, 50), longest 274.27, aim 273.27, shortest 268.27.
func bench() route.Plan {
	p := route.Defaults()
	p.Case, p.Tube = vec{430, 430, 200}, "petg"
	p.Tubes = []route.Tube{{Name: "petg", Material: "petg", Tube: bends.Tube{OD: 16, ID: 12, Radius: 32, LeastRadius: 28, StraightEnd: 26, StraightBetween: 20, Trim: 15}}}
	p.Fittings = []route.Fitting{{
		Name: "socket", Kind: route.Socket, OD: 16, Stop: 6, Insertion: route.Insertion{Full: 12, Least: 9}, SeatGap: 0.5,
		Collar: route.Collar{OD: 24, Length: 20}, Give: route.Give{Sideways: 0.3, Degrees: 1},
	}}
	p.Parts = []route.Part{
		{Name: "a", Ports: []route.Port{{Name: "out", At: vec{100, 100, 50}, Facing: vec{1, 0, 0}}}},
		{Name: "b", Ports: []route.Port{{Name: "in", At: vec{250, 250, 50}, Facing: vec{0, -1, 0}}}},
	}
	p.Runs = []route.Run{{Name: "a-to-b", From: route.PortRef{Part: "a", Port: "out"}, To: route.PortRef{Part: "b", Port: "in"}}}
	p.Offcuts = []route.Offcuts{{Tube: "petg", Lengths: []float64{310, 225.5}}}
	p.Stock = []route.Stock{{Tube: "petg", Length: 500}}
	return p
}

func try(cut float64) route.Attempt {
	return route.Attempt{
		Cut: cut, Fits: true, Radius: 32, Corners: []vec{{106, 100, 50}, {250, 100, 50}, {250, 244, 50}},
		Start: route.Chain{{Fitting: "socket"}}, End: route.Chain{{Fitting: "socket"}},
	}
}

func record(t *testing.T, p route.Plan, a route.Attempt) route.Plan {
	t.Helper()
	p, err := made.Record(p, "a-to-b", a)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func sit(t *testing.T, p route.Plan) made.Seat {
	t.Helper()
	s, err := made.Sit(p, p.Runs[0])
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestRecordTakesTheBarAndPutsTheRestBack(t *testing.T) {
	p := bench()
	for _, c := range []struct {
		name string
		from float64
		want []float64
	}{
		{"from stock: 500 − 305.27 − 1 of kerf", 500, []float64{310, 225.5, 193.73}},
		{"from an offcut: 310 − 305.27 − 1, too short to keep", 310, []float64{225.5}},
		{"no bar named", 0, []float64{310, 225.5}},
	} {
		a := try(273.27)
		a.CutFrom = c.from
		got := record(t, p, a)
		if !slices.Equal(got.Offcuts[0].Lengths, c.want) {
			t.Errorf("%s: the shelf holds %v, want %v", c.name, got.Offcuts[0].Lengths, c.want)
		}
		if b := got.Runs[0].Made[0].Blank; math.Abs(b-305.27) > 1e-9 {
			t.Errorf("%s: blank %v, want 273.27 + 2 × 15 + 2", c.name, b)
		}
	}
	if len(p.Runs[0].Made) != 0 || len(p.Offcuts[0].Lengths) != 2 {
		t.Error("Record wrote to the plan it was given")
	}
}

func TestTheLastOffcutTakenLeavesNoEmptyShelf(t *testing.T) {
	p := bench()
	p.Offcuts[0].Lengths = []float64{310}
	a := try(273.27)
	a.CutFrom = 310
	if p = record(t, p, a); len(p.Offcuts) != 0 {
		t.Errorf("the shelf holds %v", p.Offcuts)
	}
	failed := route.Attempt{Wrong: "kinked", Blank: 305, CutFrom: 500}
	p = record(t, p, failed)
	if got := p.Offcuts[0].Lengths; !slices.Equal(got, []float64{194}) {
		t.Errorf("the shelf holds %v, want 500 − 305 − 1", got)
	}
	if n := made.Used(p, "petg", 500); n != 1 {
		t.Errorf("%d bars of 500 used, want 1", n)
	}
	if bars := made.Sawn(p); len(bars) != 2 || bars[0].Length != 310 || !bars[0].Fits || bars[1].Fits || bars[1].Left != 194 {
		t.Errorf("sawn: %+v", bars)
	}
}

func TestRecordRefuses(t *testing.T) {
	short, silent, odd := try(273.27), try(0), try(273.27)
	short.CutFrom, odd.Cut = 300, math.NaN()
	bare := try(273.27)
	bare.Corners = nil
	for name, a := range map[string]route.Attempt{"bar too short": short, "no length": silent, "no number": odd, "no way": bare} {
		_, err := made.Record(bench(), "a-to-b", a)
		var entry *made.EntryError
		if !errors.As(err, &entry) || entry.Fix == "" {
			t.Errorf("%s: %v, want an EntryError with a way out", name, err)
		}
	}
	if _, err := made.Record(bench(), "c", try(1)); err == nil {
		t.Error("a run that is not there was recorded")
	}
}

func TestFailAndForget(t *testing.T) {
	p := record(t, bench(), try(273.27))
	failed, err := made.Fail(p, "a-to-b", "cracked in the dry fit")
	if err != nil || failed.Runs[0].MadeCount() != 0 || failed.Runs[0].Made[0].Wrong != "cracked in the dry fit" {
		t.Errorf("%v: %+v", err, failed.Runs[0].Made)
	}
	if p.Runs[0].MadeCount() != 1 {
		t.Error("Fail wrote to the plan it was given")
	}
	if gone, err := made.Forget(p, "a-to-b"); err != nil || len(gone.Runs[0].Made) != 0 {
		t.Errorf("%v: %+v", err, gone.Runs[0].Made)
	}
	for _, err := range []error{
		second(made.Forget(bench(), "a-to-b")), second(made.Fail(bench(), "a-to-b", "")), second(made.Fail(bench(), "x", "")),
	} {
		if err == nil {
			t.Error("took back what is not there")
		}
	}
}

func second(_ route.Plan, err error) error { return err }

// Where nothing has moved the tube stands as it was made.
func TestSitWhereItWasMade(t *testing.T) {
	s := sit(t, record(t, bench(), try(273.27)))
	if !s.Fits() || s.Strain > 0.02 {
		t.Errorf("strain %.3f, want next to none", s.Strain)
	}
	for i, c := range try(0).Corners {
		if s.Formed.Corners[i].Sub(c).Len() > 1e-3 {
			t.Errorf("corner %d stands at %v, was made at %v", i, s.Formed.Corners[i], c)
		}
	}
	for e, at := range s.Ends {
		if math.Abs(at.Gap-0.5) > 0.01 || at.Sideways > 1e-3 || at.Degrees > 1e-3 {
			t.Errorf("end %d: %+v, want the seat gap of 0.5", e, at)
		}
	}
}

// Both parts shifted and turned alike: the tube goes with them.
func TestSitMovesWithItsParts(t *testing.T) {
	p := record(t, bench(), try(273.27))
	turn := route.Turned(vec{0, 0, 20})
	for i := range p.Parts {
		q := &p.Parts[i].Ports[0]
		q.At, q.Facing = turn.Mul3x1(q.At).Add(vec{30, -4, 11}), turn.Mul3x1(q.Facing)
	}
	if s := sit(t, p); !s.Fits() || s.Strain > 0.05 {
		t.Errorf("strain %.3f, want next to none: %+v", s.Strain, s.Ends)
	}
}

// Worked by hand: port b moves along its own facing or across it.
func TestSitAfterAMeasurement(t *testing.T) {
	for _, c := range []struct {
		name   string
		cut    float64
		by     vec
		fits   bool
		trim   float64
		source string
	}{
		{"0.4 mm nearer along the socket", 273.27, vec{0, -0.4, 0}, true, 0, "the seat gap is 0.5"},
		{"2 mm farther along the socket", 273.27, vec{0, 2, 0}, true, 0, "the play is 3 less 0.5 of seat gap"},
		{"2 mm nearer: trim end B", 273.27, vec{0, -2, 0}, false, 2, "2 mm of trim gives the seat gap back"},
		{"7 mm farther: make again", 273.27, vec{0, 7, 0}, false, 0, "2.5 mm is left before the least insertion, 1° over a leg of 144 mm is 2.5, twice 0.3 sideways: 5.6"},
		{"0.5 mm aside: shared by both sockets", 273.27, vec{0, 0, 0.5}, true, 0, "0.3 sideways at each, and some askew"},
		{"9 mm out of its plane: make again", 273.27, vec{0, 0, 9}, false, 0, "1° at each end over legs of 144 mm is 5.0, twice 0.3 sideways: 5.6"},
	} {
		p := record(t, bench(), try(c.cut))
		p.Parts[1].Ports[0].At = p.Parts[1].Ports[0].At.Add(c.by)
		s := sit(t, p)
		if s.Fits() != c.fits || s.Trimmed != (c.trim > 0) {
			t.Errorf("%s: fits %v, trim %v, strain %.2f, ends %+v; want fits %v (%s)", c.name, s.Fits(), s.Trim, s.Strain, s.Ends, c.fits, c.source)
		}
		if sum := s.Trim[0] + s.Trim[1]; math.Abs(sum-c.trim) > 0.35 {
			t.Errorf("%s: trim %v, want %.1f (%s)", c.name, s.Trim, c.trim, c.source)
		}
	}
}

// The seat found is as good as the best of many shaken ones.
func TestSitIsNotBeatenByShaking(t *testing.T) {
	const seed = 7
	random := rand.New(rand.NewPCG(seed, 0))
	p := record(t, bench(), try(273.27))
	p.Parts[1].Ports[0].At = p.Parts[1].Ports[0].At.Add(vec{0.7, -1, 0.9})
	s := sit(t, p)
	shaken := made.Shaken(s, 20000, 0.4, func() float64 { return random.NormFloat64() })
	if s.Strain > shaken+0.02 {
		t.Errorf("seed %d: strain %.3f, shaking found %.3f", seed, s.Strain, shaken)
	}
}
