package ui

import (
	"slices"

	"fyne.io/fyne/v2"

	"tubewright/route"
	"tubewright/ui/board"
)

// askRun lets the person choose two free ports.
func (w *Window) askRun() {
	w.settle()
	free := freePorts(w.snapshot.Plan)
	if len(free) < 2 {
		w.say("No ports to join", "A run needs two free ports on parts of the plan. Add a part first, or remove a run.")
		return
	}
	names := make([]string, len(free))
	for i, ref := range free {
		names[i] = ref.String()
	}
	from, to := newChoice(names, nil), newChoice(names, nil)
	i, j := likelyEnds(free, w.selected)
	from.SetSelectedIndex(i)
	to.SetSelectedIndex(j)
	w.openModal("Add a run", modalWidth, []fyne.CanvasObject{labelled("From", from), labelled("To", to)},
		button{text: "Cancel", cancel: true},
		button{text: "Add", strong: true, act: func() {
			if i, j := from.SelectedIndex(), to.SelectedIndex(); i != j {
				w.join(free[i], free[j])
				return
			}
			w.say("One port twice", "A run goes from one port to another. Choose two.")
		}})
	w.win.Canvas().Focus(from)
}

// likelyEnds are the places in a list of ports of the two that a run is likely to
// join: a port of what is selected, and the first of another part.
func likelyEnds(free []route.PortRef, at board.Target) (from, to int) {
	from = max(0, slices.IndexFunc(free, func(p route.PortRef) bool {
		return (at.Kind == board.OnPort && p == at.Port) || (at.Kind == board.OnPart && p.Part == at.Part)
	}))
	to = slices.IndexFunc(free, func(p route.PortRef) bool { return p.Part != free[from].Part })
	if to < 0 {
		to = (from + 1) % len(free)
	}
	return from, to
}

// freePorts lists the ports no run ends at, in the plan's order.
func freePorts(p route.Plan) (free []route.PortRef) {
	for _, k := range p.Parts {
		for _, q := range p.Whole(k).Ports {
			if ref := (route.PortRef{Part: k.Name, Port: q.Name}); runAt(p, ref) == "" {
				free = append(free, ref)
			}
		}
	}
	return free
}
