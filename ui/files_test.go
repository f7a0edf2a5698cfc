package ui

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"github.com/go-gl/mathgl/mgl64"

	"tubewright/assets"
	sketch "tubewright/cutlist/draw"
	"tubewright/cutlist/sheet"
	"tubewright/ui/session"
)

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

func TestADemoCanBeOpenedAndAsksForAName(t *testing.T) {
	b := newBench(t)
	for _, name := range assets.Demos() {
		if err := b.OpenDemo(name); err != nil {
			t.Errorf("demo %s: %v", name, err)
		}
		b.works, b.tasks = nil, nil // solving them is not this test's
		b.session = session.New(b.options.Tools, b.show)
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
	b.makeSheets(dir, b.listing(), sheet.Options{Paper: sheet.Letter})
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

// The page of the sheets lays them out, turns them by key, and prints what is
// chosen.
func TestSheetPageShowsAndPrints(t *testing.T) {
	b := opened(t)
	var printed []byte
	var paper sheet.Paper
	b.options.Print = func(path string, p sheet.Paper) (err error) {
		printed, err = os.ReadFile(path)
		paper = p
		return err
	}
	b.askSheets()
	b.settle()
	p := newSheetPage(b.Window)
	p.open()
	b.settle()
	all := len(p.choice.pages)
	if all < 5 || p.caption.text != fmt.Sprintf("Page 1 of %d: Overview", all) {
		t.Fatalf("%d pages are laid out, the caption is %q", all, p.caption.text)
	}
	if !b.modals[len(b.modals)-1].key(fyne.KeyPageDown) || p.choice.page != 1 {
		t.Errorf("Page Down shows page %d, want 2", p.choice.page+1)
	}
	p.choice.print(sheet.Overview, false)
	p.layOut()
	b.settle()
	if got := len(p.choice.pages); got >= all {
		t.Errorf("without the overview there are %d pages, with it %d", got, all)
	}
	b.pressButton("Print")
	b.settle()
	if !bytes.HasPrefix(printed, []byte("%PDF")) || paper != sheet.A4 {
		t.Errorf("%d bytes were printed on %v, want a PDF on A4", len(printed), paper)
	}
}

func TestPrintingSaysWhyNot(t *testing.T) {
	b := opened(t)
	b.printSheets(sheet.Options{}, []sketch.Drawing{{W: 10, H: 10}})
	if b.asked() != "No printer from here" {
		t.Errorf("without a print command the window says %q", b.asked())
	}
	b.pressButton("Close")
	b.options.Print = func(string, sheet.Paper) error { return errors.New("lp: no destination") }
	b.printSheets(sheet.Options{}, nil)
	if b.asked() != "Nothing to print" {
		t.Errorf("without pages the window says %q", b.asked())
	}
	b.pressButton("Close")
	b.printSheets(sheet.Options{}, []sketch.Drawing{{W: 10, H: 10}})
	b.settle()
	if b.asked() != "The sheets were not printed" {
		t.Errorf("when the print command fails the window says %q", b.asked())
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
