package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"tubewright/ui/board"
)

// press types a key into whatever has the focus, as the driver does.
func (b *bench) press(name fyne.KeyName) {
	k := &fyne.KeyEvent{Name: name}
	if f := b.win.Canvas().Focused(); f != nil {
		f.TypedKey(k)
		return
	}
	b.typedKey(k)
}

// letterKey types a letter into whatever has the focus.
func (b *bench) letterKey(r rune) {
	if f := b.win.Canvas().Focused(); f != nil {
		f.TypedRune(r)
		return
	}
	b.typedRune(r)
}

func TestTheKeysAreShownWhereverTheFocusIs(t *testing.T) {
	b := opened(t)
	b.pick(board.PartTarget("left"))
	for name, f := range map[string]fyne.Focusable{
		"the board": b.board, "a row": b.parts.presses[0], "a field": b.details.numbers.entries[0][0], "nothing": nil,
	} {
		b.win.Canvas().Focus(f)
		b.press(fyne.KeyF1)
		if b.asked() != "Keys" {
			t.Fatalf("F1 with the focus on %s shows %q, want the keys", name, b.asked())
		}
		b.press(fyne.KeyEscape)
	}
	for name, f := range map[string]fyne.Focusable{"the board": b.board, "a row": b.parts.presses[0], "nothing": nil} {
		b.win.Canvas().Focus(f)
		b.letterKey('?')
		if b.asked() != "Keys" {
			t.Fatalf("? with the focus on %s shows %q, want the keys", name, b.asked())
		}
		b.modals[0].close()
	}
}

func TestLettersOfTheBoardActOnce(t *testing.T) {
	b := opened(t)
	for name, f := range map[string]fyne.Focusable{"the board": b.board, "a row": b.parts.presses[0]} {
		b.win.Canvas().Focus(f)
		was := b.board.Perspective()
		b.press(fyne.KeyP)
		b.letterKey('p')
		if b.board.Perspective() == was {
			t.Errorf("with the focus on %s, P acts twice or not at all", name)
		}
	}
}

func TestPartsAreTurnedFromTheList(t *testing.T) {
	b := opened(t)
	b.pick(board.PartTarget("left"))
	b.win.Canvas().Focus(b.parts.presses[0])
	b.press(fyne.KeyR)
	b.settle()
	if k, _ := b.snapshot.Plan.FindPart("left"); k.Turn == [3]float64{} {
		t.Error("R with the focus on the part's row does not turn it")
	}
	b.win.Canvas().Focus(b.parts.presses[1])
	b.press(fyne.KeyDelete)
	if _, ok := b.snapshot.Plan.FindPart("left"); !ok {
		t.Error("Delete on another row removes the selected part")
	}
	b.win.Canvas().Focus(b.parts.presses[0])
	b.press(fyne.KeyDelete)
	b.settle()
	if _, ok := b.snapshot.Plan.FindPart("left"); ok {
		t.Error("Delete on its row does not remove the selected part")
	}
	if row, ok := b.win.Canvas().Focused().(*press); !ok || nameOf(row) != "top" {
		t.Error("the part removed, the focus is not on the next row")
	}
}

func TestUpAndDownWalkThroughAList(t *testing.T) {
	b := opened(t)
	rows := b.parts.presses
	b.win.Canvas().Focus(rows[0])
	b.press(fyne.KeyDown)
	if b.win.Canvas().Focused() != rows[1] {
		t.Error("Down does not go to the second row")
	}
	b.press(fyne.KeyDown)
	if b.win.Canvas().Focused() != rows[1] {
		t.Error("Down at the end leaves the last row")
	}
	b.press(fyne.KeyUp)
	if b.win.Canvas().Focused() != rows[0] {
		t.Error("Up does not go back")
	}
	b.press(fyne.KeyReturn)
	if b.selectedPart() != "left" || b.win.Canvas().Focused() != rows[0] {
		t.Errorf("Enter selects %q and leaves the focus on %v", b.selectedPart(), b.win.Canvas().Focused())
	}
}

func TestF6GoesRoundThePanels(t *testing.T) {
	b := opened(t)
	b.pick(board.PartTarget("left"))
	want := []fyne.Focusable{
		b.parts.presses[0], b.details.numbers.entries[0][0], b.board,
		b.cards.presses()[0], b.findings.rows[0], b.rack.readPane, b.buying.lines["socket-16"].onHand, b.parts.presses[0],
	}
	for i, f := range want {
		b.press(fyne.KeyF6)
		if got := b.win.Canvas().Focused(); got != f {
			t.Fatalf("F6 number %d goes to %T %v, want %T", i+1, got, got, f)
		}
	}
}

func TestStepsFromFindingToFinding(t *testing.T) {
	b := opened(t)
	n := len(b.snapshot.List.Findings)
	if n < 2 {
		t.Fatalf("%d findings; the test needs two", n)
	}
	for _, row := range []struct{ by, want int }{{-1, n - 1}, {1, 0}, {1, 1}, {-1, 0}} {
		b.stepFinding(row.by)
		if got := b.selectedFinding(); got != row.want {
			t.Errorf("a step of %d selects finding %d, want %d", row.by, got, row.want)
		}
	}
}

// Every line of the menus has a key, no two have the same, and the page of keys tells them all.
func TestEveryCommandHasItsOwnKey(t *testing.T) {
	b := opened(t)
	seen := map[string]string{}
	for _, g := range b.menus() {
		for _, c := range g.commands {
			if c.act == nil {
				continue
			}
			if c.keys == "" && c.name != "Cautions" && c.name != "About Tubewright" {
				t.Errorf("%s has no key", c.name)
			}
			if old := seen[c.keys]; old != "" && c.keys != "" {
				t.Errorf("%s and %s are both on %s", old, c.name, c.keys)
			}
			seen[c.keys] = c.name
			if s, ok := c.shortcut.(*desktop.CustomShortcut); ok && !strings.HasSuffix(c.keys, keyName(s.KeyName)) {
				t.Errorf("%s tells %s but listens to %s", c.name, c.keys, s.KeyName)
			}
		}
	}
}

func keyName(k fyne.KeyName) string { return string(k) }

func TestALongTextScrollsByKey(t *testing.T) {
	b := opened(t)
	var rows []fyne.CanvasObject
	for range 100 {
		rows = append(rows, newFlow("A line.", textSize, ink))
	}
	b.read("Long", rows...)
	scroll := b.modals[0].text.scroll
	b.press(fyne.KeyDown)
	if scroll.Offset.Y != scrollStep {
		t.Errorf("Down scrolls to %v, want %v", scroll.Offset.Y, scrollStep)
	}
	b.press(fyne.KeyEnd)
	end := scroll.Offset.Y
	b.press(fyne.KeyPageDown)
	if last := b.modals[0].text.body.Size().Height - scroll.Size().Height; end != last || scroll.Offset.Y != last {
		t.Errorf("End goes to %v and a page more to %v, want %v", end, scroll.Offset.Y, last)
	}
	b.press(fyne.KeyHome)
	if scroll.Offset.Y != 0 {
		t.Errorf("Home goes to %v", scroll.Offset.Y)
	}
	b.press(fyne.KeyEscape)
	if len(b.modals) != 0 {
		t.Error("Esc does not close it")
	}
}

func TestTwoColumnsShareAWidth(t *testing.T) {
	themed(t)
	one := func(n int) *column {
		c := newColumn(0, 0)
		for range n {
			c.items = append(c.items, newFlow("word", textSize, ink))
		}
		return c
	}
	b := newBeside(20, one(2), one(5))
	if got, want := b.HeightFor(220), b.right.HeightFor(100); got != want {
		t.Errorf("the height is %v, want the higher column's %v", got, want)
	}
	b.Resize(fyne.NewSize(220, 200))
	if b.left.Size().Width != 100 || b.right.Position().X != 120 || b.right.Size().Width != 100 {
		t.Errorf("left %v, right %v at %v", b.left.Size(), b.right.Size(), b.right.Position())
	}
}
