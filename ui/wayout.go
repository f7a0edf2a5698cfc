package ui

import (
	"fmt"
	"reflect"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// wayOut is what stands under a finding: the button that looks for ways out,
// how far the search is, and a button for each way that was found.
type wayOut struct {
	*column
	model  wayOutModel
	filled bool
	dark   bool
	said   *flow
	bar    *widget.ProgressBar
	far    *flow    // how far the search is
	rows   []*press // what can be pressed, from the top
	do     wayOutActions
}

// wayOutActions is what its buttons do. onLook is told when the pointer or the
// focus comes to an offer and when it leaves.
type wayOutActions struct {
	onFind func(finding int)
	onStop func()
	onTake func(offer int)
	onLook func(offer int, on bool)
}

func newWayOut(do wayOutActions) *wayOut {
	w := &wayOut{column: newColumn(0, 4), said: newFlow("", smallSize, soft), bar: widget.NewProgressBar(), far: newFlow("", smallSize, soft), do: do}
	w.bar.TextFormatter = func() string { return "" } // half on the bar, half beside it, it could not be read
	return w
}

// show brings it up to a finding and the search, and reports whether its rows
// are others than before.
func (w *wayOut) show(finding int, m wayOutModel) bool {
	if m.index != finding {
		m = wayOutModel{index: finding, said: ""}
	}
	same := w.model
	same.spent, same.said = m.spent, m.said
	rows := !w.filled || w.dark != isDark() || !reflect.DeepEqual(same, m)
	w.model = m
	r := soft
	if m.failed {
		r = bad
	}
	w.said.set(m.said, r)
	if m.looking && w.bar.Value != m.spent {
		w.bar.SetValue(m.spent)
	}
	if m.looking {
		w.far.set(fmt.Sprintf("%.0f %% looked at.", m.spent*100), soft)
	}
	if rows {
		w.filled, w.dark = true, isDark()
		w.fill()
	}
	return rows
}

// asked reports whether ways out were asked for here.
func (w *wayOut) asked() bool { return w.model.looking || w.model.said != "" }

func (w *wayOut) fill() {
	w.rows = nil
	var objects []fyne.CanvasObject
	switch {
	case w.model.looking:
		stop := newButtonRow(button{text: "Stop looking", act: w.do.onStop})
		w.rows = stop.presses
		objects = []fyne.CanvasObject{w.bar, w.far, stop}
	case !w.asked():
		find := newButtonRow(button{text: "Find a way out", act: func() { w.do.onFind(w.model.index) }})
		w.rows = find.presses
		objects = []fyne.CanvasObject{find}
	default:
		objects = append(objects, w.said)
		for i, o := range w.model.offers {
			objects = append(objects, w.offer(i, o))
		}
	}
	w.set(newIndent(10, 2, newColumn(0, 4, objects...)))
}

// offer is the button that makes a change.
func (w *wayOut) offer(i int, o offerModel) *press {
	words := newFlow(o.words, textSize, accent)
	p := newPress(newColumn(0, 1, words, newFlow(o.facts, smallSize, soft)), func() { w.do.onTake(i) })
	p.plain, p.outlined, p.inset = false, true, fyne.NewSize(8, 4)
	p.onLook = func(on bool) { w.do.onLook(i, on) }
	w.rows = append(w.rows, p)
	return p
}
