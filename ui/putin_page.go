package ui

import (
	"context"
	"errors"
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"tubewright/cutlist"
	"tubewright/route/find"
	"tubewright/route/insert"
)

// complete is a list with the order in which its tubes go in. It is for workers:
// that takes half a second, and nothing stops it.
func complete(l cutlist.List, sol find.Solution) cutlist.List {
	if l.PutIn != nil {
		return l
	}
	full, err := l.WithPutIn(context.Background(), sol)
	if err != nil {
		return l // only a context that has ended gives one
	}
	return full
}

// howIn works out in which order the tubes go in, with a sign that it goes on
// and a button that stops it, and shows it.
func (w *Window) howIn() {
	w.settle()
	if why := w.noSheets(); why != "" {
		w.say("No order yet", why)
		return
	}
	if l := w.listing(); l.PutIn != nil {
		w.showIn(l)
		return
	}
	ctx, stop := context.WithCancel(context.Background())
	l, sol := w.listing(), w.snapshot.Solution
	bar := widget.NewProgressBarInfinite()
	m := w.openModal("Looking how each tube goes in", 320, rowsOf(bar), button{text: "Stop", cancel: true, act: stop})
	w.options.Tools.Go(func() {
		full, err := l.WithPutIn(ctx, sol)
		w.options.Tools.Dispatch(func() {
			defer stop()
			bar.Stop()
			switch {
			case errors.Is(err, context.Canceled): // the person stopped it, and sees that it is gone
			case err != nil:
				m.close()
				w.did(err)
			default:
				m.close()
				w.showIn(full)
			}
		})
	})
}

func (w *Window) showIn(l cutlist.List) {
	var rows []fyne.CanvasObject
	for i, s := range l.PutSteps() {
		r := ink
		if s.Verdict == insert.Impossible {
			r = bad
		}
		rows = append(rows, newFlow(fmt.Sprintf("%d. %s", i+1, s.Text()), textSize, r))
	}
	w.read("How the tubes go in", append(rows, newFlow(cutlist.PutInLimits, smallSize, soft))...)
}
