package ui

import (
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"tubewright/route/planfile/demoplan"
)

// scanner is the window on the museum demo, solved.
func scanner(t *testing.T) *bench {
	t.Helper()
	b := newBench(t)
	plan := demoplan.Read(t, "conservation-scanner")
	b.session.Begin(plan)
	b.settle()
	return b
}

func TestHowSureAgreesWithTheBudgets(t *testing.T) {
	b := scanner(t)
	m := newSureModel(b.snapshot)
	if len(m.rows) != len(b.snapshot.List.Tubes) {
		t.Fatalf("%d rows for %d tubes", len(m.rows), len(b.snapshot.List.Tubes))
	}
	all := 1.0
	for _, tube := range b.snapshot.List.Tubes {
		all *= tube.Budget.Chance
	}
	if math.Abs(m.all-all) > 1e-9 {
		t.Errorf("all fit %.4f, want the product %.4f", m.all, all)
	}
	for i := 1; i < len(m.rows); i++ {
		if m.rows[i].chance < m.rows[i-1].chance-0.001 {
			t.Errorf("%s stands before %s and is surer", m.rows[i-1].run, m.rows[i].run)
		}
	}
	if !strings.Contains(m.words(), "The one thing to do better: ") {
		t.Errorf("no advice in %q", m.words())
	}
}

// A steadier hand makes every tube surer, and the advice names what is worst.
func TestTheOneThingToDoBetter(t *testing.T) {
	b := scanner(t)
	for care, want := range map[int]string{0: "measure the ports", 1: "set each turn"} {
		s := b.snapshot
		s.Plan = s.Plan.Clone()
		e := &s.Plan.Errors
		e.Port, e.Turn, e.Roll, e.Cut, e.Facing = 0.01, 0.01, 0.01, 0.01, 0.01
		*cares[care].of(e) = 3
		if m := newSureModel(s); !strings.Contains(m.best, want) {
			t.Errorf("with that as the only error the advice is %q, want %q", m.best, want)
		}
	}
}

func TestASurerWayIsOfferedAndTaken(t *testing.T) {
	b := scanner(t)
	m := newSureModel(b.snapshot)
	m.rows[0].run, m.rows[0].surer, m.rows[0].offer = "column-to-front", "three square bends", "Take three square bends: 95 in 100"
	b.showSure(m)
	if b.asked() != "How likely the tubes fit" {
		t.Fatalf("the window shows %q", b.asked())
	}
	test.Tap(b.modals[0].within["surer column-to-front"])
	b.settle()
	if r, _ := b.snapshot.Plan.FindRun("column-to-front"); r.Pick != "three square bends" {
		t.Errorf("the run's pick is %q", r.Pick)
	}
}
