package ui

import (
	"errors"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/go-gl/mathgl/mgl64"

	"tubewright/assets"
	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/find"
	"tubewright/ui/board"
	"tubewright/ui/session"
)

// bench is a window on a screen of its own, whose work is done when the test
// says so: nothing runs beside the test.
type bench struct {
	*Window
	t      *testing.T
	works  []func()
	tasks  []func()
	later  []func()
	logged []error
	dir    string // of the settings and of files that are saved
}

func newBench(t *testing.T) *bench {
	t.Helper()
	b := &bench{t: t, dir: t.TempDir()}
	app := test.NewTempApp(t)
	b.Window = New(app, Options{
		Dir: b.dir, Version: "test", Size: fyne.NewSize(1280, 800),
		Tools: session.Tools{
			Solve: find.Solve, Build: cutlist.Build,
			Go:       func(work func()) { b.works = append(b.works, work) },
			Dispatch: func(task func()) { b.tasks = append(b.tasks, task) },
		},
		After: func(_ time.Duration, task func()) { b.later = append(b.later, task) },
		Demos: assets.Demos(), Demo: assets.Demo,
		Log: func(err error) { b.logged = append(b.logged, err) },
	})
	b.Window.Show()
	t.Cleanup(func() {
		if !b.closing {
			b.win.Close()
		}
	})
	return b
}

// settle runs all that was started or sent, until nothing is left.
func (b *bench) settle() {
	for len(b.works)+len(b.tasks)+len(b.later) > 0 {
		for _, queue := range []*[]func(){&b.tasks, &b.works, &b.later} {
			if len(*queue) > 0 {
				next := (*queue)[0]
				*queue = (*queue)[1:]
				next()
				break
			}
		}
	}
}

const benchFile = "testdata/bench.plan.yaml"

// opened is a window with a copy of the plan that was worked by hand.
func opened(t *testing.T) *bench {
	t.Helper()
	b := newBench(t)
	text, err := os.ReadFile(benchFile)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(b.dir, "bench.plan.yaml")
	if err := os.WriteFile(path, text, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := b.Open(path); err != nil {
		t.Fatal(err)
	}
	b.settle()
	return b
}

// pressButton presses a button of the question that is open.
func (b *bench) pressButton(text string) {
	b.t.Helper()
	if len(b.modals) == 0 {
		b.t.Fatalf("there is no question with a button %q", text)
	}
	m := b.modals[len(b.modals)-1]
	for i, k := range m.buttons {
		if k.text == text {
			test.Tap(m.row.presses[i])
			return
		}
	}
	b.t.Fatalf("the question %q has no button %q", m.title(), text)
}

func (b *bench) asked() string {
	if len(b.modals) == 0 {
		return ""
	}
	return b.modals[len(b.modals)-1].title()
}

func (b *bench) cut(run string) float64 {
	for _, t := range b.snapshot.List.Tubes {
		if t.Run == run {
			return t.Cut.Aim
		}
	}
	return 0
}

// The worked example of the plan format: D = 274.265, so the aim is 273.27.
const workedAim = 273.265

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
	if got := b.back.FillColor; got != darkPalette[ground] {
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
	b.Window.build(1)
	b.settle()
	if got := b.buying.lines["socket-16"].cells[0].Text; got != "4" {
		t.Errorf("for two machines %s sockets are needed, want 4", got)
	}
	if got := b.panels.buying.title.Text; !strings.HasPrefix(got, "Buying list for 2 machines") {
		t.Errorf("the panel's title is %q", got)
	}
}

func TestSaveKeepsTheFileWhenNothingIsChanged(t *testing.T) {
	b := opened(t)
	before, err := os.ReadFile(b.snapshot.Path)
	if err != nil {
		t.Fatal(err)
	}
	b.moved("left", mgl64.Vec3{-50, 0, 0}, false)
	b.moved("left", mgl64.Vec3{-50, 0, 0}, true)
	b.settle()
	b.undo()
	b.settle()
	b.save()
	after, err := os.ReadFile(b.snapshot.Path)
	if err != nil || string(after) != string(before) {
		t.Errorf("moved, undone and saved the file differs, %v:\n%s", err, after)
	}
}

func TestSavingOverAForeignChangeAsksFirst(t *testing.T) {
	b := opened(t)
	b.moved("left", mgl64.Vec3{-50, 0, 0}, true)
	b.settle()
	foreign := []byte("# changed elsewhere\n")
	if err := os.WriteFile(b.snapshot.Path, foreign, 0o600); err != nil {
		t.Fatal(err)
	}
	b.save()
	if b.asked() != "Write over it?" {
		t.Fatalf("the window asks %q, want whether to write over the change", b.asked())
	}
	b.pressButton("Cancel")
	if text, _ := os.ReadFile(b.snapshot.Path); string(text) != string(foreign) {
		t.Error("a cancelled save wrote to the file")
	}
	b.save()
	b.pressButton("Write over it")
	if text, _ := os.ReadFile(b.snapshot.Path); !strings.Contains(string(text), "[10, 80, 30]") {
		t.Errorf("the plan was not written over the change:\n%s", text)
	}
	if b.snapshot.Dirty {
		t.Error("saved, the plan still counts as changed")
	}
}

func TestClosingAsksAboutChanges(t *testing.T) {
	b := opened(t)
	b.moved("left", mgl64.Vec3{-50, 0, 0}, true)
	b.settle()
	b.tryClose()
	if b.asked() != "Save the changes first?" || b.closing {
		t.Fatalf("closing asks %q, closing %v", b.asked(), b.closing)
	}
	if !b.modals[0].key(fyne.KeyEscape) || b.asked() != "" {
		t.Error("Esc did not put the question away")
	}
	b.tryClose()
	b.pressButton("Save")
	if !b.closing {
		t.Error("saved, the window did not close")
	}
	if text, _ := os.ReadFile(filepath.Join(b.dir, "bench.plan.yaml")); !strings.Contains(string(text), "[10, 80, 30]") {
		t.Errorf("the plan was not saved before closing:\n%s", text)
	}
	if lost, err := session.NewJournal(filepath.Join(b.dir, "journal")).Lost(); len(lost) > 0 || err != nil {
		t.Errorf("a closed window left %v in the journal, %v", lost, err)
	}
}

func TestAFileWithMistakesIsTold(t *testing.T) {
	b := opened(t)
	path := filepath.Join(b.dir, "bad.plan.yaml")
	if err := os.WriteFile(path, []byte("format: 1\ncase:\n  sise: [1, 2, 3]\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	b.openPath(path)
	if !strings.HasPrefix(b.asked(), "The plan file needs ") {
		t.Errorf("a wrong file is told as %q", b.asked())
	}
	b.pressButton("Close")
	if b.snapshot.Plan.Name != "Bench" {
		t.Errorf("the plan that was open is gone: %q is shown", b.snapshot.Plan.Name)
	}
	b.openPath(filepath.Join(b.dir, "none.plan.yaml"))
	if b.asked() != "That file cannot be opened" {
		t.Errorf("a missing file is told as %q", b.asked())
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
			if c.act != nil && (c.off == nil || !c.off()) && c.name != "Open …" {
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
				if c.act == nil || c.name == "Open …" || (c.off != nil && c.off()) {
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

func TestADemoCanBeOpenedAndAsksForAName(t *testing.T) {
	b := newBench(t)
	for _, name := range assets.Demos() {
		if err := b.OpenDemo(name); err != nil {
			t.Errorf("demo %s: %v", name, err)
		}
		b.works, b.tasks = nil, nil // solving them is not this test's
		b.session = session.New(b.options.Tools, b.Window.show)
	}
	var none *noDemoError
	if err := b.OpenDemo("nothing"); !errors.As(err, &none) {
		t.Errorf("a demo that is not there gave %v", err)
	}
}

func TestSaveAsAddsTheEndingAndAsksBeforeReplacing(t *testing.T) {
	for _, row := range []struct{ folder, name, want, wrong string }{
		{"/a", "x", "/a/x.plan.yaml", ""},
		{"/a", " x.plan.yaml ", "/a/x.plan.yaml", ""},
		{"/a", "x.yml", "/a/x.yml", ""},
		{"", "x", "x.plan.yaml", ""},
		{"/a", "  ", "", "needs a name"},
		{"/a", "b/x", "", "must not have a folder"},
	} {
		got, err := savePath(row.folder, row.name)
		if (err != nil) != (row.wrong != "") || (err != nil && !strings.Contains(err.Error(), row.wrong)) || got != filepath.FromSlash(row.want) {
			t.Errorf("savePath(%q, %q) = %q, %v; want %q", row.folder, row.name, got, err, row.want)
		}
	}
	b := opened(t)
	other := filepath.Join(b.dir, "other.plan.yaml")
	if err := os.WriteFile(other, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	b.saveTo(other, nil)
	if b.asked() != "Replace the file?" {
		t.Fatalf("saving over another file asks %q", b.asked())
	}
	b.pressButton("Replace")
	if b.snapshot.Path != other {
		t.Errorf("the plan's file is %q, want %q", b.snapshot.Path, other)
	}
}

func TestSheets(t *testing.T) {
	b := opened(t)
	b.askSheets()
	if b.asked() != "Make sheets" {
		t.Fatalf("asked for sheets the window asks %q", b.asked())
	}
	b.pressButton("Cancel")
	dir := filepath.Join(b.dir, "out")
	b.makeSheets(dir, "US Letter")
	if b.asked() != "Making the sheets" {
		t.Errorf("under way the window shows %q", b.asked())
	}
	b.settle()
	if b.asked() != "The sheets are ready" {
		t.Errorf("done, the window shows %q", b.asked())
	}
	made, err := filepath.Glob(filepath.Join(dir, "*.pdf"))
	if err != nil || len(made) != 1 {
		t.Errorf("made %v, %v; want one PDF", made, err)
	}
	b.pressButton("Close")
	if b.paper().String() != "US Letter" {
		t.Errorf("the paper kept is %s", b.paper())
	}
}

func TestSheetsWaitForAnAnswer(t *testing.T) {
	b := newBench(t)
	b.session.Empty()
	b.settle()
	b.askSheets()
	if b.asked() != "No sheets yet" {
		t.Errorf("without a tube the window says %q", b.asked())
	}
}

func TestLostWorkIsOffered(t *testing.T) {
	b := opened(t)
	text, err := os.ReadFile(b.snapshot.Path)
	if err != nil {
		t.Fatal(err)
	}
	dead := filepath.Join(b.dir, "journal", "0.journal") // no program has number 0
	body := `{"pid":0,"name":"Bench","path":"","text":` + quoted(strings.Replace(string(text), "[60, 80, 30]", "[61, 80, 30]", 1)) + `}`
	if err := errors.Join(os.MkdirAll(filepath.Dir(dead), 0o700), os.WriteFile(dead, []byte(body), 0o600)); err != nil {
		t.Fatal(err)
	}
	b.offerLost()
	if b.asked() != "Unsaved work was found" {
		t.Fatalf("lost work is offered as %q", b.asked())
	}
	b.pressButton("Show it")
	b.settle()
	if k, _ := b.snapshot.Plan.FindPart("left"); k.At[0] != 61 || !b.snapshot.Dirty {
		t.Errorf("recovered: x = %v, dirty %v; want 61, and dirty", k.At[0], b.snapshot.Dirty)
	}
	if _, err := os.Stat(dead); !os.IsNotExist(err) {
		t.Errorf("the lost journal is still there: %v", err)
	}
}

// quoted is a text as JSON writes it.
func quoted(text string) string {
	r := strings.NewReplacer(`\`, `\\`, `"`, `\"`, "\n", `\n`)
	return `"` + r.Replace(text) + `"`
}
