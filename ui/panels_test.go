package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"tubewright/cutlist"
	"tubewright/route"
)

// The panels with what they show given by hand, without a window around them.

func TestTheListOfParts(t *testing.T) {
	themed(t)
	picked := ""
	p := newParts(func(name string) { picked = name })
	p.Resize(fyne.NewSize(200, 60))
	p.show(nil, "")
	if len(p.presses) != 0 || len(p.body.items) != 1 {
		t.Errorf("without parts there are %d rows and %d things", len(p.presses), len(p.body.items))
	}
	p.show([]partRow{{"pump", "pump · 2 of 4 ports"}, {"plate", "no ports"}, {"radiator", "2 of 2 ports"}}, "radiator")
	test.Tap(p.presses[1])
	if picked != "plate" || !p.presses[2].chosen || p.presses[1].chosen {
		t.Errorf("pressed is %q, chosen %v", picked, p.presses[2].chosen)
	}
	kept := p.presses[0]
	p.show(p.rows, "pump")
	if p.presses[0] != kept || !kept.chosen || p.presses[2].chosen {
		t.Error("another selection made the rows anew, or left the old one chosen")
	}
}

func TestTheRack(t *testing.T) {
	themed(t)
	told := ""
	r := newRack(func(text string) { told = text })
	r.Resize(fyne.NewSize(300, 100))
	r.show(cutlist.List{}, rackModel{}, "Nothing to cut yet.")
	if text, ok := r.body.items[0].(*flow); !ok || text.text != "Nothing to cut yet." {
		t.Errorf("an empty rack shows %v", r.body.items)
	}
	bars := []cutlist.Bar{{Length: 500, Left: 200, Pieces: []cutlist.Piece{{Run: "pump-to-plate", Length: 299}}}, {Length: 1000, From: "offcut"}}
	r.show(cutlist.List{Bars: bars}, rackModel{bars: bars, names: []string{"500.0", "1000.0 offcut"}, proof: []string{"the cheapest possible: proven."}}, "")
	if len(r.body.items) != 3 || r.rows[1].name.Text != "1000.0 offcut" || r.rows[0].wide != r.rows[1].wide {
		t.Errorf("two bars and a line of proof are %d rows, the second %q", len(r.body.items), r.rows[1].name.Text)
	}
	first := r.rows[0]
	if first.MouseIn(nil); told != "500.0 mm: pump-to-plate 299.0, left 200.0" {
		t.Errorf("of the bar under the pointer is told %q", told)
	}
	if first.MouseOut(); told != "" {
		t.Errorf("with the pointer gone told is %q", told)
	}
	r.show(cutlist.List{Bars: bars[:1]}, rackModel{bars: bars[:1], names: []string{"500.0"}}, "")
	if len(r.body.items) != 1 || r.body.items[0] != first {
		t.Error("with a bar less its row was not used again")
	}
}

func TestTheDetails(t *testing.T) {
	themed(t)
	turned, removed := -1, false
	d := newDetails(detailActions{onTurn: func(axis int) { turned = axis }, onRemove: func() { removed = true }})
	d.Resize(fyne.NewSize(220, 300))
	d.show(detailModel{title: "Nothing is selected", fixed: true, lines: []string{"Click a part."}})
	if got := len(d.body.items); got != 2 {
		t.Errorf("with nothing selected there are %d rows, want title and hint", got)
	}
	d.show(detailModel{title: "pump", part: "pump", places: [3]float64{1, 2, 3}, units: route.Millimetres, lines: []string{"in: G1/4 · free"}})
	test.Tap(d.turns.presses[2])
	test.Tap(d.actions.presses[2])
	if turned != 2 || !removed || d.numbers.entries[2][0].Text != "3" {
		t.Errorf("turned about %d, removed %v, z shows %q", turned, removed, d.numbers.entries[2][0].Text)
	}
	d.showWrong(&NumberError{"x", "that is no length", "Type one."})
	if !strings.Contains(d.wrong.text, "The old value stays") || d.wrong.Size().Height == 0 {
		t.Errorf("a wrong number is told as %q, %v high", d.wrong.text, d.wrong.Size().Height)
	}
	d.show(detailModel{title: "plate", part: "plate", units: route.Millimetres})
	if d.wrong.text != "" {
		t.Errorf("of another part it still says %q", d.wrong.text)
	}
}

func TestTheCards(t *testing.T) {
	themed(t)
	var chose, selected string
	c := newCards(func(run string) { selected = run }, func(_, way string) { chose = way }, nil, nil)
	c.Resize(fyne.NewSize(280, 300))
	c.show(nil, "No runs yet.", "")
	if len(c.body.items) != 1 || len(c.presses()) != 0 {
		t.Errorf("without runs there are %d things and %d rows", len(c.body.items), len(c.presses()))
	}
	none := cardModel{run: "a", problem: "There is no way."}
	some := cardModel{run: "b", letter: "A", length: "273.3", unit: "mm", facts: "1 bend", ways: []wayModel{{"bent", "1 bend", "shortest", true}, {"square", "2 bends", "more tube", false}}}
	c.show([]cardModel{none, some}, "", "b")
	if c.byRun["a"].facts.text != "There is no way." || c.byRun["a"].more.text != "" || c.byRun["b"].more.text != "Ways and bench table" {
		t.Errorf("cards say %q, %q and %q", c.byRun["a"].facts.text, c.byRun["a"].more.text, c.byRun["b"].more.text)
	}
	test.Tap(c.byRun["b"].front)
	if selected != "b" || c.open != "b" || len(c.byRun["b"].rows) != 3 {
		t.Fatalf("pressed, selected is %q, open %q with %d rows", selected, c.open, len(c.byRun["b"].rows))
	}
	test.Tap(c.byRun["b"].rows[2])
	if chose != "square" {
		t.Errorf("chosen is %q", chose)
	}
	c.show([]cardModel{none}, "", "")
	if len(c.byRun) != 1 || len(c.body.items) != 1 {
		t.Errorf("of a run that is gone there is still a card: %d cards, %d things", len(c.byRun), len(c.body.items))
	}
}

// The list of rows that a press of Up and Down walks through ends at its ends.
func TestWalkingThroughAList(t *testing.T) {
	themed(t)
	p := newParts(func(string) {})
	w := test.NewTempWindow(t, p.pane)
	w.Resize(fyne.NewSize(200, 300))
	p.show([]partRow{{"a", ""}, {"b", ""}}, "")
	w.Canvas().Focus(p.presses[0])
	for _, row := range []struct {
		key  fyne.KeyName
		want int
	}{{fyne.KeyDown, 1}, {fyne.KeyDown, 1}, {fyne.KeyUp, 0}, {fyne.KeyUp, 0}} {
		w.Canvas().Focused().(*press).TypedKey(&fyne.KeyEvent{Name: row.key})
		if w.Canvas().Focused() != p.presses[row.want] {
			t.Errorf("after %v the focus is not on row %d", row.key, row.want)
		}
	}
}

// A question grows with its rows, scrolls where the window ends, and Enter and Esc
// press its buttons.
func TestAQuestionStaysInTheWindow(t *testing.T) {
	b := opened(t)
	var rows []fyne.CanvasObject
	for range 200 {
		rows = append(rows, newFlow("a row", textSize, ink))
	}
	said := ""
	m := b.openModal("Many rows", modalWidth, rows,
		button{text: "Cancel", cancel: true, act: func() { said = "no" }}, button{text: "Do it", strong: true, act: func() { said = "yes" }})
	if high := m.size().Height; high > b.win.Canvas().Size().Height {
		t.Errorf("200 rows make a question %v high in a window of %v", high, b.win.Canvas().Size().Height)
	}
	if m.text == nil || !m.key(fyne.KeyPageDown) || m.text.scroll.Offset.Y <= 0 {
		t.Error("Page Down does not scroll it")
	}
	m.key(fyne.KeyReturn)
	if said != "yes" || b.asked() != "" {
		t.Errorf("Enter said %q, asked is %q", said, b.asked())
	}
	m = b.openModal("Few rows", modalWidth, rows[:1], button{text: "Cancel", cancel: true, act: func() { said = "no" }})
	if m.text != nil {
		t.Error("one row scrolls")
	}
	m.key(fyne.KeyEscape)
	if said != "no" {
		t.Errorf("Esc said %q", said)
	}
}
