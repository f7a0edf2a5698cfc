package ui

import (
	"testing"

	"tubewright/ui/board"
	"tubewright/ui/session"
)

func TestLargerTextKeepsWhatIsShown(t *testing.T) {
	b := scanner(t)
	run := b.snapshot.Plan.Runs[0].Name
	b.pick(board.RunTarget(run))
	b.cards.reopen(run)
	small := b.cards.byRun[run].head.figure.TextSize
	b.largerText()
	b.settle()
	c := b.cards.byRun[run]
	if got := c.head.figure.TextSize; got != largeSize.px() || got <= small || textScale() != 1.1 {
		t.Errorf("one step larger the cut length is %v high at %v times, it was %v", got, textScale(), small)
	}
	if !c.open || !c.front.chosen || b.details.model.title != run {
		t.Errorf("after that the card is open %v, chosen %v, details of %q", c.open, c.front.chosen, b.details.model.title)
	}
	b.switchTheme()
	if !isDark() || textScale() != 1.1 {
		t.Errorf("in the other look text is %v times, dark %v", textScale(), isDark())
	}
	kept, err := session.LoadSettings(b.dir)
	if err != nil || kept.Text != 110 {
		t.Errorf("the settings hold %+v, %v", kept, err)
	}
	b.smallerText()
	b.smallerText()
	if got := b.cards.byRun[run].head.figure.TextSize; got != small || b.settings.Text != 100 {
		t.Errorf("made smaller again it is %v high at %d %%, want %v", got, b.settings.Text, small)
	}
}

func TestSizesOfText(t *testing.T) {
	for _, row := range []struct{ from, by, want int }{
		{0, 1, 110}, {0, -1, 100}, {100, 1, 110}, {110, 1, 125}, {125, 1, 150}, {150, 1, 150}, {150, -1, 125}, {137, 1, 110},
	} {
		if got := nextPercent(row.from, row.by); got != row.want {
			t.Errorf("from %d by %d is %d, want %d", row.from, row.by, got, row.want)
		}
	}
}
