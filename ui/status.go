package ui

import "fyne.io/fyne/v2"

// hovered is told by the board what is under the pointer. While points are asked
// for, what to click stays to be read.
func (w *Window) hovered(text string) {
	if w.board.Pointing() {
		text = ""
	}
	w.hover = text
	w.showStatus()
}

// measured is told by the board what was measured; "" when the tool is put away.
func (w *Window) measured(text string) {
	w.tell(text)
}

// tell puts a line of news at the foot of the board, until the next.
func (w *Window) tell(text string) {
	w.news = text
	w.showStatus()
}

// showStatus shows what is under the pointer, else the last news, else the
// plan's file.
func (w *Window) showStatus() {
	text, r := w.hover, soft
	if text == "" {
		text = w.news
	}
	if text == "" {
		text = w.fileLine()
	}
	if t := w.snapshot.Trouble; t != nil {
		text, r = sentence(t.Error()), bad
	}
	// News and the file's name stay: on one line, so that they cover nothing for long.
	most := 1
	if w.hover != "" || w.reading || w.snapshot.Trouble != nil {
		most = statusMost
	}
	if w.status.set(text, r) || w.status.most != most {
		w.status.most, w.status.lines = most, nil
		w.placeStatus()
		w.status.Refresh()
	}
}

// lookAtStatus shows all of the status line while the pointer is on it.
func (w *Window) lookAtStatus(on bool) {
	w.reading = on
	w.showStatus()
}

// statusMost is how many lines the status line may grow to: more than anything it
// is given takes at the least width and the largest text.
const statusMost = 5

// placeStatus stands the status line at the foot of the board. Where it has more
// lines than one it grows upward over the board.
func (w *Window) placeStatus() {
	const left, top = 4, 3
	wide := max(0, w.foot.size.Width-2*left)
	high := w.status.HeightFor(wide)
	place := w.foot
	if more := high + 2*top - place.size.Height; high > 1.5*w.status.lineHeight() && wide > 0 {
		place.at.Y, place.size.Height = place.at.Y-more, place.size.Height+more
	}
	w.under.fill(place != w.foot) // on one line it has the window's own ground
	place.put(w.under)
	box{fyne.NewPos(place.at.X+left, place.at.Y+top), fyne.NewSize(wide, place.size.Height-top)}.put(w.status)
}

func (w *Window) fileLine() string {
	switch {
	case !w.snapshot.Open:
		return ""
	case w.snapshot.Path == "":
		return "Not saved yet."
	}
	return w.snapshot.Path
}
