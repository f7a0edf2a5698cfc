package sheet_test

import (
	"strings"
	"testing"

	"tubewright/cutlist/sheet"
)

// Each chapter alone, one after another, gives the pages of all together: none
// is lost or printed twice.
func TestChaptersAddUpToAllPages(t *testing.T) {
	lists := everyList(t)
	for _, name := range []string{"small", "firm", "empty", "inches", "conservation-scanner"} {
		l, sum := lists[name], 0
		for i, c := range sheet.Chapters() {
			others := append(append([]sheet.Chapter{}, sheet.Chapters()[:i]...), sheet.Chapters()[i+1:]...)
			pages := sheet.Pages(l, sheet.Options{Leave: others})
			sum += len(pages)
			for _, p := range sheet.Pages(l, sheet.Options{Leave: []sheet.Chapter{c}}) {
				if p.Name != "" && len(pages) > 0 && p.Name == pages[0].Name {
					t.Errorf("%s: without %s there is still the page %q", name, c, p.Name)
				}
			}
		}
		if all := len(sheet.Pages(l, sheet.Options{})); sum < all {
			t.Errorf("%s: the chapters have %d pages by themselves, all together %d", name, sum, all)
		}
		if n := len(sheet.Pages(l, sheet.Options{Leave: sheet.Chapters()})); n != 0 {
			t.Errorf("%s: %d pages although every chapter is left out", name, n)
		}
	}
}

func TestParseChapters(t *testing.T) {
	got, err := sheet.ParseChapters([]string{"Tubes", " numbers"})
	if err != nil || len(got) != 2 || got[0] != sheet.TubePages || got[1] != sheet.NumberList {
		t.Errorf("got %v, %v", got, err)
	}
	if _, err := sheet.ParseChapters([]string{"pictures"}); err == nil || !strings.Contains(err.Error(), "there are overview, findings") {
		t.Errorf("got %v, want an error that lists the chapters", err)
	}
}
