package ui

import "fyne.io/fyne/v2"

// howSure shows how likely each tube fits at the first try.
func (w *Window) howSure() {
	w.settle()
	w.showSure(newSureModel(w.snapshot))
}

func (w *Window) showSure(m sureModel) {
	rows := []fyne.CanvasObject{
		newFlow(m.words(), textSize, ink),
		newFlow("From the errors of your hand and your measures (Plan settings), and from your test bends. Ends are trimmed to fit; straights between bends are what they are. “About” is one standard deviation: two of three tubes are off by less.", smallSize, soft),
	}
	var f *longModal
	offers := map[string]*press{}
	for _, r := range m.rows {
		rows = append(rows, sureRows(r))
		if r.surer != "" {
			offer := newButtonRow(button{text: r.offer, act: func() {
				f.modal.close()
				w.chooseWay(r.run, r.surer)
			}})
			offers["surer "+r.run] = offer.presses[0]
			rows = append(rows, offer)
		}
	}
	f = w.openLong("How likely the tubes fit", readWidth, rows, button{text: "Close", strong: true, cancel: true})
	f.modal.text, f.modal.within = f.body, offers
}

// sureRows is one tube: its chance, and what it hangs on.
func sureRows(r sureRow) fyne.CanvasObject {
	title := newFlow(r.title, textSize, ink)
	title.bold = true
	column := newColumn(0, 3, title)
	for _, line := range r.lines {
		column.items = append(column.items, newFlow(line, smallSize, soft))
	}
	return column
}
