package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"tubewright/cutlist/measure"
	"tubewright/route"
	"tubewright/ui/session"
)

// measuring is the bench with the page of measures open.
func measuring(t *testing.T) (*bench, *caliperPage) {
	t.Helper()
	b := opened(t)
	b.askCaliper()
	if b.asked() != "Enter what you measure" {
		t.Fatalf("asked is %q", b.asked())
	}
	return b, b.caliper
}

func TestMeasuredNumbersMakeATubeFirm(t *testing.T) {
	b, c := measuring(t)
	if !b.snapshot.List.Draft || c.shown[0].name != "socket-16" || c.shown[0].firm || c.at != "fitting socket-16" {
		t.Fatalf("draft %v, the list begins with %+v, shown is %q", b.snapshot.List.Draft, c.shown[0], c.at)
	}
	f := b.formOf(0)
	b.typeIn(f, "stop", "5+1.5")
	if got := b.snapshot.Plan.Fittings; len(got) != 1 || got[0].Stop != 6.5 || got[0].Insertion.Full != 12 {
		t.Fatalf("the plan's own fittings are %+v, want the catalogue's with a stop of 6.5", got)
	}
	if b.snapshot.Undo != "Measure stop of socket-16" {
		t.Errorf("undo is called %q", b.snapshot.Undo)
	}
	b.typeIn(f, "insertion.least", "20")
	if got := b.snapshot.Plan.Fittings[0].Insertion; got.Least != 9 || f.rows["insertion.least"].wrong.text == "" {
		t.Errorf("more than full insertion gives %+v, told %q", got, f.rows["insertion.least"].wrong.text)
	}
	b.typeIn(f, "collar.od", "2.4")
	if !strings.Contains(c.told.text, "look at the caliper once more") {
		t.Errorf("a tenth of the collar is told as %q", c.told.text)
	}
	b.typeIn(f, "price", "6.5")
	b.typeIn(f, "known", "measured")
	if got := b.snapshot.Plan.Fittings[0]; !got.KnownFrom.Firm() || got.Price != 6.5 {
		t.Errorf("the socket is %+v", got)
	}
	if !c.shown[0].firm {
		t.Errorf("the list still says %q", c.shown[0].facts)
	}
	c.pick("tube petg-16-12")
	b.typeIn(f, "springback.degrees", "1.2°")
	b.typeIn(f, "known", "measured")
	if b.snapshot.List.Draft {
		t.Errorf("all measured, the plan is still a draft: %+v", b.snapshot.List.Reasons)
	}
	if !strings.HasPrefix(c.head.text, "Nothing is only typical") {
		t.Errorf("the page says %q", c.head.text)
	}
}

// The port top.in stands 250 mm from the left. Measured at 252, its part is 2 mm
// further to the right.
func TestAPortMeasuredElsewhereMovesItsPart(t *testing.T) {
	b, c := measuring(t)
	c.pick("port top.in")
	f := b.formOf(0)
	before := b.part("top").At[0]
	label := f.rows["x"].label.text
	shown, err := parseLength(f.rows["x"].entry.Text, route.Millimetres)
	if err != nil {
		t.Fatal(err)
	}
	b.typeIn(f, "x", lengthText(shown+2, route.Millimetres))
	want := before + 2
	if strings.Contains(label, "right") {
		want = before - 2
	}
	if got := b.part("top").At[0]; got != want {
		t.Errorf("%s measured 2 mm more: the part is at x = %v, was %v, want %v", label, got, before, want)
	}
	if k := b.part("top"); len(k.Ports) != 2 {
		t.Errorf("showing the form changed the part's ports: %+v", k.Ports)
	}
}

func TestTheDrawingFollowsTheField(t *testing.T) {
	b, c := measuring(t)
	f := b.formOf(0)
	f.rows["collar.od"].entry.FocusGained()
	if n, ok := c.number(); !ok || n.Key != measure.CollarOD || c.lit != measure.CollarOD {
		t.Errorf("with the focus on the collar the drawing is of %+v", n)
	}
	d := c.drawSketch(300)
	if len(d.Items) == 0 {
		t.Error("the drawing is empty")
	}
	b.win.Canvas().Focus(c.rows[0])
	b.press(fyne.KeyDown)
	if !c.rows[1].focus {
		t.Error("Down does not go to the next thing")
	}
	test.Tap(c.rows[1])
	if c.at != c.shown[1].key || c.lit != "" {
		t.Errorf("pressed, %q is shown", c.at)
	}
	b.press(fyne.KeyEscape)
	if b.asked() != "" {
		t.Errorf("Esc leaves %q", b.asked())
	}
}

// Only looking at the forms changes no plan.
func TestLookingChangesNothing(t *testing.T) {
	b, c := measuring(t)
	for _, row := range c.shown {
		c.pick(row.key)
	}
	b.press(fyne.KeyEscape)
	b.askPartForm("left")
	b.press(fyne.KeyEscape)
	b.askSettings()
	p := b.snapshot.Plan
	if b.snapshot.Dirty || len(p.Fittings) != 0 || len(p.Tubes) != 0 || len(p.Parts[0].Ports) != 2 {
		t.Errorf("dirty %v, fittings %v, tubes %v", b.snapshot.Dirty, p.Fittings, p.Tubes)
	}
}

func TestNothingToMeasureYet(t *testing.T) {
	b := opened(t)
	b.emptyPlan()
	b.settle()
	b.askCaliper()
	if c := b.caliper; len(c.things) != c.rests || !strings.HasPrefix(c.head.text, "Once a run has a tube") {
		t.Errorf("an empty plan lists %d things and says %q", len(c.things)-c.rests, c.head.text)
	}
	if used, rest := thingsOf(session.Snapshot{}); len(used)+len(rest) != 0 {
		t.Errorf("no plan lists %v and %v", used, rest)
	}
}

func TestTheDraftPageLeadsToMeasuring(t *testing.T) {
	b := opened(t)
	b.tellDraft()
	b.pressButton("Enter what you measure")
	if b.asked() != "Enter what you measure" {
		t.Errorf("asked is %q", b.asked())
	}
}

// What no tube rests on can be measured too, after what they do rest on.
func TestTheRestCanBeMeasured(t *testing.T) {
	b, c := measuring(t)
	if c.rests == 0 || len(c.rows) != len(c.things) {
		t.Fatalf("%d of %d things are the rest, %d rows", c.rests, len(c.things), len(c.rows))
	}
	first := len(c.things) - c.rests
	if _, ok := c.list.items[first].(*press); ok {
		t.Error("the rest has no heading of its own")
	}
	c.pick("fitting extender-10")
	b.typeIn(b.formOf(0), "length", "10.4")
	if f := b.snapshot.Plan.OwnFitting("extender-10"); f == nil || f.Length != 10.4 {
		t.Errorf("a fitting that no run uses was measured as 10.4, the plan has %+v", f)
	}
}

// The drawing stands above the fields, outside of what scrolls.
func TestTheDrawingStaysInSight(t *testing.T) {
	b, c := measuring(t)
	c.pick("tube petg-16-12")
	f := b.formOf(0)
	b.win.Canvas().Focus(f.rows["trim"].entry)
	if c.body.rows.scroll.Offset.Y <= 0 {
		t.Error("the last field was not scrolled into view")
	}
	at := b.app.Driver().AbsolutePositionForObject(c.sketch)
	if at.Y < 0 || c.sketch.Size().Height < 100 {
		t.Errorf("the drawing stands at %v, %v large", at, c.sketch.Size())
	}
}
