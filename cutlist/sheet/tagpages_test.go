package sheet_test

import (
	"fmt"
	"strings"
	"testing"

	"tubewright/cutlist/sheet"
)

// Each piece has a label whose two halves say the same; one machine has none.
func TestEachPieceOfABatchHasALabel(t *testing.T) {
	p := smallPlan()
	one := list(t, p)
	for _, page := range sheet.Pages(one, sheet.Options{}) {
		if page.Name == "Labels for the pieces" {
			t.Error("one machine has labels")
		}
	}
	p.Build = 3
	l := list(t, p)
	said := map[string]int{}
	for _, page := range sheet.Pages(l, sheet.Options{}) {
		for _, text := range texts(page) {
			said[text.text]++
		}
	}
	pieces := 0
	for i, bar := range l.Bars {
		for n, piece := range bar.Pieces {
			pieces++
			goes := fmt.Sprintf("machine %d of 3", piece.Machine)
			if piece.Spare {
				goes = "spare"
			}
			if want := fmt.Sprintf("bar %d, piece %d  ·  %s", i+1, n+1, goes); said[want] != 2 {
				t.Errorf("%q stands there %d times, want on both halves of its label", want, said[want])
			}
		}
	}
	halves := 0
	for text, n := range said {
		if strings.HasPrefix(text, "bar ") && strings.Contains(text, ", piece ") {
			halves += n
		}
	}
	if pieces < 9 || halves != 2*pieces {
		t.Errorf("%d halves of labels for %d pieces", halves, pieces)
	}
}
