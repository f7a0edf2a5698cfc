package session_test

import (
	"context"
	"errors"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
	"tubewright/route/mend"
	"tubewright/ui/session"
)

// advising is a desk whose search for ways out tells of its steps and offers to
// move the pump 3 mm in +x.
func advising(t *testing.T) *desk {
	d := newDesk(t)
	d.Session = session.New(session.Tools{
		Solve: d.solve, Build: d.build,
		Advise: func(ctx context.Context, p route.Plan, _ find.Solution, f check.Finding, s mend.Search) (mend.Advice, error) {
			for n := range 1001 {
				s.Progress(n, 1000)
			}
			if f.Code == check.NoWay {
				return mend.Advice{}, errors.New("no lamp in the cellar")
			}
			move := mend.Move{Parts: []string{"pump"}, By: mgl64.Vec3{3, 0, 0}}
			return mend.Advice{Offers: []mend.Offer{{Change: move, Words: move.Words(p.Units), Plan: p}}, Whole: true}, ctx.Err()
		},
		Go:       func(work func()) { d.works = append(d.works, work) },
		Dispatch: func(task func()) { d.tasks = append(d.tasks, task) },
	}, func(s session.Snapshot) { d.shown = append(d.shown, s) })
	d.Begin(twoParts())
	d.settle()
	return d
}

func TestAWayOutIsFoundAndTakenAndUndone(t *testing.T) {
	d := advising(t)
	d.LookForWayOut(check.Finding{Code: check.PartHitsPart})
	if w := d.Now().WayOut; !w.Asked || !w.Looking {
		t.Fatalf("the search is %+v, want one under way", w)
	}
	d.shown = nil
	d.settle()
	w := d.Now().WayOut
	if w.Looking || len(w.Advice.Offers) != 1 || w.Spent != 1 {
		t.Fatalf("found is %+v, want one offer and all spent", w)
	}
	if n := len(d.shown); n < 40 || n > 60 {
		t.Errorf("1000 steps of work were told %d times, want about fifty", n)
	}
	d.must(d.TakeWayOut(w.Advice.Offers[0]))
	if at := d.at("pump"); at[0] != 103 {
		t.Errorf("the pump is at %v, want x = 103", at)
	}
	if now := d.Now(); now.Undo != "Move pump 3 mm in +x" || now.WayOut.Asked {
		t.Errorf("undo is called %q and the offers are still there: %v", now.Undo, now.WayOut.Asked)
	}
	d.Undo()
	if at := d.at("pump"); at[0] != 100 {
		t.Errorf("undone the pump is at %v, want x = 100", at)
	}
}

func TestASearchForWaysOutCanBeStoppedAndFails(t *testing.T) {
	d := advising(t)
	d.LookForWayOut(check.Finding{Code: check.PartHitsPart})
	d.StopLooking()
	d.settle()
	if w := d.Now().WayOut; !w.Stopped || w.Looking || w.Err != nil {
		t.Errorf("stopped it is %+v", w)
	}
	d.LookForWayOut(check.Finding{Code: check.NoWay})
	d.settle()
	if w := d.Now().WayOut; w.Err == nil || w.Looking {
		t.Errorf("failed it is %+v, want the error", w)
	}
	d.StopLooking() // of one that has ended: nothing
	if d.Now().WayOut.Stopped {
		t.Error("a search that has ended was stopped")
	}
}

func TestAnEditForgetsTheWaysOut(t *testing.T) {
	d := advising(t)
	d.LookForWayOut(check.Finding{Code: check.PartHitsPart})
	d.must(d.NudgePart("pump", mgl64.Vec3{1, 0, 0}))
	if d.Now().WayOut.Asked {
		t.Error("after an edit the search goes on")
	}
	d.LookForWayOut(check.Finding{}) // nothing is worked out yet
	if d.Now().WayOut.Asked {
		t.Error("ways out are looked for before the plan is worked out")
	}
	d.settle()
	if d.Now().WayOut.Asked {
		t.Error("the search that was given up came back")
	}
	gone := mend.Move{Parts: []string{"gone"}, By: mgl64.Vec3{1, 0, 0}}
	var missing *mend.MissingError
	if err := d.TakeWayOut(mend.Offer{Change: gone, Words: "Move gone."}); !errors.As(err, &missing) {
		t.Errorf("an offer about a part that is gone gives %v, want a MissingError", err)
	}
}
