package ui

import (
	"context"
	"fmt"
	"strings"

	"fyne.io/fyne/v2"

	"tubewright/route"
	"tubewright/route/find"
	"tubewright/route/survey"
)

// surveyPage is the survey sheet as a form: a table for each part with ports.
type surveyPage struct {
	window *Window
	model  *surveyModel
	tables []*entryTable
	wrong  *flow
	form   *longModal
}

// surveyWidth suits five fields beside a name, in Fyne's pixels.
const (
	surveyWidth float32 = 820
	surveyNames float32 = 0.16 // share of the names
)

func newSurveyPage(w *Window, m *surveyModel) *surveyPage {
	p := &surveyPage{window: w, model: m, wrong: newFlow("", smallSize, bad)}
	for g := range m.groups {
		t := newEntryTable(surveyNames, m.heads(g), func(row, col int, text string) { p.typed(g, row, col, text) })
		for row := range m.groups[g].Rows {
			t.add(m.name(g, row), m.texts(g, row)...)
			t.hint(m.plans(g, row)...)
		}
		if g > 0 {
			t.before, p.tables[g-1].next = p.tables[g-1], t
		}
		p.tables = append(p.tables, t)
	}
	return p
}

func (p *surveyPage) rows() []fyne.CanvasObject {
	rows := []fyne.CanvasObject{
		newFlow("Type what you measured in the case, three distances for each port; what you leave empty stays as the plan has it (in brackets). The survey sheet to fill in by hand is among the sheets.", smallSize, soft),
		p.wrong,
	}
	for g, t := range p.tables {
		rows = append(rows, newColumn(0, 2, newHeading(p.model.groups[g].Part), t))
	}
	return rows
}

func (p *surveyPage) typed(group, row, col int, text string) {
	p.wrong.set("", bad)
	if err := p.model.set(group, row, col, text); err != nil {
		p.wrong.set(p.model.name(group, row)+": "+sentence(err.Error()), bad)
	}
	p.form.resize()
}

// survey asks for what was measured in the case.
func (w *Window) survey() {
	w.settle()
	m := newSurveyModel(w.snapshot)
	if len(m.groups) == 0 {
		w.say("No ports to measure", "The plan has no part with a port. Add a part first.")
		return
	}
	w.askSurvey(m)
}

func (w *Window) askSurvey(m *surveyModel) *surveyPage {
	p := newSurveyPage(w, m)
	p.form = w.openLong("Survey: ports measured in the case", surveyWidth, p.rows(),
		button{text: "Cancel", cancel: true}, button{text: "Take these numbers", strong: true, act: p.take})
	for _, t := range p.tables {
		t.modal = p.form.modal
		t.onFocus = func(c *cell) { p.form.body.reveal(c) }
	}
	p.tables[0].focus(0, 0)
	return p
}

// take gives what was typed to the plan, or says what is missing.
func (p *surveyPage) take() {
	for _, t := range p.tables {
		t.settle()
	}
	w := p.window
	readings, err := p.model.readings()
	switch {
	case err != nil:
		w.askSurvey(p.model)
		w.say("The survey is not complete", sentence(err.Error()))
	case len(readings) > 0:
		w.takeSurvey(p.model.plan, readings, map[string]survey.Answer{})
	}
}

// takeSurvey takes readings into the plan, after asking about each part that
// does not stand, or is not made, as the plan says.
func (w *Window) takeSurvey(plan route.Plan, readings []survey.Reading, answers map[string]survey.Answer) {
	out, verdicts, err := survey.Take(plan, readings, survey.Options{Answers: answers})
	if err != nil {
		w.did(err)
		return
	}
	for _, v := range verdicts {
		if v.Asks {
			w.askVerdict(v, func(a survey.Answer) {
				answers[v.Part] = a
				w.takeSurvey(plan, readings, answers)
			})
			return
		}
	}
	w.keepSteady(plan, out, verdicts)
}

// keepSteady gives a survey to the plan. Runs that rest on no port that changed
// keep their ways: which those are takes a solve.
func (w *Window) keepSteady(before, after route.Plan, verdicts []survey.Verdict) {
	touched, was := survey.Affected(before, after), w.snapshot.Solution
	var kept []string
	w.underWay("Taking the survey", func() error {
		now, err := find.Solve(context.Background(), after)
		if err == nil {
			after, kept = find.Steady(after, was, now, touched)
		}
		return err
	}, func(err error) {
		if err == nil {
			err = w.session.Edit("Survey of "+count(taken(verdicts), "port"), func(route.Plan) route.Plan { return after })
		}
		if err != nil {
			w.did(err)
			return
		}
		w.say("The survey is taken", surveyWords(verdicts, touched, kept))
	})
}

// taken counts the ports whose numbers went into the plan.
func taken(verdicts []survey.Verdict) (n int) {
	for _, v := range verdicts {
		if v.Taken != survey.Skip {
			n += len(v.Ports)
		}
	}
	return n
}

// askVerdict asks what is to be made of a part that is not as the plan has it.
func (w *Window) askVerdict(v survey.Verdict, answer func(survey.Answer)) {
	buttons := []button{
		{text: "Leave it and measure again", cancel: true, act: func() { answer(survey.Skip) }},
		{text: "The ports are right", act: func() { answer(survey.TakePorts) }},
	}
	if v.Move != nil {
		buttons = append(buttons, button{text: "The part has moved", strong: true, act: func() { answer(survey.TakeMove) }})
	}
	w.openModal(fmt.Sprintf("%s is not where the plan has it", v.Part), readWidth, paragraphs(v.Words), buttons...)
}

// surveyWords says what a survey changed.
func surveyWords(verdicts []survey.Verdict, runs, kept []string) string {
	var text strings.Builder
	for _, v := range verdicts {
		text.WriteString(v.Words + " ")
	}
	if len(runs) == 0 {
		return text.String() + "No tube changes."
	}
	text.WriteString("Tubes that rest on what changed: " + route.And(runs) + ".")
	if len(kept) > 0 {
		text.WriteString(" Another way would be cheaper now for " + route.And(kept) + "; the way each had is kept.")
	}
	return text.String()
}
