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
	for _, r := range m.rows {
		rows = append(rows, sureRows(r, func(run, way string) {
			f.modal.close()
			w.chooseWay(run, way)
		}))
	}
	f = w.openLong("How likely the tubes fit", readWidth, rows, button{text: "Close", strong: true, cancel: true})
	f.modal.text = f.body
}

// sureRows is one tube: its chance, what it hangs on, and a surer way.
func sureRows(r sureRow, take func(run, way string)) fyne.CanvasObject {
	title := newFlow(r.title, textSize, ink)
	title.bold = true
	column := newColumn(0, 3, title)
	for _, line := range r.lines {
		column.items = append(column.items, newFlow(line, smallSize, soft))
	}
	if r.surer != "" {
		column.items = append(column.items, newButtonRow(button{text: r.offer, act: func() { take(r.run, r.surer) }}))
	}
	return column
}
