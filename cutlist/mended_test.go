package cutlist_test

import (
	"context"
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
)

// mendable is a glass tube of 388 mm between two ports over a sill of this
// height, cut from bars of this length.
func mendable(sill, bar float64) route.Plan {
	plan := route.Defaults()
	plan.Spares = route.Spares{}
	plan.Name, plan.Case, plan.Tube = "mended", mgl64.Vec3{500, 300, 300}, "glass-16-12"
	plan.Tubes = []route.Tube{{Name: "glass-16-12", Material: "glass", Tube: bends.Tube{OD: 16, ID: 12, StraightEnd: 20}, KnownFrom: route.Measured}}
	plan.Fittings = []route.Fitting{{
		Name: "socket-16", Kind: route.Socket, OD: 16, Thread: "G1/4", Stop: 6, Insertion: route.Insertion{Full: 12, Least: 9},
		SeatGap: 0.5, Collar: route.Collar{OD: 24, Length: 20}, Give: route.Give{Sideways: 0.3, Degrees: 1}, KnownFrom: route.Measured,
	}}
	hole := func(name string, x, facing float64) route.Part {
		return route.Part{Name: name, At: mgl64.Vec3{x, 100, 150}, Ports: []route.Port{{Name: "p", Facing: mgl64.Vec3{facing, 0, 0}, Thread: "G1/4"}}}
	}
	solid := route.Solid{Box: true, From: mgl64.Vec3{200, 20, 0}, To: mgl64.Vec3{300, sill, 300}}
	plan.Parts = []route.Part{hole("a", 50, 1), hole("b", 450, -1), {Name: "sill", Solids: []route.Solid{solid}}}
	plan.Runs = []route.Run{{Name: "over", From: route.PortRef{Part: "a", Port: "p"}, To: route.PortRef{Part: "b", Port: "p"}}}
	plan.Stock = []route.Stock{{Tube: "glass-16-12", Length: bar, Price: 8, Most: 1}}
	return plan
}

func listed(t *testing.T, plan route.Plan) (cutlist.List, find.Solution) {
	t.Helper()
	sol, err := find.Solve(context.Background(), plan)
	if err != nil {
		t.Fatal(err)
	}
	l, err := cutlist.Build(context.Background(), plan, sol)
	if err != nil {
		t.Fatal(err)
	}
	return l, sol
}

func fixOf(l cutlist.List, code check.Code) (fix string, offers int) {
	for i, f := range l.Findings {
		if f.Code == code {
			return f.Fix, len(l.Offers[i])
		}
	}
	return "", 0
}

// A run without a way gets the least change as its fix: 93.9 − 87.99 is 6 in
// whole steps. The list it is made from stays as it is.
func TestMendedSaysTheLeastChange(t *testing.T) {
	l, sol := listed(t, mendable(93.9, 500))
	m, err := l.Mended(context.Background(), sol)
	if err != nil {
		t.Fatal(err)
	}
	fix, n := fixOf(m, check.NoWay)
	if fix != "Move sill 6 mm in -y." || n == 0 {
		t.Errorf("fix %q, %d offers", fix, n)
	}
	for i, f := range m.Findings {
		if f.Code == check.NoWay && (f.Move == nil || f.Move.Part != "sill" || f.Move.By != mgl64.Vec3{0, -6, 0}) {
			t.Errorf("move %+v", f.Move)
		}
		if f.Code == check.NoWay && l.Findings[i].Fix == f.Fix {
			t.Error("the list before was written to")
		}
	}
	text, err := m.FindingsJSON()
	var found []struct {
		Code   string
		Offers []struct {
			Change, Words string
			Cost          float64
			Least         bool
			Parts         []string
			By            []float64
		}
	}
	if err != nil || json.Unmarshal(text, &found) != nil || len(found) == 0 || len(found[0].Offers) == 0 {
		t.Fatalf("%v in %s", err, text)
	}
	o := found[0].Offers[0]
	if o.Change != "move" || o.Words != fix || o.Cost != 32 || !o.Least || !slices.Equal(o.Parts, []string{"sill"}) || !slices.Equal(o.By, []float64{0, -6, 0}) {
		t.Errorf("offer %+v: 20 and 2 for each mm", o)
	}
	whole, err := m.JSON()
	if err != nil || !strings.Contains(string(whole), `"change": "move"`) {
		t.Errorf("%v; the answer lacks the offers", err)
	}
}

// Nobody looks where there is nothing to mend, or nothing that is quick.
func TestMendedLeavesTheRestAlone(t *testing.T) {
	for _, plan := range []route.Plan{mendable(80, 500), mendable(80, 380)} {
		l, sol := listed(t, plan)
		m, err := l.Mended(context.Background(), sol)
		if err != nil || m.Offers != nil {
			t.Errorf("%d offers, %v", len(m.Offers), err)
		}
	}
	l, sol := listed(t, mendable(93.9, 500))
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := l.Mended(ctx, sol); err == nil {
		t.Error("cancelled, and no word of it")
	}
}

// What the stock lacks is judged by the bars: 388 − 1 for the seat gaps + 2 to
// square the ends is 389 of a bar of 380, and two machines take two bars.
func TestStockIsMended(t *testing.T) {
	l, sol := listed(t, mendable(80, 380))
	var heard []string
	m, err := l.MendedAll(context.Background(), sol, func(f check.Finding, n, of int) {
		heard = append(heard, string(f.Code))
		if n != len(heard) || of < n {
			t.Errorf("finding %d of %d is told as the %d.", n, of, len(heard))
		}
	})
	if err != nil || !slices.Contains(heard, "stock-too-short") {
		t.Fatalf("%v; heard of %q", err, heard)
	}
	if fix, _ := fixOf(m, check.StockTooShort); fix != "Move a 9 mm in +x." {
		t.Errorf("fix %q", fix)
	}
	plan := mendable(80, 500)
	plan.Build = 2
	l, sol = listed(t, plan)
	if m, err = l.MendedAll(context.Background(), sol, nil); err != nil {
		t.Fatal(err)
	}
	if fix, _ := fixOf(m, check.StockTooFew); fix != "Allow 2 bars of glass-16-12 of 500 mm instead of 1." {
		t.Errorf("fix %q", fix)
	}
}
