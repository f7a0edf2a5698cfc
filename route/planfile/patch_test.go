package planfile_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/route/planfile"
)

// byHand is the full example with what people add: blank lines, comments of
// every kind, odd spacing.
func byHand(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile("testdata/layout.plan.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// lineChanges gives the lines that went and that came, in order.
func lineChanges(before, after string) (gone, came []string) {
	old, made := strings.Split(before, "\n"), strings.Split(after, "\n")
	for len(old) > 0 || len(made) > 0 {
		switch {
		case len(old) > 0 && len(made) > 0 && old[0] == made[0]:
			old, made = old[1:], made[1:]
		case len(old) > 0 && !slices.Contains(made, old[0]):
			gone, old = append(gone, old[0]), old[1:]
		case len(made) > 0:
			came, made = append(came, made[0]), made[1:]
		default:
			gone, old = append(gone, old[0]), old[1:]
		}
	}
	return gone, came
}

func TestOnlyWhatChangedIsChanged(t *testing.T) {
	tests := []struct {
		name       string
		edit       func(p *route.Plan)
		gone, came []string
	}{
		{name: "nothing", edit: func(*route.Plan) {}},
		{
			name: "a number keeps the comment after it", edit: func(p *route.Plan) { p.Clear = 5.5 },
			gone: []string{"clear:   4.0    # a finger's breadth less would do"},
			came: []string{"clear:   5.5    # a finger's breadth less would do"},
		},
		{
			name: "one of three numbers", edit: func(p *route.Plan) { p.Parts[0].At[1] = 25 },
			gone: []string{"    at: [ 300, 20,  120 ]   # measured from the door"},
			came: []string{"    at: [ 300, 25,  120 ]   # measured from the door"},
		},
		{
			name: "a default left out is written once it is none", edit: func(p *route.Plan) { p.KeepOver = 90 },
			came: []string{"keep_over: 90"},
		},
		{
			name: "a key added inside brackets", edit: func(p *route.Plan) { p.Weigh.Fitting = 70 },
			gone: []string{"weigh: {bend: 60, price: 8}"},
			came: []string{"weigh: {bend: 60, fitting: 70, price: 8}"},
		},
		{
			name: "a corner added", edit: func(p *route.Plan) {
				p.Runs[0].Via = append(p.Runs[0].Via, mgl64.Vec3{210, 40, 150})
			},
			gone: []string{"    via: [[200, 40, 120]] # round the cable duct"},
			came: []string{"    via: [[200, 40, 120], [210, 40, 150]] # round the cable duct"},
		},
		{
			name: "a corner taken away", edit: func(p *route.Plan) { p.Runs[0].Via = nil },
			gone: []string{"    via: [[200, 40, 120]] # round the cable duct"},
		},
		{
			name: "a chain chosen", edit: func(p *route.Plan) {
				p.Runs[1].Start = route.Chain{{Fitting: "offset-15", Roll: 90, Rolled: true}, {Fitting: "socket-16"}}
			},
			came: []string{"    start: [{use: offset-15, roll: 90}, socket-16]"},
		},
		{
			name: "a part renamed, and what names it", edit: func(p *route.Plan) {
				p.Parts[1].Name = "slab"
				p.Runs[0].To.Part, p.Runs[1].From.Part = "slab", "slab"
			},
			gone: []string{"  plate: # of our own, off the shop's drawing", "    to: plate.in", "    from: plate.out"},
			came: []string{"  slab: # of our own, off the shop's drawing", "    to: slab.in", "    from: slab.out"},
		},
		{
			name: "a run taken away, with the comment above it", edit: func(p *route.Plan) { p.Runs = p.Runs[:1] },
			gone: []string{"  # back to the pump, the short way", "  plate-to-pump:", "    from: plate.out", "    to: pump.in"},
		},
		{
			name: "a run added", edit: func(p *route.Plan) {
				p.Runs = append(p.Runs, route.Run{Name: "again", From: p.Runs[0].From, To: p.Runs[0].To})
			},
			came: []string{"  again:", "    from: pump.out", "    to: plate.in"},
		},
		{
			name: "a section added where it belongs", edit: func(p *route.Plan) {
				p.Fittings = []route.Fitting{{Name: "riser", Kind: route.Extender, Length: 12, Body: 20}}
			},
			came: []string{"fittings:", "  riser: {kind: extender, length: 12, body: {od: 20}}", ""},
		},
		{
			name: "a bar no longer sold", edit: func(p *route.Plan) { p.Stock = p.Stock[1:] },
			gone: []string{"  - {tube: petg-16-12, length: 500, price: 7.40}   # round the corner"},
		},
		{
			name: "a changed catalogue entry says no more than it did", edit: func(p *route.Plan) { p.Tubes[0].Radius = 40 },
			gone: []string{"  petg-16-12: {radius: 36, known_from: measured}   # the long former"},
			came: []string{"  petg-16-12: {radius: 40, known_from: measured}   # the long former"},
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			before := byHand(t)
			plan, src, err := planfile.Read("layout.plan.yaml", []byte(before))
			if err != nil {
				t.Fatal(err)
			}
			plan = plan.Clone()
			tt.edit(&plan)
			after, report, err := planfile.Write(plan, src)
			if err != nil || report.CommentsLost || report.Message != "" {
				t.Fatalf("Write = %+v, %v", report, err)
			}
			gone, came := lineChanges(before, string(after))
			if !slices.Equal(gone, tt.gone) || !slices.Equal(came, tt.came) {
				t.Errorf("gone %q\nwant %q\ncame %q\nwant %q\n%s", gone, tt.gone, came, tt.came, after)
			}
		})
	}
}

// Parts and runs put into another order take their comments along.
func TestOrderIsChangedByMovingLines(t *testing.T) {
	before := byHand(t)
	plan, src, err := planfile.Read("layout.plan.yaml", []byte(before))
	if err != nil {
		t.Fatal(err)
	}
	plan = plan.Clone()
	slices.Reverse(plan.Parts)
	slices.Reverse(plan.Runs)
	slices.Reverse(plan.Parts[0].Ports)
	after, report, err := planfile.Write(plan, src)
	if err != nil || report.CommentsLost {
		t.Fatalf("Write = %+v, %v", report, err)
	}
	back, _, err := planfile.Read("layout.plan.yaml", after)
	if err != nil || !planfile.Same(plan, back) {
		t.Fatalf("it came back different (%v):\n%s", err, after)
	}
	old, made := strings.Split(before, "\n"), strings.Split(string(after), "\n")
	slices.Sort(old)
	slices.Sort(made)
	if !slices.Equal(old, made) {
		t.Errorf("lines were changed, not moved:\n%s", after)
	}
	if !strings.Contains(string(after), "  # back to the pump, the short way\n  plate-to-pump:") {
		t.Errorf("a comment did not go with its run:\n%s", after)
	}
}

// The file may count in other units from now on: every length changes, every
// comment stays, and nothing moves by more than rounding.
func TestUnitsAreChangedInPlace(t *testing.T) {
	before := byHand(t)
	plan, src, err := planfile.Read("layout.plan.yaml", []byte(before))
	if err != nil {
		t.Fatal(err)
	}
	plan.Units = route.Inches
	after, report, err := planfile.Write(plan, src)
	if err != nil || report.CommentsLost {
		t.Fatalf("Write = %+v, %v", report, err)
	}
	if got, want := strings.Count(string(after), "#"), strings.Count(before, "#"); got != want {
		t.Errorf("%d comments, want %d:\n%s", got, want, after)
	}
	back, src, err := planfile.Read("layout.plan.yaml", after)
	if err != nil || !planfile.Same(plan, back) {
		t.Fatalf("it came back different (%v):\n%s", err, after)
	}
	back.Units = route.Millimetres
	again, _, err := planfile.Write(back, src)
	if home, _, readErr := planfile.Read("layout.plan.yaml", again); err != nil || readErr != nil || !planfile.Same(home, back) {
		t.Errorf("back in mm it differs (%v, %v):\n%s", err, readErr, again)
	}
}

// Line ends and a byte order mark stay as they are.
func TestLineEndsStay(t *testing.T) {
	before := "\uFEFF" + strings.ReplaceAll(byHand(t), "\n", "\r\n")
	plan, src, err := planfile.Read("layout.plan.yaml", []byte(before))
	if err != nil {
		t.Fatal(err)
	}
	plan = plan.Clone()
	plan.KeepOver = 90
	plan.Runs = append(plan.Runs, route.Run{Name: "again", From: plan.Runs[0].From, To: plan.Runs[0].To})
	after, _, err := planfile.Write(plan, src)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.HasPrefix(string(after), "\uFEFF") || strings.Count(string(after), "\n") != strings.Count(string(after), "\r\n") {
		t.Errorf("line ends are mixed or the byte order mark is gone:\n%q", after)
	}
}

// What cannot be changed in place is written afresh, and said.
func TestWrittenAfreshIsSaid(t *testing.T) {
	tests := map[string]string{
		"text over several lines": "format: 1\nname: Bench\n  test # why\ncase: {size: [1, 2, 3]}\n",
		"a pair without brackets": "format: 1\nname: a # why\ncase: {size: [1, 2, 3]}\nparts:\n  p: {solids: [box: {from: [0, 0, 0], to: [1, 1, 1]}]}\n",
	}
	for name, text := range tests {
		plan, src, err := planfile.Read("any.plan.yaml", []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		plan.Name = "Another"
		for i := range plan.Parts {
			plan.Parts[i].Solids = append(slices.Clone(plan.Parts[i].Solids), route.Solid{Box: true, To: mgl64.Vec3{1, 1, 1}})
		}
		after, report, err := planfile.Write(plan, src)
		if err != nil || !report.CommentsLost || report.Message == "" {
			t.Errorf("%s: Write = %+v, %v; want the loss of comments told\n%s", name, report, err, after)
		}
		if back, _, err := planfile.Read("any.plan.yaml", after); err != nil || !planfile.Same(plan, back) {
			t.Errorf("%s: it came back different (%v):\n%s", name, err, after)
		}
	}
}
