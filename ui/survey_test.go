package ui

import (
	"math"
	"strings"
	"testing"

	"tubewright/route"
)

func surveyed(t *testing.T) (*bench, *surveyModel) {
	t.Helper()
	b := opened(t)
	return b, newSurveyModel(b.snapshot)
}

// rowOf finds a port on the sheet.
func rowOf(t *testing.T, m *surveyModel, ref string) (group, row int) {
	t.Helper()
	for g := range m.groups {
		for r := range m.groups[g].Rows {
			if m.groups[g].Rows[r].Ref.String() == ref {
				return g, r
			}
		}
	}
	t.Fatalf("the sheet has no %s", ref)
	return 0, 0
}

func TestSurveyFormShowsWhatThePlanHas(t *testing.T) {
	_, m := surveyed(t)
	g, r := rowOf(t, m, "left.out")
	heads := m.heads(g)
	if len(heads) != 6 || !strings.HasPrefix(heads[1], "x from the ") || !strings.HasSuffix(heads[1], ", mm") {
		t.Errorf("the heads are %q", heads)
	}
	plans := m.plans(g, r)
	row := m.groups[g].Rows[r]
	for axis := range 3 {
		if plans[axis] != lengthText(row.Plan[axis], route.Millimetres) {
			t.Errorf("axis %d shows %s for %v", axis, plans[axis], row.Plan[axis])
		}
	}
	if got, err := m.readings(); len(got) != 0 || err != nil {
		t.Errorf("nothing typed gives %d readings, %v", len(got), err)
	}
}

func TestSurveyFormWantsAllThreeDistances(t *testing.T) {
	b, m := surveyed(t)
	g, r := rowOf(t, m, "left.out")
	if err := m.set(g, r, 0, "104"); err != nil {
		t.Fatal(err)
	}
	if _, err := m.readings(); err == nil || !strings.Contains(err.Error(), "all three are needed") {
		t.Errorf("with one distance it says %v", err)
	}
	if err := m.set(g, r, 1, "abc"); err == nil {
		t.Error("abc is taken for a distance")
	}
	if err := m.set(g, r, surveyFacing, "up"); err == nil {
		t.Error("up is taken for a facing")
	}
	p := b.askSurvey(m)
	p.take()
	if b.asked() != "The survey is not complete" || b.snapshot.Dirty {
		t.Errorf("taken all the same, the window says %q, dirty %v", b.asked(), b.snapshot.Dirty)
	}
}

// The port is measured 1 mm further in x than the plan has it: the cut follows,
// the port is measured then, and undo takes all of it back.
func TestASurveyChangesPortAndTube(t *testing.T) {
	b, m := surveyed(t)
	g, r := rowOf(t, m, "left.out")
	p := b.askSurvey(m)
	row := m.groups[g].Rows[r]
	for axis := range 3 {
		v := row.Plan[axis]
		if axis == 0 {
			v++
		}
		typeInto(p.tables[g].cells[r][axis], lengthText(v, route.Millimetres))
	}
	b.pressButton("Take these numbers")
	b.settle()
	if b.asked() != "The survey is taken" {
		t.Fatalf("the window says %q", b.asked())
	}
	port, _ := b.snapshot.Plan.FindPort(row.Ref)
	if port.KnownFrom != route.Measured {
		t.Errorf("the port is known from %q", port.KnownFrom)
	}
	if got := math.Abs(b.cut("left-to-top") - workedAim); math.Abs(got-1) > 0.01 {
		t.Errorf("the cut changed by %.3f, want 1", got)
	}
	b.pressButton("Close")
	b.undo()
	b.settle()
	if b.snapshot.Dirty || math.Abs(b.cut("left-to-top")-workedAim) > 0.01 {
		t.Errorf("undone: dirty %v, cut %.3f", b.snapshot.Dirty, b.cut("left-to-top"))
	}
}

func TestNotingATry(t *testing.T) {
	b := opened(t)
	m := newMadeModel(b.snapshot, "left-to-top")
	if m.cut != "273.3" || m.from == "" || !m.known {
		t.Fatalf("the form begins with cut %q from %q, known %v", m.cut, m.from, m.known)
	}
	m.fits = false
	p := b.askMade(m)
	b.pressButton("Note this try")
	if b.asked() != "That cannot be noted" {
		t.Errorf("without a reason the window says %q", b.asked())
	}
	b.pressButton("Close")
	p.model.wrong = "2 mm long"
	b.pressButton("Note this try")
	b.settle()
	r, _ := b.snapshot.Plan.FindRun("left-to-top")
	if len(r.Made) != 1 || r.Made[0].Fits || r.Made[0].Wrong != "2 mm long" {
		t.Fatalf("the run's tries are %+v", r.Made)
	}
	m = newMadeModel(b.snapshot, "left-to-top")
	if h := m.history(); len(h) != 1 || !strings.Contains(h[0], "Try 1: 2 mm long, 273.3 mm long") {
		t.Errorf("the history says %q", m.history())
	}
	b.askMade(m)
	b.pressButton("Note this try")
	b.settle()
	r, _ = b.snapshot.Plan.FindRun("left-to-top")
	if _, ok := r.AsMade(); !ok {
		t.Fatalf("the run is no fact: %+v", r.Made)
	}
	b.askMade(newMadeModel(b.snapshot, "left-to-top"))
	b.pressButton("It fits no longer")
	b.pressButton("Plan it again")
	b.settle()
	if r, _ = b.snapshot.Plan.FindRun("left-to-top"); r.MadeCount() != 0 {
		t.Errorf("it still counts as made: %+v", r.Made)
	}
	b.askMade(newMadeModel(b.snapshot, "left-to-top"))
	b.pressButton("Take the last try back")
	b.settle()
	if r, _ = b.snapshot.Plan.FindRun("left-to-top"); len(r.Made) != 1 {
		t.Errorf("%d tries are left, want 1", len(r.Made))
	}
}

// typeInto types into a field of a form and leaves it.
func typeInto(c *cell, text string) {
	c.SetText(text)
	c.FocusLost()
}

// A survey of one port leaves the tubes that do not rest on it as they were.
func TestASurveyLeavesOtherTubesAlone(t *testing.T) {
	b := scanner(t)
	m := newSurveyModel(b.snapshot)
	g, r := rowOf(t, m, "pump.out")
	before := b.snapshot.List.Tubes
	for axis, d := range m.groups[g].Rows[r].Plan {
		if err := m.set(g, r, axis, lengthText(d+2, b.snapshot.Units)); err != nil {
			t.Fatal(err)
		}
	}
	b.askSurvey(m)
	b.pressButton("Take these numbers")
	b.settle()
	for b.asked() != "The survey is taken" {
		b.pressButton("The ports are right")
		b.settle()
	}
	for i, now := range b.snapshot.List.Tubes {
		same := now.Way.Name == before[i].Way.Name && math.Abs(now.Cut.Aim-before[i].Cut.Aim) < 0.01
		if rests := now.Run == "pump-to-processor"; same == rests {
			t.Errorf("%s: same tube %v, rests on the port %v", now.Run, same, rests)
		}
	}
}
