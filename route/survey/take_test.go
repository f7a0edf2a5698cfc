package survey_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/route/survey"
)

type vec = mgl64.Vec3

// machine is a block of four ports turned a quarter about y, and a pump of one.
func machine() route.Plan {
	p := route.Defaults()
	p.Case = vec{400, 300, 200}
	port := func(name string, x, y, z float64) route.Port {
		return route.Port{Name: name, At: vec{x, y, z}, Facing: vec{0, 0, 1}, Thread: "G1/4"}
	}
	p.Parts = []route.Part{
		{Name: "pump", At: vec{10, 20, 30}, Ports: []route.Port{port("out", 0, 0, 0)}},
		{
			Name: "block", At: vec{300, 40, 60}, Turn: vec{0, 90, 0},
			Ports: []route.Port{port("a", 0, 0, 20), port("b", 40, 0, 20), port("c", 40, 60, 20), port("d", 0, 60, 30)},
		},
		{Name: "shelf", At: vec{0, 0, 0}},
	}
	p.Runs = []route.Run{{Name: "one", From: ref("pump.out"), To: ref("block.a")}, {Name: "two", From: ref("block.b"), To: ref("block.c")}}
	return p
}

func ref(name string) route.PortRef {
	part, port, _ := strings.Cut(name, ".")
	return route.PortRef{Part: part, Port: port}
}

// asPlanned reads every port of a part where the plan has it, moved by a function.
func asPlanned(p route.Plan, part string, move func(i int, at vec) vec) (list []survey.Reading) {
	for _, g := range survey.Groups(p) {
		for i, r := range g.Rows {
			if g.Part == part {
				at, _ := p.FindPort(r.Ref)
				list = append(list, survey.Reading{Ref: r.Ref, From: r.From, Distance: survey.Distances(p.Case, move(i, at.Frame.At), r.From)})
			}
		}
	}
	return list
}

func take(t *testing.T, p route.Plan, list []survey.Reading, o survey.Options) (route.Plan, survey.Verdict) {
	t.Helper()
	out, verdicts, err := survey.Take(p, list, o)
	if err != nil || len(verdicts) != 1 {
		t.Fatalf("%v, %d verdicts", err, len(verdicts))
	}
	return out, verdicts[0]
}

func at(p route.Plan, name string) vec {
	q, _ := p.FindPort(ref(name))
	return q.Frame.At
}

func TestWhichWalls(t *testing.T) {
	groups := survey.Groups(machine())
	if len(groups) != 2 || groups[0].Part != "pump" || groups[1].Part != "block" {
		t.Fatalf("groups %+v, want pump and block: a shelf has no ports", groups)
	}
	if got := groups[0].Rows[0].From; got != [3]survey.Wall{survey.Left, survey.Floor, survey.Back} {
		t.Errorf("pump at 10, 20, 30: from %v", got)
	}
	// block.a stands at (320, 40, 60): 80 from the right wall, z from the back all the same
	row := groups[1].Rows[0]
	if row.From != [3]survey.Wall{survey.Right, survey.Floor, survey.Back} || row.Plan != [3]float64{80, 40, 60} || row.Letter != "a" || row.Facing != "+x" {
		t.Errorf("block.a: %+v", row)
	}
}

// The middle of a case is a draw: the left wall and the floor are taken.
func TestADrawGoesToTheWallCoordinatesCountFrom(t *testing.T) {
	p := machine()
	p.Parts[0].At = vec{202, 152, 100}
	if got := survey.Groups(p)[0].Rows[0].From; got != [3]survey.Wall{survey.Left, survey.Floor, survey.Back} {
		t.Errorf("from %v", got)
	}
	p.Parts[0].At = vec{203, 153, 100}
	if got := survey.Groups(p)[0].Rows[0].From; got != [3]survey.Wall{survey.Right, survey.Top, survey.Back} {
		t.Errorf("from %v, want the nearer walls", got)
	}
}

// One port alone: its place in the part comes from the case, through the turn.
func TestOnePortIsTaken(t *testing.T) {
	p := machine()
	list := asPlanned(p, "block", func(i int, at vec) vec { return at.Add(vec{1, 2, -3}) })[1:2]
	list[0].Facing, list[0].Thread = vec{1, 0, 0}, "G3/8"
	out, v := take(t, p, list, survey.Options{})
	if v.Kind != survey.Agrees || v.Asks || math.Abs(v.Worst-math.Sqrt(14)) > 1e-9 {
		t.Errorf("verdict %+v", v)
	}
	// turned 90° about y: the part's x is the case's −z, its z the case's x
	want := route.Port{Name: "b", At: vec{40 + 3, 2, 20 + 1}, Facing: vec{0, 0, 1}, Thread: "G3/8", KnownFrom: route.Measured}
	if got := out.Parts[1].Ports[1]; got != want {
		t.Errorf("got %+v\nwant %+v", got, want)
	}
	if got := at(out, "block.b"); got.Sub(at(p, "block.b").Add(vec{1, 2, -3})).Len() > 1e-9 {
		t.Errorf("stands at %v", got)
	}
	if got := survey.Affected(p, out); len(got) != 1 || got[0] != "two" {
		t.Errorf("affected %v, want only the run on it", got)
	}
	if p.Parts[1].Ports[1].KnownFrom != "" {
		t.Error("Take wrote to the plan it was given")
	}
}

func TestVerdicts(t *testing.T) {
	turn := route.Turned(vec{0, 0, 3})
	pivot := vec{300, 40, 60}
	for _, c := range []struct {
		name string
		move func(i int, at vec) vec
		n    int // of the four ports, the first so many
		kind survey.Kind
		asks bool
	}{
		{"where the plan has them, give or take 1 mm", func(i int, at vec) vec { return at.Add(vec{0.7, -0.7, float64(i%2) * 0.9}) }, 4, survey.Agrees, false},
		{"all 5 mm up", func(_ int, at vec) vec { return at.Add(vec{0, 5, 0}) }, 4, survey.Moved, true},
		{"two of them 5 mm up", func(_ int, at vec) vec { return at.Add(vec{0, 5, 0}) }, 2, survey.Moved, true},
		{"turned 3° about z", func(_ int, at vec) vec { return turn.Mul3x1(at.Sub(pivot)).Add(pivot) }, 4, survey.Moved, true},
		{"y of c misread by 10", func(i int, at vec) vec { return at.Add(vec{0, map[int]float64{2: 10}[i], 0}) }, 4, survey.Odd, true},
		{"all moved, and y of c misread by 20", func(i int, at vec) vec { return at.Add(vec{8, map[int]float64{2: 20}[i], 8}) }, 4, survey.Odd, true},
		{"another part altogether", func(i int, at vec) vec { return at.Add(vec{float64(i) * 7, -float64(i*i) * 5, 9}) }, 4, survey.Differs, true},
	} {
		p := machine()
		out, v := take(t, p, asPlanned(p, "block", c.move)[:c.n], survey.Options{})
		if v.Kind != c.kind || v.Asks != c.asks || v.Words == "" {
			t.Errorf("%s: %s, asks %v\n%s\nwant %s, %v", c.name, v.Kind, v.Asks, v.Words, c.kind, c.asks)
		}
		if changed := at(out, "block.a") != at(p, "block.a") || out.Parts[1].Ports[0].KnownFrom == route.Measured; changed == c.asks {
			t.Errorf("%s: changed %v while asked %v", c.name, changed, c.asks)
		}
	}
}

func TestTheOddEntryIsNamed(t *testing.T) {
	for _, c := range []struct {
		name   string
		wrong  func(r *survey.Reading)
		axis   int
		likely float64
		guess  string
	}{
		{"from the opposite wall", func(r *survey.Reading) { r.Distance[1] = 300 - r.Distance[1] }, 1, 100, "it looks taken from the top"},
		{"a digit lost", func(r *survey.Reading) { r.Distance[0] = 8 }, 0, 80, "a digit looks lost or doubled"},
		{"read as inches", func(r *survey.Reading) { r.Distance[1] = 100 / 25.4 }, 1, 100, "it looks like the other unit"},
		{"one digit", func(r *survey.Reading) { r.Distance[1] = 110.4 }, 1, 100, "one digit looks misread"},
		{"no usual slip", func(r *survey.Reading) { r.Distance[1] = 143 }, 1, 100, ""},
	} {
		p := machine()
		list := asPlanned(p, "block", func(_ int, at vec) vec { return at })
		c.wrong(&list[2])
		_, v := take(t, p, list, survey.Options{})
		if v.Odd == nil || v.Odd.Ref != ref("block.c") || v.Odd.Axis != c.axis || math.Abs(v.Odd.Likely-c.likely) > 1e-9 || v.Odd.Guess != c.guess {
			t.Errorf("%s: %+v (%s)", c.name, v.Odd, v.Words)
		}
		if !strings.Contains(v.Words, "block.c") {
			t.Errorf("%s: not named in %q", c.name, v.Words)
		}
	}
}

func TestAnswers(t *testing.T) {
	p := machine()
	up := asPlanned(p, "block", func(_ int, at vec) vec { return at.Add(vec{0, 5, 0}) })[:2]
	for answer, want := range map[survey.Answer]struct{ part, b, c vec }{
		survey.TakeMove:  {vec{300, 45, 60}, vec{320, 45, 20}, vec{320, 105, 20}}, // c goes with the part
		survey.TakePorts: {vec{300, 40, 60}, vec{320, 45, 20}, vec{320, 100, 20}}, // c stays
		survey.Skip:      {vec{300, 40, 60}, vec{320, 40, 20}, vec{320, 100, 20}},
	} {
		out, v := take(t, p, up, survey.Options{Answers: map[string]survey.Answer{"block": answer}})
		if v.Asks || v.Taken != answer {
			t.Errorf("%s: asks %v, taken %s", answer, v.Asks, v.Taken)
		}
		if out.Parts[1].At.Sub(want.part).Len() > 1e-9 || at(out, "block.b").Sub(want.b).Len() > 1e-6 || at(out, "block.c").Sub(want.c).Len() > 1e-6 {
			t.Errorf("%s: part at %v, b at %v, c at %v; want %v", answer, out.Parts[1].At, at(out, "block.b"), at(out, "block.c"), want)
		}
	}
}

// A part moved by any shift and a small turn is found again: every port of it,
// also one that was not read, stands where it went.
func TestARigidMoveIsFoundAgain(t *testing.T) {
	for seed := range uint64(200) {
		random := rand.New(rand.NewPCG(seed, 0))
		p := machine()
		p.Parts[1].Turn = vec{random.Float64() * 360, random.Float64() * 360, random.Float64() * 360}
		axis := vec{random.NormFloat64(), random.NormFloat64(), random.NormFloat64()}.Normalize()
		spin := mgl64.QuatRotate(mgl64.DegToRad(4+4*random.Float64()), axis).Mat4().Mat3()
		by := vec{random.Float64() * 20, random.Float64() * 20, random.Float64() * 20}
		middle := at(p, "block.a")
		move := func(_ int, q vec) vec { return spin.Mul3x1(q.Sub(middle)).Add(middle).Add(by) }
		out, v := take(t, p, asPlanned(p, "block", move)[:3], survey.Options{Slack: 0.1, Answers: map[string]survey.Answer{"block": survey.TakeMove}})
		if v.Kind != survey.Moved {
			t.Errorf("seed %d: %s", seed, v.Words)
			continue
		}
		// places and angles are written to hundredths: 0.01° over 80 mm is 0.014 mm
		if got, want := at(out, "block.d"), move(3, at(p, "block.d")); got.Sub(want).Len() > 0.05 {
			t.Errorf("seed %d: the port that was not read is %.3f mm off", seed, got.Sub(want).Len())
		}
	}
}

// Two points leave the turn about their line open: the part keeps it.
func TestWhatTwoPortsDoNotSayStays(t *testing.T) {
	p := machine()
	spin := route.Turned(vec{0, 0, 5})
	middle := at(p, "block.a")
	move := func(_ int, q vec) vec { return spin.Mul3x1(q.Sub(middle)).Add(middle) }
	list := asPlanned(p, "block", move)
	_, v := take(t, p, []survey.Reading{list[0], list[3]}, survey.Options{Slack: 0.5})
	if v.Move == nil || math.Abs(v.Move.Angle-5) > 0.02 || math.Abs(v.Move.Axis[2]) < 0.98 {
		t.Errorf("found %+v, want the least turn that explains it: 5° about z", v.Move)
	}
}

func TestReadingsRefused(t *testing.T) {
	p := machine()
	good := asPlanned(p, "pump", func(_ int, at vec) vec { return at })[0]
	for name, bad := range map[string]func(r *survey.Reading){
		"no such port": func(r *survey.Reading) { r.Ref.Port = "in" },
		"wrong wall":   func(r *survey.Reading) { r.From[0] = survey.Floor },
		"no wall":      func(r *survey.Reading) { r.From[2] = "ceiling" },
		"no number":    func(r *survey.Reading) { r.Distance[1] = math.NaN() },
		"too far":      func(r *survey.Reading) { r.Distance[1] = 1e7 },
	} {
		r := good
		bad(&r)
		_, _, err := survey.Take(p, []survey.Reading{r}, survey.Options{})
		var want *survey.ReadingError
		if !errors.As(err, &want) {
			t.Errorf("%s: %v, want a ReadingError", name, err)
		}
	}
	if _, _, err := survey.Take(p, []survey.Reading{good, good}, survey.Options{}); err == nil {
		t.Error("a port read twice was taken")
	}
}

func TestFacings(t *testing.T) {
	for text, want := range map[string]vec{
		"+x": {1, 0, 0}, "x": {1, 0, 0}, "-Y": {0, -1, 0}, "\u2212z": {0, 0, -1}, "0 0.6 0.8": {0, 0.6, 0.8}, "[3, 0, 4]": {0.6, 0, 0.8},
	} {
		if got, err := survey.ParseFacing(text); err != nil || got.Sub(want).Len() > 1e-9 {
			t.Errorf("%q: %v, %v; want %v", text, got, err, want)
		}
	}
	for _, text := range []string{"", "up", "+w", "0 0 0", "1 2", "1 2 nan", "++x"} {
		if got, err := survey.ParseFacing(text); err == nil {
			t.Errorf("%q was taken for %v", text, got)
		}
	}
	for _, v := range []vec{{1, 0, 0}, {0, 0, -1}, {0, 0.6, 0.8}} {
		if back, err := survey.ParseFacing(survey.FacingText(v)); err != nil || back.Sub(v).Len() > 1e-4 {
			t.Errorf("%v became %q and then %v, %v", v, survey.FacingText(v), back, err)
		}
	}
}
