package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"tubewright/route"
	"tubewright/ui/board"
)

// contextMenu answers a press of the right button on the board.
func (w *Window) contextMenu(at board.Target, x, y float32) {
	w.pick(at)
	items := w.contextItems(at)
	if len(items) == 0 {
		return
	}
	widget.ShowPopUpMenuAtPosition(fyne.NewMenu("", items...), w.win.Canvas(), fyne.NewPos(x, y))
}

func (w *Window) contextItems(at board.Target) []*fyne.MenuItem {
	fit := fyne.NewMenuItem("Fit", w.fit)
	remove := fyne.NewMenuItem("Remove", w.remove)
	switch at.Kind {
	case board.OnPart:
		return []*fyne.MenuItem{
			fyne.NewMenuItem("Turn about x", func() { w.turn(0, 90) }),
			fyne.NewMenuItem("Turn about y", func() { w.turn(1, 90) }),
			fyne.NewMenuItem("Turn about z", func() { w.turn(2, 90) }),
			fyne.NewMenuItem("Change …", w.changeSelected), fyne.NewMenuItem("Place a port by clicking …", func() { w.askClick(at.Part) }),
			fit, fyne.NewMenuItemSeparator(), remove,
		}
	case board.OnRun:
		return append(w.runItems(at.Run), fit, fyne.NewMenuItemSeparator(), remove)
	case board.OnPort, board.OnFinding:
		return []*fyne.MenuItem{fit}
	case board.Nothing:
	}
	return append(w.pictureItems(), fyne.NewMenuItem("Fit all", w.fitAll), fyne.NewMenuItem("Add part …", w.askPart), fyne.NewMenuItem("Add run …", w.askRun))
}

// pictureItems are what can be done with the picture under the look; none when
// there is none.
func (w *Window) pictureItems() []*fyne.MenuItem {
	m := underOf(w.snapshot, w.board.Look(), w.whyNoPhotoOf)
	if !m.shown {
		return nil
	}
	lock := fyne.NewMenuItem("Lock the picture", func() { w.lockPicture(m.index, true) })
	if m.locked {
		lock = fyne.NewMenuItem("Unlock the picture", func() { w.lockPicture(m.index, false) })
	}
	return []*fyne.MenuItem{
		fyne.NewMenuItem("Scale the picture by two points", func() { w.scalePicture(m.index) }), lock,
		fyne.NewMenuItem("Take the picture away", func() { w.removePicture(m.index) }), fyne.NewMenuItemSeparator(),
	}
}

// runItems are what can be done with a run beside removing it.
func (w *Window) runItems(run string) []*fyne.MenuItem {
	items := []*fyne.MenuItem{fyne.NewMenuItem("Ways and bench table", func() { w.cards.reopen(run) })}
	r, ok := w.snapshot.Plan.FindRun(run)
	if ok && r.Way == route.Drawn {
		items = append(items, fyne.NewMenuItem("Hand back: find a way again", w.handBack))
	}
	if ok && r.Pick != "" {
		items = append(items, fyne.NewMenuItem("Take the best way again", func() { w.freeWay(run) }))
	}
	return items
}
