package cutlist_test

import (
	"bytes"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"tubewright/bends"
	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
	"tubewright/route/planfile"
)

func TestEmptyListJSON(t *testing.T) {
	got := string(answer(t, cutlist.List{}))
	want := `{
  "format": 1,
  "plan": "",
  "draft": false,
  "tubes": [],
  "bars": [],
  "proof": [],
  "buy": [],
  "findings": []
}
`
	if got != want {
		t.Errorf("got %s", got)
	}
}

func TestNumbersJSON(t *testing.T) {
	l := cutlist.List{Bars: []cutlist.Bar{{Tube: "<16 & 12>", Length: -0.001, Left: 193.734999}, {Length: 0.1 + 0.2, Left: 1e6}}}
	text := string(answer(t, l))
	for _, want := range []string{`"length": 0,`, `"left": 193.73,`, `"length": 0.3,`, `"left": 1000000,`, `"<16 & 12>"`} {
		if !strings.Contains(text, want) {
			t.Errorf("%s lacks %s", text, want)
		}
	}
}

func TestFindingsJSON(t *testing.T) {
	text, err := cutlist.FindingsJSON(nil)
	if err != nil || string(text) != "[]\n" {
		t.Errorf("no findings: %q, %v", text, err)
	}
	text, err = cutlist.FindingsJSON([]check.Finding{{Code: check.TubeHitsPart, Severity: check.Error, Runs: []string{"a"}, Measure: -3.2000001, Unit: "mm"}})
	want := `[
  {
    "code": "tube-hits-part",
    "severity": "error",
    "runs": [
      "a"
    ],
    "parts": [],
    "measure": -3.2,
    "unit": "mm",
    "what": "",
    "fix": ""
  }
]
`
	if err != nil || string(text) != want {
		t.Errorf("got %s, %v", text, err)
	}
}

func TestWaysJSON(t *testing.T) {
	b := newBench()
	b.add(t, "a", 274.27, true, fitting("extender-15", route.Extender, "G1/4", 1))
	way := b.sol.Runs[0].Ways[0]
	way.Seals, way.Price, way.Miss, way.Reason = 5, 13.4, find.Miss{Sideways: 0.1234, Degrees: 0.5}, "plain"
	text, err := cutlist.WaysJSON("a", []find.Way{way}, route.Saw{Square: 4})
	if err != nil {
		t.Fatal(err)
	}
	var got, want any
	if err := json.Unmarshal(text, &got); err != nil {
		t.Fatal(err)
	}
	const hand = `{"run": "a", "ways": [{"run": "a", "start": ["extender-15", "socket-16"], "end": ["socket-16"], "blank": 307.27,
		"fittings": ["extender-15", "socket-16", "socket-16"], "seals": 5, "price": 13.4, "miss": {"mm": 0.12, "degrees": 0.5}, "reason": "plain"}]}`
	if err := json.Unmarshal([]byte(hand), &want); err != nil {
		t.Fatal(err)
	}
	holds(t, "", got, want)
	if text, err = cutlist.WaysJSON("a", nil, route.Saw{}); err != nil || !strings.Contains(string(text), `"ways": []`) {
		t.Errorf("no ways: %s, %v", text, err)
	}
	if text, _ = cutlist.WaysJSON("a", []find.Way{way}, route.Saw{}); !strings.Contains(string(text), `"blank": 303.27`) {
		t.Errorf("a saw that leaves nothing to square adds nothing: %s", text)
	}
}

// Every way of building the same plan gives the same bytes.
func TestSameBytes(t *testing.T) {
	plan := read(t, "worked.plan.yaml")
	first := answer(t, built(t, plan))
	for i := range 10 {
		if got := answer(t, built(t, plan.Clone())); !bytes.Equal(got, first) {
			t.Fatalf("build %d differs:\n%s", i, got)
		}
	}
}

// One plan in inches is the same plan: the answer is in mm all the same.
func TestInches(t *testing.T) {
	plan := read(t, "worked.plan.yaml")
	want := built(t, plan)
	plan.Units = route.Inches
	text, _, err := planfile.Write(plan, nil)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(text), "units: in") {
		t.Fatalf("not written in inches:\n%s", text)
	}
	got := built(t, parse(t, "inches.plan.yaml", text))
	got.Findings, want.Findings = nil, nil // told in the plan's units, as the steps are
	for i := range got.Tubes {
		got.Tubes[i].Steps, want.Tubes[i].Steps = nil, nil
	}
	if a, b := answer(t, got), answer(t, want); !bytes.Equal(a, b) {
		t.Errorf("in inches:\n%s", a)
	}
}

// A run asked for from its other end has the same tube the other way round.
func TestSwappedEnds(t *testing.T) {
	plan := read(t, "worked.plan.yaml")
	plan.Parts[0].Ports[0].At[0] -= 30 // so that the legs differ
	plan.Parts[0].Solids[0].To[0] -= 30
	there := built(t, plan).Tubes[0]
	run := &plan.Runs[0]
	run.From, run.To = run.To, run.From
	back := built(t, plan).Tubes[0]
	if there.Cut != back.Cut {
		t.Errorf("cut %+v one way, %+v the other", there.Cut, back.Cut)
	}
	a, b := there.Bench.Bends[0], back.Bench.Bends[0]
	if near(a.FromA.Start, b.FromA.Start) || !near(a.FromB.End, b.FromA.Start) || !near(a.FromA.End, b.FromB.Start) {
		t.Errorf("bend %+v one way, %+v the other", a, b)
	}
}

// rounding is noise of one turn of the plan, mm.
const rounding = 1e-9

func near(a, b float64) bool { return math.Abs(a-b) < rounding }

// A plan turned as a whole has the same tubes.
func TestTurnedPlan(t *testing.T) {
	plan := read(t, "worked.plan.yaml")
	want := built(t, plan).Tubes[0]
	turned := plan.Clone()
	turned.Case = vec{300, 430, 400}
	for i := range turned.Parts {
		turned.Parts[i].Turn = vec{0, 0, 90}
		turned.Parts[i].At = vec{300, 0, 0} // (x, y) goes to (300 − y, x)
	}
	got := built(t, turned).Tubes[0]
	if !sameCut(got.Cut, want.Cut) {
		t.Errorf("cut %+v, upright %+v", got.Cut, want.Cut)
	}
	if c := got.Way.Formed.Corners[1]; !near(c[0], 200) || !near(c[1], 250) || !near(c[2], 50) {
		t.Errorf("corner %v; want (300 − 100, 250, 50)", c)
	}
}

func sameCut(a, b bends.Cut) bool {
	return near(a.Aim, b.Aim) && near(a.Shortest, b.Shortest) && near(a.Longest, b.Longest) && near(a.Blank, b.Blank)
}

func TestMovesJSON(t *testing.T) {
	move := &check.Move{Part: "gpu", By: [3]float64{-6.20049, 0, -0.001}, Free: true}
	text, err := cutlist.FindingsJSON([]check.Finding{{Code: check.PartHitsPart, Move: move}})
	if err != nil {
		t.Fatal(err)
	}
	var list []struct{ Move, Least *check.Move }
	if err := json.Unmarshal(text, &list); err != nil {
		t.Fatal(err)
	}
	if want := (check.Move{Part: "gpu", By: [3]float64{-6.2, 0, 0}, Free: true}); list[0].Move == nil || *list[0].Move != want || list[0].Least != nil {
		t.Errorf("got %s", text)
	}
}
