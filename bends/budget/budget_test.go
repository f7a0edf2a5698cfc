package budget_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"tubewright/bends"
	"tubewright/bends/budget"
)

// table forms a tube of 16 mm on a 32 mm former and puts it between two sockets
// of 0.3 mm and 1 degree that stand true.
func table(errors budget.Errors, last float64, rows ...bends.Row) budget.Job {
	tube := bends.Tube{OD: 16, ID: 12, Radius: 32, Trim: 15}
	for i := range rows {
		rows[i].Radius = 32
	}
	f, err := bends.Form(tube, bends.Table{Rows: rows, Last: last}.Path())
	if err != nil {
		panic(err)
	}
	end := len(f.Corners) - 1
	j := budget.Job{Tube: f, Errors: errors}
	for i, c := range [2][2]vec{{f.Corners[0], f.Corners[1]}, {f.Corners[end], f.Corners[end-1]}} {
		dir := c[1].Sub(c[0]).Normalize()
		j.Ends[i] = budget.Socket{
			Name: []string{"pump.out", "radiator.in"}[i], Facing: dir, Dir: dir, Stop: c[0], Port: c[0].Sub(dir.Mul(6)),
			Sideways: 0.3, Degrees: 1, Slack: 2.5,
		}
	}
	return j
}

func bend(length, turn, roll float64) bends.Row {
	return bends.Row{Length: length, Turn: turn, Roll: roll}
}

type check struct {
	what              string
	got, want, within float64
	source            string
}

func compare(t *testing.T, list []check) {
	t.Helper()
	for _, c := range list {
		if !(math.Abs(c.got-c.want) <= c.within) {
			t.Errorf("%s = %.6g, want %.6g within %g: %s", c.what, c.got, c.want, c.within, c.source)
		}
	}
}

// The worked example of the package's own page: 1 degree over 100 mm is 1.75 mm.
func TestOneBendByHand(t *testing.T) {
	b := budget.Of(table(budget.Errors{Turn: 1}, 100, bend(80, 90, 0)))
	compare(t, []check{
		{"aside in the plane", b.AsBent.Sideways[0], 1.745, 0.001, "100·π/180"},
		{"aside out of it", b.AsBent.Sideways[1], 0, 1e-9, "the bend stays in its plane"},
		{"askew", b.AsBent.Degrees[0], 1, 1e-9, "the turn itself"},
		{"length", b.AsBent.Length, 0, 1e-9, "the swing carries the leg 32·π/180 on, and the longer arc takes as much of it"},
		{"askew left near", b.Eased[0].Degrees[0], 0.5, 0.03, "both sockets share the degree"},
		{"askew left far", b.Eased[1].Degrees[0], 0.5, 0.03, "both sockets share the degree"},
		{"aside left far", b.Eased[1].Sideways[0], 0, 0.03, "the near leg is slid 1.75 mm and more"},
		{"chance", b.Chance, 0.9545, 0.015, "2 standard deviations of a normal hold 95.45 in 100"},
		{"share", b.Largest[0].Share, 1, 1e-9, "there is nothing else"},
		{"if halved", b.Largest[0].ChanceIfHalved, 0.99994, 0.001, "4 standard deviations"},
	})
	if len(b.Largest) != 1 || b.Largest[0].What != "turn of bend 1" {
		t.Errorf("largest %+v; want only the turn of bend 1", b.Largest)
	}
}

// Each error alone, on figures one can draw.
func TestOneErrorAtATimeByHand(t *testing.T) {
	u := []bends.Row{bend(50, 90, 0), bend(40, 90, 0)}   // a U, legs 104 mm apart
	s := []bends.Row{bend(50, 90, 0), bend(40, 90, 180)} // an offset of 104 mm
	corner := []bends.Row{bend(50, 90, 0), bend(40, 90, 90)}
	for _, tt := range []struct {
		name   string
		errors budget.Errors
		rows   []bends.Row
		want   budget.Miss
		source string
	}{
		{"a port", budget.Errors{Port: 1}, u, budget.Miss{Sideways: [2]float64{math.Sqrt2, math.Sqrt2}, Length: math.Sqrt2}, "two ports, 1 mm each way"},
		{"a mark", budget.Errors{Cut: 1}, u[:1], budget.Miss{Sideways: [2]float64{1, 0}, Length: 1}, "the bend lies 1 mm on: aside, and the leg 1 mm shorter"},
		{"the radius, one bend", budget.Errors{Radius: 1}, u[:1], budget.Miss{Sideways: [2]float64{1, 0}, Length: math.Pi/2 - 1}, "1 mm more each way from the start, less π/2 of arc"},
		{"the radius, an offset", budget.Errors{Radius: 1}, s, budget.Miss{Sideways: [2]float64{2 - math.Pi/2, 0}, Length: 2 - math.Pi/2}, "the legs stand 2 mm farther apart, less the π/2 the first bend takes from the straight between"},
		{"a roll", budget.Errors{Roll: 1}, corner, budget.Miss{Sideways: [2]float64{0, 132 * degree}, Degrees: [2]float64{0, 1}}, "the end swings about the middle leg at 100 + 32 mm"},
		{"a facing", budget.Errors{Facing: 1}, nil, budget.Miss{Sideways: [2]float64{math.Hypot(106, 6) * degree, math.Hypot(106, 6) * degree}, Degrees: [2]float64{math.Sqrt2, math.Sqrt2}}, "100 mm of straight tube, each face 6 mm behind its stop"},
		{"springback", budget.Errors{Springback: [2][2]float64{{1, 0}, {0, 0}}}, s, budget.Miss{Sideways: [2]float64{32 * degree, 0}, Length: 72 * degree}, "the middle leg leans: the second centre, 64 on and 40 aside of the first, moves 40 on and 64 back, and two shorter arcs give 32 each way"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			got := budget.Of(table(tt.errors, 100, append([]bends.Row(nil), tt.rows...)...)).AsBent
			for i := range 2 {
				compare(t, []check{
					{fmt.Sprintf("aside %d", i), got.Sideways[i], tt.want.Sideways[i], 1e-6, tt.source},
					{fmt.Sprintf("askew %d", i), got.Degrees[i], tt.want.Degrees[i], 1e-6, tt.source},
				})
			}
			compare(t, []check{{"length", got.Length, tt.want.Length, 1e-6, tt.source}})
		})
	}
}

// Laws that hold for every tube.
func TestLaws(t *testing.T) {
	for seed := range uint64(40) {
		r := rand.New(rand.NewPCG(seed, 9))
		j := randomJob(r, int(seed)%7)
		b := budget.Of(j)
		if c := budget.Chance(j); c != b.Chance {
			t.Errorf("seed %d: Chance gives %v, Of %v", seed, c, b.Chance)
		}
		if moved := budget.Of(elsewhere(j)); math.Abs(moved.Chance-b.Chance) > 0.01 || math.Abs(moved.AsBent.Aside()-b.AsBent.Aside()) > 1e-6 {
			t.Errorf("seed %d: %v elsewhere gives %v", seed, b.Chance, moved.Chance)
		}
		worse := j
		worse.Errors = budget.Errors{
			Port: 2 * j.Errors.Port, Facing: 2 * j.Errors.Facing, Cut: j.Errors.Cut, Turn: 2 * j.Errors.Turn, Roll: 2 * j.Errors.Roll,
			Radius: 2 * j.Errors.Radius, Springback: j.Errors.Springback,
		}
		if c := budget.Chance(worse); c > b.Chance {
			t.Errorf("seed %d: a worse hand seats more: %v after %v", seed, c, b.Chance)
		}
		for _, p := range b.Largest {
			if p.ChanceIfHalved < b.Chance-0.003 || p.Share <= 0 || p.Share > 1+1e-9 {
				t.Errorf("seed %d: chance %v, %+v", seed, b.Chance, p)
			}
		}
	}
}

// elsewhere is a job turned and moved as a whole.
func elsewhere(j budget.Job) budget.Job {
	by, to := vec{0.3, -1.1, 0.7}, vec{50, -20, 300}
	corners := make([]vec, len(j.Tube.Corners))
	for i, c := range j.Tube.Corners {
		corners[i] = rotated(c, by).Add(to)
	}
	j.Tube.Corners = corners
	for i := range j.Ends {
		s := &j.Ends[i]
		s.Port, s.Stop = rotated(s.Port, by).Add(to), rotated(s.Stop, by).Add(to)
		s.Facing, s.Dir = rotated(s.Facing, by), rotated(s.Dir, by)
		turned := make([]budget.Axis, len(s.Rotary))
		for k, a := range s.Rotary {
			turned[k] = budget.Axis{Through: rotated(a.Through, by).Add(to), Along: rotated(a.Along, by)}
		}
		s.Rotary = turned
	}
	return j
}

func TestEdges(t *testing.T) {
	hand := budget.Errors{Port: 1, Facing: 0.5, Cut: 0.5, Turn: 1.5, Roll: 2, Radius: 0.5}
	if b := budget.Of(budget.Job{}); b.Chance != 0 || b.Largest != nil || budget.Chance(budget.Job{}) != 0 {
		t.Errorf("no tube: %+v", b)
	}
	if b := budget.Of(table(budget.Errors{}, 100, bend(50, 90, 0))); b.Chance != 1 || b.Largest != nil {
		t.Errorf("a hand without error: %+v; want certain, nothing large", b)
	}
	off := table(budget.Errors{}, 100)
	off.Ends[1].Stop = off.Ends[1].Stop.Add(vec{0, 2, 0})
	if b := budget.Of(off); b.Chance != 0 {
		t.Errorf("sockets 2 mm out of line: chance %v; want 0", b.Chance)
	}
	known, unknown := table(hand, 100, bend(50, 90, 0)), table(hand, 100, bend(50, 90, 0))
	for i := range unknown.Ends {
		unknown.Ends[i].Sideways, unknown.Ends[i].Degrees = 0, 0
	}
	if a, b := budget.Chance(known), budget.Chance(unknown); a != b {
		t.Errorf("give not known: chance %v; want %v, that of the assumed give", b, a)
	}
	tight := table(hand, 100, bend(50, 90, 0), bend(60, 90, 90))
	tight.Tube.Tube.Trim = 0
	loose := table(hand, 100, bend(50, 90, 0), bend(60, 90, 90))
	if a, b := budget.Chance(tight), budget.Chance(loose); a >= b {
		t.Errorf("no trim: chance %v; want less than %v", a, b)
	}
}

// A straight tube between sockets a little out of line has less left to go wrong.
func TestPlannedMissUsesUpGive(t *testing.T) {
	hand := budget.Errors{Port: 0.2, Facing: 0.2, Cut: 0.5}
	before := 2.0
	for _, off := range []float64{0, 0.3, 0.5, 0.8} {
		j := table(hand, 100)
		j.Ends[1].Stop, j.Ends[1].Port = j.Ends[1].Stop.Add(vec{0, off, 0}), j.Ends[1].Port.Add(vec{0, off, 0})
		c := budget.Chance(j)
		if c >= before {
			t.Errorf("%g mm out of line: chance %v after %v", off, c, before)
		}
		before = c
	}
}

func ExampleOf() {
	b := budget.Of(table(budget.Errors{Turn: 1}, 100, bend(80, 90, 0)))
	fmt.Printf("%.2f mm aside, %.1f degrees askew; %.0f in 100 seat; %s\n", b.AsBent.Aside(), b.AsBent.Askew(), 100*b.Chance, b.Largest[0].What)
	// Output: 1.75 mm aside, 1.0 degrees askew; 94 in 100 seat; turn of bend 1
}

// BenchmarkOf looks at ten tubes of one to six bends, as many as a large loop has.
func BenchmarkOf(b *testing.B) {
	var jobs [10]budget.Job
	for i := range jobs {
		jobs[i] = randomJob(rand.New(rand.NewPCG(uint64(i), 5)), 1+i%6)
	}
	b.ReportAllocs()
	for b.Loop() {
		for i := range jobs {
			budget.Of(jobs[i])
		}
	}
}

// BenchmarkChance is the part a search asks for, of one tube of three bends.
func BenchmarkChance(b *testing.B) {
	j := randomJob(rand.New(rand.NewPCG(2, 5)), 3)
	b.ReportAllocs()
	for b.Loop() {
		budget.Chance(j)
	}
}
