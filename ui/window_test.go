package ui

import (
	"image/color"
	"math"
	"os"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/ui/board"
	"tubewright/ui/session"
)

// bench is a window on a screen of its own, whose work is done when the test
// says so: nothing runs beside the test.
// The worked example of the plan format: D = 274.265, so the aim is 273.27.
func TestTheWorkedExampleIsShown(t *testing.T) {
	b := opened(t)
	if got := b.cut("left-to-top"); math.Abs(got-workedAim) > 0.01 {
		t.Fatalf("the cut is %.3f, want %.3f as worked by hand", got, workedAim)
	}
	c := b.cards.byRun["left-to-top"]
	if c == nil || c.head.figure.Text != "273.3" || c.head.unit.Text != "mm" {
		t.Errorf("the card shows %q %q, want 273.3 mm", c.head.figure.Text, c.head.unit.Text)
	}
	if !strings.HasPrefix(c.facts.text, "1 bend 90°") {
		t.Errorf("the card's facts are %q, want them to begin with 1 bend 90°", c.facts.text)
	}
	if got := b.header.title.Text; got != "Bench" {
		t.Errorf("the title is %q, want Bench", got)
	}
}

func TestDraggingAPartChangesItsTubeAndUndoBringsItBack(t *testing.T) {
	b := opened(t)
	for x := 1; x <= 5; x++ {
		b.moved("left", mgl64.Vec3{-10 * float64(x), 0, 0}, false)
	}
	b.moved("left", mgl64.Vec3{-50, 0, 0}, true)
	b.settle()
	if got := b.cut("left-to-top"); math.Abs(got-workedAim-50) > 0.01 {
		t.Errorf("with the part 50 mm further off the cut is %.3f, want %.3f", got, workedAim+50)
	}
	if got := b.header.title.Text; got != "Bench *" {
		t.Errorf("the title is %q, want a star behind it", got)
	}
	test.Tap(b.header.buttons[undoButton])
	b.settle()
	if got := b.cut("left-to-top"); math.Abs(got-workedAim) > 0.01 || b.snapshot.Dirty {
		t.Errorf("undone the cut is %.3f, dirty %v; want %.3f as it was", got, b.snapshot.Dirty, workedAim)
	}
}

func TestAGivenUpDragLeavesThePlanAsItWas(t *testing.T) {
	b := opened(t)
	b.moved("left", mgl64.Vec3{-10, 0, 0}, false)
	b.moved("left", mgl64.Vec3{}, true)
	b.settle()
	if b.snapshot.Dirty || b.session.Dragging() {
		t.Errorf("dirty %v, dragging %v; want neither", b.snapshot.Dirty, b.session.Dragging())
	}
}

func TestPanelsFollowADragOnlyNowAndThen(t *testing.T) {
	b := opened(t)
	before := b.cards.byRun["left-to-top"].head.figure.Text
	b.moved("left", mgl64.Vec3{-10, 0, 0}, false)
	for range 4 {
		if len(b.tasks) > 0 {
			next := b.tasks[0]
			b.tasks = b.tasks[1:]
			next()
		} else if len(b.works) > 0 {
			next := b.works[0]
			b.works = b.works[1:]
			next()
		}
	}
	if got := b.cards.byRun["left-to-top"].head.figure.Text; got != before {
		t.Errorf("within the pause the card already shows %s", got)
	}
	b.settle()
	if got := b.cards.byRun["left-to-top"].head.figure.Text; got != "283.3" {
		t.Errorf("after the pause the card shows %s, want 283.3", got)
	}
}

func TestSelectionIsOneEverywhere(t *testing.T) {
	b := opened(t)
	test.Tap(b.parts.presses[0])
	if got := b.board.Selection(); len(got) != 1 || got[0] != board.PartTarget("left") {
		t.Errorf("the board has %v chosen, want the part left", got)
	}
	if b.details.model.title != "left" || !b.parts.presses[0].chosen {
		t.Errorf("details show %q, row chosen %v", b.details.model.title, b.parts.presses[0].chosen)
	}
	b.pick(board.RunTarget("left-to-top"))
	if !b.cards.byRun["left-to-top"].front.chosen || b.parts.presses[0].chosen || b.details.model.title != "left-to-top" {
		t.Error("choosing the run did not move the selection everywhere")
	}
	b.pick(board.PortTarget(route.PortRef{Part: "top", Port: "in"}))
	if got := b.details.model; got.title != "top.in" || !strings.Contains(got.lines[0], "250") {
		t.Errorf("the port's details are %v", got)
	}
	b.pick(board.Target{})
	if b.details.model.title != "Nothing is selected" {
		t.Errorf("with nothing selected the details show %q", b.details.model.title)
	}
}

func TestNumbersOfAPart(t *testing.T) {
	b := opened(t)
	b.pick(board.PartTarget("left"))
	x := b.details.numbers.entries[0][0]
	if x.Text != "60" {
		t.Fatalf("the field x shows %q, want 60", x.Text)
	}
	b.win.Canvas().Focus(x)
	x.SetText("60-25")
	x.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	b.Window.settle()
	b.settle()
	if k, _ := b.snapshot.Plan.FindPart("left"); k.At[0] != 35 || x.Text != "35" {
		t.Errorf("after 60-25 the part is at x = %v and the field shows %q, want 35", k.At[0], x.Text)
	}
	b.win.Canvas().Focus(x)
	x.SetText("3 furlongs")
	b.win.Canvas().Unfocus()
	if x.Text != "35" || !strings.Contains(b.details.wrong.text, "furlongs") {
		t.Errorf("after a wrong entry the field shows %q, the panel says %q", x.Text, b.details.wrong.text)
	}
	b.win.Canvas().Focus(x)
	x.SetText("99")
	x.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	b.win.Canvas().Unfocus()
	if x.Text != "35" || b.details.wrong.text != "" {
		t.Errorf("after Esc the field shows %q and the panel says %q", x.Text, b.details.wrong.text)
	}
	x.TypedKey(&fyne.KeyEvent{Name: fyne.KeyUp})
	b.settle()
	if k, _ := b.snapshot.Plan.FindPart("left"); k.At[0] != 36 {
		t.Errorf("Up gave x = %v, want 36", k.At[0])
	}
}

func TestATypedNumberIsKeptBeforeACommandActs(t *testing.T) {
	b := opened(t)
	b.pick(board.PartTarget("left"))
	x := b.details.numbers.entries[0][0]
	b.win.Canvas().Focus(x)
	x.SetText("70")
	b.save()
	b.settle()
	text, err := os.ReadFile(b.snapshot.Path)
	if err != nil || !strings.Contains(string(text), "[70, 80, 30]") {
		t.Errorf("the saved file does not hold x = 70: %v\n%s", err, text)
	}
}

func TestUndoInAFieldTakesTheTypingBack(t *testing.T) {
	b := opened(t)
	if err := b.session.MovePart("top", mgl64.Vec3{220, 250, 31}); err != nil {
		t.Fatal(err)
	}
	b.settle()
	b.pick(board.PartTarget("left"))
	x := b.details.numbers.entries[0][0]
	b.win.Canvas().Focus(x)
	x.SetText("70")
	b.undo()
	if x.Text != "60" || b.snapshot.Undo != "Move top" {
		t.Errorf("undo in a field: it shows %q and the plan would undo %q; want 60 and Move top", x.Text, b.snapshot.Undo)
	}
	b.undo()
	if b.snapshot.Undo != "" {
		t.Errorf("the second undo left %q to undo", b.snapshot.Undo)
	}
}

func TestUnitsAreSwitchedEverywhere(t *testing.T) {
	b := opened(t)
	b.pick(board.PartTarget("left"))
	test.Tap(b.header.buttons[unitsButton])
	b.settle()
	c := b.cards.byRun["left-to-top"]
	if c.head.figure.Text != "10.758" || c.head.unit.Text != "in" { // 273.265 / 25.4
		t.Errorf("the card shows %s %s, want 10.758 in", c.head.figure.Text, c.head.unit.Text)
	}
	if got := b.details.numbers.entries[0][0].Text; got != "2.3622" { // 60 / 25.4
		t.Errorf("the field x shows %q, want 2.3622", got)
	}
	if b.snapshot.Dirty {
		t.Error("looking at inches made the plan dirty")
	}
}

func TestTheme(t *testing.T) {
	b := opened(t)
	test.Tap(b.header.buttons[themeButton])
	if !isDark() || b.header.buttons[themeButton].Text != "Dark" || b.settings.Theme != "dark" {
		t.Errorf("dark %v, button %q, settings %q", isDark(), b.header.buttons[themeButton].Text, b.settings.Theme)
	}
	shown := b.win.Canvas().Capture()
	if got := color.NRGBAModel.Convert(shown.At(1, shown.Bounds().Dy()-2)); got != darkPalette[ground] {
		t.Errorf("the ground is %v, want %v", got, darkPalette[ground])
	}
	kept, err := session.LoadSettings(b.dir)
	if err != nil || kept.Theme != "dark" {
		t.Errorf("the settings hold %+v, %v", kept, err)
	}
}

func TestChoosingAWay(t *testing.T) {
	b := opened(t)
	test.Tap(b.cards.byRun["left-to-top"].front)
	c := b.cards.byRun["left-to-top"]
	if !c.open || len(c.model.ways) < 2 {
		t.Fatalf("the card is open %v with %d ways; want it open with some to choose from", c.open, len(c.model.ways))
	}
	second := c.model.ways[1].name
	b.chooseWay("left-to-top", second)
	b.settle()
	if w, _ := b.snapshot.Solution.Runs[0].Way(); w.Name != second {
		t.Errorf("the run takes %q, want the chosen %q", w.Name, second)
	}
	b.freeWay("left-to-top")
	b.settle()
	if w, _ := b.snapshot.Solution.Runs[0].Way(); w.Name != c.model.ways[0].name {
		t.Errorf("handed back the run takes %q, want the best, %q", w.Name, c.model.ways[0].name)
	}
	test.Tap(c.front)
	if c.open {
		t.Error("a second press did not close the card")
	}
}

func TestCountsOnHand(t *testing.T) {
	b := opened(t)
	e := b.buying.lines["socket-16"].onHand
	b.win.Canvas().Focus(e)
	e.SetText("2")
	e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	b.Window.settle()
	b.settle()
	if got := b.buying.lines["socket-16"].cells[2].Text; got != "0" {
		t.Errorf("with 2 of 2 sockets on hand %s must be bought, want 0", got)
	}
	b.win.Canvas().Focus(e)
	e.SetText("two")
	b.win.Canvas().Unfocus()
	if e.Text != "2" || !strings.Contains(b.status.text, "whole number") {
		t.Errorf("a wrong count: the field shows %q, the status line %q", e.Text, b.status.text)
	}
	b.build(1)
	b.settle()
	if got := b.buying.lines["socket-16"].cells[0].Text; got != "4" {
		t.Errorf("for two machines %s sockets are needed, want 4", got)
	}
	if got := b.panels.buying.title.Text; !strings.HasPrefix(got, "Buying list for 2 machines") {
		t.Errorf("the panel's title is %q", got)
	}
}

func TestNothingOpen(t *testing.T) {
	b := newBench(t)
	if !b.welcome.Visible() || b.desk.Visible() {
		t.Error("the ways to begin are not shown")
	}
	if b.header.title.Text != "No plan open" || b.details.model.title != "Nothing is selected" {
		t.Errorf("an empty window shows %q and %q", b.header.title.Text, b.details.model.title)
	}
	for _, g := range b.menus() {
		for _, c := range g.commands {
			if c.act != nil && (c.off == nil || !c.off()) && c.name != "Open …" && c.name != quitItem {
				c.act() // none may panic
				for len(b.modals) > 0 {
					b.modals[0].close()
				}
			}
		}
	}
	b.settle()
}

func TestEveryCommandThatIsOnCanBeGiven(t *testing.T) {
	b := opened(t)
	for _, chosen := range []board.Target{board.PartTarget("left"), board.RunTarget("left-to-top"), {}} {
		for _, g := range b.menus() {
			for _, c := range g.commands {
				b.pick(chosen)
				if c.act == nil || c.name == "Open …" || c.name == quitItem || (c.off != nil && c.off()) {
					continue
				}
				c.act()
				for len(b.modals) > 0 {
					b.modals[0].close()
				}
				b.settle()
			}
		}
	}
}
