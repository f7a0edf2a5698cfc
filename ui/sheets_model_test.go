package ui

import (
	"testing"

	"tubewright/cutlist/draw"
	"tubewright/cutlist/sheet"
)

func TestSheetChoiceTurnsPages(t *testing.T) {
	c := &sheetChoice{}
	if got := c.caption(); got != "No page: every chapter is left out, or empty for this plan." {
		t.Errorf("without pages: %q", got)
	}
	if d := c.shown(); len(d.Items) != 2 || d.W != 210 {
		t.Errorf("without pages a white A4 is shown, got %d items on %v mm", len(d.Items), d.W)
	}
	pages := []draw.Drawing{{Name: "Overview"}, {}, {Name: "Cut list"}}
	c.show(pages)
	steps := []struct {
		by   int
		want string
	}{
		{0, "Page 1 of 3: Overview"}, {-1, "Page 1 of 3: Overview"}, {1, "Page 2 of 3: Overview"}, {1, "Page 3 of 3: Cut list"}, {5, "Page 3 of 3: Cut list"},
	}
	for _, s := range steps {
		if c.step(s.by); c.caption() != s.want {
			t.Errorf("after a step of %d: %q, want %q", s.by, c.caption(), s.want)
		}
	}
	c.show(pages[:2])
	if got := c.caption(); got != "Page 2 of 2: Overview" {
		t.Errorf("with fewer pages: %q, want the last of them", got)
	}
}

func TestSheetChoiceLeavesChaptersOut(t *testing.T) {
	c := &sheetChoice{}
	for _, chapter := range sheet.Chapters() {
		if !c.prints(chapter) || chapterWords[chapter] == "" {
			t.Errorf("%s: printed %v, in words %q", chapter, c.prints(chapter), chapterWords[chapter])
		}
	}
	c.print(sheet.Buying, false)
	c.print(sheet.Buying, false)
	c.print(sheet.Cuts, false)
	if got := c.options().Leave; len(got) != 2 || c.prints(sheet.Buying) {
		t.Errorf("left out are %v, want the buying list and the cuts", got)
	}
	c.print(sheet.Buying, true)
	if got := c.options().Leave; len(got) != 1 || got[0] != sheet.Cuts {
		t.Errorf("left out are %v, want the cuts", got)
	}
}
