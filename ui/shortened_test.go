package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"tubewright/ui/board"
)

// Where a text is shortened it ends in an ellipsis, and there is a place that tells
// all of it.
func TestWhatIsShortenedCanBeReadWhole(t *testing.T) {
	b := scanner(t)
	shortened := 0
	b.sized(150, windowSizes[0])
	for _, s := range screens(t) {
		if s.name == "long names" {
			continue // they are of no plan, so that nothing else can tell them
		}
		s.show(b)
		for _, w := range wordsOn(b.win.Canvas()) {
			if !cutShort(w) {
				continue
			}
			shortened++
			if why := b.unreachable(w); why != "" {
				t.Errorf("%s: %v: %s", s.name, w, why)
			}
		}
		b.tidy()
	}
	if shortened == 0 {
		t.Error("nothing was shortened: the test looks at nothing")
	}
}

// cutShort reports whether a line is a part of what is to be said.
func cutShort(w word) bool {
	if !strings.HasSuffix(w.of.Text, "…") {
		return false
	}
	if f, ok := w.path[len(w.path)-2].(*flow); ok {
		return !strings.HasSuffix(f.text, "…")
	}
	return !strings.HasSuffix(w.of.Text, " …") // "Add part …" ends so by itself
}

// unreachable says what keeps one from reading a shortened text whole; "" when nothing
// does.
func (b *bench) unreachable(w word) string {
	for i := len(w.path) - 1; i >= 0; i-- {
		switch o := w.path[i].(type) {
		case *buyLine:
			return b.tells(o.full, func() { o.MouseIn(nil) })
		case *flow:
			if o == b.status {
				b.lookAtStatus(true)
				defer b.lookAtStatus(false)
				return missing(strings.Join(b.status.lines, " "), o.text)
			}
		case *cardHead:
			if got := detailOf(b.snapshot, board.RunTarget(o.name.text)).title; got != o.name.text {
				return "the details do not name the run: " + got
			}
			return ""
		case *header:
			if w.path[len(w.path)-1] == fyne.CanvasObject(o.title) {
				return missing(b.win.Title(), strings.TrimSuffix(o.model.title, " *"))
			}
			return b.tells(o.text.text, func() { o.ready.MouseIn(nil) })
		}
	}
	return "nothing tells the whole of it"
}

// tells says what the status line lacks after something was done.
func (b *bench) tells(whole string, do func()) string {
	do()
	defer b.hovered("")
	return missing(strings.Join(b.status.lines, " "), whole)
}

func missing(text, whole string) string {
	if strings.Contains(text, whole) {
		return ""
	}
	return "told is only " + text
}
