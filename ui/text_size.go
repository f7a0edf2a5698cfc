package ui

import (
	"fmt"
	"math"
	"slices"

	"fyne.io/fyne/v2"
)

// textPercents are the sizes of text one may choose, in percent of the size it
// comes with.
var textPercents = []int{100, 110, 125, 150}

// textPercent is a size of text that there is: the one asked for, else 100.
func textPercent(percent int) int {
	if slices.Contains(textPercents, percent) {
		return percent
	}
	return textPercents[0]
}

// nextPercent is the size of text above or below one; itself at the end.
func nextPercent(percent, by int) int {
	i := slices.Index(textPercents, textPercent(percent)) + by
	return textPercents[max(0, min(i, len(textPercents)-1))]
}

// typeSize is a size of type as it comes, in Fyne's pixels.
type typeSize float32

// px is the size at the person's size of text, in whole pixels of Fyne's: between
// them letters stand unevenly.
func (s typeSize) px() float32 { return s.at(textScale()) }

func (s typeSize) at(scale float32) float32 {
	return float32(math.Round(float64(float32(s) * scale)))
}

// grown is a length that holds text, at the person's size of text.
func grown(length float32) float32 { return length * textScale() }

// textScale is how much larger text is than as it comes.
func textScale() float32 {
	if app := fyne.CurrentApp(); app != nil {
		if t, ok := app.Settings().Theme().(*Theme); ok {
			return t.text
		}
	}
	return 1
}

// setText gives everything another size of text. What stands around the board is
// made anew: that is rare, and a size of its own in each widget would have to be
// followed everywhere.
func (w *Window) setText(percent int) {
	w.settle()
	w.settings.Text = textPercent(percent)
	w.keepSettings()
	w.wear(isDark())
	open := w.cards.open
	w.assemble()
	w.cards.open = open
	w.win.SetContent(w.content())
	w.board.SetGrowth(textScale())
	w.show(w.snapshot)
	w.tell(fmt.Sprintf("Text at %d %%.", w.settings.Text))
}

func (w *Window) largerText()  { w.setText(nextPercent(w.settings.Text, 1)) }
func (w *Window) smallerText() { w.setText(nextPercent(w.settings.Text, -1)) }
