package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2/driver/desktop"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/ui/session"
)

// A plan keeps fittings on hand as counts and bars as offcuts.
func TestBarsHaveNoCountOnHand(t *testing.T) {
	b := opened(t)
	var bar *buyLine
	for _, it := range b.snapshot.List.Buy {
		if it.Tube != "" {
			bar = b.buying.lines[it.Item]
		}
	}
	if bar == nil {
		t.Fatal("the plan buys no bar")
	}
	if bar.onHand != nil || bar.cells[1].Text != "–" {
		t.Errorf("a bar has the field %v and shows %q on hand", bar.onHand, bar.cells[1].Text)
	}
	bar.MouseIn(&desktop.MouseEvent{})
	if !strings.Contains(b.status.text, "under offcuts") {
		t.Errorf("with the pointer on a bar the status line says %q", b.status.text)
	}
	bar.MouseOut()
	if b.hover != "" {
		t.Errorf("with the pointer gone it says %q", b.hover)
	}
	b.switchUnits()
	b.Window.settle()
	if got := bar.full; !strings.HasSuffix(got, " in") {
		t.Errorf("in inches the bar is called %q", got)
	}
}

func TestRunsWithoutATubeAreNamedAsNotCounted(t *testing.T) {
	s := session.Snapshot{Listed: 1, List: cutlist.List{
		Plan:  route.Plan{Runs: []route.Run{{Name: "a"}, {Name: "b"}, {Name: "c"}}},
		Tubes: []cutlist.Tube{{Run: "b"}},
	}}
	if got, want := uncounted(s), "Not counted, because there is no tube yet: a and c."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	s.Listed = 0
	if got := uncounted(s); got != "" {
		t.Errorf("before anything is listed: %q", got)
	}
}

func TestPricesThatDifferAreNotUnknown(t *testing.T) {
	rows, total := buyingOf(cutlist.List{Buy: []cutlist.Item{{Item: "bar", Need: 2, Buy: 2, Price: 20.5}}})
	if rows[0].price != "20.50" || total != "together 20.50" {
		t.Errorf("row %+v, total %q", rows[0], total)
	}
}
