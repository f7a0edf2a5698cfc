// Package ui is the planning window: a board to place parts on, a card for each
// run, the rack of bars, the list of findings and the list of what to buy.
//
// It decides nothing about a plan. Edits go to package tubewright/ui/session,
// which solves in the background and says what to show. Everything here runs on
// Fyne's main goroutine. Lengths are millimetres until they are written as text.
package ui

import (
	"time"

	"fyne.io/fyne/v2"

	"tubewright/cutlist/sheet"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/ui/board"
	"tubewright/ui/session"
)

// Options is how the window starts. The zero value keeps nothing between
// starts and shows the light look.
type Options struct {
	Dir      string // of the settings and the journal; empty: nothing is kept
	Version  string // of the program, for the page about it
	Theme    string // "light" or "dark"; empty: as the settings say
	Look     board.Look
	Size     fyne.Size // zero: as the settings say
	Tools    session.Tools
	After    func(d time.Duration, task func()) // runs a task later on the main goroutine
	Boxes    string                             // a file that is told where everything stands; empty: none
	OpenFile func(path string) error            // shows a file in the system's viewer; nil: cannot
	// Print sends a PDF to the system's printer; nil: the system has no way to.
	Print func(path string, paper sheet.Paper) error
	Demos []string
	Demo  func(name string) ([]byte, bool)
	// Starts names the plans a new one may begin with; Start gives their text.
	Starts []string
	Start  func(name string) ([]byte, bool)
	Log    func(error) // told what goes wrong when no window can say it; nil: Fyne's log
}

// Window is the planning window and all that it shows.
type Window struct {
	app       fyne.App
	win       fyne.Window
	options   Options
	session   *session.Session
	settings  session.Settings
	journal   *session.Journal // nil: nothing is kept
	snapshot  session.Snapshot
	selected  board.Target
	finding   check.Finding // the one selected, to find it again in the next answer
	dragged   string        // part that is being dragged
	from      [3]float64    // where it stood
	previewed preview

	photos      photos
	photosRead  int          // grows with every picture that has been read
	caliper     *caliperPage // the one opened last
	pagePart    int          // place in the list of the part whose page is open
	pageParts   int          // how many parts the plan had then
	pictureFrom [2]float64   // where the picture stood that is dragged

	frame    *fyne.Container
	grounds  *grounds
	asked    [2]float32 // heights the lists wanted when the window was shared out
	board    *board.Board
	desk     fyne.CanvasObject
	header   *header
	parts    *parts
	details  *details
	cards    *cards
	findings *findings
	rack     *rack
	buying   *buying
	welcome  *panel      // in the board's place while no plan is open
	begins   []beginning // the rows of the welcome
	status   *flow
	under    *lookArea // ground of the status line
	reading  bool      // the pointer is on the status line
	foot     box       // its place when it is one line
	steps    *steps
	panels   panels
	shownAt  shown
	modals   []*modal
	dialog   closer // one of Fyne's own that is open
	menuNow  []string
	machines *buttonRow
	hover    string
	news     string // what the status line says when nothing is under the pointer
	closing  bool
	boxesDue bool // they will be written soon
}

// closer is a dialog of Fyne's.
type closer interface{ Hide() }

// panels is the framed parts of the window.
type panels struct{ parts, details, runs, findings, rack, buying *panel }

// shown is what the parts of the window show already.
type shown struct {
	board   boardState
	waiting bool // the panels are behind and will be told
}

// boardState is what a scene hangs on.
type boardState struct {
	version, solved, listed int
	units                   route.Units
	preview                 preview
	photos                  int
	fitted                  bool // it is known how the tubes go in
}

// New makes the window; it is shown by [Window.Show]. The app must be one of
// Fyne's, and its theme becomes ours.
func New(app fyne.App, o Options) *Window {
	if o.Log == nil {
		o.Log = func(err error) { fyne.LogError("tubewright", err) }
	}
	w := &Window{app: app, options: o, win: app.NewWindow("Tubewright")}
	w.session = session.New(o.Tools, w.show)
	w.loadSettings()
	app.Settings().SetTheme(w.lookOf(w.startsDark()))
	w.makeBoard()
	w.assemble()
	w.win.SetContent(w.content())
	w.win.SetPadded(false)
	w.win.Resize(w.startSize())
	w.win.SetCloseIntercept(w.tryClose)
	w.win.SetOnDropped(w.dropped)
	w.win.Canvas().SetOnTypedKey(w.typedKey)
	w.win.Canvas().SetOnTypedRune(w.typedRune)
	w.addShortcuts()
	w.show(w.session.Now())
	return w
}

// Show puts the window on the screen.
func (w *Window) Show() {
	w.win.Show()
	if w.options.Boxes != "" {
		w.watchFocus(nil)
	}
	w.offerLost()
}

// startsDark says which look to begin with.
func (w *Window) startsDark() bool {
	if w.options.Theme != "" {
		return w.options.Theme == "dark"
	}
	return w.settings.Theme == "dark"
}

// firstSize is the size of a first start; leastSize the smallest that is
// taken from the settings.
var (
	firstSize = fyne.NewSize(1280, 800)
	leastSize = fyne.NewSize(800, 560)
)

func (w *Window) startSize() fyne.Size {
	if !w.options.Size.IsZero() {
		return w.options.Size
	}
	if w.settings.Width < leastSize.Width || w.settings.Height < leastSize.Height {
		return firstSize
	}
	return fyne.NewSize(w.settings.Width, w.settings.Height)
}

// assemble makes the parts of the window around the board.
func (w *Window) assemble() {
	w.header = newHeader(headerActions{
		undo: w.undo, redo: w.redo, units: w.switchUnits, theme: w.switchTheme, stop: w.session.Stop, ready: w.tellReady, look: w.hovered,
	})
	w.parts = newParts(func(part string) { w.pick(board.PartTarget(part)) })
	w.details = newDetails(detailActions{
		onSet:  w.setNumbers,
		onTurn: func(axis int) { w.turn(axis, 90) }, onRemove: w.remove, onFit: w.fit, onChange: w.changeSelected,
		under: underActions{onFade: w.fadePicture, onScale: w.scalePicture, onLock: w.lockPicture, onRemove: w.removePicture},
	})
	w.cards = newCards(func(run string) { w.pick(board.RunTarget(run)) }, w.chooseWay, w.freeWay, w.previewWay)
	w.parts.onRemove, w.cards.onRemove = w.remove, w.remove
	w.findings = newFindings(w.pickFinding, wayOutActions{onFind: w.findWayOut, onStop: w.session.StopLooking, onTake: w.takeWayOut, onLook: w.previewOffer})
	w.rack = newRack(w.hovered)
	w.buying = newBuying(w.session.SetOnHand, w.wrongCount, w.hovered)
	w.status = newFlow("", smallSize, soft)
	w.under = newLookArea(w.lookAtStatus)
	w.makeSteps()
	w.machines = newButtonRow(button{text: "−", sign: true, act: func() { w.build(-1) }}, button{text: "+", sign: true, act: func() { w.build(1) }})
	w.machines.toRight = true
	w.panels = panels{
		newPanel("Parts", nil, w.parts.pane), newPanel("Selected", nil, w.details.pane),
		newPanel("Runs", nil, w.cards.pane), newPanel("Findings", nil, w.findings.pane),
		newPanel("Stock rack", nil, w.rack.readPane), newPanel("Buying list", w.machines, w.buying.pane),
	}
}

// makeBoard makes the board and listens to it.
func (w *Window) makeBoard() {
	w.board = board.NewBoard()
	w.board.Callbacks = board.Callbacks{
		OnSelect: w.pick, OnMove: w.moved, OnNudge: w.nudged, OnTurn: w.turned, OnHover: w.hovered,
		OnLook: func(board.Look) { w.showPanels() }, OnJoin: w.join, OnPath: w.pathMoved, OnUnder: w.pictureMoved, OnMeasure: w.measured,
		OnDelete: w.deleted, OnMenu: w.contextMenu, OnKey: w.typedKey, OnRune: w.typedRune,
	}
	w.board.SetLook(w.options.Look)
	w.board.SetStyle(boardStyle(isDark()))
	w.desk = board.NewDesk(w.board)
	w.board.SetGrowth(textScale())
}

// addShortcuts adds those beside the ones in the menus: a keyboard may have plus
// on its own key, above equals, or among the digits.
func (w *Window) addShortcuts() {
	redo, larger := func(fyne.Shortcut) { w.redo() }, func(fyne.Shortcut) { w.acting(w.largerText)() }
	for _, s := range []struct {
		keys fyne.Shortcut
		act  func(fyne.Shortcut)
	}{{ctrlShift(fyne.KeyZ), redo}, {ctrlShift(fyne.KeyEqual), larger}, {ctrl(fyne.KeyPlus), larger}} {
		w.win.Canvas().AddShortcut(s.keys, s.act)
	}
}
