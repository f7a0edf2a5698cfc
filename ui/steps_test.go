package ui

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/go-gl/mathgl/mgl64"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/ui/session"
)

func TestFirstStepsTickThemselvesOff(t *testing.T) {
	b := opened(t)
	if !b.steps.Visible() || len(b.settings.Steps) != 0 {
		t.Fatalf("at a first start the strip is there: %v, done %v", b.steps.Visible(), b.settings.Steps)
	}
	b.did(b.session.NudgePart("left", mgl64.Vec3{1, 0, 0}))
	b.settle()
	if !slices.Contains(b.settings.Steps, "place") {
		t.Errorf("after a nudge done are %v", b.settings.Steps)
	}
	b.join(route.PortRef{Part: "left", Port: "in"}, route.PortRef{Part: "top", Port: "out"})
	b.settle()
	if !slices.Contains(b.settings.Steps, "run") {
		t.Errorf("after a run done are %v", b.settings.Steps)
	}
	b.sheetsMade("x", []string{"x/a.pdf"}, nil)
	if !slices.Contains(b.settings.Steps, "print") {
		t.Errorf("after the sheets done are %v", b.settings.Steps)
	}
	kept, err := session.LoadSettings(b.dir)
	if err != nil || !slices.Equal(kept.Steps, b.settings.Steps) {
		t.Errorf("kept are %v (%v), want %v", kept.Steps, err, b.settings.Steps)
	}
}

func TestWhatProvesAStep(t *testing.T) {
	tubes := cutlist.List{Tubes: make([]cutlist.Tube, 1)}
	wrong := tubes
	wrong.Findings = []check.Finding{{Severity: check.Warning}}
	pump := route.Plan{Parts: []route.Part{{Name: "pump"}}}
	for _, row := range []struct {
		name string
		s    session.Snapshot
		want []string
	}{
		{"a bar added", session.Snapshot{Plan: pump, Undo: "Add a bar to buy"}, nil},
		{"a picture moved", session.Snapshot{Plan: pump, Undo: "Move picture"}, nil},
		{"nothing done", session.Snapshot{Open: true, List: tubes}, nil},
		{"a part turned", session.Snapshot{Plan: pump, Undo: "Turn pump"}, []string{"place"}},
		{"a part added", session.Snapshot{Plan: pump, Undo: "Add pump"}, []string{"place"}},
		{"joined", session.Snapshot{Undo: "Join a.x to b.y"}, []string{"run"}},
		{"settled", session.Snapshot{Open: true, Undo: "Fade a.jpg", List: tubes}, []string{"settle"}},
		{"not settled", session.Snapshot{Open: true, Undo: "Fade a.jpg", List: wrong}, nil},
		{"still working", session.Snapshot{Open: true, Solving: true, Undo: "Fade a.jpg", List: tubes}, nil},
	} {
		if got := stepsDone(row.s, nil); !slices.Equal(got, row.want) {
			t.Errorf("%s: done are %v, want %v", row.name, got, row.want)
		}
	}
	if got := stepsDone(session.Snapshot{Plan: pump, Undo: "Turn pump"}, []string{"place", "run"}); len(got) != 2 {
		t.Errorf("a step is ticked twice: %v", got)
	}
}

func TestFirstStepsAreClosedForGood(t *testing.T) {
	b := opened(t)
	before := b.desk.Size().Height
	test.Tap(b.steps.presses[1])
	if b.news != firstSteps[1].hint {
		t.Errorf("a press tells %q", b.news)
	}
	test.Tap(b.steps.shut)
	if b.steps.Visible() || b.desk.Size().Height <= before {
		t.Errorf("closed it is there: %v, and the board is %v high, was %v", b.steps.Visible(), b.desk.Size().Height, before)
	}
	if kept, err := session.LoadSettings(b.dir); err != nil || !kept.NoSteps {
		t.Errorf("kept is %+v, %v", kept, err)
	}
	b.makeSteps()
	if b.steps.Visible() {
		t.Error("the strip comes again")
	}
	b.firstStepsAgain()
	if !b.steps.Visible() || b.settings.NoSteps {
		t.Error("asked for, the strip does not come again")
	}
}

func TestMarkupOfTheFirstSteps(t *testing.T) {
	themed(t)
	s := newSteps(nil, nil)
	s.show([]string{"place"})
	looksLike(t, "steps", s, fyne.NewSize(520, stepsHigh))
}
