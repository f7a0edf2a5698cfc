package session_test

import (
	"errors"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/ui/session"
)

// desk is a session with work that the test runs by hand: nothing happens
// between two lines of a test unless the test says so.
func TestNothingOpen(t *testing.T) {
	d := newDesk(t)
	now := d.Now()
	if now.Open || now.Dirty || now.Undo != "" || now.Redo != "" || now.Current() {
		t.Errorf("a new session shows %+v, want nothing open", now)
	}
	if err := d.Edit("x", func(p route.Plan) route.Plan { return p }); !errors.Is(err, session.ErrNoPlan) {
		t.Errorf("Edit without a plan gave %v, want ErrNoPlan", err)
	}
	d.Undo()
	d.Redo()
	d.Stop()
	d.BeginDrag("x")
	d.EndDrag()
	d.DropDrag()
	if len(d.works) > 0 {
		t.Error("work was started without a plan")
	}
}

func TestEditUndoRedo(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.settle()
	d.must(d.MovePart("pump", mgl64.Vec3{1, 2, 3}))
	d.must(d.MovePart("plate", mgl64.Vec3{4, 5, 6}))
	d.settle()
	now := d.Now()
	if now.Undo != "Move plate" || !now.Dirty || !now.Current() {
		t.Fatalf("after two edits: undo %q, dirty %v, current %v", now.Undo, now.Dirty, now.Current())
	}
	d.Undo()
	if got, want := d.at("plate"), (mgl64.Vec3{200, 0, 0}); got != want {
		t.Errorf("undo put the plate at %v, want %v", got, want)
	}
	if now := d.Now(); now.Undo != "Move pump" || now.Redo != "Move plate" {
		t.Errorf("undo %q, redo %q", now.Undo, now.Redo)
	}
	d.Undo()
	if now := d.Now(); now.Dirty || now.Undo != "" {
		t.Errorf("all undone: dirty %v, undo %q; want neither", now.Dirty, now.Undo)
	}
	d.Redo()
	d.Redo()
	d.Redo()
	if got, want := d.at("plate"), (mgl64.Vec3{4, 5, 6}); got != want {
		t.Errorf("redo put the plate at %v, want %v", got, want)
	}
	d.Undo()
	d.must(d.MovePart("pump", mgl64.Vec3{7, 8, 9}))
	if now := d.Now(); now.Redo != "" {
		t.Errorf("an edit after undo leaves redo %q, want nothing", now.Redo)
	}
}

func TestAnEditNeverWritesToAnOlderPlan(t *testing.T) {
	d := newDesk(t)
	plan := twoParts()
	d.Begin(plan)
	before := d.Now()
	d.must(d.MovePart("pump", mgl64.Vec3{1, 2, 3}))
	d.must(d.SetOnHand("plug", 3))
	if got := before.Plan.Parts[0].At; got != (mgl64.Vec3{100, 10, 20}) {
		t.Errorf("the snapshot from before the edit now has the pump at %v", got)
	}
	if got := plan.Parts[0].At; got != (mgl64.Vec3{100, 10, 20}) {
		t.Errorf("the plan handed over now has the pump at %v", got)
	}
}

func TestDragIsOneStep(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.BeginDrag("Move pump")
	for x := range 20 {
		d.must(d.MovePart("pump", mgl64.Vec3{float64(100 + x), 10, 20}))
	}
	d.EndDrag()
	d.must(d.MovePart("pump", mgl64.Vec3{0, 0, 0}))
	d.Undo()
	if got := d.at("pump"); got[0] != 119 {
		t.Errorf("one undo after the edit gives x = %v, want 119, the drag's end", got[0])
	}
	d.Undo()
	if got := d.at("pump"); got[0] != 100 {
		t.Errorf("the drag undone gives x = %v, want 100", got[0])
	}
}

func TestDroppedDragLeavesNoTrace(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.must(d.MovePart("plate", mgl64.Vec3{1, 1, 1}))
	d.Undo()
	d.BeginDrag("Move pump")
	d.must(d.MovePart("pump", mgl64.Vec3{1, 2, 3}))
	d.must(d.MovePart("pump", mgl64.Vec3{2, 2, 3}))
	d.DropDrag()
	now := d.Now()
	if d.at("pump") != (mgl64.Vec3{100, 10, 20}) || now.Dirty || now.Undo != "" || now.Redo != "Move plate" {
		t.Errorf("after a dropped drag: pump at %v, dirty %v, undo %q, redo %q", d.at("pump"), now.Dirty, now.Undo, now.Redo)
	}
	d.BeginDrag("Move pump")
	d.EndDrag()
	if now := d.Now(); now.Dirty || now.Redo != "Move plate" {
		t.Errorf("a drag that moved nothing: dirty %v, redo %q", now.Dirty, now.Redo)
	}
}

func TestUndoInTheMiddleOfADragDropsIt(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.must(d.MovePart("plate", mgl64.Vec3{1, 1, 1}))
	d.BeginDrag("Move pump")
	d.must(d.MovePart("pump", mgl64.Vec3{1, 2, 3}))
	d.Undo()
	if d.at("pump") != (mgl64.Vec3{100, 10, 20}) || d.at("plate") != (mgl64.Vec3{1, 1, 1}) || d.Dragging() {
		t.Errorf("undo while dragging: pump %v, plate %v, dragging %v", d.at("pump"), d.at("plate"), d.Dragging())
	}
}

func TestNudgesInARowAreOneStep(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	for range 5 {
		d.must(d.NudgePart("pump", mgl64.Vec3{1, 0, 0}))
	}
	d.must(d.NudgePart("plate", mgl64.Vec3{1, 0, 0}))
	d.must(d.NudgePart("pump", mgl64.Vec3{1, 0, 0}))
	d.Undo()
	d.Undo()
	if got := d.at("pump"); got[0] != 105 {
		t.Errorf("two undos give x = %v, want 105", got[0])
	}
	d.must(d.NudgePart("pump", mgl64.Vec3{1, 0, 0}))
	d.Undo()
	if got := d.at("pump"); got[0] != 105 {
		t.Errorf("a nudge after an undo is a step of its own: x = %v, want 105", got[0])
	}
	d.Undo()
	if got := d.at("pump"); got[0] != 100 {
		t.Errorf("five nudges undone give x = %v, want 100", got[0])
	}
}

// TestWithRealGoroutines is for the race detector: workers run beside the
// session, and their news come through a queue.
