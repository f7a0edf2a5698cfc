package sheet_test

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
)

type vec = mgl64.Vec3

// petg is a tube like the plan format's example.
func petg() route.Tube {
	return route.Tube{
		Name: "petg-16-12", Material: "petg", KnownFrom: route.Typical,
		Tube: bends.Tube{
			OD: 16, ID: 12, Radius: 32, LeastRadius: 28, StraightBetween: 20, StraightEnd: 26,
			Springback: bends.Springback{Degrees: 1, Percent: 1.5}, Trim: 15,
		},
	}
}

// kit is the fittings of the plan format's example.
func kit() []route.Fitting {
	return []route.Fitting{
		{
			Name: "socket-16", Kind: route.Socket, OD: 16, Thread: "G1/4", Stop: 6, Insertion: route.Insertion{Full: 12, Least: 9},
			SeatGap: 0.5, Collar: route.Collar{OD: 24, Length: 20}, Bore: 10, Price: 6.2, KnownFrom: route.Typical,
		},
		{Name: "offset-15", Kind: route.Offset, Thread: "G1/4", Length: 22, Sideways: 15, Rotary: true, Body: 20, Price: 9.5, KnownFrom: route.Drawing},
		{Name: "plug", Kind: route.Plug, Thread: "G1/4", Length: 4, Body: 18, KnownFrom: route.Drawing},
	}
}

// block is a part that is one box with ports.
func block(name string, from, to vec, ports ...route.Port) route.Part {
	return route.Part{Name: name, Solids: []route.Solid{{Box: true, From: from, To: to}}, Ports: ports, KnownFrom: route.Measured}
}

func port(name string, at, facing vec) route.Port {
	return route.Port{Name: name, At: at, Facing: facing, Thread: "G1/4", Flow: route.Any, KnownFrom: route.Measured}
}

// solved forms every run of a plan through its via points, as a drawn path.
func solved(t testing.TB, p route.Plan) find.Solution {
	t.Helper()
	var sol find.Solution
	for _, r := range p.Runs {
		sol.Runs = append(sol.Runs, find.Solved{Run: r, Ways: []find.Way{drawn(t, p, r)}, Drawn: true})
	}
	return sol
}

func drawn(t testing.TB, p route.Plan, r route.Run) find.Way {
	t.Helper()
	tube, _ := p.TubeOf(r)
	ends := [2]route.Laid{laid(t, p, r.From, r.Start), laid(t, p, r.To, r.End)}
	path := bends.Path{Corners: append(append([]vec{ends[0].Stop.At}, r.Via...), ends[1].Stop.At)}
	f, err := bends.Form(tube.Tube, path)
	if err != nil {
		t.Fatalf("the fixture's run %q: %v", r.Name, err)
	}
	w := find.Way{Run: r.Name, Name: fmt.Sprintf("%d bends", len(f.Bends)), Tube: tube, Start: ends[0], End: ends[1], Formed: f, Seals: 4, Reason: "drawn by hand"}
	for i, e := range ends {
		w.Ends.SeatGap[i], w.Ends.Play[i] = e.Socket.SeatGap, e.Socket.Insertion.Play()
	}
	return w
}

func laid(t testing.TB, p route.Plan, ref route.PortRef, chain route.Chain) route.Laid {
	t.Helper()
	at, ok := p.FindPort(ref)
	if !ok {
		t.Fatalf("the fixture has no port %s", ref)
	}
	if chain == nil {
		chain = route.Chain{{Fitting: "socket-16"}}
	}
	l, err := p.Lay(at, chain)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// list builds the cut list of a plan whose runs are drawn.
func list(t testing.TB, p route.Plan, findings ...check.Finding) cutlist.List {
	t.Helper()
	l, err := cutlist.Build(context.Background(), p, solved(t, p))
	if err != nil {
		t.Fatal(err)
	}
	if len(findings) > 0 {
		l.Findings = findings
	}
	return l
}

// smallPlan is a machine of three parts: a straight, one bend, and two bends
// with a roll.
func smallPlan() route.Plan {
	p := route.Defaults()
	p.Spares = route.Spares{}
	p.Name, p.Case, p.Tube = "Conservation scanner (test)", vec{430, 200, 400}, "petg-16-12"
	p.Tubes, p.Fittings = []route.Tube{petg()}, kit()
	p.Parts = []route.Part{
		block("pump", vec{300, 0, 100}, vec{380, 100, 200}, port("out", vec{300, 40, 150}, vec{-1, 0, 0}), port("in", vec{340, 100, 150}, vec{0, 1, 0}),
			port("drain", vec{340, 0, 200}, vec{0, 0, 1})),
		block("plate", vec{20, 0, 60}, vec{100, 30, 220}, port("in", vec{100, 15, 100}, vec{1, 0, 0}), port("out", vec{60, 30, 200}, vec{0, 1, 0})),
		{
			Name: "reservoir", Solids: []route.Solid{{From: vec{200, 20, 330}, To: vec{200, 160, 330}, Radius: 30}}, KnownFrom: route.Measured,
			Ports: []route.Port{port("side", vec{170, 40, 330}, vec{-1, 0, 0}), port("top", vec{200, 160, 330}, vec{0, 1, 0})},
		},
		block("radiator", vec{20, 150, 20}, vec{270, 195, 90}, port("in", vec{270, 170, 60}, vec{1, 0, 0}), port("out", vec{60, 150, 80}, vec{0, -1, 0})),
	}
	p.Runs = []route.Run{
		{
			Name: "pump-to-plate", From: route.PortRef{Part: "pump", Port: "out"}, To: route.PortRef{Part: "plate", Port: "in"},
			Via: []vec{{230, 40, 150}, {170, 15, 100}},
		},
		{
			Name: "reservoir-to-plate", From: route.PortRef{Part: "reservoir", Port: "side"}, To: route.PortRef{Part: "plate", Port: "out"},
			Via: []vec{{110, 40, 330}, {60, 120, 330}, {60, 120, 200}},
		},
		{
			Name: "pump-to-radiator", From: route.PortRef{Part: "pump", Port: "in"}, To: route.PortRef{Part: "radiator", Port: "in"},
			Via: []vec{{340, 170, 150}, {340, 170, 60}},
		},
	}
	p.Stock = []route.Stock{{Tube: "petg-16-12", Length: 500, Price: 7.4}, {Tube: "petg-16-12", Length: 1000, Price: 12.9, Most: 4}}
	p.Offcuts = []route.Offcuts{{Tube: "petg-16-12", Lengths: []float64{310, 225.5}}}
	p.OnHand = []route.OnHand{{Item: "socket-16", Count: 4}}
	return p
}

// stressList is the stress plan's list with its bars filled one after another,
// which is quicker than packing them well and as good for drawing.
func stressList(t testing.TB) cutlist.List {
	t.Helper()
	p := stressPlan()
	l := cutlist.List{Plan: p, Draft: true, Findings: stressFindings(p)}
	bar := cutlist.Bar{Tube: p.Tube, Length: 2000, From: "stock", Price: 22.5, Left: 2000}
	for i, s := range solved(t, p).Runs {
		w, _ := s.Way()
		tube := cutlist.Tube{Letter: letter(i), Run: s.Run.Name, Way: w, Cut: w.Formed.Cut(w.Ends, p.Saw.Square), Bench: w.Formed.Bench(w.Ends)}
		l.Tubes = append(l.Tubes, tube)
		if bar.Left < tube.Cut.Blank+1 {
			l.Bars = append(l.Bars, bar)
			bar.Left, bar.Pieces, bar.Keep = 2000, nil, i%2 == 0
		}
		bar.Pieces = append(bar.Pieces, cutlist.Piece{Run: s.Run.Name, Machine: 1 + i%2, Spare: i%9 == 8, Length: tube.Cut.Blank})
		bar.Left -= tube.Cut.Blank + 1
		l.Reasons = append(l.Reasons, cutlist.Reason{What: s.Run.To.Part + ": place and facing", How: strings.Repeat("Measure it from the corner. ", 4), Runs: []string{s.Run.Name}})
		l.Buy = append(l.Buy, cutlist.Item{Item: s.Run.Name, Need: 2 + i, OnHand: i % 3, Buy: 2 + i - i%3, Each: 6.25, Price: 6.25 * float64(2+i-i%3), Note: strings.Repeat("note ", i%9)})
	}
	l.Bars = append(l.Bars, bar)
	l.Proof = []cutlist.Proof{{Tube: p.Tube, Cost: 450.5, Bound: 432}}
	return l
}

func letter(n int) string {
	if n >= 26 {
		return letter(n/26-1) + letter(n%26)
	}
	return string(rune('A' + n))
}

const (
	longGreek    = "σωλήνας-ψύξης-από-την-αντλία-προς-τον-εναλλάκτη-θερμότητας"
	longCyrillic = "охлаждающая-трубка-от-насоса-к-водоблоку-процессора-через-радиатор"
)

// stressPlan has 40 runs of none to twelve bends, with long names, in inches.
func stressPlan() route.Plan {
	p := route.Defaults()
	p.Name = "Μηχανή ψύξης Ёж " + strings.Repeat("very long plan name ", 8)
	p.Units, p.Case, p.Tube = route.Inches, vec{1500, 1000, 700}, "petg-16-12"
	p.Tubes, p.Fittings = []route.Tube{petg()}, kit()
	p.Spares, p.Build = route.Spares{Bent: 1, Straight: 1}, 2
	p.Stock = []route.Stock{{Tube: "petg-16-12", Length: 1500, Price: 17.9}, {Tube: "petg-16-12", Length: 2000, Price: 22.5}}
	wall := block("стена-"+longCyrillic, vec{0, 0, 0}, vec{20, 1000, 700})
	p.Parts = []route.Part{wall}
	for i := range 40 {
		stressRun(&p, i)
	}
	return p
}

// stressRun adds run i with i mod 13 bends, stepping away from the wall.
func stressRun(p *route.Plan, i int) {
	at := vec{20, 40 + float64(i/4)*95, 60 + float64(i%4)*160}
	p.Parts[0].Ports = append(p.Parts[0].Ports, port(fmt.Sprintf("θύρα-%02d", i), at, vec{1, 0, 0}))
	at[0] += 106
	var via []vec
	dir := vec{1, 0, 0}
	for k := range i % 13 {
		via = append(via, at)
		dir = [...]vec{{0, 1, 0}, {1, 0, 0}, {0, 0, 1}, {1, 0, 0}, {0, -1, 0}, {1, 0, 0}, {0, 0, -1}, {1, 0, 0}}[k%8]
		at = at.Add(dir.Mul(90))
	}
	name := fmt.Sprintf("%02d-%s", i+1, [...]string{longGreek, longCyrillic, "gpu", longGreek + "-" + longCyrillic}[i%4])
	end := at.Add(dir.Mul(16))
	size := vec{30, 30, 30}
	p.Parts = append(p.Parts, block(fmt.Sprintf("μέρος-%02d-%s", i+1, longCyrillic), end.Add(dir.Mul(15)).Sub(size.Mul(0.5)), end.Add(dir.Mul(15)).Add(size.Mul(0.5)),
		port("in", end, dir.Mul(-1))))
	p.Runs = append(p.Runs, route.Run{
		Name: name, From: route.PortRef{Part: p.Parts[0].Name, Port: fmt.Sprintf("θύρα-%02d", i)},
		To: route.PortRef{Part: p.Parts[i+1].Name, Port: "in"}, Via: via,
	})
}

// stressFindings is findings of every severity with long texts.
func stressFindings(p route.Plan) []check.Finding {
	var all []check.Finding
	for i, sev := range []check.Severity{check.Error, check.Error, check.Warning, check.Note} {
		for k := range 6 {
			all = append(all, check.Finding{
				Code: check.TubeHitsPart, Severity: sev, Measure: -3.25 - float64(k), Unit: []string{"mm", "deg", "V", ""}[i],
				What: fmt.Sprintf("The tube of %s passes through %s by 3.2 mm.", p.Runs[(i*7+k)%len(p.Runs)].Name, p.Parts[k%len(p.Parts)].Name),
				Fix:  "Move the part 7.2 mm to the right, or choose the way “two bends”, or put an extender of 10 mm on " + p.Runs[k%len(p.Runs)].Name + ".",
				At:   [3]float64{200 + 60*float64(k), 100 + 120*float64(i), 300}, Placed: k%2 == 0,
			})
		}
	}
	return all
}
