package check_test

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
)

// everything is a scene with many faults at once.
func everything() *scene {
	s := sound()
	for _, change := range []func(*scene){beam(95.2), crossing(80.1), gpu(3, 66.2)} {
		change(s)
	}
	s.part("pump").Metals, s.part("beam").Metals = []string{"aluminium"}, []string{"copper"}
	s.part("block").Metals = []string{"brass"}
	return s
}

func TestFindingsComeGravestFirstAndInAFixedOrder(t *testing.T) {
	list := everything().findings(t)
	rank := map[check.Severity]int{check.Error: 0, check.Warning: 1, check.Note: 2}
	for i := 1; i < len(list); i++ {
		a, b := list[i-1], list[i]
		if rank[a.Severity] > rank[b.Severity] || rank[a.Severity] == rank[b.Severity] && a.Code > b.Code {
			t.Errorf("%s %s comes before %s %s", a.Severity, a.Code, b.Severity, b.Code)
		}
	}
	for range 5 {
		if again := everything().findings(t); told(again) != told(list) {
			t.Fatalf("another reading says%s\nthe first%s", told(again), told(list))
		}
	}
	shuffled := slices.Clone(list)
	rand.New(rand.NewPCG(1, 1)).Shuffle(len(shuffled), func(i, j int) { shuffled[i], shuffled[j] = shuffled[j], shuffled[i] })
	if check.Sort(shuffled); told(shuffled) != told(list) {
		t.Errorf("sorted from another order they are%s", told(shuffled))
	}
}

// Of each pair only the worst place is told, whatever else is near.
func TestOneFindingAPair(t *testing.T) {
	seen := map[string]bool{}
	for _, f := range everything().findings(t) {
		if !slices.Contains([]check.Code{check.TubeHitsPart, check.TubeHitsTube, check.CollarHits, check.PartHitsPart}, f.Code) {
			continue
		}
		pair := fmt.Sprint(f.Runs, f.Parts)
		if seen[pair] {
			t.Errorf("%s is told twice", pair)
		}
		seen[pair] = true
	}
}

// A plan moved bodily in a larger case has the same findings, but for places.
func TestFindingsMoveWithThePlan(t *testing.T) {
	s, moved := everything(), everything()
	by := vec{11, 7, 5}
	for i := range moved.plan.Parts {
		moved.plan.Parts[i].At = by
	}
	for _, run := range moved.corners {
		for i := range run {
			run[i] = run[i].Add(by)
		}
	}
	moved.plan.Case = moved.plan.Case.Add(by)
	a, b := s.findings(t), moved.findings(t)
	codes := func(list []check.Finding) (all []string) {
		for _, f := range list {
			all = append(all, fmt.Sprintf("%s %v %v %.6f", f.Code, f.Runs, f.Parts, f.Measure))
		}
		return all
	}
	if !slices.Equal(codes(a), codes(b)) {
		t.Errorf("moved by %v it has%s\nand not%s", by, told(b), told(a))
	}
	for i := range a {
		if a[i].Placed && b[i].Code == a[i].Code && vec(b[i].At).Sub(vec(a[i].At)).Sub(by).Len() > 1e-6 {
			t.Errorf("%s is at %v, moved by %v at %v", a[i].Code, a[i].At, by, b[i].At)
		}
	}
}

// Doing what the fix says removes the finding.
func TestMovingAPartAsSaidSettlesIt(t *testing.T) {
	s := sound()
	gpu(20, 66.2)(s)
	s.part("gpu").At[0] -= 6.2
	beam(95.2)(s)
	s.part("beam").At[1] -= 7.2
	for _, f := range s.findings(t) {
		if f.Severity == check.Error {
			t.Errorf("after both moves there is still%s", told([]check.Finding{f}))
		}
	}
}

// A part of several solids is moved clear of all of them at once: the arm
// reaches 10 further than the body.
func TestTheWayOutClearsEverySolid(t *testing.T) {
	s := sound()
	gpu(20, 66.2)(s)
	s.part("gpu").Solids = append(s.part("gpu").Solids, box(vec{60, 100, 40}, vec{76.2, 118, 60})...)
	for _, f := range s.findings(t) {
		if f.Code == check.PartHitsPart {
			if !strings.Contains(f.Fix, "Move gpu 16.2 mm in -x") {
				t.Errorf("fix %q, want a move by 76.2 − 60", f.Fix)
			}
			return
		}
	}
	t.Error("no finding")
}

// The shortest move would push the card into a third part, so it is not told.
func TestTheWayOutAvoidsAThirdPart(t *testing.T) {
	s := sound()
	gpu(20, 66.2)(s)
	s.add(route.Part{Name: "drive", Solids: box(vec{0, 80, 30}, vec{20, 120, 170})})
	for _, f := range s.findings(t) {
		if f.Code == check.PartHitsPart && !strings.Contains(f.Fix, "Move pump 6.2 mm in +x") {
			t.Errorf("fix %q: gpu would hit drive", f.Fix)
		}
	}
}

func TestAPartLargerThanTheCase(t *testing.T) {
	s := sound()
	gpu(0, 450)(s)
	for _, f := range s.findings(t) {
		if f.Code == check.PartOutsideCase {
			if f.Measure != -20 || !strings.Contains(f.Fix, "450.0 mm long that way and the case 430.0 mm: take a larger case") {
				t.Errorf("found%s", told([]check.Finding{f}))
			}
			return
		}
	}
	t.Error("no finding")
}

// 3.2 mm is 0.126 in; the way out is rounded up: 7.2 mm is 0.2835 in.
func TestFindingsSpeakThePlansUnits(t *testing.T) {
	s := sound()
	s.plan.Units = route.Inches
	beam(95.2)(s)
	for _, f := range s.findings(t) {
		if f.Code == check.TubeHitsPart {
			if !strings.Contains(f.What, "0.126 in") || !strings.Contains(f.Fix, "0.284 in in -y") || f.Unit != "mm" {
				t.Errorf("found%s", told([]check.Finding{f}))
			}
			return
		}
	}
	t.Error("no finding")
}

// A gap that lacks a hundredth must not read "0.0 mm less".
func TestSmallLengthsAreNotWrittenAsNothing(t *testing.T) {
	for units, want := range map[route.Units]string{route.Millimetres: "0.020 mm less", route.Inches: "0.00079 in less"} {
		s := sound()
		s.plan.Units = units
		beam(88.02)(s)
		if got := told(s.findings(t)); !strings.Contains(got, want) {
			t.Errorf("no %q in%s", want, got)
		}
	}
}

func TestFindingsWithoutRunsOrPartsAreLists(t *testing.T) {
	list := sound().findings(t)
	text, err := json.Marshal(list)
	if err != nil {
		t.Fatal(err)
	}
	if strings.Contains(string(text), "null") {
		t.Errorf("a list is null in %s", text)
	}
}

func TestAnEmptyPlanHasNoFindings(t *testing.T) {
	if got := check.Findings(route.Defaults(), find.Solution{}); len(got) != 0 {
		t.Errorf("findings of an empty plan:%s", told(got))
	}
}

func TestProblemsOfEveryKindAreTold(t *testing.T) {
	tests := []struct {
		problem error
		say     string
	}{
		{nil, "Run a has no way from pump.out to block.in."},
		{errors.New("the lid is shut."), "Run a has no way: the lid is shut."},
		{&find.NoWayError{Run: "a"}, "Run a has no way from pump.out to block.in."},
		{&find.NoWayError{Run: "a", Cause: errors.New("no socket takes it")}, "Run a has no way: no socket takes it."},
		{&find.NoWayError{Run: "a", Nearest: "straight", Short: 2}, "a straight is 2.0 mm too short to form"},
		{&find.NoWayError{Run: "a", Nearest: "straight", Way: "b", ByRun: true, Short: 2}, "run b is 2.0 mm too near"},
		{&find.NoWayError{Run: "a", Nearest: "straight", Way: "the case", Short: 2}, "it passes a wall of the case by 2.0 mm"},
	}
	for _, tt := range tests {
		s := sound()
		sol := s.solution(t)
		sol.Runs[0] = find.Solved{Run: s.plan.Runs[0], Chosen: -1, Problem: tt.problem}
		if got := told(check.Findings(s.plan, sol)); !strings.Contains(got, tt.say) {
			t.Errorf("problem %v: no %q in%s", tt.problem, tt.say, got)
		}
	}
}

// A way whose fittings the plan no longer has is told of, not laid.
func TestAWayTheFittingsOfWhichAreGone(t *testing.T) {
	s := sound()
	sol := s.solution(t)
	s.plan.Fittings[0].Name = "other"
	got := told(check.Findings(s.plan, sol))
	if !strings.Contains(got, `Run a cannot be put together: fittings on pump.out: step 1: there is no fitting "socket-16".`) {
		t.Errorf("found%s", got)
	}
}

// What the search finds by itself the referee passes.
func TestWhatTheSearchFindsPasses(t *testing.T) {
	s := sound()
	for i := range s.plan.Runs {
		s.plan.Runs[i].Start, s.plan.Runs[i].End = nil, nil
	}
	sol, err := find.Solve(context.Background(), s.plan)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range check.Findings(s.plan, sol) {
		if f.Severity == check.Error && f.Code != check.NoWay {
			t.Errorf("the search's answer has%s", told([]check.Finding{f}))
		}
	}
}

// A search whose distances read 3 mm too large, as one that keeps 3 mm less
// does, passes a beam 2 mm under the tube: the referee measures for itself.
func TestWhatAFaultySearchPassesIsSeen(t *testing.T) {
	for _, tt := range []struct {
		top  float64
		seen bool
	}{{90, true}, {88.1, true}, {87.9, false}} {
		s := sound()
		s.plan.Clear = 4
		beam(tt.top)(s)
		faulty := s.plan.Clone()
		faulty.Clear = 1
		for i := range faulty.Runs {
			faulty.Runs[i].Start, faulty.Runs[i].End = nil, nil
		}
		sol, err := find.Solve(context.Background(), faulty)
		if err != nil {
			t.Fatal(err)
		}
		if way, ok := sol.Runs[0].Way(); !ok || len(way.Formed.Bends) != 1 {
			t.Fatalf("the faulty search found %+v for run a", sol.Runs[0].Problem)
		}
		hits := 0
		for _, f := range check.Findings(s.plan, sol) {
			if f.Code == check.TubeHitsPart && math.Abs(f.Measure-(92-tt.top)) < 1e-9 {
				hits++
			}
		}
		if hits > 0 != tt.seen {
			t.Errorf("beam up to %v: %d findings of a gap of %v", tt.top, hits, 92-tt.top)
		}
	}
}
