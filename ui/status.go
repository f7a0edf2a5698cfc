package ui

// hovered is told by the board what is under the pointer.
func (w *Window) hovered(text string) {
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
	w.status.set(text, r)
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
