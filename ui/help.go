package ui

import (
	"fyne.io/fyne/v2"

	"tubewright/route"
)

// boardKeys are the keys of the board that are no commands of a menu.
var boardKeys = [][2]string{
	{"Arrow keys, Page Up and Down", "Move the selected part by 1 mm; with Shift by 10, with Ctrl by 0.1. With none selected, pan"},
	{"R", "Turn the selected part by 90° about the look's axis; with Shift the other way"},
	{"Esc", "Give up a drag; let go of what is selected"},
	{"Wheel, + and −", "Zoom"},
	{"Middle button or Space", "Pan by dragging"},
	{"Alt while dragging", "Without snapping"},
	{"Delete", "With a corner of a drawn run chosen: take the corner away"},
}

// listKeys are the keys of everything around the board.
var listKeys = [][2]string{
	{"Alt", "Open the menus; arrow keys walk through them"},
	{"Tab, Shift+Tab", "To the next or the last field, row or button"},
	{"Up and Down", "To the row above or below; in a number, one step more or less; in a choice, the next word"},
	{"Page Up and Down", "Scroll the list"},
	{"Letters", "In a choice, the word that begins so"},
	{"Space or Enter", "Press the row or button; in a field Enter keeps what was typed"},
	{"Esc", "Take back what was typed; close a question"},
}

// tellKeys shows every key.
func (w *Window) tellKeys() {
	left, right := newColumn(0, 8), newColumn(0, 8)
	for _, g := range w.menus() {
		side := left
		if g.name == "View" {
			side = right
		}
		var lines [][2]string
		for _, c := range g.commands {
			if c.keys != "" {
				lines = append(lines, [2]string{c.keys, c.name})
			}
		}
		side.items = append(side.items, newHeading(g.name), newKeyTable(lines))
	}
	left.items = append(left.items, newHeading("In lists and fields"), newKeyTable(listKeys))
	right.items = append(right.items, newHeading("On the board"), newKeyTable(boardKeys))
	both := newBeside(24, left, right)
	w.readWide("Keys", keysWidth, both, newFlow("Numbers may be typed as 12.5, 12,5, 1/2 in, 3 cm or 120+15. The old value stays when a number cannot be read.", textSize, ink))
}

// keysWidth holds two columns of keys.
const keysWidth float32 = 900

// newKeyTable is keys with what they do beside them.
func newKeyTable(lines [][2]string) fyne.CanvasObject {
	var rows []fyne.CanvasObject
	for _, l := range lines {
		rows = append(rows, newPair(l[0], l[1]))
	}
	return newColumn(0, 2, rows...)
}

// tellDraft shows what is only typical, and how to measure it.
func (w *Window) tellDraft() {
	rows := []fyne.CanvasObject{newFlow("These numbers are only typical. Measure them on your own parts and enter them. "+
		"Until then every sheet says that it is a draft.", textSize, ink)}
	for _, r := range w.snapshot.List.Reasons {
		what := newFlow(r.What, textSize, ink)
		what.bold = true
		rows = append(rows, newColumn(0, 1, what, newFlow(r.How, smallSize, ink), newFlow("for "+route.And(r.Runs), smallSize, soft)))
	}
	w.readThen("Why this is a draft", readWidth, rows, button{text: "Enter what you measure", act: w.askCaliper})
}

func (w *Window) tellAbout() {
	w.say("Tubewright "+w.options.Version, "Plans the rigid coolant tubes of a custom water-cooled computer before anything is cut: "+
		"where they run, how to form them, what to saw from which bar, and what to buy.\n"+
		"The parts of the catalogue and the demos are invented or typical. Free software under the MIT licence.")
}
