package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// command is something the window can do: a line of a menu, and of the page of keys.
type command struct {
	name     string
	keys     string        // as the page of keys tells them; empty: none
	shortcut fyne.Shortcut // for the menu; nil: none, or keys without Ctrl
	act      func()
	off      func() bool // nil: never off
}

// commandGroup is one menu.
type commandGroup struct {
	name     string
	commands []command // a command without a name is a line between two groups
}

func ctrl(key fyne.KeyName) fyne.Shortcut {
	return &desktop.CustomShortcut{KeyName: key, Modifier: fyne.KeyModifierControl}
}

func ctrlShift(key fyne.KeyName) fyne.Shortcut {
	return &desktop.CustomShortcut{KeyName: key, Modifier: fyne.KeyModifierControl | fyne.KeyModifierShift}
}

var menuLine = command{}

// menus lists all that the window can do.
func (w *Window) menus() []commandGroup {
	none := func() bool { return !w.snapshot.Open }
	noPart := func() bool { return w.selectedPart() == "" }
	noRun := func() bool { return w.selectedRun() == "" }
	return []commandGroup{
		{"File", []command{
			{name: "New plan …", keys: "Ctrl+N", shortcut: ctrl(fyne.KeyN), act: w.newPlan},
			{name: "Open …", keys: "Ctrl+O", shortcut: ctrl(fyne.KeyO), act: w.askOpen},
			{name: openRecent},
			{name: openDemo},
			menuLine,
			{name: "Save", keys: "Ctrl+S", shortcut: ctrl(fyne.KeyS), act: w.save, off: none},
			{name: "Save as …", keys: "Ctrl+Shift+S", shortcut: ctrlShift(fyne.KeyS), act: w.askSaveAs, off: none},
			menuLine,
			{name: "Make sheets …", keys: "Ctrl+P", shortcut: ctrl(fyne.KeyP), act: w.askSheets, off: none},
			menuLine,
			{name: quitItem, keys: "Ctrl+Q", shortcut: ctrl(fyne.KeyQ), act: w.tryClose},
		}},
		{"Edit", []command{
			{name: undoItem, keys: "Ctrl+Z", shortcut: &fyne.ShortcutUndo{}, act: w.undo, off: func() bool { return w.snapshot.Undo == "" }},
			{name: redoItem, keys: "Ctrl+Y or Ctrl+Shift+Z", shortcut: &fyne.ShortcutRedo{}, act: w.redo, off: func() bool { return w.snapshot.Redo == "" }},
			menuLine,
			{name: "Add part …", keys: "Ctrl+T", shortcut: ctrl(fyne.KeyT), act: w.askPart, off: none},
			{name: "Add run …", keys: "Ctrl+R", shortcut: ctrl(fyne.KeyR), act: w.askRun, off: none},
			{name: "Picture under this look …", keys: "Ctrl+I", shortcut: ctrl(fyne.KeyI), act: w.askPicture, off: none},
			{name: "Plan and workshop …", keys: "Ctrl+E", shortcut: ctrl(fyne.KeyE), act: w.askSettings, off: none},
			{name: "Type the part's numbers", keys: "N", act: w.toNumbers, off: noPart},
			{name: "Change the part …", keys: "Ctrl+J", shortcut: ctrl(fyne.KeyJ), act: w.changeSelected, off: noPart},
			{name: "Remove what is selected", keys: "Delete", act: w.remove, off: func() bool { return noPart() && noRun() }},
			menuLine,
			{name: "Turn part about x", keys: "Ctrl+1", shortcut: ctrl(fyne.Key1), act: func() { w.turn(0, 90) }, off: noPart},
			{name: "Turn part about y", keys: "Ctrl+2", shortcut: ctrl(fyne.Key2), act: func() { w.turn(1, 90) }, off: noPart},
			{name: "Turn part about z", keys: "Ctrl+3", shortcut: ctrl(fyne.Key3), act: func() { w.turn(2, 90) }, off: noPart},
			menuLine,
			{name: "Ways and bench table of the run", keys: "Ctrl+B", shortcut: ctrl(fyne.KeyB), act: w.openRun, off: noRun},
			{name: "Find the run's way again", keys: "Ctrl+H", shortcut: ctrl(fyne.KeyH), act: w.handBack, off: func() bool { return !w.ownWay() }},
			menuLine,
			{name: "One machine more", keys: "Ctrl+M", shortcut: ctrl(fyne.KeyM), act: func() { w.build(1) }, off: none},
			{name: "One machine less", keys: "Ctrl+Shift+M", shortcut: ctrlShift(fyne.KeyM), act: func() { w.build(-1) }, off: func() bool { return w.snapshot.Plan.Build <= 1 }},
		}},
		{"Bench", []command{
			{name: "Enter what you measure …", keys: "Ctrl+K", shortcut: ctrl(fyne.KeyK), act: w.askCaliper, off: none},
			{name: "Survey of the ports …", keys: "Ctrl+Shift+L", shortcut: ctrlShift(fyne.KeyL), act: w.survey, off: none},
			{name: "Test bends …", keys: "Ctrl+Shift+E", shortcut: ctrlShift(fyne.KeyE), act: w.testBends, off: none},
			{name: "How likely the tubes fit …", keys: "Ctrl+Shift+J", shortcut: ctrlShift(fyne.KeyJ), act: w.howSure, off: none},
			{name: "How the tubes go in …", keys: "Ctrl+Shift+I", shortcut: ctrlShift(fyne.KeyI), act: w.howIn, off: none},
			{name: "What came of the tube …", keys: "Ctrl+Shift+K", shortcut: ctrlShift(fyne.KeyK), act: w.asMade, off: noRun},
		}},
		{"View", []command{
			{name: "Through the side", keys: "1", act: func() { w.look(0) }},
			{name: "From above", keys: "2", act: func() { w.look(1) }},
			{name: "From the front", keys: "3", act: func() { w.look(2) }},
			{name: "Turntable", keys: "4", act: func() { w.look(3) }},
			menuLine,
			{name: "Fit what is selected", keys: "F", act: w.fit},
			{name: "Fit all", keys: "Home", act: w.fitAll},
			{name: "Perspective on the turntable", keys: "P", act: w.perspective},
			{name: "Measure", keys: "M", act: w.measure},
			menuLine,
			{name: "Next finding", keys: "Ctrl+G", shortcut: ctrl(fyne.KeyG), act: func() { w.stepFinding(1) }, off: none},
			{name: "Finding before", keys: "Ctrl+Shift+G", shortcut: ctrlShift(fyne.KeyG), act: func() { w.stepFinding(-1) }, off: none},
			{name: "Find a way out of it", keys: "Ctrl+L", shortcut: ctrl(fyne.KeyL), act: w.findSelectedWayOut, off: none},
			{name: "Next panel, with Shift the one before", keys: "F6", act: w.nextPanel},
			menuLine,
			{name: "Inches or millimetres", keys: "Ctrl+U", shortcut: ctrl(fyne.KeyU), act: w.switchUnits, off: none},
			{name: "Light or dark", keys: "Ctrl+D", shortcut: ctrl(fyne.KeyD), act: w.switchTheme},
			{name: "Larger text", keys: "Ctrl+=", shortcut: ctrl(fyne.KeyEqual), act: w.largerText, off: func() bool { return w.settings.Text == nextPercent(w.settings.Text, 1) }},
			{name: "Smaller text", keys: "Ctrl+-", shortcut: ctrl(fyne.KeyMinus), act: w.smallerText, off: func() bool { return textPercent(w.settings.Text) == nextPercent(w.settings.Text, -1) }},
			menuLine,
			{name: "Stop the search", keys: "Ctrl+.", shortcut: ctrl(fyne.KeyPeriod), act: w.session.Stop, off: func() bool { return !w.snapshot.Solving }},
			{name: "Search again", keys: "Ctrl+Return", shortcut: ctrl(fyne.KeyReturn), act: w.session.SolveAgain, off: none},
		}},
		{"Help", []command{
			{name: "Keys", keys: "F1, ? or Ctrl+/", shortcut: ctrl(fyne.KeySlash), act: w.tellKeys},
			{name: "Cautions", act: w.tellCautions},
			{name: "First steps again", keys: "Ctrl+Shift+F", shortcut: ctrlShift(fyne.KeyF), act: w.firstStepsAgain, off: w.steps.Visible},
			{name: "About Tubewright", act: w.tellAbout},
		}},
	}
}

// Names of menu lines that change, or hold further lines.
const (
	openRecent = "Open recent"
	openDemo   = "Open a demo"
	undoItem   = "Undo"
	redoItem   = "Redo"
	quitItem   = "Quit"
)
