package ui

import (
	"slices"

	"fyne.io/fyne/v2"
)

// details shows the selected thing: a part with its numbers, a run, a port.
type details struct {
	*pane
	title   *flow
	numbers *numbers
	wrong   *flow
	turns   *buttonRow
	actions *buttonRow
	under   *under
	model   detailModel
	dark    bool
}

// detailActions is what a person can do with the selected thing.
type detailActions struct {
	onSet    func(part string, at, turn [3]float64) error
	onTurn   func(axis int)
	onRemove func()
	onFit    func()
	onChange func()
	under    underActions
}

func newDetails(do detailActions) *details {
	d := &details{title: newFlow("", textSize, ink), wrong: newFlow("", smallSize, bad)}
	d.title.bold = true
	d.numbers = newNumbers(do.onSet, d.showWrong)
	d.turns = newButtonRow(
		button{text: "Turn about x", act: func() { do.onTurn(0) }}, button{text: "y", act: func() { do.onTurn(1) }},
		button{text: "z", act: func() { do.onTurn(2) }})
	d.actions = newButtonRow(button{text: "Fit", act: do.onFit}, button{text: "Change", act: do.onChange}, button{text: "Remove", act: do.onRemove})
	d.under = newUnder(do.under)
	d.pane = newPane(newColumn(10, 6))
	d.shows(append(d.turns.presses, d.actions.presses...))
	for axis := range 3 {
		d.shows(nil, d.numbers.entries[axis][:]...)
	}
	d.fill()
	return d
}

// showWrong says what is wrong with a number that was typed; nil takes it back.
func (d *details) showWrong(err error) {
	text := ""
	if err != nil {
		text = sentence(err.Error()) + " The old value stays."
	}
	if d.wrong.set(text, bad) {
		d.reflow()
	}
}

// show changes what is told of the selected thing.
func (d *details) show(m detailModel) {
	if m.part != d.model.part {
		d.wrong.set("", bad)
	}
	if m.part != "" {
		d.numbers.show(m.part, m.places, m.turns, m.units)
	}
	if under := d.under.show(m.under); d.same(m) && !under {
		return
	}
	d.model, d.dark = m, isDark()
	d.fill()
}

func (d *details) same(m detailModel) bool {
	return d.dark == isDark() && m.title == d.model.title && m.part == d.model.part &&
		m.fixed == d.model.fixed && slices.Equal(m.lines, d.model.lines)
}

// fill puts the rows that the model asks for under one another.
func (d *details) fill() {
	d.title.set(d.model.title, ink)
	rows := []fyne.CanvasObject{d.title}
	if d.model.part != "" {
		rows = append(rows, d.numbers, d.wrong, d.turns)
	}
	if !d.model.fixed {
		rows = append(rows, d.actions)
	}
	for _, text := range d.model.lines {
		rows = append(rows, newFlow(text, smallSize, soft))
	}
	if d.model.under.shown {
		rows = append(rows, newIndent(0, 4, d.under))
	}
	d.body.set(rows...)
	d.reflow()
}
