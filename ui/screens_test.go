package ui

import (
	"errors"
	"path/filepath"
	"sync"
	"testing"

	"fyne.io/fyne/v2/widget"
	"github.com/go-gl/mathgl/mgl64"

	"tubewright/cutlist"
	"tubewright/cutlist/measure"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/planfile"
	"tubewright/route/survey"
	"tubewright/ui/board"
	"tubewright/ui/session"
)

// pageShown is one thing the window can show.
type pageShown struct {
	name string
	show func(*bench)
}

// screens lists every screen and page of the window, for a bench that has the
// conservation scanner open. Each is shown over the one before; see tidy.
func screens(t *testing.T) []pageShown {
	t.Helper()
	all := []pageShown{
		{"board, nothing selected", func(b *bench) { b.pick(board.Target{}) }},
		{"board, a part selected", func(b *bench) { b.pick(board.PartTarget("pump")) }},
		{"board, a port selected", func(b *bench) { b.pick(board.PortTarget(route.PortRef{Part: "pump", Port: "out"})) }},
		{"board, a finding selected", func(b *bench) { b.pickFinding(0) }},
		{"board, in inches", func(b *bench) { b.session.SetUnits(route.Inches) }},
		{"a wrong number", func(b *bench) {
			b.pick(board.PartTarget("pump"))
			b.details.showWrong(&NumberError{"3 furlongs", "that is no length", "Use mm, cm, m or in."})
		}},
		{"what is under the pointer", func(b *bench) { b.hovered(longNews) }},
		{"news in the status line", func(b *bench) { b.tell(longNews) }},
		{"trouble in the status line", func(b *bench) { b.snapshot.Trouble = errors.New(longNews); b.showStatus() }},
		{"working", func(b *bench) {
			b.header.show(headerModel{title: "Conservation scanner *", undo: "Move pump", ready: readyModel{"Working …", soft, true}})
		}},
		{"first steps", func(b *bench) { b.firstStepsAgain() }},
		{"keys", func(b *bench) { b.tellKeys() }},
		{"cautions", func(b *bench) { b.tellCautions() }},
		{"about", func(b *bench) { b.tellAbout() }},
		{"why a draft", func(b *bench) { b.tellDraft() }},
		{"new plan", func(b *bench) { b.newPlan() }},
		{"open", func(b *bench) { b.chooseFile([]string{".yaml"}, func(string) {}) }},
		{"save as", func(b *bench) { b.askSaveAs() }},
		{"save first", func(b *bench) {
			b.did(b.session.NudgePart("pump", mgl64.Vec3{1}))
			b.unlessUnsaved(func() {})
		}},
		{"replace the file", func(b *bench) {
			b.ask("Replace the file?", filepath.Join(b.dir, "bench.plan.yaml")+" is there already. Replacing it keeps its last version beside it.", "Replace", nil)
		}},
		{"problems of a file", func(b *bench) {
			_, _, err := planfile.Read("a.plan.yaml", []byte("format: 1\nname: x\ncase: {size: [1, 2]}\nparts:\n  pump: {kind: no-such-thing, at: [1, 2, 3], colour: red}\n"))
			b.tellProblems("/home/someone/a folder/a.plan.yaml", err)
		}},
		{"unsaved work", func(b *bench) {
			b.askLost(session.Lost{Name: "Conservation scanner", Path: "/home/someone/plans of the year/conservation-scanner.plan.yaml"})
		}},
		{"add part", func(b *bench) { b.askPart() }},
		{"part of the catalogue", func(b *bench) { b.askPartForm("pump") }},
		{"own part", func(b *bench) { b.askPartForm("capture") }},
		{"radiator with fans", func(b *bench) { b.askPartForm(stackOf(b)) }},
		{"place a port", func(b *bench) { b.askClick("pump") }},
		{"add run", func(b *bench) { b.askRun() }},
		{"plan settings", func(b *bench) { b.askSettings() }},
		{"survey", func(b *bench) { b.survey() }},
		{"survey's question", func(b *bench) {
			b.askVerdict(survey.Verdict{Part: "radiator", Move: &survey.Motion{}, Words: "All ports of radiator lie 3.2 mm further right than the plan has them. It looks as if the part had moved."}, nil)
		}},
		{"test bends", func(b *bench) { b.testBends() }},
		{"how likely", func(b *bench) { b.howSure() }},
		{"looking how tubes go in", func(b *bench) {
			b.openModal("Looking how each tube goes in", 320, rowsOf(widget.NewProgressBarInfinite()), button{text: "Stop", cancel: true})
		}},
		{"how tubes go in", func(b *bench) { b.showIn(scannerPutIn(b)) }},
		{"no runs to put in", func(b *bench) { b.say("No order yet", "There are no tubes yet.") }},
		{"what came of a tube", func(b *bench) { b.pick(board.RunTarget(b.snapshot.Plan.Runs[0].Name)); b.asMade() }},
		{"make sheets", func(b *bench) { n := len(b.works); b.askSheets(); b.works = b.works[:n] }},
		{"sheets are ready", func(b *bench) {
			b.sheetsMade("/home/someone/sheets", []string{"a/Conservation scanner.pdf", "a/cut list.csv", "a/buying list.csv", "a/answer.json"}, nil)
		}},
		{"an error", func(b *bench) {
			b.did(errors.New("that edit leaves the run pump-to-processor without a tube, and its ports are not free"))
		}},
		{"picture under the look", func(b *bench) {
			b.details.show(detailModel{title: "Nothing is selected", fixed: true, lines: []string{"Click a part."}, under: underModel{
				shown: true, name: "open case, seen through the side.png", wrong: "It cannot be read: the file is not there any more.", fade: 0.4,
			}})
		}},
		{"ways out of a finding", func(b *bench) {
			b.findings.show(someFindings, "", "", 0, wayOutModel{index: 0, said: "2 ways out.", offers: someOffers})
		}},
		{"looking for ways out", func(b *bench) {
			b.findings.show(someFindings, "", "", 0, wayOutModel{index: 0, looking: true, spent: 0.42, said: "Looking …"})
		}},
		{"long names", func(b *bench) {
			b.parts.show([]partRow{{longName, longName + " · 2 of 4 ports"}}, longName)
			b.details.show(detailModel{title: longName, part: longName, lines: []string{longName + ".out: G1/4 · free"}})
			b.cards.show([]cardModel{{run: longName, letter: "AB", length: "1234.5", unit: "mm", facts: "1 bend", ways: []wayModel{{longName, "1 bend", longName, true}}}}, "", longName)
			b.header.show(headerModel{title: longName + " *", ready: readyModel{"Ready to cut? Not yet: 12 errors · 3 warnings · draft, 24 numbers to measure.", bad, false}})
		}},
		{"scale a picture", func(b *bench) { b.askDistance(0, []mgl64.Vec3{{0, 0, 0}, {100, 0, 0}}) }},
	}
	for _, r := range scannerRuns {
		all = append(all, pageShown{"card of " + r, func(b *bench) { b.pick(board.RunTarget(r)); b.cards.reopen(r) }})
	}
	for _, at := range []board.Target{board.PartTarget("pump"), board.RunTarget(scannerRuns[0]), {}} {
		all = append(all, pageShown{"menu of a thing on the board", func(b *bench) { b.contextMenu(at, 400, 300) }})
	}
	for _, of := range []string{string(measure.Fitting), string(measure.Tube), string(measure.Port)} {
		all = append(all, pageShown{"caliper: " + of, func(b *bench) {
			b.askCaliper()
			for _, row := range b.caliper.shown {
				if len(row.key) > len(of) && row.key[:len(of)] == of {
					b.caliper.pick(row.key)
					return
				}
			}
		}})
	}
	return all
}

// scannerRuns are two of the demo's runs, one of each kind.
var scannerRuns = []string{"pump-to-processor", "sight-tube"}

var putInOnce struct {
	sync.Once
	list cutlist.List
}

// scannerPutIn is the demo's list with the order of putting in, worked out once.
func scannerPutIn(b *bench) cutlist.List {
	putInOnce.Do(func() { putInOnce.list = complete(b.listing(), b.snapshot.Solution) })
	return putInOnce.list
}

// longName is a name as people give them who name by place and purpose.
const longName = "radiator-behind-the-front-fans_lowerleft"

var (
	someFindings = []findingGroup{{check.Error, "1 error: do not cut", []findingModel{
		{0, check.Error, "Run pump-to-processor hits part radiator-front by 3.2 mm.", "Move radiator-front 3.2 mm in +x, or choose another way.", "-3.2 mm", true, true, false},
	}}}
	someOffers = []offerModel{
		{words: "Move radiator-front 3.2 mm in +x", facts: "1 finding less · 4.10 dearer"},
		{words: "Take the way: two square bends", facts: "1 finding less · 12.40 dearer · 2 more bends"},
	}
)

// longNews is about as long as a line of news becomes.
const longNews = "radiator.high to processor.in: G1/4, facing −x, 412.5 mm from the left, 331.25 mm from the floor, 118.75 mm from the open side; this port has a run already, and its thread is another."

// stackOf is a part of the plan that is a radiator with fans, else any.
func stackOf(b *bench) string {
	for _, k := range b.snapshot.Plan.Parts {
		if b.snapshot.Plan.Whole(k).Stack.Given() {
			return k.Name
		}
	}
	return b.snapshot.Plan.Parts[0].Name
}

// tidy closes what lies over the window and lets go of what is selected.
func (b *bench) tidy() {
	for len(b.modals) > 0 {
		b.modals[0].close()
	}
	if b.dialog != nil {
		b.dialog.Hide()
		b.dialog = nil
	}
	over := b.win.Canvas().Overlays()
	for _, o := range over.List() {
		over.Remove(o)
	}
	for b.snapshot.Undo != "" {
		b.session.Undo()
	}
	b.session.SetUnits(route.Millimetres)
	b.settle()
	b.hover = ""
	b.snapshot.Trouble = nil
	b.cards.open = ""
	b.show(b.snapshot)
	b.pick(board.Target{})
}
