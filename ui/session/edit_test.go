package session_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/ui/session"
)

func TestEditsThatNameNothing(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	for name, err := range map[string]error{
		"move":   d.MovePart("pum", mgl64.Vec3{}),
		"nudge":  d.NudgePart("pum", mgl64.Vec3{}),
		"turn":   d.TurnPart("pum", 1, 90),
		"set":    d.SetPartNumbers("pum", mgl64.Vec3{}, mgl64.Vec3{}),
		"remove": d.RemovePart("pum"),
		"choose": d.ChooseWay("pum", "straight"),
		"free":   d.FreeWay("pum"),
		"unrun":  d.RemoveRun("pum"),
	} {
		var missing *session.MissingError
		if !errors.As(err, &missing) || missing.Name != "pum" || !strings.Contains(err.Error(), `"pum"`) {
			t.Errorf("%s: %v, want a MissingError that names it", name, err)
		}
	}
	if d.Now().Undo != "" {
		t.Error("an edit that failed can be undone")
	}
}

func TestNumbersAFileCannotHold(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	for _, at := range []mgl64.Vec3{{math.NaN(), 0, 0}, {0, math.Inf(1), 0}, {0, 0, -1e5}} {
		var place *session.PlaceError
		if err := d.SetPartNumbers("pump", at, mgl64.Vec3{}); !errors.As(err, &place) || place.Part != "pump" {
			t.Errorf("place %v gave %v, want a PlaceError", at, err)
		}
	}
	if d.Now().Dirty {
		t.Error("a refused edit changed the plan")
	}
}

func TestSetPartNumbersThatChangeNothing(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.must(d.SetPartNumbers("pump", mgl64.Vec3{100, 10, 20}, mgl64.Vec3{}))
	if d.Now().Dirty {
		t.Error("the same numbers again made the plan dirty")
	}
	d.must(d.SetPartNumbers("pump", mgl64.Vec3{100, 10, 20}, mgl64.Vec3{0, 90, 0}))
	if got := d.Now().Undo; got != "Turn pump" {
		t.Errorf("undo says %q, want Turn pump", got)
	}
}

func TestTurnKeepsTheMiddleInPlace(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.must(d.TurnPart("pump", 1, 90))
	k, _ := d.Now().Plan.FindPart("pump")
	// The box 40 x 20 x 60 at (100, 10, 20) has its middle at (120, 20, 50).
	// Turned about y, x becomes -z: the middle of its own frame (20, 10, 30)
	// goes to (30, 10, -20), so the origin must go to (90, 10, 70).
	if k.Turn != (mgl64.Vec3{0, 90, 0}) || k.At != (mgl64.Vec3{90, 10, 70}) {
		t.Errorf("turned about y: at %v, turn %v; want [90 10 70], [0 90 0]", k.At, k.Turn)
	}
	for range 3 {
		d.must(d.TurnPart("pump", 1, 90))
	}
	k, _ = d.Now().Plan.FindPart("pump")
	if k.At != (mgl64.Vec3{100, 10, 20}) || route.Turned(k.Turn) != mgl64.Ident3() {
		t.Errorf("four quarter turns: at %v, turn %v; want it back where it was", k.At, k.Turn)
	}
}

func TestAnglesGiveTheRotationBack(t *testing.T) {
	for seed := range uint64(500) {
		r := rand.New(rand.NewPCG(seed, 0))
		turn := mgl64.Vec3{360*r.Float64() - 180, 360*r.Float64() - 180, 360*r.Float64() - 180}
		if seed%3 == 0 { // quarter turns, where two axes may fall together
			turn = mgl64.Vec3{90 * float64(r.IntN(4)), 90 * float64(r.IntN(4)), 90 * float64(r.IntN(4))}
		}
		want := route.Turned(turn)
		got := session.Angles(want)
		if !near(route.Turned(got), want) {
			t.Fatalf("seed %d: Angles(Turned(%v)) = %v, which is another rotation", seed, turn, got)
		}
		for _, a := range got {
			if a <= -180 || a > 180 || (a == 0 && math.Signbit(a)) {
				t.Fatalf("seed %d: angle %v of %v is not in (-180, 180]", seed, a, got)
			}
		}
	}
}

func near(a, b mgl64.Mat3) bool {
	for i := range a {
		if math.Abs(a[i]-b[i]) > 1e-9 {
			return false
		}
	}
	return true
}

func TestDraggedPlacesAreRounded(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.must(d.MovePart("pump", mgl64.Vec3{0.1 + 0.2, 33.3333333, -0.0000001}))
	if got, want := d.at("pump"), (mgl64.Vec3{0.3, 33.333, 0}); got != want || math.Signbit(got[2]) {
		t.Errorf("the pump stands at %v, want %v", got, want)
	}
}

func TestWays(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.must(d.ChooseWay("pump-to-plate", "one bend"))
	d.must(d.ChooseWay("pump-to-plate", "one bend"))
	if r, _ := d.Now().Plan.FindRun("pump-to-plate"); r.Pick != "one bend" {
		t.Errorf("the run keeps %q, want one bend", r.Pick)
	}
	d.must(d.FreeWay("pump-to-plate"))
	d.Undo()
	d.Undo()
	if now := d.Now(); now.Dirty {
		t.Errorf("two undos leave %q to undo: choosing twice must be one step", now.Undo)
	}
}

func TestOnHandAndBuild(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.must(d.SetOnHand("plug", 2))
	d.must(d.SetOnHand("socket-16", 4))
	d.must(d.SetOnHand("plug", 2))
	if got := d.Now().Plan.OnHand; len(got) != 2 || got[0].Count != 2 || got[1].Item != "socket-16" {
		t.Errorf("on hand: %v", got)
	}
	d.must(d.SetOnHand("plug", 0))
	if got := d.Now().Plan.OnHand; len(got) != 1 {
		t.Errorf("a count of 0 stays in the list: %v", got)
	}
	d.must(d.SetBuild(3))
	d.must(d.SetBuild(3))
	if d.Now().Plan.Build != 3 || d.Now().Undo != "Build 3" {
		t.Errorf("build %d, undo %q", d.Now().Plan.Build, d.Now().Undo)
	}
	var span *session.RangeError
	for _, err := range []error{d.SetOnHand("plug", -1), d.SetOnHand("plug", 1e6), d.SetBuild(0), d.SetBuild(5000)} {
		if !errors.As(err, &span) {
			t.Errorf("a count out of range gave %v", err)
		}
	}
}

func TestAddAndRemove(t *testing.T) {
	d := newDesk(t)
	plan := twoParts()
	plan.Parts[0].Ports = []route.Port{{Name: "out", Facing: mgl64.Vec3{1, 0, 0}}}
	plan.Parts[1].Ports = []route.Port{{Name: "in", Facing: mgl64.Vec3{0, 1, 0}}}
	plan.Catalogue = &route.Catalogue{Parts: []route.Part{{
		Name: "radiator", Solids: []route.Solid{{Box: true, To: mgl64.Vec3{30, 120, 240}}},
	}}}
	d.Begin(plan)
	for i, want := range []string{"radiator", "radiator-2", "radiator-3"} {
		if got, err := d.AddPart("radiator"); err != nil || got != want {
			t.Errorf("part %d is called %q, %v; want %q", i, got, err, want)
		}
	}
	if got, want := d.at("radiator"), (mgl64.Vec3{200, 40, 80}); got != want {
		t.Errorf("the new part stands at %v, want %v, in the middle of the case", got, want)
	}
	if _, err := d.AddPart("radiotor"); err == nil {
		t.Error("a kind that is not in the catalogue was added")
	}
	name, err := d.AddRun(route.PortRef{Part: "pump", Port: "out"}, route.PortRef{Part: "plate", Port: "in"})
	if err != nil || name != "pump-to-plate-2" {
		t.Errorf("the new run is called %q, %v", name, err)
	}
	if _, err := d.AddRun(route.PortRef{Part: "pump", Port: "no"}, route.PortRef{Part: "plate", Port: "in"}); err == nil {
		t.Error("a run to a port that is not there was added")
	}
	d.must(d.RemoveRun(name))
	d.must(d.RemovePart("plate"))
	if p := d.Now().Plan; len(p.Runs) != 0 || len(p.Parts) != 4 {
		t.Errorf("with the plate gone there are %d runs and %d parts, want 0 and 4", len(p.Runs), len(p.Parts))
	}
	d.Undo()
	if p := d.Now().Plan; len(p.Runs) != 1 || len(p.Parts) != 5 {
		t.Errorf("undone there are %d runs and %d parts, want 1 and 5", len(p.Runs), len(p.Parts))
	}
}

func TestUnitsAreOnlyShown(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.SetUnits(route.Inches)
	if now := d.Now(); now.Units != route.Inches || now.Dirty || now.Plan.Units != route.Millimetres {
		t.Errorf("units %q shown, %q in the plan, dirty %v", now.Units, now.Plan.Units, now.Dirty)
	}
}
