package ui

import (
	"fyne.io/fyne/v2"

	"tubewright/route/made"
)

// madePage is the question what came of a tube at the bench.
type madePage struct {
	window *Window
	model  *madeModel
	form   *longModal
	fields [4]*field // length, bar, what was wrong, date
}

// asMade asks what came of the selected run's tube.
func (w *Window) asMade() {
	w.settle()
	run := w.selectedRun()
	if run == "" {
		w.say("Which tube?", "Select a run first: on the board, on its card, or with F6 and the arrow keys.")
		return
	}
	w.askMade(newMadeModel(w.snapshot, run))
}

func (w *Window) askMade(m *madeModel) *madePage {
	p := &madePage{window: w, model: m}
	buttons := []button{{text: "Cancel", cancel: true}}
	if len(m.tries) > 0 {
		buttons = append(buttons, button{text: "Take the last try back", act: p.forget})
		if m.tries[len(m.tries)-1].Fits {
			buttons = append(buttons, button{text: "It fits no longer", act: p.fail})
		}
	}
	buttons = append(buttons, button{text: "Note this try", strong: true, act: p.note})
	p.form = w.openLong("At the bench: "+m.run, modalWidth, p.rows(), buttons...)
	for _, f := range p.fields {
		f.modal = p.form.modal
	}
	w.win.Canvas().Focus(p.fields[0])
	return p
}

func (p *madePage) rows() []fyne.CanvasObject {
	m := p.model
	var rows []fyne.CanvasObject
	for _, line := range m.history() {
		rows = append(rows, newFlow(line, textSize, ink))
	}
	fits := newRadios([]string{"it fits", "it does not fit"}, oneIf(!m.fits), func(i int) { m.fits = i == 0 })
	unit := ", " + string(m.units)
	rows = append(rows, labelled("This try", fits),
		p.field(0, "Finished length along the centreline"+unit, &m.cut),
		p.field(1, "Length of the bar it was sawn from"+unit+" (empty: not known)", &m.from),
		p.field(2, "What was wrong", &m.wrong), p.field(3, "Date", &m.date),
		newFlow("A tube that fits is a fact: its run is not searched and not cut again, and other runs keep clear of it. What is left of the bar goes to the offcuts.", smallSize, soft))
	return rows
}

// field is a named entry that writes where it is told.
func (p *madePage) field(i int, name string, to *string) fyne.CanvasObject {
	f := newField(*to)
	f.OnChanged = func(text string) { *to = text }
	p.fields[i] = f
	return labelled(name, f)
}

// note records the try.
func (p *madePage) note() {
	w, m := p.window, p.model
	try, err := m.attempt()
	if err == nil && m.fits && !m.known {
		err = &made.EntryError{Run: m.run, What: "there is no way for it to have been made by", Fix: "Settle its findings first."}
	}
	if err == nil {
		err = w.session.NoteTry(m.run, try)
	}
	if err != nil {
		w.askMade(m)
		w.say("That cannot be noted", sentence(err.Error()))
	}
}

func (p *madePage) forget() { p.window.did(p.window.session.ForgetTry(p.model.run)) }

// fail asks why a tube that was made fits no longer.
func (p *madePage) fail() {
	w, run := p.window, p.model.run
	why := newField("")
	m := w.openModal(run+" fits no longer", modalWidth, rowsOf(labelled("What is wrong with it", why)),
		button{text: "Cancel", cancel: true},
		button{text: "Plan it again", strong: true, act: func() { w.did(w.session.FailTry(run, why.Text)) }})
	why.modal = m
	w.win.Canvas().Focus(why)
}
