package planfile_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/route/planfile"
)

// Rare layouts are changed in place too; each row says what its text becomes.
func TestRareLayoutsAreChangedInPlace(t *testing.T) {
	head := "format: 1\nname: a\ncase: {size: [9, 9, 9]}\n"
	twoRuns := "parts: {p: {ports: {x: {at: [0, 0, 0], facing: +x}}}}\n"
	tests := []struct {
		name, text string
		edit       func(p *route.Plan)
		want       string
	}{
		{
			"a file without a line break at its end", head + "build: 2",
			func(p *route.Plan) { p.Spares = route.Spares{Bent: 1} },
			head + "spares: {bent: 1}\nbuild: 2",
		},
		{
			"a section after the last line without a break", strings.TrimSuffix(head, "\n"),
			func(p *route.Plan) { p.Build = 3 },
			head + "build: 3\n",
		},
		{
			"single quotes with a quote inside", head + "tubes: {'it''s': {material: 'brass', od: 2, id: 1}}\n",
			func(p *route.Plan) { p.Tubes[0].OD = 3 },
			head + "tubes: {'it''s': {material: 'brass', od: 3, id: 1}}\n",
		},
		{
			"double quotes with a quote inside", head + "tubes: {\"a\\\"b\": {material: brass, od: 2, id: 1}}\n",
			func(p *route.Plan) { p.Tubes[0].ID = 1.5 },
			head + "tubes: {\"a\\\"b\": {material: brass, od: 2, id: 1.5}}\n",
		},
		{
			"the first of several in brackets", head + "offcuts: {petg-16-12: [310, 200]}\n",
			func(p *route.Plan) { p.Offcuts[0].Lengths = []float64{200} },
			head + "offcuts: {petg-16-12: [200]}\n",
		},
		{
			"before the first in brackets", head + "offcuts: {petg-16-12: [310]}\n",
			func(p *route.Plan) { p.Offcuts[0].Lengths = []float64{400, 310} },
			head + "offcuts: {petg-16-12: [400, 310]}\n",
		},
		{
			"the last offcut used up", head + "offcuts: {petg-16-12: [310]}\n",
			func(p *route.Plan) { p.Offcuts[0].Lengths = nil },
			head + "offcuts: {petg-16-12: []}\n",
		},
		{
			"brackets over several lines", head + "on_hand: {\n  plug: 2, # in the drawer\n  socket-16: 4\n}\n",
			func(p *route.Plan) { p.OnHand[1].Count = 5 },
			head + "on_hand: {\n  plug: 2, # in the drawer\n  socket-16: 5\n}\n",
		},
		{
			"a key before the first in brackets", head + "weigh: {price: 8}\n",
			func(p *route.Plan) { p.Weigh.Bend = 7 },
			head + "weigh: {bend: 7, price: 8}\n",
		},
		{
			"a bar before the first", head + "stock:\n- {tube: petg-16-12, length: 500}\n",
			func(p *route.Plan) {
				p.Stock = []route.Stock{{Tube: "petg-16-12", Length: 250}, p.Stock[0]}
			},
			head + "stock:\n- {tube: petg-16-12, length: 250}\n- {tube: petg-16-12, length: 500}\n",
		},
		{
			"an empty section filled", head + "stock: # none yet\n",
			func(p *route.Plan) { p.Stock = []route.Stock{{Tube: "petg-16-12", Length: 250}} },
			head + "stock:\n  - {tube: petg-16-12, length: 250} # none yet\n",
		},
		{
			"an axis for a vector", head + twoRuns,
			func(p *route.Plan) { p.Parts[0].Ports[0].Facing = mgl64.Vec3{0, 0.6, 0.8} },
			head + strings.Replace(twoRuns, "+x", "[0, 0.6, 0.8]", 1),
		},
		{
			"a roll given to a step", head + twoRuns + "tube: petg-16-12\nruns: {r: {from: p.x, to: p.x, start: [elbow-90, socket-16]}}\n",
			func(p *route.Plan) { p.Runs[0].Start[0].Roll, p.Runs[0].Start[0].Rolled = 45, true },
			head + twoRuns + "tube: petg-16-12\nruns: {r: {from: p.x, to: p.x, start: [{use: elbow-90, roll: 45}, socket-16]}}\n",
		},
		{
			"a step that says use without a roll stays", head + twoRuns + "tube: petg-16-12\nruns: {r: {from: p.x, to: p.x, start: [{use: socket-16}], end: [socket-16]}}\n",
			func(p *route.Plan) { p.Runs[0].End = nil },
			head + twoRuns + "tube: petg-16-12\nruns: {r: {from: p.x, to: p.x, start: [{use: socket-16}]}}\n",
		},
		{
			"names in brackets in another order", head + "on_hand: {plug: 2, socket-16: 4}\n",
			func(p *route.Plan) { slices.Reverse(p.OnHand) },
			head + "on_hand: {socket-16: 4, plug: 2}\n",
		},
		{
			"zeros that say nothing stay", head + "parts: {p: {at: [0, 0, 0], turn: [0, 0, 0], volume: 0, metals: []}}\n",
			func(p *route.Plan) { p.Parts[0].At[0] = 1 },
			head + "parts: {p: {at: [1, 0, 0], turn: [0, 0, 0], volume: 0, metals: []}}\n",
		},
		{
			"a plan named by its file stays without a name", "format: 1\ncase: {size: [9, 9, 9]}\n",
			func(p *route.Plan) { p.Case[0] = 8 },
			"format: 1\ncase: {size: [8, 9, 9]}\n",
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			plan, src, err := planfile.Read("rare.plan.yaml", []byte(tt.text))
			if err != nil {
				t.Fatal(err)
			}
			plan = plan.Clone()
			tt.edit(&plan)
			got, report, err := planfile.Write(plan, src)
			if err != nil || string(got) != tt.want || report.Message != "" {
				t.Errorf("Write = %+v, %v, and the text\n%s\nwant\n%s", report, err, got, tt.want)
			}
		})
	}
}

// A comment inside brackets that are written afresh is gone, and that is said.
func TestCommentsInsideBracketsAreMissed(t *testing.T) {
	text := "format: 1\ncase: {size: [9, 9, 9]}\non_hand: {\n  plug: 2, # in the drawer\n  socket-16: 4\n}\n"
	plan, src, err := planfile.Read("rare.plan.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	plan.OnHand = plan.OnHand[1:]
	got, report, err := planfile.Write(plan, src)
	if err != nil || !report.CommentsLost || !strings.HasPrefix(report.Message, "Some comments") {
		t.Errorf("Write = %+v, %v, and the text\n%s", report, err, got)
	}
}

// Long lines in brackets are set out one entry to a line.
func TestLongTablesAreSetOutInLines(t *testing.T) {
	plan := read(t, least)
	for _, name := range []string{"socket-12", "socket-14", "socket-15", "socket-16", "extender-10", "extender-15", "offset-15", "plug"} {
		plan.OnHand = append(plan.OnHand, route.OnHand{Item: name, Count: 12})
	}
	got, _, err := planfile.Write(plan, nil)
	if err != nil || !strings.Contains(string(got), "on_hand:\n  socket-12: 12\n  socket-14: 12\n") {
		t.Errorf("Write = %v, and the text\n%s", err, got)
	}
}

// What keeps a plan from its file is told with the value's name or the reader's words.
func TestPlansNoFileCanHold(t *testing.T) {
	tests := []struct {
		edit func(p *route.Plan)
		want string
	}{
		{func(p *route.Plan) { p.Name = "a\nb" }, "name holds a character that cannot be printed"},
		{func(p *route.Plan) { p.Tube = "none such" }, "names no tube"},
		{func(p *route.Plan) { p.Clear = 2e6 }, "must be at most 1000000"},
		{func(p *route.Plan) { p.Build = 0 }, "Plan.Build"},
		{func(p *route.Plan) { p.Parts = []route.Part{{Name: "a"}, {Name: "a"}} }, "given twice"},
	}
	for _, tt := range tests {
		plan := read(t, least)
		tt.edit(&plan)
		_, _, err := planfile.Write(plan, nil)
		var no *planfile.NotWritableError
		if !errors.As(err, &no) || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("Write = %v; want a NotWritableError with %q", err, tt.want)
		}
	}
}

func TestErrorsOfSavingSayTheWayOut(t *testing.T) {
	for want, err := range map[string]error{
		"save over it":              &planfile.ChangedOnDiskError{Path: "x"},
		"take the mark away":        &planfile.ReadOnlyError{Path: "x"},
		"choose another name":       &planfile.NotAFileError{Path: "x"},
		"so the file is as it was":  &planfile.SaveError{Path: "x", Step: "write beside it", Err: errors.New("full")},
		"the disk did not confirm":  &planfile.SaveError{Path: "x", Done: true, Err: errors.New("full")},
		"would not be read again":   &planfile.NotWritableError{Where: "Plan.Clear"},
		"a second line of the same": planfile.Problem{File: "x", Line: 1, Col: 2, What: "w", Fix: "a second line of the same", Text: "t"},
	} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("%T says %q, want it to hold %q", err, err, want)
		}
	}
}

func TestAPlanWithoutANameTakesItsFiles(t *testing.T) {
	for file, want := range map[string]string{
		"desk.plan.yaml": "desk", "a/b/two words.plan.yaml": "two words", ".plan.yaml": "plan", "": "plan", "/": "plan",
		"odd\x01name.plan.yaml": "oddname", strings.Repeat("x", 200): strings.Repeat("x", 100), "other.yml": "other.yml",
	} {
		plan, _, err := planfile.Read(file, []byte(least))
		if err != nil || plan.Name != want {
			t.Errorf("Read(%q) gives the name %q (%v), want %q", file, plan.Name, err, want)
		}
	}
}
