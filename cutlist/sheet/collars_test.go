package sheet_test

import (
	"strings"
	"testing"

	"tubewright/cutlist/sheet"
)

// The fixture's collar is 20 mm long and its insertion 12 mm: a leg under 32 mm
// wants its collar before the bend. Of the small plan's tubes the first has legs
// well above; a longer collar changes that.
func TestCollarsGoOnBeforeTheBendWhereTheLegIsShort(t *testing.T) {
	p := smallPlan()
	page := func() string {
		l := list(t, p)
		return run(pagesOf(sheet.Pages(l, sheet.Options{}), "Tube B:"))
	}
	if got := page(); strings.Contains(got, "beforebend1,facingitsend(itsleg") || !strings.Contains(got, "PutcollarAonoverendAandcollarBoverendB:acollarcannotpassabend.") {
		t.Errorf("with long legs the page says\n%s", got)
	}
	l := list(t, p)
	straights := l.Tubes[1].Bench.Straights
	legA, legB := straights[0], straights[len(straights)-1]
	if legA == legB {
		t.Fatal("the fixture's legs are alike: it cannot tell the ends apart")
	}
	between := (min(legA, legB)+max(legA, legB))/2 - 12 // a collar that fits the longer leg only
	p.Fittings[0].Collar.Length = between
	short, other := "A", "B"
	if legB < legA {
		short, other = "B", "A"
	}
	got := page()
	if !strings.Contains(got, "Putoncollar"+short+"beforebend") || !strings.Contains(got, "Putcollar"+other+"onoverend"+other+";theotherisonalready.") {
		t.Errorf("with one short leg (%.1f and %.1f, collar %.1f) the page says\n%s", legA, legB, between, got)
	}
	p.Fittings[0].Collar.Length = max(legA, legB) // too long for both with its insertion
	if got := page(); !strings.Contains(got, "Bothcollarsareonalready") {
		t.Errorf("with two short legs the page says\n%s", got)
	}
}
