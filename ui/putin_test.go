package ui

import (
	"slices"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/cutlist"
	"tubewright/route/check"
	"tubewright/route/insert"
)

func TestHowTheTubesGoIn(t *testing.T) {
	b := scanner(t)
	b.howIn()
	if b.asked() != "Looking how each tube goes in" {
		t.Fatalf("the window shows %q", b.asked())
	}
	b.settle()
	if b.asked() != "How the tubes go in" {
		t.Fatalf("then it shows %q", b.asked())
	}
	steps := complete(b.listing(), b.snapshot.Solution).PutSteps()
	if len(steps) != len(b.snapshot.List.Tubes) {
		t.Fatalf("%d steps for %d tubes", len(steps), len(b.snapshot.List.Tubes))
	}
	for _, s := range steps {
		if s.Verdict != insert.Possible || !strings.HasPrefix(s.Text(), s.Letter+", "+s.Run+": ") {
			t.Errorf("%s: %s", s.Verdict, s.Text())
		}
	}
}

func TestLookingHowTheTubesGoInCanBeStopped(t *testing.T) {
	b := scanner(t)
	b.howIn()
	b.pressButton("Stop")
	b.settle()
	if b.asked() != "" {
		t.Errorf("stopped, the window shows %q", b.asked())
	}
}

// The card tells the order of work, and how likely the tube fits.
func TestCardsTellTheOrderOfWork(t *testing.T) {
	b := scanner(t)
	for i, c := range cardsOf(b.snapshot) {
		tube := b.snapshot.List.Tubes[i]
		if len(c.steps) == 0 || len(c.steps) != len(tube.Steps) || !strings.HasPrefix(c.steps[0], "1. ") {
			t.Errorf("%s: the card has %d steps, the list %d", c.run, len(c.steps), len(tube.Steps))
		}
		if !strings.Contains(c.facts, "fits ") || !strings.Contains(c.facts, " in 100") {
			t.Errorf("%s: the facts are %q", c.run, c.facts)
		}
	}
}

// The findings of putting in stand among the others: looked for behind the
// answer, marked while they are looked at again, with their place and way out.
func TestTheListHoldsTheFindingsOfPuttingIn(t *testing.T) {
	b := fittingBench(t, "classroom-batch")
	b.until(func() bool { return b.snapshot.Current() })
	if !b.snapshot.Fitting || b.findings.foot.text != "Looking how the tubes go in …" || strings.Contains(b.header.text.text, "Ready to cut.") {
		t.Fatalf("solved: looking %v, the list's foot %q, the top %q", b.snapshot.Fitting, b.findings.foot.text, b.header.text.text)
	}
	b.settle()
	i := slices.IndexFunc(b.snapshot.List.Findings, func(f check.Finding) bool { return f.Code == check.ServiceBlocked })
	if i < 0 || b.findings.foot.text != "" {
		t.Fatalf("the findings are %v, the foot %q", b.snapshot.List.Findings, b.findings.foot.text)
	}
	if f := b.snapshot.List.Findings[i]; !f.Placed || f.Fix == "" {
		t.Errorf("%s has no place or no way out", f.Code)
	}
	b.pickFinding(i)
	b.did(b.session.MovePart("pump", mgl64.Vec3(b.partAt("pump")).Add(mgl64.Vec3{0, 0, 0.5})))
	b.until(func() bool { return b.snapshot.Current() })
	if b.selectedFinding() < 0 || !strings.Contains(b.markedAgain(), "service") {
		t.Errorf("moved: finding %d is selected, marked are %q", b.selectedFinding(), b.markedAgain())
	}
	if l := b.listing(); slices.ContainsFunc(l.Findings, cutlist.OfPutIn) {
		t.Error("the list for the sheets holds findings of the plan before")
	}
	b.settle()
	if b.markedAgain() != "" {
		t.Errorf("looked at again, %q are still marked", b.markedAgain())
	}
	b.howIn()
	if b.asked() != "How the tubes go in" {
		t.Errorf("known already, the window shows %q", b.asked())
	}
}

// markedAgain names the findings that are being looked at again.
func (b *bench) markedAgain() (names string) {
	for _, g := range b.findings.groups {
		for _, m := range g.findings {
			if m.again {
				names += string(b.snapshot.List.Findings[m.index].Code) + " "
			}
		}
	}
	return names
}

func (b *bench) partAt(name string) [3]float64 {
	k, _ := b.snapshot.Plan.FindPart(name)
	return k.At
}
