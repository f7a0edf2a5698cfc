package ui

import (
	"fyne.io/fyne/v2"

	"tubewright/route"
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
	from.SetSelectedIndex(0)
	to.SetSelectedIndex(1)
	w.openModal("Add a run", modalWidth, []fyne.CanvasObject{labelled("From", from), labelled("To", to)},
		button{text: "Cancel", cancel: true},
		button{text: "Add", strong: true, act: func() {
			if i, j := from.SelectedIndex(), to.SelectedIndex(); i != j {
				w.join(free[i], free[j])
				return
			}
			w.say("One port twice", "A run goes from one port to another. Choose two.")
		}})
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
