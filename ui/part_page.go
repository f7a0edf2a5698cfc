package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"github.com/go-gl/mathgl/mgl64"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/find"
	"tubewright/ui/board"
	"tubewright/ui/session"
)

// partScene shows a part alone, in a case that just holds it.
func partScene(plan route.Plan, k route.Part) board.Scene {
	k.Turn, k.At = mgl64.Vec3{}, mgl64.Vec3{}
	lo, hi := boundsOf(plan.Whole(k).Solids)
	k.At = lo.Mul(-1)
	size := hi.Sub(lo)
	for i := range size {
		size[i] = max(size[i], 1)
	}
	return board.NewScene(route.Plan{Units: plan.Units, Case: size, Parts: []route.Part{k}, Catalogue: plan.Catalogue}, cutlist.List{}, find.Solution{})
}

// partPicture is how large the part is shown beside its fields.
var partPicture = fyne.NewSize(240, 180)

// askPartForm shows what a part is made of, to be changed.
func (w *Window) askPartForm(part string) {
	w.settle()
	k, ok := w.snapshot.Plan.FindPart(part)
	if !ok {
		return
	}
	left, right := newForm(), newForm()
	view := newThumb(partScene(w.snapshot.Plan, k), board.Turntable, partPicture)
	body := newPane(newColumn(8, 0, newBeside(formGap, newColumn(0, 10, container.NewCenter(view), left.column), right.column)))
	var p *page
	p = w.openPage("Part "+part, twoForms, body, func(s session.Snapshot) {
		now, ok := w.partNow(s, part)
		if !ok {
			w.closePage(p)
			return
		}
		part = now.Name
		p.setTitle("Part " + part)
		e := newEditor(s, w.session.Put, w.did)
		e.click = func(part string) {
			w.closePage(p)
			w.askClick(part)
		}
		view.show(partScene(s.Plan, now))
		l, r := e.partForms(part)
		changed := left.show(l)
		if right.show(r) || changed {
			p.reflow()
		}
	})
	p.hold(left, right)
}

// partNow finds the part of a page again; after a rename it is the one that
// stands where the old one stood in the list.
func (w *Window) partNow(s session.Snapshot, part string) (route.Part, bool) {
	if k, ok := s.Plan.FindPart(part); ok {
		for i := range s.Plan.Parts {
			if s.Plan.Parts[i].Name == part {
				w.pagePart, w.pageParts = i, len(s.Plan.Parts)
			}
		}
		return k, true
	}
	if i := w.pagePart; i < len(s.Plan.Parts) && len(s.Plan.Parts) == w.pageParts {
		return s.Plan.Parts[i], true
	}
	return route.Part{}, false
}

// closePage closes a page that is open.
func (w *Window) closePage(p *page) {
	if p != nil && p.modal != nil {
		p.modal.close()
	}
}

// askClick asks which way a port faces and then where it is.
func (w *Window) askClick(part string) {
	ways := []string{"+z, toward you", "-z, away", "+x, right", "-x, left", "+y, up", "-y, down"}
	axes := []mgl64.Vec3{{0, 0, 1}, {0, 0, -1}, {1, 0, 0}, {-1, 0, 0}, {0, 1, 0}, {0, -1, 0}}
	choice := newChoice(ways, nil)
	choice.SetSelectedIndex(0)
	w.openModal("Place a port on "+part, modalWidth, rowsOf(
		labelled("It faces, in the case", choice),
		newFlow("Then click the middle of its face on the drawing, or on the picture under it. The number along your line of sight is the part's face, or its middle: set it right afterwards.", smallSize, soft),
	), button{text: "Cancel", cancel: true}, button{text: "Click the place", strong: true, act: func() {
		w.clickPort(part, axes[max(0, choice.SelectedIndex())])
	}})
	w.win.Canvas().Focus(choice)
}

// clickPort waits for a click on the board and puts the port there.
func (w *Window) clickPort(part string, facing mgl64.Vec3) {
	if w.board.Look() == board.Turntable {
		w.look(board.Side)
	}
	depth := map[board.Look]int{board.Side: 2, board.Above: 1, board.Front: 0}[w.board.Look()]
	w.board.Point(board.Pointing{
		Hint: "Click the middle of the port's face on " + part + ". Esc leaves it.", Points: 1,
		Done: func(at []mgl64.Vec3) {
			if at == nil {
				return
			}
			q, ok := clickedPort(w.snapshot.Plan, part, at[0], facing, depth)
			if !ok {
				return
			}
			if err := w.session.Put("Add port "+q.Name+" to "+part, func(p *route.Plan) { addPort(p, part, q) }); err != nil {
				w.did(err)
				return
			}
			w.askPartForm(part)
		},
	})
}
