package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"tubewright/route/check"
	"tubewright/route/mend"
	"tubewright/ui/board"
	"tubewright/ui/session"
)

// The part left is moved into the part top; the ways out are real ones.
func TestAFindingIsSettledByAButton(t *testing.T) {
	b := opened(t)
	b.did(b.session.MovePart("left", [3]float64{-7, 80, 60}))
	b.settle()
	f := b.snapshot.List.Findings[0]
	if f.Code != check.PartOutsideCase {
		t.Fatalf("the gravest finding is %s, want one outside the case", f.Code)
	}
	w := b.findings.ways[0]
	test.Tap(w.rows[0])
	if !w.model.looking || b.selectedFinding() != 0 {
		t.Fatalf("looking %v, selected %d", w.model.looking, b.selectedFinding())
	}
	b.settle()
	if len(w.model.offers) == 0 || !strings.HasPrefix(w.model.offers[0].words, "Move left 7 mm in +x") {
		t.Fatalf("offered is %+v, want to move left 7 mm in +x first", w.model.offers)
	}
	w.rows[0].MouseIn(&desktop.MouseEvent{})
	if p, _ := b.board.Scene().Part("left"); p.Origin[0] != 0 {
		t.Errorf("with the pointer on the offer the board shows the part at %v, want x = 0", p.Origin)
	}
	w.rows[0].MouseOut()
	if p, _ := b.board.Scene().Part("left"); p.Origin[0] != -7 {
		t.Errorf("with the pointer gone the board shows the part at %v", p.Origin)
	}
	test.Tap(w.rows[0])
	b.settle()
	if k, _ := b.snapshot.Plan.FindPart("left"); k.At[0] != 0 || b.previewed != (preview{}) {
		t.Errorf("taken, the part is at %v, previewing %v", k.At, b.previewed)
	}
	if countOf(b.snapshot.List.Findings, check.Error) != 0 || !strings.HasPrefix(b.news, "Done: Move left") {
		t.Errorf("taken, there are findings %v and the news %q", b.snapshot.List.Findings, b.news)
	}
	b.undo()
	b.settle()
	if k, _ := b.snapshot.Plan.FindPart("left"); k.At[0] != -7 {
		t.Errorf("undone the part is at %v", k.At)
	}
}

func TestLookingByKeyAndWithNothingToSettle(t *testing.T) {
	b := opened(t)
	b.pickFinding(len(b.snapshot.List.Findings) - 1)
	b.findSelectedWayOut()
	if b.snapshot.WayOut.Asked || b.news == "" {
		t.Errorf("of a note that nothing can be tried against: asked %v, told %q", b.snapshot.WayOut.Asked, b.news)
	}
	b.did(b.session.MovePart("left", [3]float64{-7, 80, 60}))
	b.findWayOut(0)
	if b.snapshot.WayOut.Asked {
		t.Error("ways out are looked for while the plan is worked out")
	}
	b.settle()
	b.pick(board.Target{})
	b.findSelectedWayOut()
	if !b.snapshot.WayOut.Looking {
		t.Error("the key does not look for ways out of the gravest")
	}
	test.Tap(b.findings.ways[0].rows[0]) // Stop looking
	b.settle()
	if w := b.findings.ways[0]; w.model.looking || !strings.Contains(w.model.said, "Stopped") {
		t.Errorf("stopped it says %q", w.model.said)
	}
}

func TestWhatIsSaidOfWaysOut(t *testing.T) {
	f := check.Finding{Code: check.NoWay, Runs: []string{"a"}}
	move := mend.Offer{Words: "Move pump 3 mm in +x.", Least: true, Settles: make([]check.Finding, 2), Brings: []check.Finding{{Code: check.NoDrain}}}
	for _, row := range []struct {
		name   string
		w      session.WayOut
		said   string
		failed bool
		offers int
	}{
		{"looking", session.WayOut{Asked: true, Looking: true, Spent: 0.346}, "34 %", false, 0},
		{"none at all", session.WayOut{Asked: true, Advice: mend.Advice{Whole: true}}, "No single change", false, 0},
		{"none in time", session.WayOut{Asked: true}, "in the time allowed", false, 0},
		{"one", session.WayOut{Asked: true, Advice: mend.Advice{Offers: []mend.Offer{move}}}, "Press it", false, 1},
		{"two", session.WayOut{Asked: true, Advice: mend.Advice{Offers: []mend.Offer{move, move}}}, "the least first", false, 2},
		{"in the way", session.WayOut{Asked: true, Advice: mend.Advice{InTheWay: mend.Obstacle{What: "The sill is in the way."}}}, "The sill is in the way. None", false, 0},
		{"failed", session.WayOut{Asked: true, Err: session.ErrNoPlan}, "broke off: No plan is open.", true, 0},
	} {
		row.w.Finding = f
		s := session.Snapshot{WayOut: row.w}
		s.List.Findings = []check.Finding{{Code: check.PortOpen}, f}
		m := wayOutOf(s)
		if m.index != 1 || !strings.Contains(m.said, row.said) || m.failed != row.failed || len(m.offers) != row.offers {
			t.Errorf("%s: %+v, want %q for finding 1", row.name, m, row.said)
		}
	}
	if got, want := offerFacts(move), "no smaller step does · settles 2 other errors too · brings a warning: No drain"; got != want {
		t.Errorf("facts %q, want %q", got, want)
	}
	if m := wayOutOf(session.Snapshot{}); m.index != -1 {
		t.Errorf("nobody asked, and it stands under finding %d", m.index)
	}
}

func TestMarkupOfAWayOut(t *testing.T) {
	themed(t)
	w := newWayOut(wayOutActions{})
	w.show(0, wayOutModel{index: 0, said: "Press it to make the change; undo takes it back.", offers: []offerModel{{"Move pump 3 mm in +x.", "no smaller step does"}}})
	looksLike(t, "way_out", w, fyne.NewSize(300, w.HeightFor(300)))
}
