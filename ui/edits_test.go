package ui

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"
	"github.com/go-gl/mathgl/mgl64"

	"tubewright/assets"
	"tubewright/route"
	"tubewright/ui/board"
)

func TestArrowKeysNudgeWhatIsSelectedAnywhere(t *testing.T) {
	b := opened(t)
	b.pick(board.PartTarget("left"))
	b.win.Canvas().Unfocus()
	b.press(fyne.KeyRight)
	b.settle()
	if k, _ := b.snapshot.Plan.FindPart("left"); k.At[0] != 61 {
		t.Errorf("Right moves x from 60 to %v, want 61", k.At[0])
	}
	if b.win.Canvas().Focused() != b.board {
		t.Error("an arrow key does not bring the focus to the board")
	}
}

func TestLettersWithoutAFocus(t *testing.T) {
	b := opened(t)
	b.win.Canvas().Unfocus()
	b.letterKey('4')
	if b.board.Look() != board.Turntable {
		t.Errorf("4 gives the look %v", b.board.Look())
	}
	b.letterKey('m')
	if !b.board.Measuring() || b.news == "" {
		t.Errorf("M: measuring %v, told %q", b.board.Measuring(), b.news)
	}
	b.letterKey('M')
	if b.board.Measuring() {
		t.Error("M again does not put the tool away")
	}
	b.letterKey('x') // means nothing
	if b.asked() != "" {
		t.Error("x opens something")
	}
}

func TestJoiningTwoPorts(t *testing.T) {
	b := opened(t)
	b.pick(board.RunTarget("left-to-top"))
	b.remove()
	if len(b.snapshot.Plan.Runs) != 0 || b.selectedRun() != "" {
		t.Fatalf("removed, there are %d runs and %q is selected", len(b.snapshot.Plan.Runs), b.selectedRun())
	}
	from, to := route.PortRef{Part: "left", Port: "in"}, route.PortRef{Part: "top", Port: "out"}
	b.join(from, to)
	b.settle()
	if r, ok := b.snapshot.Plan.FindRun("left-to-top"); !ok || r.From != from || r.To != to || b.selectedRun() != "left-to-top" {
		t.Fatalf("joined, the runs are %v and %q is selected", b.snapshot.Plan.Runs, b.selectedRun())
	}
	if b.cut("left-to-top") == 0 {
		t.Error("the new run has no tube")
	}
	b.join(from, route.PortRef{Part: "top", Port: "nowhere"})
	if b.asked() != "That cannot be done" {
		t.Errorf("joined to a port that is not there, the window says %q", b.asked())
	}
}

func TestDrawingARunAndHandingItBack(t *testing.T) {
	b := opened(t)
	corner := b.snapshot.Solution.Runs[0].Ways[0].Formed.Corners[1]
	b.pathMoved("left-to-top", []mgl64.Vec3{corner}, false)
	b.pathMoved("left-to-top", nil, true)
	b.settle()
	if b.snapshot.Dirty {
		t.Error("a path that was given up is kept")
	}
	b.pathMoved("left-to-top", []mgl64.Vec3{corner}, false)
	b.pathMoved("left-to-top", []mgl64.Vec3{corner}, true)
	b.settle()
	r, _ := b.snapshot.Plan.FindRun("left-to-top")
	if r.Way != route.Drawn || len(r.Via) != 1 || b.snapshot.Undo != "Draw left-to-top" {
		t.Fatalf("drawn, the run is %+v and undo would %q", r, b.snapshot.Undo)
	}
	b.pick(board.RunTarget("left-to-top"))
	if !b.ownWay() {
		t.Error("a drawn run is not told apart")
	}
	if got := itemNames(b.contextItems(board.RunTarget("left-to-top"))); !slices.Contains(got, "Hand back: find a way again") {
		t.Errorf("the menu of a drawn run is %v", got)
	}
	b.handBack()
	b.settle()
	if r, _ = b.snapshot.Plan.FindRun("left-to-top"); r.Way == route.Drawn {
		t.Error("handed back, the run is still drawn")
	}
}

func itemNames(items []*fyne.MenuItem) (names []string) {
	for _, i := range items {
		names = append(names, i.Label)
	}
	return names
}

func TestTheRightButtonSelectsAndOffers(t *testing.T) {
	b := opened(t)
	for at, want := range map[board.Target][]string{
		board.PartTarget("left"):                                  {"Turn about x", "Turn about y", "Turn about z", "Change …", "Place a port by clicking …", "Fit", "", "Remove"},
		board.RunTarget("left-to-top"):                            {"Ways and bench table", "Fit", "", "Remove"},
		board.PortTarget(route.PortRef{Part: "top", Port: "out"}): {"Fit"},
		{}: {"Fit all", "Add part …", "Add run …"},
	} {
		b.contextMenu(at, 400, 300)
		if got := itemNames(b.contextItems(at)); !slices.Equal(got, want) {
			t.Errorf("for %+v the menu is %q, want %q", at, got, want)
		}
		if b.selected != at {
			t.Errorf("the right button on %+v selects %+v", at, b.selected)
		}
	}
}

func TestOpeningTheCardOfTheSelectedRun(t *testing.T) {
	b := opened(t)
	b.openRun()
	if b.cards.open != "" {
		t.Error("with nothing selected a card opens")
	}
	b.pick(board.RunTarget("left-to-top"))
	b.openRun()
	if b.cards.open != "left-to-top" {
		t.Errorf("the open card is %q", b.cards.open)
	}
}

func TestAddingPartsAndRunsByQuestion(t *testing.T) {
	b := opened(t)
	b.askPart()
	b.pressButton("Add the first")
	b.settle()
	if len(b.snapshot.Plan.Parts) != 3 || b.selectedPart() == "" {
		t.Errorf("added, there are %d parts and %q is selected", len(b.snapshot.Plan.Parts), b.selectedPart())
	}
	free := freePorts(b.snapshot.Plan)
	if len(free) < 3 || free[0] != (route.PortRef{Part: "left", Port: "in"}) {
		t.Fatalf("the free ports are %v", free)
	}
	b.askRun()
	if b.asked() != "Add a run" {
		t.Fatalf("the window asks %q", b.asked())
	}
	b.pressButton("Add")
	if got := b.snapshot.Plan.Runs; len(got) != 2 || got[1].From != free[2] || got[1].To != free[0] {
		t.Errorf("added with %q selected, the runs are %v, want from its first port to the first of another part", b.selectedPart(), got)
	}
	b.pick(board.Target{})
	free = freePorts(b.snapshot.Plan)
	if i, j := likelyEnds(free, b.selected); i != 0 || free[j].Part == free[0].Part {
		t.Errorf("with nothing selected the ends are %d and %d of %v", i, j, free)
	}
	if i, j := likelyEnds(free[:1:1], board.Target{}); i != 0 || j != 0 {
		t.Errorf("of one port alone the ends are %d and %d", i, j)
	}
}

func TestNoPortsToJoin(t *testing.T) {
	b := newBench(t)
	b.session.Empty()
	b.settle()
	b.askRun()
	if b.asked() != "No ports to join" {
		t.Errorf("without parts the window says %q", b.asked())
	}
}

func TestDemosAndDroppedFilesAskAboutUnsavedChanges(t *testing.T) {
	b := opened(t)
	path := b.snapshot.Path
	b.nudged("left", mgl64.Vec3{1, 0, 0})
	b.settle()
	b.askDemo(assets.Demos()[0])
	if b.asked() != "Save the changes first?" {
		t.Fatalf("opening a demo over changes asks %q", b.asked())
	}
	b.dropped(fyne.Position{}, []fyne.URI{storage.NewFileURI(path)})
	if len(b.modals) != 1 {
		t.Error("a file dropped on a question opens another")
	}
	b.pressButton("Do not save")
	b.settle()
	if b.snapshot.Path != "" || b.snapshot.Plan.Name == "Bench" {
		t.Errorf("the plan is %q of %q, want the demo", b.snapshot.Plan.Name, b.snapshot.Path)
	}
	b.dropped(fyne.Position{}, []fyne.URI{storage.NewFileURI(path)})
	b.settle()
	if b.snapshot.Path != path {
		t.Errorf("dropped, the plan's file is %q, want %q", b.snapshot.Path, path)
	}
}

func TestADraftSaysWhatToMeasure(t *testing.T) {
	b := newBench(t)
	if err := b.OpenDemo("ferry-bridge"); err != nil {
		t.Fatal(err)
	}
	b.settle()
	if !b.snapshot.List.Draft {
		t.Fatal("the demo is no draft")
	}
	b.tellDraft()
	if b.asked() != "Why this is a draft" || len(b.modals[0].text.body.items) != 1+len(b.snapshot.List.Reasons) {
		t.Errorf("%q with %d paragraphs for %d reasons", b.asked(), len(b.modals[0].text.body.items), len(b.snapshot.List.Reasons))
	}
}
