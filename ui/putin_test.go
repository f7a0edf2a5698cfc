package ui

import (
	"strings"
	"testing"

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
