package ui

import (
	"errors"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
	"tubewright/route/insert"
	"tubewright/ui/session"
)

func TestReadyLine(t *testing.T) {
	run := route.Plan{Runs: []route.Run{{Name: "a"}}}
	done := session.Snapshot{Open: true, Version: 1, Listed: 1, Plan: run}
	with := func(change func(*session.Snapshot)) session.Snapshot {
		s := done
		change(&s)
		return s
	}
	found := func(severities ...check.Severity) []check.Finding {
		var all []check.Finding
		for _, s := range severities {
			all = append(all, check.Finding{Severity: s})
		}
		return all
	}
	for _, row := range []struct {
		name string
		s    session.Snapshot
		want string
		role role
	}{
		{"nothing open", session.Snapshot{}, "Open a plan to begin.", soft},
		{"failed", with(func(s *session.Snapshot) { s.Err = errors.New("no luck") }), "Not solved: No luck.", bad},
		{"stopped", with(func(s *session.Snapshot) { s.Stopped = true }), "Stopped. What you see may be out of date.", careful},
		{"solving", with(func(s *session.Snapshot) { s.Solving = true }), "Working …", soft},
		{"an older answer", with(func(s *session.Snapshot) { s.Version = 2 }), "Working …", soft},
		{"no runs", with(func(s *session.Snapshot) { s.Plan = route.Plan{} }), "No runs to cut yet.", soft},
		{"ready", done, "Ready to cut.", fine},
		{"only notes", with(func(s *session.Snapshot) { s.List.Findings = found(check.Note) }), "Ready to cut.", fine},
		{"draft", with(func(s *session.Snapshot) { s.List.Draft, s.List.Reasons = true, make([]cutlist.Reason, 2) }), "Ready to cut? Only a draft: 2 numbers to measure.", careful},
		{"findings", with(func(s *session.Snapshot) { s.List.Findings = found(check.Error, check.Error, check.Warning) }), "Ready to cut? Not yet: 2 errors · 1 warning.", bad},
		{"warnings", with(func(s *session.Snapshot) { s.List.Findings = found(check.Warning) }), "Ready to cut? Not yet: 1 warning.", careful},
		{"all at once", with(func(s *session.Snapshot) {
			s.List.Findings, s.List.Draft, s.List.Reasons = found(check.Error), true, make([]cutlist.Reason, 1)
		}), "Ready to cut? Not yet: 1 error · draft, 1 number to measure.", bad},
		{"only how they go in", with(func(s *session.Snapshot) { s.Fitting = true }), "Ready to cut? Looking how the tubes go in …", soft},
		{"nobody looks", with(func(s *session.Snapshot) { s.Unfitted = session.ErrFittingStopped }), "Ready to cut? How the tubes go in is not known.", soft},
		{"one looked at again", with(func(s *session.Snapshot) {
			s.Fitting, s.List.Findings = true, []check.Finding{{Severity: check.Error, Code: check.CannotBePutIn}}
		}), "Ready to cut? Looking how the tubes go in …", soft},
		{"one that cannot be put in", with(func(s *session.Snapshot) {
			s.List.PutIn, s.List.Findings = new(insert.Report), []check.Finding{{Severity: check.Error, Code: check.CannotBePutIn}}
		}), "Ready to cut? Not yet: 1 error.", bad},
		{"a warning beside", with(func(s *session.Snapshot) {
			s.Fitting, s.List.Findings = true, found(check.Warning)
		}), "Ready to cut? Not yet: 1 warning. Looking how the tubes go in …", careful},
	} {
		if got := readyOf(row.s); got.text != row.want || got.role != row.role {
			t.Errorf("%s: %q in role %d, want %q in %d", row.name, got.text, got.role, row.want, row.role)
		}
	}
}

func TestFindingsAreGroupedGravestFirst(t *testing.T) {
	groups := findingsOf(cutlist.List{Findings: []check.Finding{
		{Severity: check.Note, What: "n"},
		{Severity: check.Error, What: "e", Measure: -3.2, Unit: "mm"},
		{Severity: check.Error, What: "f", Measure: 12, Unit: "deg"},
		{Severity: check.Error, What: "g", Measure: 0.25, Unit: "V"},
	}}, route.Millimetres)
	if len(groups) != 2 || groups[0].title != "3 errors: do not cut" || groups[1].title != "1 note: good to know" {
		t.Fatalf("groups %+v", groups)
	}
	if got := groups[0].findings; got[0].index != 1 || got[0].measure != "−3.2 mm" || got[1].measure != "12.0°" || got[2].measure != "0.25 V" {
		t.Errorf("the errors are %+v", got)
	}
}

func TestWords(t *testing.T) {
	for _, row := range []struct{ got, want string }{
		{count(0, "seal"), "no seals"},
		{count(1, "seal"), "1 seal"},
		{count(2, "way"), "2 ways"},
		{count(3, "entry"), "3 entries"},
		{route.And(nil), ""},
		{route.And([]string{"a"}), "a"},
		{route.And([]string{"a", "b", "c"}), "a, b and c"},
		{dotted("a", "", "b"), "a · b"},
		{degrees(90), "90°"},
		{degrees(22.5), "22.5°"},
		{sentence("no paper"), "No paper."},
		{sentence("Done!"), "Done!"},
		{sentence("  "), ""},
		{titleOf("", true), "Plan without a name *"},
		{lengthText(60, route.Millimetres), "60"},
		{lengthText(-0.0001, route.Millimetres), "0"},
		{lengthText(12.7, route.Inches), "0.5"},
		{angleText(22.5), "22.5"},
		{facing(mgl64.Vec3{0, -1, 0}), "−y"},
		{facing(mgl64.Vec3{0.7071, 0.7071, 0}), "0.71, 0.71, 0"},
		{bendsOf(bends.Formed{}), "straight"},
		{bendsOf(bends.Formed{Bends: make([]bends.Bend, 5)}), "5 bends"},
		{codeWords("tube-hits-part"), "Tube hits part"},
		{demoTitle("ferry-bridge"), "Ferry bridge"},
	} {
		if row.got != row.want {
			t.Errorf("got %q, want %q", row.got, row.want)
		}
	}
}

func TestProofLines(t *testing.T) {
	l := cutlist.List{Proof: []cutlist.Proof{
		{Tube: "copper", Cost: 5, Bound: 4},
		{Tube: "glass", Cost: 9.8, Bound: 9.8, Priced: true, Proven: true},
		{Tube: "petg", Cost: 20.3, Bound: 15.2, Priced: true},
	}}
	got := strings.Join(proofLines(l), "\n")
	for _, p := range l.Proof {
		if want := p.Tube + ": " + p.Words() + "."; !strings.Contains(got, want) {
			t.Errorf("the proof reads\n%s\nwant in it %q, as lists and sheets say", got, want)
		}
	}
	if n := strings.Count(got, "proven"); n != 1 {
		t.Errorf("%d kinds of tube are called proven, want 1:\n%s", n, got)
	}
}

func TestBuyingTotal(t *testing.T) {
	rows, total := buyingOf(cutlist.List{Buy: []cutlist.Item{
		{Item: "socket-16", Need: 4, OnHand: 1, Buy: 3, Each: 6.2, Price: 18.6},
		{Item: "odd", Need: 1, Buy: 1},
	}})
	if rows[0].price != "18.60" || rows[1].price != "?" || total != "together 18.60 and 1 unknown price" {
		t.Errorf("rows %+v, total %q", rows, total)
	}
	if _, total := buyingOf(cutlist.List{}); total != "" {
		t.Errorf("nothing to buy comes to %q", total)
	}
}

func TestACardWithoutATubeSaysWhy(t *testing.T) {
	plan := route.Plan{Runs: []route.Run{{Name: "a"}, {Name: "b"}}}
	s := session.Snapshot{Plan: plan, Open: true, Solving: true, Units: route.Millimetres, Solution: find.Solution{Runs: []find.Solved{
		{Run: plan.Runs[0], Chosen: -1, Problem: errors.New(`run "a": no room`)},
	}}}
	cards := cardsOf(s)
	if cards[0].problem != "No room." || cards[1].facts != "Looking for a way …" {
		t.Errorf("cards: %q, %q", cards[0].problem, cards[1].facts)
	}
	s.Solving = false
	if got := cardsOf(s)[1].facts; got != "No tube yet." {
		t.Errorf("at rest a card without a tube says %q", got)
	}
}

func TestBenchTable(t *testing.T) {
	rows := benchOf(bends.Bench{Bends: []bends.BenchBend{
		{Turn: 90, FormTo: 92.35, FromA: bends.Marks{Start: 111.5, Middle: 136.63, End: 161.77}, Heat: 82.27},
		{Turn: 45, Roll: -90, Wrap: -12.57},
	}}, route.Millimetres)
	if len(rows) != 2 || rows[0].title != "Bend 1: 90°, form to 92.4°" {
		t.Fatalf("bench: %+v", rows)
	}
	if got := strings.Join(rows[0].rows[2], "|"); got != "cut, end A|111.5|136.6|161.8" { // worked by hand in the plan format
		t.Errorf("marks from end A: %s", got)
	}
	if got := strings.Join(rows[1].rows[0], "|"); got != "roll|-90.0°|wrap -12.6" {
		t.Errorf("the roll of bend 2: %s", got)
	}
}
