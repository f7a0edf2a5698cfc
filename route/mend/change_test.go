package mend_test

import (
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"tubewright/route"
	"tubewright/route/mend"
	"tubewright/route/planfile"
)

const commented = `# A machine of invented parts.
format: 1
name: Mended # on the label
units: mm
case: {size: [430, 300, 400]} # inside
tube: petg-16-12
clear: 4 # a finger

# What stands in it.
parts:
  pump: # near the door
    kind: pump-reservoir
    at: [60, 20, 120] # by ruler
    turn: [0, 90, 0] # on its side
  fan:
    at: [10, 20, 30] # beside it
    solids:
      - box: {from: [0, 0, 0], to: [20, 20, 20]} # small
  plate:
    at: [200, 150, 50]
    solids:
      - box: {from: [0, 0, 0], to: [100, 20, 100]}
    ports:
      in: {at: [50, 0, 50], facing: -y, thread: G1/4} # below
      out: {at: [50, 20, 50], facing: +y, thread: G1/4}

# What is asked for.
runs:
  feed: # the short one
    from: pump.out # the lower
    to: plate.in
    # led by hand
    via:
      - [200, 40, 120]
    start: [extender-15, socket-16]
    pick: one bend
  back: # the long one
    from: plate.out
    to: pump.in # the upper

stock:
  - {tube: petg-16-12, length: 1000, price: 12.90, most: 4} # round the corner
# The end.
`

var allChanges = []struct {
	change mend.Change
	words  string
	inches string
}{
	{
		mend.Move{Parts: []string{"pump", "fan"}, By: vec{0, -6, 0}},
		"Move pump 6 mm in -y, and fan with it.", "Move pump 0.236 in in -y, and fan with it.",
	},
	{
		mend.Move{Parts: []string{"fan"}, By: vec{2.5, 0, 12.7}, Mounted: true},
		"Move fan 2.5 mm in +x and 12.7 mm in +z, if it can be fastened there.",
		"Move fan 0.098 in in +x and 0.5 in in +z, if it can be fastened there.",
	},
	{mend.Turn{"fan", 2, -90}, "Turn fan by -90° about z.", ""},
	{mend.Turn{"pump", 1, 180}, "Turn pump half round about y.", ""},
	{
		mend.Former{"petg-16-12", 28, 32},
		"Use a 28 mm former for petg-16-12 instead of one of 32 mm.",
		"Use a 1.102 in former for petg-16-12 instead of one of 1.26 in.",
	},
	{mend.SwapPorts{ref("pump.out"), ref("pump.in")}, "Swap the runs on pump.out and pump.in.", ""},
	{mend.UsePort{"back", mend.To, ref("pump.drain")}, "Let run back end on pump.drain.", ""},
	{mend.UsePort{"feed", mend.From, ref("pump.drain")}, "Let run feed begin on pump.drain.", ""},
	{mend.AddRun{"more", ref("pump.fill"), ref("pump.drain")}, "Join pump.fill to pump.drain with a run.", ""},
	{mend.PickWay{"back", "two bends"}, "Make run back another way: two bends.", ""},
	{mend.PickWay{"feed", ""}, "Let the best way be taken for run feed again.", ""},
	{
		mend.HandBack{"feed"},
		"Hand run feed back, so that its way is found afresh: what was drawn, picked or prescribed for it is dropped.", "",
	},
	{mend.DropVia{"feed"}, "Take away the via points of run feed.", ""},
	{
		mend.UseChain{"back", mend.From, route.Chain{{Fitting: "extender-20"}, {Fitting: "socket-16"}}, ref("plate.out")},
		"Put extender-20 and socket-16 on plate.out, for run back.", "",
	},
	{mend.UseChain{"feed", mend.From, nil, ref("pump.out")}, "Leave the fittings of run feed on pump.out to be chosen.", ""},
	{mend.UseTube{"back", "acrylic-16-12"}, "Make run back of acrylic-16-12.", ""},
	{
		mend.AddStock{"petg-16-12", 1300},
		"List a stock length of petg-16-12 of 1300 mm, if you can buy it.",
		"List a stock length of petg-16-12 of 51.181 in, if you can buy it.",
	},
	{mend.LiftLimit{"petg-16-12", 1000, 6, 4}, "Allow 6 bars of petg-16-12 of 1000 mm instead of 4.", ""},
	{
		mend.Clearance{3, 4}, "As a compromise, ask for 3 mm clear everywhere instead of 4 mm: less room for what is off by hand.", "",
	},
}

func TestChangesInWords(t *testing.T) {
	for _, tt := range allChanges {
		if got := tt.change.Words(route.Millimetres); got != tt.words {
			t.Errorf("%#v says %q, want %q", tt.change, got, tt.words)
		}
		if got := tt.change.Words(route.Inches); tt.inches != "" && got != tt.inches {
			t.Errorf("%#v says %q, want %q", tt.change, got, tt.inches)
		}
	}
}

// A changed plan saved in place comes back the same, with every comment but
// those inside what was taken away; and the plan it was made from is untouched.
func TestChangesAreSavedInPlace(t *testing.T) {
	for _, tt := range allChanges {
		path := filepath.Join(t.TempDir(), "x.plan.yaml")
		if err := os.WriteFile(path, []byte(commented), 0o600); err != nil {
			t.Fatal(err)
		}
		plan, src, err := planfile.Load(path)
		if err != nil {
			t.Fatal(err)
		}
		kept := plan.Clone()
		changed, err := tt.change.Apply(plan)
		if err != nil {
			t.Fatalf("%s %v", tt.words, err)
		}
		if !reflect.DeepEqual(plan, kept) || reflect.DeepEqual(changed, plan) {
			t.Errorf("%s The plan before was written to, or nothing was changed", tt.words)
		}
		report, err := planfile.Save(path, changed, src)
		if err != nil || report.CommentsLost {
			t.Errorf("%s Saved with comments lost %v, %v", tt.words, report.CommentsLost, err)
		}
		again, _, err := planfile.Load(path)
		if err != nil || !reflect.DeepEqual(again, changed) {
			t.Errorf("%s Comes back as another plan, %v", tt.words, err)
		}
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(commented) {
			_, comment, found := strings.Cut(strings.TrimSpace(line), "#")
			if found && !strings.Contains(string(text), "#"+comment) && comment != " led by hand" {
				t.Errorf("%s Loses the comment %q:\n%s", tt.words, comment, text)
			}
		}
	}
}

// What a plan lacks is told by name.
func TestChangesOfWhatIsNotThere(t *testing.T) {
	plan := ring("out", "in")
	tests := []struct {
		change     mend.Change
		what, name string
	}{
		{mend.Move{Parts: []string{"pump", "gone"}}, "part", "gone"},
		{mend.Turn{Part: "gone"}, "part", "gone"},
		{mend.Former{Tube: "gone"}, "tube", "gone"},
		{mend.SwapPorts{ref("pump.out"), ref("pump.gone")}, "port", "pump.gone"},
		{mend.UsePort{"feed", 0, ref("gone.out")}, "port", "gone.out"},
		{mend.UsePort{"gone", 0, ref("pump.out")}, "run", "gone"},
		{mend.AddRun{"x", ref("pump.out"), ref("gone.p")}, "port", "gone.p"},
		{mend.PickWay{Run: "gone"}, "run", "gone"},
		{mend.HandBack{"gone"}, "run", "gone"},
		{mend.DropVia{"gone"}, "run", "gone"},
		{mend.UseChain{Run: "feed", Chain: route.Chain{{Fitting: "gone"}}}, "fitting", "gone"},
		{mend.UseTube{"feed", "gone"}, "tube", "gone"},
		{mend.AddStock{Tube: "gone"}, "tube", "gone"},
		{mend.LiftLimit{Tube: "gone"}, "stock", "gone"},
	}
	for _, tt := range tests {
		_, err := tt.change.Apply(plan)
		var missing *mend.MissingError
		if !errors.As(err, &missing) || missing.What != tt.what || missing.Name != tt.name {
			t.Errorf("%#v: %v, want %s %s missing", tt.change, err, tt.what, tt.name)
		}
		if err != nil && !strings.Contains(err.Error(), tt.name) {
			t.Errorf("%q does not name %s", err, tt.name)
		}
	}
}

// A turn leaves the middle of the part where it is: the pump's box is 90 wide
// and deep about (45, ·, 45).
func TestATurnIsAboutTheMiddle(t *testing.T) {
	plan := bench()
	plan.Parts = []route.Part{box("k", vec{10, 20, 30}, vec{50, 120, 90})}
	turned, err := mend.Turn{"k", 2, 90}.Apply(plan)
	if err != nil {
		t.Fatal(err)
	}
	lo, hi := turned.PlaceAll()[0].Solids[0].Bounds()
	// 40 by 100 about (30, 70) becomes 100 by 40
	if lo.Sub(vec{-20, 50, 30}).Len() > 1e-6 || hi.Sub(vec{80, 90, 90}).Len() > 1e-6 {
		t.Errorf("stands from %v to %v", lo, hi)
	}
	back := turned
	for range 3 {
		if back, err = (mend.Turn{"k", 2, 90}).Apply(back); err != nil {
			t.Fatal(err)
		}
	}
	if back.Parts[0].At.Len() > 1e-6 || back.Parts[0].Turn.Len() > 1e-9 {
		t.Errorf("four quarters leave it at %v, turned %v", back.Parts[0].At, back.Parts[0].Turn)
	}
}
