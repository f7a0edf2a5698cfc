package ui

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"tubewright/bends/trial"
	"tubewright/cutlist/draw"
)

// trialPage is the question in which test bends are typed.
type trialPage struct {
	window *Window
	tubes  []string // that can be bent
	model  *trialModel
	table  *entryTable
	shape  *picture
	told   *flow
	unsure *flow
	wrong  *flow
	body   *column
	form   *longModal
}

// Sizes of the page, in Fyne's pixels.
const (
	trialWidth float32 = 760
	trialNames float32 = 0.1 // share of the names
)

// trialPicture is how large the drawing of a bend is shown.
func trialPicture() fyne.Size {
	return fyne.NewSize(float32(benchWide*linePerMM()), float32(benchHigh*linePerMM()))
}

func newTrialPage(w *Window, m *trialModel) *trialPage {
	p := &trialPage{window: w, model: m}
	p.told, p.unsure, p.wrong = newFlow("", textSize, ink), newFlow("", smallSize, careful), newFlow("", smallSize, bad)
	high := func(float32) float32 { return trialPicture().Height }
	p.shape = newPicture(face, high, func(float32) draw.Drawing { return drawTrial(m.from(), m.to()) })
	p.body = newColumn(0, 8)
	p.fill()
	return p
}

// fill builds the table anew for the bends there are.
func (p *trialPage) fill() {
	old := p.table
	p.table = newEntryTable(trialNames, p.model.heads(), p.typed)
	if old != nil {
		p.table.modal = old.modal
	}
	for i := range p.model.list {
		p.table.add(fmt.Sprintf("bend %d", i+1), p.model.texts(i)...)
	}
	p.tell()
	p.body.set(p.table, p.rows(), p.wrong, p.told, p.unsure)
}

func (p *trialPage) typed(row, col int, text string) {
	err := p.model.set(row, col, text)
	p.wrong.set("", bad)
	if err != nil {
		p.wrong.set(sentence(err.Error())+" It is not counted.", bad)
	}
	p.tell()
	p.form.resize()
}

// tell says what the bends say.
func (p *trialPage) tell() {
	text, r := p.model.words()
	p.told.set(text, r)
	sure := ""
	if p.model.ready() {
		for _, s := range p.model.fit.Unsure {
			sure += s + " "
		}
	}
	p.unsure.set(sure, careful)
}

// rows are the buttons that add a bend and take one away.
func (p *trialPage) rows() fyne.CanvasObject {
	buttons := []button{{text: "One bend more", act: func() { p.change(p.model.add); p.table.focus(len(p.model.list)-1, 0) }}}
	if len(p.model.list) > 0 {
		buttons = append(buttons, button{text: "One bend less", act: func() { p.change(p.model.drop) }})
	}
	return newButtonRow(buttons...)
}

func (p *trialPage) change(how func()) {
	p.table.settle()
	how()
	p.fill()
	p.shape.redraw()
	p.form.resize()
}

// choices say how all legs were measured, beside the drawing of it.
func (p *trialPage) choices() fyne.CanvasObject {
	from := newRadios([]string{"the ends of the piece", "two marks on it"}, oneIf(p.model.from() == trial.Marks), func(i int) {
		p.change(func() { p.model.measureFrom(map[bool]trial.From{false: trial.Ends, true: trial.Marks}[i == 1]) })
	})
	to := newRadios([]string{"the back of the bend", "where the centrelines meet"}, oneIf(p.model.to() == trial.Centre), func(i int) {
		p.change(func() { p.model.measureTo(map[bool]trial.To{false: trial.Back, true: trial.Centre}[i == 1]) })
	})
	say := newFlow("Square a piece and measure it, or make two marks and measure between them. Bend it between. Write down the turn on the former and the turn it keeps when it is cold (0° is straight), then measure both legs: a rule laid along each shows where their backs meet.", smallSize, soft)
	left := newColumn(0, 8, say, labelled("Legs measured from", from), labelled("to", to))
	if len(p.tubes) > 1 {
		left.items = append([]fyne.CanvasObject{labelled("Tube", p.tubeChoice())}, left.items...)
	}
	size := trialPicture()
	wide := p.window.wide(trialWidth) - 2*modalInset - 2*longInset - size.Width - theme.Padding()
	return container.NewHBox(container.NewGridWrap(fyne.NewSize(wide, max(left.HeightFor(wide), size.Height)), left),
		container.NewGridWrap(size, p.shape))
}

// tubeChoice is the tubes of the plan that can be bent.
func (p *trialPage) tubeChoice() fyne.CanvasObject {
	c := newChoice(p.tubes, nil)
	c.Selected = p.model.tube.Name
	c.OnChanged = func(name string) {
		p.form.modal.close()
		p.window.askTrial(p.tubes, newTrialModel(p.window.snapshot, name))
	}
	return c
}

// askTrial opens the test bends of a tube.
func (w *Window) askTrial(tubes []string, m *trialModel) *trialPage {
	p := newTrialPage(w, m)
	p.tubes = tubes
	p.form = w.openLong("Test bends of "+m.tube.Name, trialWidth, rowsOf(p.choices(), p.body, heatCaution()),
		button{text: "Cancel", cancel: true},
		button{text: "Keep the readings", act: func() { p.keep(false) }},
		button{text: "Use these figures", strong: true, act: func() { p.keep(true) }})
	p.table.modal = p.form.modal
	p.table.focus(0, 0)
	return p
}

// heatCaution is what to mind at the bench.
func heatCaution() fyne.CanvasObject {
	return newFlow("Hot tube burns and its fumes harm: gloves, fresh air, and what the maker of tube and heat gun says.", smallSize, careful)
}

// keep gives the bends to the plan, and their figures when they are to be used.
func (p *trialPage) keep(use bool) {
	p.table.settle()
	m, s := p.model, p.window.session
	switch {
	case !use:
		p.window.did(s.KeepTestBends(m.tube.Name, m.list))
	case m.ready():
		p.window.did(s.UseTestBends(m.tube.Name, m.list, m.fit))
	default:
		text, _ := m.words()
		p.window.askTrial(p.tubes, m)
		p.window.say("There are no figures to use yet", text)
	}
}

// testBends asks for the test bends of the tube of what is selected, else of the
// plan's own.
func (w *Window) testBends() {
	w.settle()
	names := bentTubes(w.snapshot.Plan, w.selectedRun())
	if len(names) == 0 {
		w.say("No tube to bend", "The plan has no tube that can be bent. Choose one in the plan's settings.")
		return
	}
	w.askTrial(names, newTrialModel(w.snapshot, names[0]))
}
