package cutlist_test

import (
	"reflect"
	"strings"
	"testing"

	"tubewright/cutlist"
	"tubewright/route"
)

func fitting(name string, kind route.FittingKind, thread string, price float64) route.Fitting {
	return route.Fitting{Name: name, Kind: kind, Thread: thread, Length: 15, Side: 12, Body: 20, Price: price, KnownFrom: route.Typical}
}

func TestBuy(t *testing.T) {
	b := newBench()
	b.stock(1000, 12.9, 0)
	b.stock(500, 7.45, 0)
	b.plan.Build = 3
	b.plan.Fittings = append(b.plan.Fittings,
		fitting("plug-g38", route.Plug, "G3/8", 2.1), fitting("plug", route.Plug, "G1/4", 1.8), fitting("cap", route.Plug, "G1/4", 1))
	b.plan.Parts = []route.Part{{Name: "block", KnownFrom: route.Measured, Ports: []route.Port{
		{Name: "fill", At: vec{1, 1, 1}, Facing: vec{0, 1, 0}, Thread: "G1/4"},
		{Name: "wide", At: vec{9, 1, 1}, Facing: vec{0, 1, 0}, Thread: "G3/8"},
		{Name: "odd", At: vec{19, 1, 1}, Facing: vec{0, 1, 0}, Thread: "M20"},
	}}}
	b.add(t, "a", 299, false, fitting("tee", route.Tee, "G1/4", 8.35), fitting("extender-15", route.Extender, "G1/4", 0))
	b.add(t, "b", 349, true, fitting("elbow-90", route.Elbow, "G1/4", 9.1), fitting("extender-10", route.Extender, "G1/4", 3.3))
	b.plan.OnHand = []route.OnHand{{Item: "socket-16", Count: 5}, {Item: "plug", Count: 9}, {Item: "petg-16-12 500 mm", Count: 1}}
	want := []cutlist.Item{
		{Item: "petg-16-12 500 mm", Tube: "petg-16-12", Length: 500, Need: 1, OnHand: 1, Buy: 0, Each: 7.45},
		{Item: "petg-16-12 1000 mm", Tube: "petg-16-12", Length: 1000, Need: 2, Buy: 2, Each: 12.9, Price: 25.8},
		{Item: "socket-16", Need: 12, OnHand: 5, Buy: 7, Each: 6.2, Price: 43.4},
		{Item: "extender-10", Need: 3, Buy: 3, Each: 3.3, Price: 9.9},
		{Item: "extender-15", Need: 3, Buy: 3, Note: "price not known"},
		{Item: "elbow-90", Need: 3, Buy: 3, Each: 9.1, Price: 27.3},
		{Item: "tee", Need: 3, Buy: 3, Each: 8.35, Price: 25.05},
		{Item: "plug", Need: 6, OnHand: 9, Buy: 0, Each: 1.8},
		{Item: "plug-g38", Need: 3, Buy: 3, Each: 2.1, Price: 6.3},
		{Item: "plug M20", Need: 3, Buy: 3, Note: "no plug for this thread is described: add one under fittings"},
	}
	got := b.list(t).Buy
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got:")
		for _, i := range got {
			t.Errorf("%+v", i)
		}
	}
}

// One length at two prices is one line; what is on hand saves the dearer ones.
func TestBuyTwoPricesOfOneLength(t *testing.T) {
	b := newBench()
	b.stock(500, 7, 1)
	b.stock(500, 9, 0)
	b.add(t, "a", 399, false)
	b.add(t, "b", 399, false)
	if got := b.list(t).Buy[0]; got.Need != 2 || got.Price != 16 || got.Each != 0 {
		t.Errorf("%+v; want 2 at 7 and 9", got)
	}
	b.plan.OnHand = []route.OnHand{{Item: "petg-16-12 500 mm", Count: 1}}
	if got := b.list(t).Buy[0]; got.Buy != 1 || got.Price != 7 {
		t.Errorf("%+v; want 1 at 7", got)
	}
}

func TestReasons(t *testing.T) {
	b := newBench()
	b.stock(1000, 12.9, 0)
	b.plan.Fittings[0].KnownFrom = route.Typical
	b.add(t, "a", 299, false, fitting("offset-15", route.Offset, "G1/4", 1))
	b.plan.Tubes[0].KnownFrom = ""
	b.plan.Parts[0].KnownFrom = route.Typical
	b.add(t, "b", 299, true, fitting("elbow-90", route.Elbow, "G1/4", 1))
	b.sol.Runs[0].Ways[0].Start.Port.KnownFrom = route.Typical
	l := b.list(t)
	if !l.Draft {
		t.Error("not a draft")
	}
	want := []struct {
		what string
		runs []string
		how  string
	}{
		{"socket-16: stop, insertion and collar", []string{"a", "b"}, "fully home"},
		{"offset-15: length and sideways", []string{"a"}, "aside"},
		{"elbow-90: legs and turn", []string{"b"}, "protractor"},
		{"a-a.p: place and facing", []string{"a"}, "corner"},
		{"petg-16-12: diameters, radius, springback and least straights", []string{"b"}, "Bend a test piece"},
	}
	if len(l.Reasons) != len(want) {
		t.Fatalf("reasons %+v", l.Reasons)
	}
	for i, w := range want {
		if r := l.Reasons[i]; r.What != w.what || !reflect.DeepEqual(r.Runs, w.runs) || !strings.Contains(r.How, w.how) {
			t.Errorf("reason %d is %+v, want %+v", i, r, w)
		}
	}
}

func TestReasonsOfStraightOnlyTube(t *testing.T) {
	b := newBench()
	b.stock(1000, 12.9, 0)
	b.plan.Tubes[0].KnownFrom, b.plan.Tubes[0].Radius = route.Typical, 0
	b.add(t, "a", 299, false, fitting("extender-15", route.Extender, "G1/4", 1))
	got := b.list(t).Reasons
	if len(got) != 2 || got[1].What != "petg-16-12: outside and inside diameter" || got[0].What != "extender-15: length" {
		t.Errorf("reasons %+v", got)
	}
}

func TestNoDraftWhenMeasured(t *testing.T) {
	b := newBench()
	b.stock(1000, 12.9, 0)
	b.add(t, "a", 299, false)
	if l := b.list(t); l.Draft || l.Reasons != nil {
		t.Errorf("draft %v, reasons %+v of a plan all measured", l.Draft, l.Reasons)
	}
}

func TestItemsReadInThePlansUnits(t *testing.T) {
	bar := cutlist.Item{Item: "petg-16-12 500 mm", Tube: "petg-16-12", Length: 500}
	for _, row := range []struct {
		item  cutlist.Item
		units route.Units
		want  string
	}{
		{bar, route.Millimetres, "petg-16-12 500 mm"},
		{bar, route.Inches, "petg-16-12 19.685 in"}, // 500/25.4
		{cutlist.Item{Item: "plug"}, route.Inches, "plug"},
	} {
		if got := row.item.Label(row.units); got != row.want {
			t.Errorf("%q in %s reads %q, want %q", row.item.Item, row.units, got, row.want)
		}
	}
}
