package ui

import (
	"fmt"
	"time"

	"fyne.io/fyne/v2"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/ui/session"
)

// panelPause is how often the panels follow while a part is dragged: often
// enough to read along; each new text costs the graphics card memory.
const panelPause = 200 * time.Millisecond

// show brings the window up to a snapshot of the session. The board follows at
// once, the panels after a pause while something is dragged: never in the frame
// that moves what is in hand.
func (w *Window) show(s session.Snapshot) {
	before := w.snapshot.Plan
	w.snapshot = s
	if w.frame == nil {
		return
	}
	w.keepSelected(before)
	w.showWelcome()
	w.showBoard()
	w.header.show(headerOf(s))
	if w.session.Dragging() && w.options.After != nil {
		w.showLater()
		return
	}
	w.showPanels()
}

// showWelcome puts the ways to begin in the board's place while no plan is open.
func (w *Window) showWelcome() {
	setVisible(w.welcome, !w.snapshot.Open)
	setVisible(w.desk, w.snapshot.Open)
}

func setVisible(o fyne.CanvasObject, yes bool) {
	switch {
	case yes == o.Visible():
	case yes:
		o.Show()
	default:
		o.Hide()
	}
}

// showLater lets the panels follow after the pause.
func (w *Window) showLater() {
	if w.shownAt.waiting {
		return
	}
	w.shownAt.waiting = true
	w.options.After(panelPause, func() {
		w.shownAt.waiting = false
		w.showPanels()
	})
}

// showBoard gives the board a new scene when plan, answer, units or preview are new.
func (w *Window) showBoard() {
	s := w.snapshot
	if w.previewed != (preview{}) && (s.Solved != w.shownAt.board.solved || s.Version != w.shownAt.board.version) {
		w.previewed, w.hover = preview{}, "" // it was of the answer before
	}
	now := boardState{s.Version, s.Solved, s.Listed, s.Units, w.previewed, w.photosRead, s.List.PutIn != nil}
	if now == w.shownAt.board || w.onlyDragged(now) {
		return
	}
	w.shownAt.board = now
	if w.session.Dragging() {
		w.board.SetSceneSoon(w.scene)
	} else {
		w.board.SetScene(w.scene())
	}
	w.board.SetSelection(w.selected)
}

// onlyDragged reports whether the scene differs from the one shown by the place
// of the part in hand alone: the board draws that itself, at once.
func (w *Window) onlyDragged(now boardState) bool {
	now.version = w.shownAt.board.version
	return w.dragged != "" && now == w.shownAt.board
}

// showPanels brings everything around the board up to the snapshot.
func (w *Window) showPanels() {
	s := w.snapshot
	w.win.SetTitle(titleOf(s.Plan.Name, s.Dirty) + " – Tubewright")
	w.keeping(w.parts.pane, func() { w.parts.show(partsOf(s.Plan), w.selectedPart()) })
	w.panels.parts.setTitle(title("Parts", len(s.Plan.Parts)))
	w.keeping(w.details.pane, func() { w.details.show(w.detailOf(s)) })
	w.keeping(w.cards.pane, func() { w.cards.show(cardsOf(s), noRuns(s), w.selectedRun()) })
	w.panels.runs.setTitle(title("Runs", len(s.Plan.Runs)))
	w.keeping(w.findings.pane, func() {
		w.findings.show(findingsOf(s.List, s.Units), noFindings(s), fittingFoot(s), w.selectedFinding(), wayOutOf(s))
	})
	w.panels.findings.setTitle(title("Findings", len(s.List.Findings)))
	w.showShop(s)
	w.showStatus()
	w.showSteps()
	w.following()
	w.setMenu()
	w.reshare()
	w.writeBoxes()
}

// showShop brings the rack and the buying list up to the snapshot.
func (w *Window) showShop(s session.Snapshot) {
	l := s.List
	l.Plan.Units = s.Units // the rack writes lengths as the window does
	w.rack.show(l, rackOf(l, s.Units), noBars(s))
	w.panels.rack.setTitle(title("Stock rack", len(l.Bars)))
	rows, total := buyingOf(l)
	w.keeping(w.buying.pane, func() { w.buying.show(rows, noBars(s), uncounted(s)) })
	w.panels.buying.setTitle(dotted("Buying list for "+count(max(1, s.Plan.Build), "machine"), total))
}

func title(name string, n int) string {
	if n == 0 {
		return name
	}
	return fmt.Sprintf("%s (%d)", name, n)
}

// noRuns, noFindings and noBars say why a list is empty, and what to do.
func noRuns(s session.Snapshot) string {
	if !s.Open {
		return "No plan is open."
	}
	return "No runs yet. Drag from one port to another on the board, choose Add run from the Edit menu, " +
		"or write one in the plan file: under runs, a name with from: pump.out and to: plate.in."
}

func noFindings(s session.Snapshot) string {
	switch {
	case !s.Open:
		return "No plan is open."
	case s.Listed == 0:
		return "Not checked yet."
	case fittingWords(s) != "":
		return "Nothing else to settle."
	}
	return "Nothing to settle."
}

// fittingFoot stands under the findings while it is not known how the tubes go in.
func fittingFoot(s session.Snapshot) string {
	if s.Unfitted != nil {
		return "How the tubes go in is not known: " + sentence(s.Unfitted.Error()) + " Ctrl+Return searches again."
	}
	return fittingWords(s)
}

func noBars(s session.Snapshot) string {
	switch {
	case !s.Open:
		return "No plan is open."
	case s.Listed == 0:
		return "Not worked out yet."
	}
	return "Nothing to cut yet. Bars and fittings appear here once a run has a tube."
}

// uncounted names the runs that have no tube, which no list of things to buy can count.
func uncounted(s session.Snapshot) string {
	names := s.List.Uncounted()
	if s.Listed == 0 || len(names) == 0 {
		return ""
	}
	return "Not counted, because there is no tube yet: " + route.And(names) + "."
}

// listing is the list with the units that are shown, for the sheets.
func (w *Window) listing() cutlist.List {
	l := w.snapshot.List.WithoutOld()
	l.Plan.Units = w.snapshot.Units
	return l
}
