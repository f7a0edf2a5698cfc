package ui

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"

	"tubewright/route"
	"tubewright/ui/board"
)

// What has the focus keeps it, or hands it on within its panel, when rows are made
// anew: otherwise Tab would begin again at the top of the window.
func TestTheFocusStaysInItsPanel(t *testing.T) {
	b := opened(t)
	focused := func() fyne.Focusable { return b.win.Canvas().Focused() }
	b.win.Canvas().Focus(b.parts.presses[1])
	b.did(b.session.RemovePart("left"))
	b.settle()
	if focused() != b.parts.presses[0] {
		t.Errorf("the part before it removed, the focus is on %T, want the row of the part that had it", focused())
	}
	b.undo()
	b.settle()
	if focused() != b.parts.presses[1] {
		t.Errorf("undone, the focus is on %T, want the same part's row", focused())
	}
	b.pick(board.PartTarget("left"))
	b.typedRune('n')
	if focused() != b.details.numbers.entries[0][0] || b.details.numbers.entries[0][0].SelectedText() != "60" {
		t.Errorf("N leads to %T", focused())
	}
	b.pickFinding(0)
	if focused() != b.board {
		t.Errorf("with the numbers gone the focus is on %T, want the board", focused())
	}
	e := b.buying.lines["socket-16"].onHand
	b.win.Canvas().Focus(e)
	e.SetText("3")
	b.did(b.session.RemoveRun("left-to-top"))
	b.settle()
	if got, ok := focused().(*numberEntry); len(b.buying.lines) > 0 && !ok {
		t.Errorf("with the list of what to buy another, the focus is on %T %v", got, got)
	}
}

// A question gives the focus back to what had it.
func TestAQuestionGivesTheFocusBack(t *testing.T) {
	b := opened(t)
	row := b.parts.presses[1]
	b.win.Canvas().Focus(row)
	b.tellKeys()
	b.press(fyne.KeyEscape)
	if got := b.win.Canvas().Focused(); got != row || b.asked() != "" {
		t.Errorf("the keys read, the focus is on %T, want the row", got)
	}
	b.askSettings()
	b.askPart()
	b.press(fyne.KeyEscape)
	b.press(fyne.KeyEscape)
	if got := b.win.Canvas().Focused(); got != row || b.asked() != "" {
		t.Errorf("two questions closed, the focus is on %T and %q is open", got, b.asked())
	}
}

// A bar more is added by key, and the focus stays where one goes on.
func TestAFormKeepsTheFocus(t *testing.T) {
	b := opened(t)
	b.askSettings()
	m := b.modals[0]
	var add *press
	for _, f := range focusablesIn(m.page.body) {
		if p, ok := f.(*press); ok && nameOf(p) == "Add a bar to buy" {
			add = p
		}
	}
	b.win.Canvas().Focus(add)
	b.press(fyne.KeyReturn)
	b.settle()
	if c, ok := b.win.Canvas().Focused().(*choice); !ok || c.Selected != "petg-16-12" {
		t.Fatalf("a bar added, the focus is on %T, want its tube", b.win.Canvas().Focused())
	}
	b.undo()
	b.settle()
	if f := b.win.Canvas().Focused(); f == nil || !slices.Contains(focusablesIn(m.page.body), f) {
		t.Errorf("the bar taken away again, the focus is on %T", f)
	}
}

// In a choice the arrow keys step, letters find, and Enter is the question's.
func TestAChoiceByKeys(t *testing.T) {
	themed(t)
	var got string
	c := newChoice([]string{"pump.in", "pump.out", "processor.in", "top.low"}, func(s string) { got = s })
	c.SetSelectedIndex(0)
	for _, row := range []struct{ typed, want string }{{"pr", "processor.in"}, {"t", "top.low"}, {"pump.o", "pump.out"}, {"x", "pump.out"}} {
		c.FocusGained()
		for _, r := range row.typed {
			c.TypedRune(r)
		}
		if got != row.want {
			t.Errorf("typing %q chooses %q, want %q", row.typed, got, row.want)
		}
	}
	c.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	if got != "processor.in" {
		t.Errorf("Down chooses %q", got)
	}
}

// Tab keeps what was typed and goes on, even where that makes the rows anew.
func TestTabGoesOnAfterAPortIsRenamed(t *testing.T) {
	b := opened(t)
	b.askPartForm("left")
	f := b.modals[0].page.forms[1]
	name := f.rows["port.0.name"].entry
	b.win.Canvas().Focus(name)
	name.SetText("outlet")
	b.win.Canvas().FocusNext()
	b.settle()
	if _, ok := b.snapshot.Plan.FindPort(route.PortRef{Part: "left", Port: "outlet"}); !ok {
		t.Fatal("the port is not renamed")
	}
	if got := b.win.Canvas().Focused(); got != f.rows["port.0.at"].entry {
		t.Errorf("after the name the focus is on %T, want the place", got)
	}
}
