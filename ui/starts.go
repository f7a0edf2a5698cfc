package ui

import (
	"fyne.io/fyne/v2"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/find"
	"tubewright/route/planfile"
	"tubewright/ui/board"
)

// start is a plan that a new one may begin with.
type start struct {
	name string
	text []byte
	plan route.Plan
}

// starts reads the plans to begin with.
func (w *Window) starts() (all []start) {
	for _, name := range w.options.Starts {
		text, ok := w.options.Start(name)
		if !ok {
			continue
		}
		plan, _, err := planfile.Read(name+planfile.Ending, text)
		if err != nil {
			w.options.Log(err) // ours, and told by a test
			continue
		}
		all = append(all, start{name, text, plan})
	}
	return all
}

// startAbout says how large a case is and what stands in it.
func startAbout(p route.Plan) string {
	u := p.Units
	return dotted(lengthText(p.Case[0], u)+" × "+lengthText(p.Case[1], u)+" × "+lengthText(p.Case[2], u)+" "+string(u), count(len(p.Parts), "part")+", no tubes yet", "invented: put your own measures in")
}

// Sizes of the pictures of plans and parts: in a question, and in the welcome.
var (
	thumbSize  = fyne.NewSize(104, 78)
	thumbSmall = fyne.NewSize(72, 54)
)

// startRow is a starting plan with a picture of it.
func (w *Window) startRow(s start, size fyne.Size, act func()) *press {
	name := newFlow(demoTitle(s.name), textSize, accent)
	name.bold = true
	scene := board.NewScene(s.plan, cutlist.List{}, find.Solution{})
	return newPress(newIconRow(newThumb(scene, board.Turntable, size), newColumn(0, 1, name, newFlow(startAbout(s.plan), smallSize, soft))), act)
}

// begin begins with a starting plan, asking about unsaved changes.
func (w *Window) begin(s start) {
	w.unlessUnsaved(func() {
		if err := w.session.OpenBytes(s.name+planfile.Ending, s.text); err != nil {
			w.tellProblems(s.name, err)
			return
		}
		w.begun("A new plan. Put your own measures in, then drag from port to port. Saving asks for a name.")
	})
}

// newPlan asks what to begin with.
func (w *Window) newPlan() {
	w.settle()
	all := w.starts()
	if len(all) == 0 {
		w.emptyPlan()
		return
	}
	var m *modal
	then := func(act func()) func() {
		return func() {
			m.close()
			act()
		}
	}
	empty := newFlow("An empty case", textSize, accent)
	empty.bold = true
	about := newFlow("A case of middle size with nothing in it, to put parts of the catalogue into.", smallSize, soft)
	presses := []*press{newPress(newColumn(0, 1, empty, about), then(w.emptyPlan))}
	for _, s := range all {
		presses = append(presses, w.startRow(s, thumbSize, then(func() { w.begin(s) })))
	}
	var rows []fyne.CanvasObject
	for _, p := range presses {
		p.outlined = true
		rows = append(rows, p)
	}
	m = w.openModal("Begin a plan with", modalWidth, rowsOf(newColumn(0, 6, rows...)), button{text: "Cancel", cancel: true})
	walkable(presses, m.key)
	w.win.Canvas().Focus(presses[0])
}

// walkable lets Up and Down walk through rows that stand in no pane; other keys
// go to another.
func walkable(rows []*press, other func(fyne.KeyName) bool) {
	for i, row := range rows {
		row.onKey = func(name fyne.KeyName) bool {
			to := i + keyStep(name)
			if to == i {
				return other != nil && other(name)
			}
			if c := canvasOf(row); c != nil && to >= 0 && to < len(rows) {
				c.Focus(rows[to])
			}
			return true
		}
	}
}
