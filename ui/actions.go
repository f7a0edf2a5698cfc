package ui

import (
	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/ui/board"
)

// did tells an error of an edit; nil is no news.
func (w *Window) did(err error) {
	if err != nil {
		w.say("That cannot be done", sentence(err.Error()))
	}
}

// undo takes the last edit back; in a field that is being typed in, the typing.
func (w *Window) undo() {
	if e, ok := w.win.Canvas().Focused().(*numberEntry); ok && e.Text != e.kept {
		e.set(e.kept)
		return
	}
	w.settle()
	w.session.Undo()
}

func (w *Window) redo() {
	w.settle()
	w.session.Redo()
}

func (w *Window) setNumbers(part string, at, turn [3]float64) error {
	return w.session.SetPartNumbers(part, at, turn)
}

// turn turns the selected part about an axis of the case.
func (w *Window) turn(axis int, degrees float64) {
	w.settle()
	if part := w.selectedPart(); part != "" {
		w.did(w.session.TurnPart(part, axis, degrees))
	}
}

// turned is the board's wish to turn a part about a unit axis.
func (w *Window) turned(part string, axis mgl64.Vec3, degrees float64) {
	for i, v := range axis {
		if v > 0.5 || v < -0.5 {
			w.did(w.session.TurnPart(part, i, degrees*v))
			return
		}
	}
}

// moved follows a part that is dragged on the board.
func (w *Window) moved(part string, by mgl64.Vec3, done bool) {
	if w.dragged == "" {
		k, ok := w.snapshot.Plan.FindPart(part)
		if !ok {
			return
		}
		w.dragged, w.from = part, k.At
		w.session.BeginDrag("Move " + part)
	}
	given := done && by == mgl64.Vec3{}
	if !given {
		w.did(w.session.MovePart(part, mgl64.Vec3(w.from).Add(by)))
	}
	switch {
	case given:
		w.dragged = ""
		w.session.DropDrag()
		w.showPanels()
	case done:
		w.dragged = ""
		w.session.EndDrag()
	}
}

func (w *Window) nudged(part string, by mgl64.Vec3) { w.did(w.session.NudgePart(part, by)) }

func (w *Window) join(from, to route.PortRef) {
	name, err := w.session.AddRun(from, to)
	if err != nil {
		w.did(err)
		return
	}
	w.pick(board.RunTarget(name))
}

// pathMoved follows a run whose corners are dragged: it becomes the person's own.
func (w *Window) pathMoved(run string, via []mgl64.Vec3, done bool) {
	if w.dragged == "" {
		w.dragged = run
		w.session.BeginDrag("Draw " + run)
	}
	if via != nil {
		w.did(w.session.DrawRun(run, via))
	}
	switch {
	case done && via == nil:
		w.dragged = ""
		w.session.DropDrag()
		w.showPanels()
	case done:
		w.dragged = ""
		w.session.EndDrag()
	}
}

// deleted and remove take what is selected out of the plan.
func (w *Window) deleted(t board.Target) {
	switch t.Kind {
	case board.OnPart:
		w.did(w.session.RemovePart(t.Part))
	case board.OnRun:
		w.did(w.session.RemoveRun(t.Run))
	case board.Nothing, board.OnPort, board.OnFinding:
	}
}

func (w *Window) remove() {
	w.settle()
	w.deleted(w.selected)
}

func (w *Window) chooseWay(run, way string) {
	w.settle()
	w.did(w.session.ChooseWay(run, way))
}

func (w *Window) freeWay(run string) {
	w.settle()
	w.did(w.session.FreeWay(run))
}

// openRun opens the card of the selected run and goes there.
func (w *Window) openRun() {
	if run := w.selectedRun(); run != "" {
		w.cards.reopen(run)
		if c := w.cards.byRun[run]; c != nil {
			w.win.Canvas().Focus(c.front)
		}
	}
}

// ownWay reports whether the person drew or chose the way of the selected run.
func (w *Window) ownWay() bool {
	r, ok := w.snapshot.Plan.FindRun(w.selectedRun())
	return ok && (r.Way == route.Drawn || r.Pick != "")
}

// handBack lets the program find the way of the selected run again.
func (w *Window) handBack() {
	w.settle()
	run := w.selectedRun()
	switch r, _ := w.snapshot.Plan.FindRun(run); {
	case r.Way == route.Drawn:
		w.did(w.session.HandBack(run))
	case r.Pick != "":
		w.freeWay(run)
	}
}

// build changes how many of the machine are built.
func (w *Window) build(by int) {
	w.settle()
	if w.snapshot.Open && w.snapshot.Plan.Build+by >= 1 {
		w.did(w.session.SetBuild(w.snapshot.Plan.Build + by))
	}
}

func (w *Window) switchUnits() {
	w.settle()
	if w.snapshot.Units == route.Inches {
		w.session.SetUnits(route.Millimetres)
		return
	}
	w.session.SetUnits(route.Inches)
}

func (w *Window) look(l board.Look) {
	w.settle()
	w.board.SetLook(l)
	w.showPanels()
}

func (w *Window) fit() {
	w.settle()
	w.board.FitSelection()
}

func (w *Window) fitAll() {
	w.settle()
	w.board.FitAll()
}

func (w *Window) perspective() {
	w.board.SetPerspective(!w.board.Perspective())
}

func (w *Window) measure() {
	w.board.SetMeasuring(!w.board.Measuring())
}

// wrongCount says at the foot of the board what is wrong with a count.
func (w *Window) wrongCount(err error) {
	if err != nil {
		w.tell(sentence(err.Error()) + " The old value stays.")
		return
	}
	w.tell("")
}

// changeSelected shows what the selected part is made of, or opens the card of
// the selected run.
func (w *Window) changeSelected() {
	w.settle()
	if part := w.selectedPart(); part != "" {
		w.askPartForm(part)
		return
	}
	w.openRun()
}
