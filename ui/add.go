package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"tubewright/route"
	"tubewright/ui/board"
)

// askPart lets the person choose a part of the catalogue.
func (w *Window) askPart() {
	w.settle()
	var names []string
	if shelf := w.snapshot.Plan.Catalogue; shelf != nil {
		for _, k := range shelf.Parts {
			names = append(names, k.Name)
		}
	}
	if len(names) == 0 {
		w.say("No parts to add", "The catalogue has no parts. Describe your own in the plan file, under parts.")
		return
	}
	kind := widget.NewSelect(names, nil)
	kind.SetSelectedIndex(0)
	rows := []fyne.CanvasObject{
		labelled("From the catalogue", kind),
		newFlow("It is put in the middle of the case. The catalogue's numbers are only typical: measure your own part before you cut.", smallSize, soft),
	}
	w.openModal("Add a part", modalWidth, rows, button{text: "Cancel", cancel: true},
		button{text: "Add", strong: true, act: func() {
			name, err := w.session.AddPart(kind.Selected)
			if err != nil {
				w.did(err)
				return
			}
			w.pick(board.PartTarget(name))
		}})
}

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
	from, to := widget.NewSelect(names, nil), widget.NewSelect(names, nil)
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
