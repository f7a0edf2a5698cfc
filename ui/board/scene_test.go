package board

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
)

func TestSceneKnowsItsPortsAndTubes(t *testing.T) {
	s := demoScene(t)
	p, ok := s.Port(route.PortRef{Part: "pump", Port: "in"})
	if !ok || p.Run != "sensor to pump" || math.Abs(p.Radius-(12+portFlange)) > 1e-9 {
		t.Errorf("pump.in is %+v; its collar is 24 mm wide", p)
	}
	if p, _ := s.Port(route.PortRef{Part: "pump", Port: "fill"}); p.Used() || p.Radius != portRadius {
		t.Errorf("pump.fill is %+v, want a free one", p)
	}
	tube, ok := s.Tube("sensor to pump")
	if !ok || tube.Letter != "F" || tube.OD != 16 || len(tube.Corners) != 2 {
		t.Errorf("the tube is %+v", tube)
	}
	part, _ := s.Part("supply")
	if part.Origin != v3(290, 0, 268) || part.Hi.Sub(v3(430, 87, 393)).Len() > 1e-3 {
		t.Errorf("the supply is %+v", part)
	}
	lo, hi := s.Bounds()
	if outside(lo, v3(-1, -1, -1), v3(0, 0, 0)) > 0 || outside(hi, v3(430, 200, 400), v3(431, 201, 401)) > 0 {
		t.Errorf("the scene reaches from %v to %v", lo, hi)
	}
}

// A tube has one letter on the board, in the list and on paper: its run's place
// in the plan, also before the list is made.
func TestLettersAreTheLists(t *testing.T) {
	plan, list, sol := demo(t)
	for _, l := range []cutlist.List{list, {}} {
		s := NewScene(plan, l, sol)
		for i, solved := range sol.Runs {
			if tube, ok := s.Tube(solved.Run.Name); ok && tube.Letter != cutlist.Letter(i) {
				t.Errorf("%s has the letter %s, want %s", solved.Run.Name, tube.Letter, cutlist.Letter(i))
			}
		}
	}
}

// TestTubesHaveTheirTrueDiameter measures every vertex from the centreline.
func TestTubesHaveTheirTrueDiameter(t *testing.T) {
	plan, list, sol := demo(t)
	s := NewScene(plan, list, sol)
	way, _ := sol.Runs[0].Way()
	seen := 0
	for i := range s.solids {
		b := &s.solids[i]
		target := s.targets[b.id]
		if target.Run != "pump to card" || target.Piece == Whole {
			continue
		}
		for _, v := range s.mesh.at[b.verts.from:b.verts.to] {
			seen++
			if d := fromCentreline(way, v.wide()); math.Abs(d-8) > 0.01 {
				t.Fatalf("a vertex of piece %d is %.3f mm from the centreline, want 8", target.Piece, d)
			}
		}
	}
	if seen == 0 {
		t.Fatal("the tube has no vertices")
	}
}

// fromCentreline is the least distance to points along the tube, 0.5 mm apart:
// half of that beside the foot adds 0.004 mm to 8.
func fromCentreline(way find.Way, p mgl64.Vec3) float64 {
	least := math.Inf(1)
	for _, piece := range way.Formed.Pieces() {
		for x := piece.Start; x <= piece.End+0.5; x += 0.5 {
			at, _ := piece.At(x)
			least = min(least, at.Sub(p).Len())
		}
	}
	return least
}

func TestRunWithoutATubeShowsWhereItWasAsked(t *testing.T) {
	plan, list, sol := demo(t)
	sol.Runs[0].Ways, sol.Runs[0].Chosen, sol.Runs[0].Problem = nil, -1, errors.New("no way")
	sol.Runs[0].Run.Via = []mgl64.Vec3{v3(200, 100, 200)}
	s := NewScene(plan, list, sol)
	tube, ok := s.Tube("pump to card")
	if !ok || !tube.Broken || len(tube.Corners) != 3 || tube.Corners[1] != v3(200, 100, 200) {
		t.Fatalf("the run is %+v", tube)
	}
	if p, _ := s.Port(route.PortRef{Part: "pump", Port: "out"}); p.Run != "pump to card" {
		t.Errorf("its port counts as free: %+v", p)
	}
	c := NewCamera(Above, s.Case, 900, 650)
	p, _ := painted(&s, c, Show{Words: true})
	a, b := p.spotOf(tube.Corners[0]), p.spotOf(tube.Corners[1])
	if got := p.Hit(float64(a.x+b.x)/2, float64(a.y+b.y)/2); got != RunTarget("pump to card") {
		t.Errorf("on its line is %+v", got)
	}
	if got := s.Words(RunTarget("pump to card")); !strings.HasSuffix(got, "no tube yet") {
		t.Errorf("it is told as %q", got)
	}
}

func TestDrawnPathKeepsCornersWithoutATurn(t *testing.T) {
	plan, list, sol := demo(t)
	via := []mgl64.Vec3{v3(270, 152, 90), v3(300, 152, 90)}
	sol.Runs[5].Drawn, sol.Runs[5].Run.Via = true, via
	s := NewScene(plan, list, sol)
	if tube, _ := s.Tube("sensor to pump"); len(tube.Corners) != 4 || tube.Corners[1] != via[0] || tube.Corners[2] != via[1] {
		t.Errorf("corners %v, want the two stops with %v between", tube.Corners, via)
	}
}

func TestWhyNot(t *testing.T) {
	s := demoScene(t)
	ref := func(part, port string) route.PortRef { return route.PortRef{Part: part, Port: port} }
	for i := range s.Ports { // let two ports be free outlets
		if s.Ports[i].Ref == ref("pump", "out") || s.Ports[i].Ref == ref("processor", "out") {
			s.Ports[i].Run, s.Ports[i].Flow = "", route.Out
		}
	}
	tests := []struct {
		a, b route.PortRef
		want string
	}{
		{ref("radiator", "spare"), ref("pump", "fill"), ""},
		{ref("pump", "out"), ref("pump", "fill"), ""},
		{ref("pump", "out"), ref("processor", "out"), "both ports let coolant out"},
		{ref("pump", "fill"), ref("pump", "fill"), "a run needs two ports"},
		{ref("pump", "in"), ref("pump", "fill"), "pump.in already holds sensor to pump"},
		{ref("nothing", "in"), ref("pump", "fill"), "there is no such port"},
	}
	for _, tt := range tests {
		if got := s.WhyNot(tt.a, tt.b); got != tt.want {
			t.Errorf("%s to %s: %q, want %q", tt.a, tt.b, got, tt.want)
		}
	}
}

func TestGapText(t *testing.T) {
	tests := []struct {
		units route.Units
		f     check.Finding
		want  string
	}{
		{route.Millimetres, check.Finding{Measure: -3.04, Unit: "mm"}, "-3.0 mm"},
		{route.Inches, check.Finding{Measure: 25.4, Unit: "mm"}, "1.000 in"},
		{route.Inches, check.Finding{Measure: 2, Unit: "deg"}, "2.0°"},
		{route.Inches, check.Finding{Measure: 0.71, Unit: "V"}, "0.7 V"},
		{route.Inches, check.Finding{Measure: 0.71}, ""},
	}
	for _, tt := range tests {
		got := strings.ReplaceAll(gapText(tt.units, tt.f), "−", "-")
		if got != tt.want {
			t.Errorf("%+v in %s is %q, want %q", tt.f, tt.units, got, tt.want)
		}
	}
}

func TestTintsStayWhenAPartGoes(t *testing.T) {
	plan, list, sol := demo(t)
	tint := func(s *Scene, name string) ink {
		for i := range s.solids {
			if b := &s.solids[i]; s.targets[b.id] == PartTarget(name) {
				return b.ink
			}
		}
		return inks
	}
	all := NewScene(plan, list, sol)
	plan.Parts = plan.Parts[:len(plan.Parts)-1]
	fewer := NewScene(plan, list, sol)
	for _, p := range plan.Parts {
		if a, b := tint(&all, p.Name), tint(&fewer, p.Name); a != b {
			t.Errorf("%s changes its tint from %d to %d", p.Name, a, b)
		}
	}
}

func TestGridSteps(t *testing.T) {
	tests := []struct {
		zoom         float64
		units        route.Units
		fine, coarse float64
	}{
		{1, route.Millimetres, 20, 100},      // 52 px are 52 mm: the next of 1, 2, 5 is 100
		{1.2, route.Millimetres, 10, 50},     // 43 mm: 50
		{3, route.Millimetres, 5, 20},        // 17 mm: 20, in quarters
		{100, route.Millimetres, 0.2, 1},     // 0.52 mm: 1
		{1, route.Inches, 25.4, 101.6},       // 2.05 in: 4 in, in quarters
		{8, route.Inches, 3.175, 12.7},       // 0.26 in: half an inch
		{0.05, route.Millimetres, 500, 2000}, // 1040 mm: 2000, in quarters
	}
	for _, tt := range tests {
		fine, coarse := gridSteps(tt.zoom, tt.units)
		if math.Abs(fine-tt.fine) > 1e-9 || math.Abs(coarse-tt.coarse) > 1e-9 {
			t.Errorf("at %g px per mm in %s: %g and %g, want %g and %g", tt.zoom, tt.units, fine, coarse, tt.fine, tt.coarse)
		}
	}
	for text, mm := range map[string]float64{"12.7": 12.7, "0": math.Copysign(0, -1), "0.2": 0.2} {
		if got := numberText(route.Millimetres, mm); got != text {
			t.Errorf("%g is written %q, want %q", mm, got, text)
		}
	}
	if got := numberText(route.Inches, 12.7); got != "0.5" {
		t.Errorf("12.7 mm are written %q in, want 0.5", got)
	}
}

// TestWordsDoNotOverlap looks at where names, letters and measures stand.
func TestWordsDoNotOverlap(t *testing.T) {
	s := demoScene(t)
	for _, c := range cameras(900, 650) {
		p, _ := painted(s, c, Show{Words: true})
		written := 0
		for i, a := range p.taken {
			for _, b := range p.taken[i+1:] {
				if a.grown(-2.5).hits(b.grown(-2.5)) && !bothMarks(p, a, b) {
					t.Errorf("%v: %v and %v overlap", c.Look, a, b)
				}
			}
			written++
		}
		if written < 12 {
			t.Errorf("%v: only %d words and marks", c.Look, written)
		}
	}
}

// bothMarks reports whether one of two places is a mark or a letter: those
// stand where the thing is, whatever is there already.
func bothMarks(_ *Painter, a, b rect) bool {
	square := func(r rect) bool { return abs((r.x1-r.x0)-(r.y1-r.y0)) < 0.5 }
	return square(a) && square(b)
}
